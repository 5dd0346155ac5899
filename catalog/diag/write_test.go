package diag

import (
	"strings"
	"testing"
)

// written is what Write prints for one problem over the given file text.
func written(p Problem, text string) string {
	var out strings.Builder
	Write(&out, List{p}, func(string) []byte { return []byte(text) })
	return out.String()
}

func TestWrite(t *testing.T) {
	text := "parts:\n  - id: stake\n    weight: 12\n"
	p := Problem{
		Pos: Pos{File: "p.yaml", Line: 3, Column: 13}, Path: "parts[0].weight", Code: "bad-value",
		Message: "has no unit", Advice: "write 12 lb", Related: []Pos{{File: "q.yaml", Line: 1, Column: 1}},
	}
	want := `p.yaml:3:13: parts[0].weight: has no unit [bad-value]
        weight: 12
                ^
  see q.yaml:1:1
  write 12 lb
`
	if got := written(p, text); got != want {
		t.Errorf("got:\n%s\nwant:\n%s", got, want)
	}
	var out strings.Builder
	Write(&out, List{p, p}, nil)
	if want := strings.Repeat(p.line()+"\n  see q.yaml:1:1\n  write 12 lb\n", 2); out.String() != want {
		t.Errorf("without a source, got:\n%s\nwant:\n%s", out.String(), want)
	}
}

func TestExcerpt(t *testing.T) {
	tests := []struct {
		name         string
		text         string
		line, column int
		want         string
	}{
		{"column counts characters", "höhe: 4\n", 1, 7, "    höhe: 4\n          ^\n"},
		{"tabs stay tabs", "\ta: 1\n", 1, 5, "    \ta: 1\n    \t   ^\n"},
		{"behind the last character", "ab", 1, 3, "    ab\n      ^\n"},
		{"column past the line", "ab\n", 1, 9, "    ab\n"},
		{"no column", "ab\n", 1, 0, "    ab\n"},
		{"no such line", "ab\n", 7, 1, ""},
		{"no line", "ab\n", 0, 0, ""},
		{"blank line", "  \n", 1, 1, ""},
		{"line end of two characters", "a\r\nb\r\n", 2, 1, "    b\n    ^\n"},
		{"byte order mark is no column", "\ufeffab\n", 1, 2, "    ab\n     ^\n"},
		{"no control characters reach the terminal", "a\x1b[31mb\n", 1, 1, "    a\ufffd[31mb\n    ^\n"},
		{"last line without a line end", "a\nb", 2, 1, "    b\n    ^\n"},
	}
	for _, tt := range tests {
		if got := excerpt([]byte(tt.text), Pos{Line: tt.line, Column: tt.column}); got != tt.want {
			t.Errorf("%s: got %q, want %q", tt.name, got, tt.want)
		}
	}
}

// Whatever the column, a long line shows at most its width with the mark
// under the right character.
func TestExcerptOfALongLine(t *testing.T) {
	line := strings.Repeat("0123456789", 40)
	for column := 1; column <= len(line); column++ {
		rows := strings.Split(excerpt([]byte(line), Pos{Line: 1, Column: column}), "\n")
		mark := strings.Index(rows[1], "^")
		if len(rows[0]) > excerptWidth+len(excerptIndent) || rows[0][mark] != line[column-1] {
			t.Fatalf("column %d: got %q, mark at %d", column, rows, mark)
		}
	}
}
