package revise

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/quote"
	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// What a pick list can tell of what is on the trucks.
const (
	basisTicks  = "the lines ticked as pulled or loaded, with the counts where somebody counted"
	basisCounts = "nothing is ticked; the counts where somebody counted, all other lines as planned"
	basisPlan   = "nothing is ticked or counted; all of the pick list as planned"
)

// picked is a row of the pick list as it came back.
type picked struct {
	key      string
	part     string
	quantity int // to pick, as the row showed it
	loaded   int
	counted  bool // loaded is a count
	ticked   bool
}

// out is what a row sends out when ticks count, or when none are made.
func (p *picked) out(ticks bool) int {
	switch {
	case p.counted:
		return p.loaded
	case ticks && !p.ticked:
		return 0
	}
	return p.quantity
}

// picks reads the pick list. Counts that are none are faults; a row that was
// deleted is taken as it was written.
func (b *Book) picks() ([]picked, diag.List) {
	var rows []picked
	var list diag.List
	for _, line := range workbook.PickLines(b.Quote) {
		p := picked{key: line.Key, part: line.Part.ID, quantity: line.Quantity}
		cell := func(column string) (sheet.FoundCell, diag.Pos) {
			return b.typed(address{table: "pick", column: column, key: line.Key}, &list)
		}
		if c, _ := cell("quantity"); c.Kind == sheet.FoundNumber && c.Number >= 0 {
			p.quantity = int(c.Number)
		}
		c, pos := cell("loaded")
		p.loaded, p.counted = b.count(c, pos, "count loaded of "+line.Part.Name, &list)
		for _, column := range []string{"pulled", "ticked"} {
			c, pos := cell(column)
			p.ticked = b.tick(c, pos, line.Part.Name, &list) || p.ticked
		}
		rows = append(rows, p)
	}
	return rows, list
}

// onTrucks is what went by the pick list, by the id of the part, and what that
// is taken from. Parts that the revised quote plans count as planned only where
// nobody ticked or counted.
func (b *Book) onTrucks(now *quote.Quote) (map[string]*workbook.LoadChange, string, diag.List) {
	rows, list := b.picks()
	ticks := slices.ContainsFunc(rows, func(p picked) bool { return p.ticked })
	counts := slices.ContainsFunc(rows, func(p picked) bool { return p.counted })
	on := map[string]*workbook.LoadChange{}
	vehicles := map[string]string{}
	lines := workbook.PickLines(b.Quote)
	if !ticks && !counts {
		lines, rows = workbook.PickLines(now), nil
	}
	for i, line := range lines {
		out := line.Quantity
		if rows != nil {
			out = rows[i].out(ticks)
		}
		x := on[line.Part.ID]
		if x == nil {
			x = &workbook.LoadChange{Part: line.Part}
			on[line.Part.ID] = x
		}
		x.On += out
		if at := line.Part.ID + "|" + line.Vehicle; out > 0 && vehicles[at] == "" {
			vehicles[at] = line.Vehicle
			x.Vehicle = strings.TrimPrefix(x.Vehicle+", "+line.Vehicle, ", ")
		}
	}
	switch {
	case ticks:
		return on, basisTicks, list
	case counts:
		return on, basisCounts, list
	}
	return on, basisPlan, list
}

// typed is a cell as it came back; an empty one where its row is gone. Of two
// rows with one key nobody can tell which holds.
func (b *Book) typed(a address, list *diag.List) (sheet.FoundCell, diag.Pos) {
	p, ok := b.found.find(a)
	switch ok {
	case here:
		return b.found.cell(p), at(b.File, p)
	case twoRows:
		list.Add(diag.Problem{Pos: diag.Pos{File: b.File, Sheet: p.Sheet}, Code: RowTwice,
			Message: fmt.Sprintf("two rows have the key %q; one row for each was expected", a.key), Advice: "delete the copied row, or its key"})
	}
	return sheet.FoundCell{}, diag.Pos{File: b.File}
}

// count reads a count of pieces; false where the cell is empty or holds none.
func (b *Book) count(c sheet.FoundCell, pos diag.Pos, what string, list *diag.List) (int, bool) {
	if shown(c) == "" && c.Kind != sheet.FoundError {
		return 0, false
	}
	v, err := read(c, whole, b.Quote.Catalog.Company.Units)
	switch {
	case err != nil:
		list.Add(diag.Problem{Pos: pos, Code: Unreadable, Path: what, Message: err.Error()})
		return 0, false
	case v.number.IsNegative() || v.number.IntPart() > mostPieces:
		list.Add(diag.Problem{Pos: pos, Code: Unreadable, Path: what, Message: "found " + v.text + "; a number of pieces from 0 to 1000000 was expected"})
		return 0, false
	}
	return int(v.number.IntPart()), true
}

// mostPieces is the largest count that a cell takes.
const mostPieces = 1000000

// tick reads a box. A mark that is none of the usual ones is told and not taken
// for a tick.
func (b *Book) tick(c sheet.FoundCell, pos diag.Pos, what string, list *diag.List) bool {
	switch strings.ToLower(shown(c)) {
	case "", "☐", "no", "0", "false":
		return false
	case "☑", "☒", "✓", "✔", "x", "yes", "y", "1", "true":
		return true
	}
	list.Add(diag.Problem{Pos: pos, Code: Unreadable, Path: what, Warning: true, Message: "found " + shown(c) + "; it is not taken for a tick", Advice: "type ☑, x or Yes"})
	return false
}
