package diag

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestPosString(t *testing.T) {
	tests := []struct {
		pos  Pos
		want string
	}{
		{Pos{}, ""},
		{Pos{File: "parts.yaml"}, "parts.yaml"},
		{Pos{File: "parts.yaml", Line: 3}, "parts.yaml:3"},
		{Pos{File: "parts.yaml", Line: 3, Column: 9}, "parts.yaml:3:9"},
		{Pos{Line: 3, Column: 9}, "3:9"},
		{Pos{File: "parts.yaml", Column: 9}, "parts.yaml"}, // a column needs its line
		{Pos{File: "quote.xlsx", Sheet: "Crew", Cell: "B7"}, "quote.xlsx: Crew!B7"},
		{Pos{File: "quote.xlsx", Sheet: "Crew"}, "quote.xlsx: Crew"},
		{Pos{Sheet: "Crew", Cell: "B7"}, "Crew!B7"},
	}
	for _, tt := range tests {
		if got := tt.pos.String(); got != tt.want {
			t.Errorf("%#v: got %q, want %q", tt.pos, got, tt.want)
		}
	}
}

func TestProblemString(t *testing.T) {
	at := Pos{File: "parts.yaml", Line: 3, Column: 9}
	tests := []struct {
		problem Problem
		want    string
	}{
		{Problem{Pos: at, Path: "parts[0].unit", Code: "not-one-of", Message: `"peice" is not one of piece, pair`, Advice: `did you mean "piece"?`},
			"parts.yaml:3:9: parts[0].unit: \"peice\" is not one of piece, pair [not-one-of]\n  did you mean \"piece\"?"},
		{Problem{Pos: at, Code: "x", Message: "no path"}, "parts.yaml:3:9: no path [x]"},
		{Problem{Message: "no place, no code"}, "no place, no code"},
		{Problem{Pos: at, Path: "p", Code: "x", Message: "odd", Warning: true}, "parts.yaml:3:9: warning: p: odd [x]"},
	}
	for _, tt := range tests {
		if got := tt.problem.String(); got != tt.want {
			t.Errorf("got %q, want %q", got, tt.want)
		}
	}
}

// at is a problem at a line and column of a file, named by its code.
func at(file string, line, column int, code string) Problem {
	return Problem{Pos: Pos{File: file, Line: line, Column: column}, Code: code}
}

func TestSortedByPlaceThenCodeWithoutRepeats(t *testing.T) {
	l := List{
		at("b.yaml", 1, 1, "a"), at("a.yaml", 10, 1, "a"), at("a.yaml", 2, 5, "b"),
		at("a.yaml", 2, 5, "a"), at("a.yaml", 2, 1, "z"), at("a.yaml", 2, 5, "b"),
	}
	before := append(List(nil), l...)
	want := List{
		at("a.yaml", 2, 1, "z"), at("a.yaml", 2, 5, "a"), at("a.yaml", 2, 5, "b"),
		at("a.yaml", 10, 1, "a"), at("b.yaml", 1, 1, "a"),
	}
	if diff := cmp.Diff(want, l.Sorted()); diff != "" {
		t.Errorf("sorted (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(before, l); diff != "" {
		t.Errorf("the list itself changed (-before +after):\n%s", diff)
	}
}

// What differs only in advice, in level or in related places is no repeat.
func TestSortedKeepsWhatDiffers(t *testing.T) {
	p := at("a.yaml", 1, 1, "a")
	advised, warned, related := p, p, p
	advised.Advice, warned.Warning, related.Related = "do this", true, []Pos{{Line: 9}}
	if got := (List{p, advised, warned, related}).Sorted(); len(got) != 4 {
		t.Errorf("got %d problems, want 4", len(got))
	}
}

func TestErrHoldsEveryFaultAndNoWarning(t *testing.T) {
	var l List
	if l.Err() != nil {
		t.Error("an empty list is an error")
	}
	l.Add(Problem{Message: "only odd", Warning: true})
	if l.Err() != nil {
		t.Error("a list of warnings is an error")
	}
	l.Addf(Pos{File: "a.yaml", Line: 1, Column: 2}, "bad", "%q is bad", "x")
	l.Join(List{{Message: "worse", Code: "bad", Advice: "not shown"}})
	want := "a.yaml:1:2: \"x\" is bad [bad]\nworse [bad]"
	if got := l.Err().Error(); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if len(l.Faults()) != 2 {
		t.Errorf("got %d faults, want 2", len(l.Faults()))
	}
}
