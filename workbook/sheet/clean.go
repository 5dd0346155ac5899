package sheet

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf16"
)

// MaxText is the most UTF-16 units one cell can hold, ISO/IEC 29500.
const MaxText = 32767

// Clean makes text from people fit for a cell: control characters and marks
// that reverse reading order go, line ends become \n, outer blanks go. The
// writer applies it to every string; text already clean stays as it is, and
// other texts like "_x000D_" are stored so that they read back as typed.
func Clean(s string) string {
	if plain(s) {
		return s
	}
	s = strings.ToValidUTF8(s, "\uFFFD")
	s = strings.ReplaceAll(s, "\r\n", "\n")
	s = strings.Map(cleanRune, s)
	s = lostCode.ReplaceAllString(s, "_ $1")
	return strings.TrimSpace(s)
}

// lostCode is text that looks like one of the file format's own codes for a
// character, "_xHHHH_", of the kinds that no program keeps: the code of the
// underscore and of half characters. A blank breaks it.
var lostCode = regexp.MustCompile(`_(x(?:005[Ff]|[Dd][89A-Fa-f][0-9A-Fa-f]{2}))`)

// plain reports whether nothing in s needs cleaning, which is so for nearly
// every cell of a book.
func plain(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < 0x20 || s[i] > 0x7e || s[i] == '_' && strings.HasPrefix(s[i:], "_x") {
			return false
		}
	}
	return s == "" || s[0] != ' ' && s[len(s)-1] != ' '
}

// cleanRune is what a character becomes, or -1 when it goes.
func cleanRune(r rune) rune {
	switch {
	case r == '\n', r == '\r', r == '\u2028', r == '\u2029', r == '\u0085':
		return '\n'
	case r == '\t':
		return ' '
	case unicode.IsControl(r), r == '\uFEFF', r == '\uFFFE', r == '\uFFFF':
		return -1
	case r >= '\u202A' && r <= '\u202E', r >= '\u2066' && r <= '\u2069':
		// These turn the text around, so that a name reads as another.
		return -1
	}
	return r
}

// Short is a text of at most so many UTF-16 units, in which the file format
// counts; one that is cut ends in three points. Headers, prompts and texts within
// formulas have limits that names given by people do not.
func Short(s string, most int) string {
	if len(utf16.Encode([]rune(s))) <= most {
		return s
	}
	used := 1 // the three points are one sign
	for i, r := range s {
		if used += utf16.RuneLen(r); used > most {
			return s[:i] + "…"
		}
	}
	return s
}
