package xlsx

import (
	"strconv"
	"strings"
)

// joined puts a text together. Nearly all texts are of one piece, which is
// kept as it is.
type joined struct {
	only string
	more strings.Builder
}

func (j *joined) add(piece string) {
	switch {
	case j.more.Len() > 0:
		j.more.WriteString(piece)
	case j.only == "":
		j.only = piece
	default:
		j.more.WriteString(j.only)
		j.more.WriteString(piece)
	}
}

func (j *joined) text() string {
	if j.more.Len() > 0 {
		return j.more.String()
	}
	return j.only
}

// entities are the names of characters that XML has without a document type.
var entities = map[string]string{"amp": "&", "lt": "<", "gt": ">", "quot": `"`, "apos": "'"}

// decode puts characters for their names and one kind of line end for all.
func (m *markup) decode(s string) string {
	if strings.IndexByte(s, '\r') >= 0 {
		s = strings.ReplaceAll(strings.ReplaceAll(s, "\r\n", "\n"), "\r", "\n")
	}
	i := strings.IndexByte(s, '&')
	if i < 0 {
		return s
	}
	var b strings.Builder
	for ; i >= 0; i = strings.IndexByte(s, '&') {
		b.WriteString(s[:i])
		end := strings.IndexByte(s[i:], ';')
		if end < 0 {
			m.fail()
			return ""
		}
		char, ok := character(s[i+1 : i+end])
		if !ok {
			m.fail()
			return ""
		}
		b.WriteString(char)
		s = s[i+end+1:]
	}
	b.WriteString(s)
	return b.String()
}

// character is what stands for "amp", "#10" or "#xA0".
func character(name string) (string, bool) {
	code, numbered := strings.CutPrefix(name, "#")
	if !numbered {
		char, ok := entities[name]
		return char, ok
	}
	base := 10
	if hex, ok := strings.CutPrefix(code, "x"); ok {
		code, base = hex, 16
	}
	n, err := strconv.ParseUint(code, base, 32)
	if err != nil || n == 0 || n > 0x10FFFF {
		return "", false
	}
	return string(rune(n)), true
}
