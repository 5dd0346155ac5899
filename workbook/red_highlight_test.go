package workbook_test

import (
	"regexp"
	"strconv"
	"testing"

	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// shown is a cell that must, or must not, take the look of a role.
type shown struct {
	name, keys, key string
	role            sheet.Role
	want            bool
}

// lit are the cells that need an eye after the lists below are filled in.
var lit = []shown{
	{"pick_note", "pick_key", "crown@V2", sheet.Warn, true}, // taken instead
	{"pick_item", "pick_key", "crown@V2", sheet.Warn, true},
	{"pick_note", "pick_key", "base@V2", sheet.Warn, false},
	{"pick_item", "pick_key", "base@V2", sheet.Warn, false},
	{"pick_state", "pick_key", "corner@V2", sheet.Warn, true}, // short
	{"pick_loaded", "pick_key", "corner@V2", sheet.Warn, true},
	{"pick_state", "pick_key", "crown@V2", sheet.Warn, true}, // over
	{"pick_state", "pick_key", "base@V2", sheet.Warn, false},
	{"pick_item", "pick_key", "chair@V3", sheet.Faint, false},
	{"return_state", "return_key", "crown@V2", sheet.Warn, true},   // missing
	{"return_state", "return_key", "base@V2", sheet.Warn, true},    // too many
	{"return_state", "return_key", "wall_10@V2", sheet.Warn, true}, // dry first
	{"return_state", "return_key", "pole_hip@V1", sheet.Warn, true},
	{"return_state", "return_key", "corner@V2", sheet.Warn, false},
	{"return_state", "return_key", "corner@V2", sheet.Good, true}, // complete
	{"return_state", "return_key", "leg_7@V1", sheet.Good, false},
	{"return_item", "return_key", "pole_9_4@V1", sheet.Faint, true}, // none out
	{"return_item", "return_key", "leg_7@V1", sheet.Faint, false},
	{"trip_state", "trip_key", "V1", sheet.Warn, true}, // over
	{"trip_state", "trip_key", "V3", sheet.Warn, false},
	{"trip_state", "trip_key", "V3", sheet.Good, true},
	{"tent_state", "tent_id", "a", sheet.Warn, true},
	{"check_state", "check_key", "requote tents", sheet.Warn, true},
	{"check_state", "check_key", "payload:V2", sheet.Good, true},
	{"check_state", "check_key", "payload:V2", sheet.Warn, false},
}

// What needs an eye is shown: the formulas of the highlights, put into cells
// below their sheets and recalculated, are true there and nowhere else.
func TestHighlightsFollowWhatIsTyped(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	_, book := laidOut(t, pickShop(t), pickJob)
	probes := make([][]string, len(lit))
	for i, x := range lit {
		probes[i] = probe(t, book, x)
		if x.want && len(probes[i]) == 0 {
			t.Errorf("%s of %s: no highlight in role %v; wanted one", x.name, x.key, x.role)
		}
	}
	in := append(typedLoads(), typedBacks()...)
	in = append(in, typed{"pick_note", "pick_key=crown@V2", "two of the old pattern"}, typed{"riders_v1", "", 20}, typed{"tent_leg", "tent_id=a", "9 ft"})
	f := recalculated(t, []typing{{"highlights", book, in}})[0]
	for i, x := range lit {
		got := f.lit(t, x.name, probes[i])
		if at := f.beside(t, x.name, x.keys, x.key); got != x.want {
			t.Errorf("%s, %s of %s, role %v: wanted shown %t, got %t with %q", at.place, x.name, x.key, x.role, x.want, got, at.Text)
		}
	}
}

// lit tells whether one of the probes on the sheet of a named range is true.
func (f figures) lit(t *testing.T, name string, probes []string) bool {
	t.Helper()
	place, _, err := placeOf(f.book, name)
	if err != nil {
		t.Fatal(err)
	}
	for _, ref := range probes {
		if f.cells[place][ref].Number == 1 {
			return true
		}
	}
	return false
}

// ownRow is a cell of a highlight's formula whose row follows the cell shown.
var ownRow = regexp.MustCompile(`(\$[A-Z]+)([0-9]+)`)

// probe adds a cell at the foot of the sheet for each highlight in a role over
// a cell, with the formula as it reads there, and gives where they stand.
func probe(t *testing.T, b *sheet.Book, x shown) (refs []string) {
	t.Helper()
	keys, _, _ := cellsOf(t, b, x.keys)
	_, s, first := cellsOf(t, b, x.name)
	_, at, _ := placeOf(b, x.name)
	row := first
	for i, c := range keys {
		if c.Value == x.key {
			row = first + i
		}
	}
	for _, h := range s.Highlights {
		r := h.Range
		if h.Role != x.role || row < r.R1 || row > r.R2 || at.C1 < r.C1 || at.C1 > r.C2 {
			continue
		}
		formula := ownRow.ReplaceAllStringFunc(h.Formula, func(ref string) string {
			m := ownRow.FindStringSubmatch(ref)
			if m[2] != strconv.Itoa(r.R1) {
				return ref
			}
			return m[1] + strconv.Itoa(row)
		})
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{{Formula: formula, Value: false}}})
		refs = append(refs, sheet.Ref(len(s.Rows), 1))
	}
	return refs
}
