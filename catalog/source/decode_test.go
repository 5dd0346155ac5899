package source

import (
	"fmt"
	"strings"
	"testing"

	"tentwright/catalog/diag"
	"tentwright/catalog/unit"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestDecodeEveryKind(t *testing.T) {
	y := mustDecode(t, good)
	first := y.Parts[0]
	got := []any{
		y.Name, y.Units, *y.Opened, y.Days, y.Rates["waiver"].String(), y.Rates["fuel"].String(), y.Drives["larkmere"].Miles.String(),
		first.ID, first.Bin, *first.Weight, first.Length, first.Pack, first.Minutes.String(), first.Owned, first.Small, first.Tracked,
		first.Unit, first.Tags, first.Needs, first.Grid, first.Spare.Percent.String(), *first.Spare.Least,
		y.Parts[1].ID, y.Parts[1].Tracked, y.Parts[1].Weight, y.Parts[1].Spare, len(y.Parts),
	}
	want := []any{
		"Fernhollow Tent Yard", unit.Imperial, unit.Date{Year: 2026, Month: 7, Day: 4}, []unit.Date{{Year: 2026, Month: 7, Day: 4}, {Year: 2026, Month: 7, Day: 5}}, "8.5", "0", "23",
		"stake_42", "1e3", 1264 * unit.Pound / 100, 42 * unit.Inch, unit.Size{L: 10 * unit.Foot, W: unit.Foot, H: 8 * unit.Inch}, "1.1", 400, int8(-128), true,
		"piece", []string{"stake", "42", "yes", "null", "2026-07-04"}, map[string]int{"hammer": 1, "glove": 2}, [][]int{{1, 2}, {}}, "5", 2,
		"007", false, (*unit.Mass)(nil), (*spare)(nil), 2,
	}
	for i := range want {
		if diff := cmp.Diff(want[i], got[i]); diff != "" {
			t.Errorf("value %d (-want +got):\n%s", i, diff)
		}
	}
}

// A fault leaves its own value zero and every other one read.
func TestFaultsLeaveTheRestReadable(t *testing.T) {
	var y yard
	text := "name: Larkmere\nopened: 2026-02-30\nparts:\n  - id: a\n    owned: 0x10\n    small: 7\n  - {id: b}\n"
	list := Decode("yard.yaml", []byte(text), &y)
	if len(list) != 2 {
		t.Errorf("got %d problems, want 2: %v", len(list), list.Err())
	}
	if y.Name != "Larkmere" || *y.Opened != (unit.Date{}) || len(y.Parts) != 2 || y.Parts[0].Owned != 0 || y.Parts[0].Small != 7 || y.Parts[1].ID != "b" {
		t.Errorf("got %+v", y)
	}
}

// Positions count characters, not bytes, and a byte order mark is none.
func TestPositionsCountCharacters(t *testing.T) {
	for text, want := range map[string]string{
		"name: x\nrates: {höhe: 101}\n":        "yard.yaml:2:15: rates.höhe: 101 is above",
		"\ufeffnames: x\nname: x\n":            `yard.yaml:1:1: unknown field "names"`,
		"name: x\r\nopened: never\r\n":         "yard.yaml:2:9: opened: ",
		"name: x\nparts: [{id: a, owned: no}]": "yard.yaml:2:24: parts[0].owned: ",
	} {
		if got := only(t, text); !strings.HasPrefix(got, want) {
			t.Errorf("%q: got %q, want %q", text, got, want)
		}
	}
}

func TestRepeatedFieldNamesTheFirst(t *testing.T) {
	var y yard
	list := Decode("yard.yaml", []byte("name: x\nopened: 2026-07-04\nname: y\n"), &y)
	want := diag.List{{
		Pos: diag.Pos{File: "yard.yaml", Line: 3, Column: 1}, Code: diag.RepeatedField,
		Message: `"name" is given twice`, Related: []diag.Pos{{File: "yard.yaml", Line: 1, Column: 1}},
	}}
	if diff := cmp.Diff(want, list); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if y.Name != "x" {
		t.Errorf("got %q, want the first", y.Name)
	}
}

func TestLimits(t *testing.T) {
	deep := "name: x\nparts: " + strings.Repeat("[", 70) + strings.Repeat("]", 70)
	if got := only(t, deep); !strings.Contains(got, "nested more than 64 levels deep") {
		t.Errorf("deep: got %q", got)
	}
	if got := only(t, strings.Repeat("[", 20000)); !strings.HasSuffix(got, "nested more than 64 levels deep [nested-too-deep]") {
		t.Errorf("far too deep: got %q", got)
	}
	large := "name: x\n" + strings.Repeat("# as large as it gets\n", maxBytes/20)
	if got := only(t, large); !strings.Contains(got, "at most 4194304 are read") {
		t.Errorf("large: got %q", got)
	}
	var y yard
	list := Decode("yard.yaml", []byte("name: x\ndays:\n"+strings.Repeat("  - never\n", 250)), &y)
	if last := list[len(list)-1]; len(list) != maxProblems+1 || last.Code != diag.TooMany || last.Message != "and 50 more problems; mend these first" {
		t.Errorf("many: got %d, the last %q", len(list), last)
	}
}

func TestEmptyFiles(t *testing.T) {
	for _, text := range []string{"", "\n\n", "# only a remark\n", "---\n", "null\n", "~"} {
		if got := only(t, text); got != "yard.yaml:1:1: the file is empty [empty-file]" {
			t.Errorf("%q: got %q", text, got)
		}
	}
}

// What a program may not ask for is its own fault and says which field.
func TestBadTargets(t *testing.T) {
	tests := []struct {
		into any
		want string
	}{
		{nil, "cannot decode into <nil>"},
		{yard{}, "cannot decode into source.yard"},
		{(*yard)(nil), "cannot decode into *source.yard"},
		{new(int), "cannot decode into *int"},
		{&struct {
			A float64 `yaml:"a"`
		}{}, "its type float64"},
		{&struct {
			A map[int]string `yaml:"a"`
		}{}, "its type map[int]string"},
		{&struct {
			a string `yaml:"a"`
		}{}, "not exported"},
		{&struct {
			A string `yaml:"a,omitempty"`
		}{}, "the yaml tag"},
		{&struct {
			A string `yaml:""`
		}{}, "the yaml tag"},
		{&struct {
			A, B string `yaml:"a"`
		}{}, `a second field is named "a"`},
		{&struct {
			A string `yaml:"a" min:"0"`
		}{}, "a min tag is for"},
		{&struct {
			A int `yaml:"a" max:"ten"`
		}{}, `"ten" is not a number`},
		{&struct {
			A int `yaml:"a" enum:"x|y"`
		}{}, "an enum tag is for strings"},
	}
	for _, tt := range tests {
		list := Decode("yard.yaml", []byte("a: 1"), tt.into)
		if len(list) != 1 || list[0].Code != diag.BadTarget || !strings.Contains(list[0].Message, tt.want) {
			t.Errorf("%T: got %v, want %q", tt.into, list, tt.want)
		}
	}
}

// A text in quotes comes back as it was, whatever it looks like.
func TestTextsComeBackUnchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.StringOf(rapid.RuneFrom([]rune("ab 019.-_:#'\"\\,[]{}&*!|>%@`~?éж\U0001f3aa"))).Filter(func(s string) bool {
			return strings.TrimSpace(s) != ""
		}).Draw(t, "text")
		quoted := "'" + strings.ReplaceAll(want, "'", "''") + "'"
		var y yard
		if err := Decode("yard.yaml", []byte("name: "+quoted), &y).Err(); err != nil || y.Name != want {
			t.Fatalf("got %q, %v, want %q", y.Name, err, want)
		}
	})
}

// Quantities come back exactly through a file.
func TestQuantitiesComeBackUnchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := unit.Length(rapid.Int64Range(0, 1e12).Draw(t, "length"))
		m := unit.Mass(rapid.Int64Range(0, 1e15).Draw(t, "mass"))
		length, _ := l.MarshalText()
		mass, _ := m.MarshalText()
		var y yard
		text := fmt.Sprintf("name: x\nparts: [{id: a, length: %s, weight: %s}]", length, mass)
		if err := Decode("yard.yaml", []byte(text), &y).Err(); err != nil || y.Parts[0].Length != l || *y.Parts[0].Weight != m {
			t.Fatalf("%s: got %+v, %v", text, y.Parts, err)
		}
	})
}
