package xlsx

import (
	"strings"
	"unicode/utf8"

	"tentwright/workbook/sheet"
)

// appendText appends a text from people as the content of an element. What
// looks like the format's code for a character, "_xHHHH_", has its first
// underscore written as such a code, so that it reads back as typed.
func appendText(b []byte, s string) []byte {
	s = sheet.Clean(s)
	for {
		i := strings.Index(s, "_x")
		if i < 0 {
			return appendMarkup(b, s)
		}
		b = appendMarkup(b, s[:i])
		if charCode(s[i:]) {
			b = append(b, "_x005F"...)
		}
		b = append(b, '_')
		s = s[i+1:]
	}
}

// charCode reports whether s starts with a code for a character: "_x000D_".
func charCode(s string) bool {
	if len(s) < 7 || s[6] != '_' {
		return false
	}
	for _, ch := range []byte(s[2:6]) {
		if (ch < '0' || ch > '9') && (ch|0x20 < 'a' || ch|0x20 > 'f') {
			return false
		}
	}
	return true
}

// appendFormula appends a formula as the content of an element. Its texts have
// not been cleaned, so characters that the file cannot hold are replaced.
func appendFormula(b []byte, f string) []byte {
	for i := range len(f) {
		if f[i] < ' ' || f[i] >= utf8.RuneSelf {
			return appendMarkup(b, strings.Map(legal, f))
		}
	}
	return appendMarkup(b, f)
}

// legal is a character as XML 1.0 can hold it.
func legal(r rune) rune {
	if r < ' ' && r != '\n' && r != '\t' || r == '\uFFFE' || r == '\uFFFF' {
		return utf8.RuneError
	}
	return r
}

// appendMarkup appends legal text, escaping what XML would read as markup.
// Nearly all text has none of it and goes over in one piece.
func appendMarkup(b []byte, s string) []byte {
	from := 0
	for i := range len(s) {
		var code string
		switch s[i] {
		case '&':
			code = "&amp;"
		case '<':
			code = "&lt;"
		case '>':
			code = "&gt;"
		default:
			continue
		}
		b = append(append(b, s[from:i]...), code...)
		from = i + 1
	}
	return append(b, s[from:]...)
}

// inQuotes are the characters that an attribute's value cannot hold as they
// are: a line end would be read as a blank.
var inQuotes = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "\n", "&#10;")

// appendAttribute appends ` name="value"` of a text from people, or nothing
// when it is empty.
func appendAttribute(b []byte, name, value string) []byte {
	value = sheet.Clean(value)
	if value == "" {
		return b
	}
	b = append(append(append(b, ' '), name...), `="`...)
	b = append(b, inQuotes.Replace(value)...)
	return append(b, '"')
}
