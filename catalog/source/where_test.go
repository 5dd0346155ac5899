package source

import (
	"strings"
	"testing"
)

func TestWhere(t *testing.T) {
	y := mustDecode(t, good)
	lines := strings.Split(good, "\n")
	tests := []struct {
		where Where
		field string
		at    string // what stands at the position
		path  string
	}{
		{y.Where, "", "name: Fernhollow", ""},
		{y.Where, "units", "imperial", ""},
		{y.Where, "days[1]", `"2026-07-05"`, ""},
		{y.Where, "rates.fuel", "0}", ""},
		{y.Where, "drives.larkmere.miles", "23", ""},
		{y.Where, "parts[0].tags[1]", "42, yes", ""},
		{y.Where, "parts[7].tags", "- id: stake_42", ""}, // the nearest above
		{y.Where, "nothing", "name: Fernhollow", ""},
		{y.Drives["larkmere"].Where, "miles", "23", "drives.larkmere"},
		{y.Parts[0].Where, "", "id: stake_42", "parts[0]"},
		{y.Parts[0].Where, "weight", "12.64 lb", "parts[0]"},
		{y.Parts[0].Where, "needs", "{hammer", "parts[0]"},
		{y.Parts[0].Where, "needs.glove", "2}", "parts[0]"},
		{y.Parts[0].Where, "grid[0][1]", "2], []", "parts[0]"},
		{y.Parts[0].Where, "grid[0][x]", "[1, 2]", "parts[0]"},
		{y.Parts[0].Where, "grid[0", "[1, 2]", "parts[0]"},
		{y.Parts[0].Where, "spare.least", "2", "parts[0]"},
		{y.Parts[0].Spare.Where, "percent", "5", "parts[0].spare"},
		{y.Parts[1].Where, "id", `"007"`, "parts[1]"},
		{y.Parts[1].Where, "weight", `id: "007"`, "parts[1]"},
	}
	for _, tt := range tests {
		pos := tt.where.Of(tt.field)
		if tt.field == "" {
			pos = tt.where.Pos()
		}
		if got := lines[pos.Line-1][pos.Column-1:]; pos.File != "yard.yaml" || !strings.HasPrefix(got, tt.at) {
			t.Errorf("%q of %q: %s is %q, want %q", tt.field, tt.where.Path(), pos, got, tt.at)
		}
		if got := tt.where.Path(); got != tt.path {
			t.Errorf("got path %q, want %q", got, tt.path)
		}
	}
}

func TestZeroWhereIsNowhere(t *testing.T) {
	var w Where
	if w.Pos().String() != "" || w.Of("weight").String() != "" || w.Path() != "" {
		t.Errorf("got %v, %v, %q", w.Pos(), w.Of("weight"), w.Path())
	}
}
