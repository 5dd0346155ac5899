package sheet

import (
	"math"
	"testing"
)

// Widths of the letters of Helvetica in thousandths of the size, from the font
// metrics that Adobe published for the standard fonts of PostScript (Helvetica,
// AFM): A 667, W 944, i 222, blank 278, 5 556.
func TestTextWidth(t *testing.T) {
	for _, x := range []struct {
		text string
		bold bool
		want float64
	}{
		{"AW", false, 16.11}, {"i i", false, 7.22}, {"55", false, 11.12}, {"55", true, 12.232}, {"", false, 0},
	} {
		if got := TextWidth(x.text, 10, x.bold); math.Abs(got-x.want) > 1e-9 {
			t.Errorf("%q is %g wide; want %g", x.text, got, x.want)
		}
	}
}

func TestTextLines(t *testing.T) {
	for _, x := range []struct {
		text  string
		width float64
		want  int
	}{
		{"", 50, 1}, {"one line", 50, 1}, {"one line", 30, 2}, {"one\nline", 500, 2},
		{"0000000000", 28, 2}, // ten digits of 5.56 in lines of 28
		{"a", 0, 1},
		{"wall wall wall", 45, 2}, {"wall wall wall", 20, 3},
		{"wwwwwwwwww", 36.2, 2}, {"wwwwwwwwww", 24, 4}, // 72.2 points: broken inside the word
	} {
		if got := TextLines(x.text, 10, false, x.width); got != x.want {
			t.Errorf("%q in %g points takes %d lines; want %d", x.text, x.width, got, x.want)
		}
	}
}

func TestTextHeight(t *testing.T) {
	if got := TextHeight("one line", 10, false, true, 0, 34); got != 27 {
		t.Errorf("two lines are %g high; want 27", got)
	}
	if got := TextHeight("one line", 10, false, false, 0, 34); got != 15 {
		t.Errorf("an unbroken line is %g high; want 15", got)
	}
	if one, two := TextHeight("one line", 10, false, true, 0, 60), TextHeight("one line", 10, false, true, 3, 60); one >= two {
		t.Errorf("indented text is %g high, not indented %g; want it higher", two, one)
	}
}
