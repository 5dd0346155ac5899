package source

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Where a bracket opens that is not closed, or that lacks a comma within; the
// places are counted by hand.
func TestOpenBracketHasItsPlace(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"name: x\nrates: {a: 1\n", "2:8"},
		{"name: x\nrates: {a: 1 b: 2}\n", "2:8"},
		{"rates: {a: 1\n", "1:8"},
		{"days: [1, 2\nparts:\n  - id: [a]\n", "1:7"}, // of the first line the reader has no place
		{"\ufeffdays: [1\nname: x\n", "1:7"},
		{"name: é\nrates: {é: [1, 2}\n", "2:12"},
		{"name: x\nrates: {a: [1, 2], b: 3\nparts: x\n", "2:8"},
		{"name: x\nrates: {a: [1, 2], b: [3, 4\nparts: x\n", "2:23"},
		{"name: x\nparts:\n  - {id: a, pack: {holds: 1}\n  - {id: b, pack: {holds: 1}}\n", "3:5"},
		{"name: x\nparts:\n  - {id: a, pack: {holds: 1, use: c}\n  - {id: b}\n", "3:5"},
		{"name: x\nrates: {a: 'it [is', b: \"{\", c: 1 # see [this}\n  , d: 2\nparts: x\n", "2:8"},
		{"name: x\ndays: [[1, # see [this] or ]\n 2], 3\nparts: x\n", "2:7"},
		{"name: a [b\nbin: c {d}\ndays: [1\nparts: x\n", "3:7"},
		{"name: x\nbin: |\n  a [b\n  c {d\nrates: {a: 1\n  b: 2\n}\n", "5:8"},
		{"name: x\nrates: {a: b[c\n", "2:8"},
		{"name: x\nrates: {\n  a: 1\n  b: 2\n}\n", "2:8"},
		{"name: x\ndays: [1, {a: 2]\n", "2:11"},
	} {
		if got, want := only(t, tt.text), "yard.yaml:"+tt.want+": a bracket is not closed"; !strings.HasPrefix(got, want) {
			t.Errorf("%q: got %q, want %q", tt.text, got, want)
		}
	}
}

// However long the file above and below it, an open bracket is found.
func TestOpenBracketInALongFile(t *testing.T) {
	const entry = "  - {id: a, pack: {holds: [1, 2]}, bin: 'x [y'}\n"
	rapid.Check(t, func(t *rapid.T) {
		above, below := rapid.IntRange(0, 300).Draw(t, "above"), rapid.IntRange(0, 300).Draw(t, "below")
		text := "name: x\nparts:\n" + strings.Repeat(entry, above) + "  - {id: a, pack: {holds: [1, 2], bin: b}\n" + strings.Repeat(entry, below)
		var y yard
		list := Decode("yard.yaml", []byte(text), &y)
		if want := fmt.Sprintf("yard.yaml:%d:5: a bracket", above+3); len(list) != 1 || !strings.HasPrefix(list[0].String(), want) {
			t.Fatalf("got %v, want %s", list.Err(), want)
		}
	})
}
