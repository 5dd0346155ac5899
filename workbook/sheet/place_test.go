package sheet

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestColumnNames(t *testing.T) {
	// Letters of columns: ISO/IEC 29500-1 18.18.62, last column XFD.
	for col, want := range map[int]string{0: "", -3: "", 1: "A", 26: "Z", 27: "AA", 28: "AB", 52: "AZ", 702: "ZZ", 703: "AAA", MaxCols: "XFD"} {
		if got := ColName(col); got != want {
			t.Errorf("ColName(%d) = %q, want %q", col, got, want)
		}
	}
}

func TestPlaces(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Ref(7, 2), "B7"},
		{AbsRef(7, 2), "$B$7"},
		{Quote("Pick list"), "'Pick list'"},
		{Quote("Yard's"), "'Yard''s'"},
		{Range{1, 1, 9, 3}.String(), "A1:C9"},
		{Range{4, 5, 4, 5}.String(), "E4"},
		{Range{1, 1, 9, 3}.Abs("Pick list"), "'Pick list'!$A$1:$C$9"},
		{Range{4, 5, 4, 5}.Abs("Lists"), "'Lists'!$E$4"},
	} {
		if c.got != c.want {
			t.Errorf("got %s, want %s", c.got, c.want)
		}
	}
}

// A column's letters read back as a number in base 26 give the column.
func TestColumnNameReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		col := rapid.IntRange(1, MaxCols).Draw(t, "col")
		back := 0
		for _, r := range ColName(col) {
			back = back*26 + int(r-'A') + 1
		}
		if back != col {
			t.Fatalf("ColName(%d) = %q reads back as %d", col, ColName(col), back)
		}
	})
}

func TestOverlapIsSharingACell(t *testing.T) {
	corner := rapid.IntRange(1, 6)
	draw := func(t *rapid.T, name string) Range {
		r := Range{R1: corner.Draw(t, name+" r1"), C1: corner.Draw(t, name+" c1")}
		r.R2, r.C2 = r.R1+rapid.IntRange(0, 3).Draw(t, "high"), r.C1+rapid.IntRange(0, 3).Draw(t, "wide")
		return r
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := draw(t, "a"), draw(t, "b")
		shared := false
		for r := a.R1; r <= a.R2; r++ {
			for c := a.C1; c <= a.C2; c++ {
				shared = shared || r >= b.R1 && r <= b.R2 && c >= b.C1 && c <= b.C2
			}
		}
		if a.Overlaps(b) != shared || b.Overlaps(a) != shared {
			t.Fatalf("%s overlaps %s: %v, want %v", a, b, a.Overlaps(b), shared)
		}
	})
}

func TestClean(t *testing.T) {
	for in, want := range map[string]string{
		"Garden party":                "Garden party",
		"":                            "",
		"  outer \t":                  "outer",
		"one\r\ntwo\rthree\u2028four": "one\ntwo\nthree\nfour",
		"bell\a and null\x00":         "bell and null",
		"tab\tbed":                    "tab bed",
		"bad \xff byte":               "bad \uFFFD byte",
		"gnp\u202Ecod":                "gnpcod",
		"\uFEFFmark":                  "mark",
		"=1+1":                        "=1+1",
		"Łąka café 漢字 ☑":              "Łąka café 漢字 ☑",
		"a_x000D_b":                   "a_x000D_b",
		"_x005F_":                     "_ x005F_",
		"_xD83D_":                     "_ xD83D_",
	} {
		if got := Clean(in); got != want {
			t.Errorf("Clean(%q) = %q, want %q", in, got, want)
		}
	}
}

// Clean text stays, holds no control character but the line end, and is never
// longer than it was but for broken codes.
func FuzzClean(f *testing.F) {
	for _, s := range []string{"", " a ", "a\r\nb", "_x005F_x005F_", "\xff\xfe", "\u202e", "__x005F_x005F_"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := Clean(s)
		if again := Clean(got); again != got {
			t.Fatalf("Clean(%q) = %q, cleaned again %q", s, got, again)
		}
		if strings.ContainsFunc(got, func(r rune) bool { return r < ' ' && r != '\n' || r == 0x7f }) {
			t.Fatalf("Clean(%q) = %q holds a control character", s, got)
		}
	})
}
