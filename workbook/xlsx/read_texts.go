package xlsx

import (
	"strconv"
	"strings"
	"unicode/utf16"
)

// sharedTexts reads the texts that cells refer to by number.
func (x *reader) sharedTexts(part string) ([]string, error) {
	var out []string
	err := x.pack.each(part, "the list of texts", "sst", func(m *markup) {
		if m.name == "si" {
			m.stop(x.pack.left.list(1))
			out = append(out, m.richText())
		}
	})
	return out, err
}

// richText is the text of the element just started, plain or in runs of
// differing looks. How it is pronounced, which stands beside it, is left out.
func (m *markup) richText() string {
	var text joined
	m.children(func() {
		switch m.name {
		case "t":
			text.add(m.content())
		case "r":
			m.children(func() {
				if m.name == "t" {
					text.add(m.content())
				}
			})
		}
	})
	return unescape(text.text())
}

// unescape turns the format's codes for characters, "_xHHHH_", back. Two codes
// in a row may stand for one character.
func unescape(s string) string {
	if !strings.Contains(s, "_x") {
		return s
	}
	var b strings.Builder
	for {
		i := strings.Index(s, "_x")
		if i < 0 {
			b.WriteString(s)
			return b.String()
		}
		b.WriteString(s[:i])
		s = s[i:]
		if !charCode(s) {
			b.WriteByte('_')
			s = s[1:]
			continue
		}
		char := codeUnit(s)
		s = s[7:]
		if utf16.IsSurrogate(char) && charCode(s) {
			if pair := utf16.DecodeRune(char, codeUnit(s)); pair != '\uFFFD' {
				char, s = pair, s[7:]
			}
		}
		b.WriteRune(char)
	}
}

// codeUnit is the number in a code for a character.
func codeUnit(s string) rune {
	n, err := strconv.ParseUint(s[2:6], 16, 16)
	if err != nil {
		return '\uFFFD'
	}
	return rune(n)
}

// shows is how a style shows a number, as far as that changes what was meant.
type shows struct{ day, percent bool }

// numberStyles reads which styles show a number as a date or in percent.
func (x *reader) numberStyles(part string) ([]shows, error) {
	own := map[string]shows{}
	var styles []string
	err := x.pack.each(part, "the list of styles", "styleSheet", func(m *markup) {
		switch m.name {
		case "numFmts":
			m.children(func() {
				m.stop(x.pack.left.list(1))
				code := m.attr("formatCode")
				own[m.attr("numFmtId")] = shows{dayCode(code), percentCode(code)}
			})
		case "cellXfs":
			m.children(func() {
				m.stop(x.pack.left.list(1))
				styles = append(styles, m.attr("numFmtId"))
			})
		}
	})
	// The formats may stand behind the styles that use them.
	all := make([]shows, len(styles))
	for i, id := range styles {
		show, known := own[id]
		if !known {
			show = shows{builtInDay(id), id == "9" || id == "10"} // 0% and 0.00%
		}
		all[i] = show
	}
	return all, err
}

// builtInDay tells the dates among the formats that have a number only,
// ISO/IEC 29500-1, 18.8.30: 14 to 17 and 22, and those of East Asia.
func builtInDay(id string) bool {
	n, err := strconv.Atoi(id)
	return err == nil && (n >= 14 && n <= 17 || n == 22 || n >= 27 && n <= 31 || n == 36 || n >= 50 && n <= 58)
}

// dayCode tells whether a format such as "yyyy-mm-dd;@" shows a date: a day, a
// year, or a month that cannot be minutes.
func dayCode(code string) bool {
	month, clock := false, false
	for i := 0; i < len(code); i++ {
		switch c := code[i] | 0x20; {
		case code[i] == '"':
			i = skipTo(code, i, '"')
		case code[i] == '[':
			// "[h]" counts hours; others are colours, conditions, languages.
			end := skipTo(code, i, ']')
			clock = clock || strings.Trim(strings.ToLower(code[i:min(end, len(code))]), "[hms") == ""
			i = end
		case code[i] == '\\', code[i] == '_', code[i] == '*':
			i++
		case code[i] == ';':
			return month && !clock
		case strings.HasPrefix(code[i:], "General"):
			i += len("General") - 1
		case strings.HasPrefix(strings.ToUpper(code[i:min(i+5, len(code))]), "AM/PM"):
			i += len("AM/PM") - 1
		case c == 'd', c == 'y':
			return true
		case c == 'm':
			month = true
		case c == 'h', c == 's':
			clock = true
		}
	}
	return month && !clock
}

// percentCode tells whether a format shows a hundred times the number: "0.0%",
// but not 0.0"%", which only writes the sign.
func percentCode(code string) bool {
	for i := 0; i < len(code); i++ {
		switch code[i] {
		case '"':
			i = skipTo(code, i, '"')
		case '[':
			i = skipTo(code, i, ']')
		case '\\', '_', '*':
			i++
		case '%':
			return true
		}
	}
	return false
}

// skipTo is the index of the next mark behind i, or the end.
func skipTo(s string, i int, mark byte) int {
	if n := strings.IndexByte(s[i+1:], mark); n >= 0 {
		return i + 1 + n
	}
	return len(s)
}
