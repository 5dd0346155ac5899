package sheet

import (
	"maps"
	"slices"
	"strings"

	"tentwright/catalog/diag"
)

// formula checks what can be seen without computing: that it is stored without
// '=', that brackets close, that no text in it is too long, and that the sheets
// and names in it exist. A program that meets one of these refuses the whole file.
func (c *checker) formula(where spot, f string) {
	switch {
	case f == "":
		c.add("%s: no formula", where)
		return
	case f[0] == '=':
		c.add("%s: formula %q starts with '='; expected none", where, f)
		return
	case len(f) > maxFormula:
		c.add("%s: formula of %d characters; expected at most %d", where, len(f), maxFormula)
		return
	}
	depth := [2]int{}
	for i := 0; i < len(f); {
		size, kind := token(f[i:])
		word := f[i : i+size]
		switch kind {
		case 's':
			c.sheetWord(where, f, word)
		case 't':
			if n := units(strings.ReplaceAll(word[1:len(word)-1], `""`, `"`)); n > maxQuoted {
				c.add("%s: formula with a text of %d characters; expected at most %d", where, n, maxQuoted)
			}
		case 'w':
			columns := i > 0 && f[i-1] == ':' || strings.HasPrefix(f[i+size:], ":")
			if !c.known(word, columns) {
				c.add("%s: formula %q uses the name %q, which the book does not have%s", where, f, word, c.nearest(word))
			}
		default:
			c.sign(where, f, kind, &depth)
		}
		i += size
	}
	if depth != [2]int{} {
		c.add("%s: formula %q has brackets that do not close", where, f)
	}
}

// sign checks a single character of a formula and counts how deep in round
// and curly brackets it leaves us.
func (c *checker) sign(where spot, f string, kind byte, depth *[2]int) {
	switch kind {
	case '(':
		depth[0]++
	case ')':
		depth[0]--
	case '{':
		depth[1]++
	case '}':
		depth[1]--
	case ';':
		// Inside curly brackets it parts the rows of an array constant.
		if depth[1] == 0 {
			c.add("%s: formula %q has ';'; expected ',' between arguments", where, f)
		}
	case '#':
		c.add("%s: formula %q holds an error value", where, f)
	case '?':
		c.add("%s: formula %q has a quote that does not close", where, f)
	}
}

// token is the size of what stands first in a formula, and its kind: 's' a
// sheet with its '!', 'w' a name or cell, 'f' a function, 't' text, '0' a
// number, '?' an open quote, or the character itself.
func token(f string) (size int, kind byte) {
	switch ch := f[0]; {
	case ch == '"' || ch == '\'':
		size = quoted(f)
		switch {
		case size == 0:
			return len(f), '?'
		case ch == '"':
			return size, 't'
		case strings.HasPrefix(f[size:], "!"):
			return size + 1, 's'
		}
		return size, '?'
	case ch >= '0' && ch <= '9' || ch == '.':
		return number(f), '0'
	case wordStart(ch):
		size = 1
		for size < len(f) && (wordStart(f[size]) || f[size] >= '0' && f[size] <= '9' || f[size] == '.') {
			size++
		}
		switch {
		case strings.HasPrefix(f[size:], "("):
			return size, 'f'
		case strings.HasPrefix(f[size:], "!"):
			return size + 1, 's'
		}
		return size, 'w'
	default:
		return 1, ch
	}
}

// quoted is the size of the quoted text f starts with, a doubled quote inside
// counting as one; 0 when it does not end.
func quoted(f string) int {
	for i := 1; i < len(f); i++ {
		if f[i] != f[0] {
			continue
		}
		if i+1 == len(f) || f[i+1] != f[0] {
			return i + 1
		}
		i++
	}
	return 0
}

// number is the size of the number f starts with, such as 12, 0.5 or 1E-09.
func number(f string) int {
	i := 1
	for i < len(f) && (f[i] >= '0' && f[i] <= '9' || f[i] == '.' || f[i] == 'E' || (f[i] == '-' || f[i] == '+') && f[i-1] == 'E') {
		i++
	}
	return i
}

// wordStart reports whether a name, cell, function or sheet may start so;
// letters beyond ASCII count as one each.
func wordStart(ch byte) bool {
	return ch >= 'a' && ch <= 'z' || ch >= 'A' && ch <= 'Z' || ch == '_' || ch == '$' || ch == '\\' || ch >= 0x80
}

// sheetWord checks that the sheet a formula refers to exists.
func (c *checker) sheetWord(where spot, f, word string) {
	name := strings.TrimSuffix(word, "!")
	if name[0] == '\'' {
		name = strings.ReplaceAll(name[1:len(name)-1], "''", "'")
	}
	if !c.sheets[strings.ToLower(name)] {
		c.add("%s: formula %q refers to sheet %q, which the book does not have", where, f, name)
	}
}

// known reports whether a word of a formula is a cell, a truth value, a
// defined name, or an end of a range of whole columns or rows.
func (c *checker) known(word string, columns bool) bool {
	letters, digits, whole := cellParts(word)
	if whole && letters <= 3 && digits <= 7 && (letters > 0 && digits > 0 || columns) {
		return true
	}
	low := strings.ToLower(word)
	return c.names[low] || low == "true" || low == "false"
}

// cellParts counts the letters and the digits of a word of the form $A$1, and
// whether it is nothing else.
func cellParts(word string) (letters, digits int, whole bool) {
	i := 0
	skip := func(is func(byte) bool) int {
		start := i
		for i < len(word) && is(word[i]) {
			i++
		}
		return i - start
	}
	dollar := func(ch byte) bool { return ch == '$' }
	skip(dollar)
	letters = skip(func(ch byte) bool { return ch|0x20 >= 'a' && ch|0x20 <= 'z' })
	skip(dollar)
	digits = skip(func(ch byte) bool { return ch >= '0' && ch <= '9' })
	return letters, digits, i == len(word)
}

// nearest suggests a defined name close to the one not found.
func (c *checker) nearest(word string) string {
	near, ok := diag.Nearest(strings.ToLower(word), slices.Sorted(maps.Keys(c.names)))
	if !ok {
		return ""
	}
	return "; nearest is " + near
}
