package intake

import (
	"fmt"
	"strings"

	"tentwright/catalog/unit"
	"tentwright/workbook/sheet"
)

// strays warns of words and numbers that were typed where the form has no input,
// since nothing reads them: over a hint, or into the white beside a row.
func (r *reader) strays() {
	on := r.found.Names[formName].Sheet
	s := r.found.Sheet(on)
	k := &strays{own: map[string]bool{}, rows: map[int]map[int]bool{}}
	k.form(Form(r.c, unit.Date{Year: 2000, Month: 1, Day: 1}))
	for name, p := range r.found.Names {
		if p.Sheet == on && (strings.HasPrefix(name, "intake_") || name == formName) {
			k.read(r, strings.TrimPrefix(name, "intake_"), p.Range)
		}
	}
	for row := 1; row <= min(k.last, len(s.Rows)); row++ {
		for col := 1; col <= min(colKey, len(s.Rows[row-1])); col++ {
			c := r.at(spot{sheet: s, row: row, col: col})
			if c.Kind == sheet.FoundEmpty || c.Kind == sheet.FoundError || c.Formula != "" || k.rows[row][col] || k.own[shown(c)] {
				continue
			}
			r.warn(spot{sheet: s, row: row, col: col, label: fmt.Sprintf("row %d", row)}, NotRead, "type it into the cream cell that it is for, or into a note",
				"%q is not read, for this is no cell to fill in; words in the cream cells were expected", sheet.Short(shown(c), 60))
		}
	}
}

// strays is what may stand on the sheet without being asked about.
type strays struct {
	own  map[string]bool      // words of a fresh form
	rows map[int]map[int]bool // cells that are read, or hold what a shop has today
	last int                  // row of the form
}

// former are words outside the inputs of earlier forms, which later ones say in
// another way.
var former = []string{
	"Empty: not heated. Every tent with a wall is.",
	"Only the sides that are closed, have doors, or cannot be staked; all others are open. How many empty: one. Front and back run along the length.",
	"No stakes along it",
}

// form gathers the words that a fresh form has outside its inputs.
func (k *strays) form(b *sheet.Book) {
	for _, words := range former {
		k.own[words] = true
	}
	for _, row := range b.Sheets[0].Rows {
		for _, c := range row.Cells {
			if text, ok := c.Value.(string); ok && c.Style.Role.Locked() {
				k.own[strings.TrimSpace(sheet.Clean(text))] = true
			}
		}
	}
}

// besides are columns of tables that show names and prices of the shop as they
// were when the form was made, by the name of the column with the keys.
var besides = map[string][]int{
	"item_id":    {colValue, colD, colE},
	"site_id":    {colLabel, colF},
	"loading_id": {colLabel, colF},
	"window_id":  {colLabel, colF},
	"hours_id":   {colLabel},
	"side_side":  {colLabel},
	"place_no":   {colLabel},
}

// read marks the cells of a name, and those that go with them.
func (k *strays) read(r *reader, name string, at sheet.Range) {
	s := r.found.Sheet(r.found.Names[formName].Sheet)
	k.last = max(k.last, at.R2)
	for row := at.R1; row <= min(at.R2, len(s.Rows)); row++ {
		if k.rows[row] == nil {
			k.rows[row] = map[int]bool{}
		}
		for col := at.C1; col <= min(at.C2, colKey); col++ {
			k.rows[row][col] = true
		}
		if key := shown(s.At(row, at.C1)); key == "" && !r.told[row] {
			continue
		}
		for _, col := range besides[name] {
			k.rows[row][col] = true
		}
	}
}
