package revise

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/workbook/sheet"
)

// use is what becomes of what people type into a cell.
type use int

const (
	unused use = iota // nothing follows from it
	taken
	kept
)

// keptColumns are the columns of tables in which people write what a job's
// papers are for; none of it changes the quote.
var keptColumns = map[string][]string{
	"pick":   {"loaded", "tag", "note", "ticked", "pulled", "returned"},
	"return": {"counted", "damaged", "wet", "note"},
	"out":    {"tick", "note"}, "home": {"tick", "note"},
	"trip": {"riders"}, "back": {"riders"},
	"task": {"actual"}, "date": {"done"}, "people": {"name"},
	"arrival": {"tick"}, "handover": {"tick"},
}

// keptNames are the cells of the same kind that have names of their own. One
// that ends in _ begins the names of several.
var keptNames = []string{"pick_checked_by", "pick_finished", "pick_on", "pick_pulled_by", "return_counted_by", "return_finished",
	"return_for_customer", "driver_", "route_", "departs_", "sign_", "crewsheet_"}

// keepsName tells whether the cell of a name is one of them.
func keepsName(name string) bool {
	return slices.ContainsFunc(keptNames, func(kept string) bool {
		return name == kept || strings.HasSuffix(kept, "_") && strings.HasPrefix(name, kept)
	})
}

// keptCells are the addresses of what is carried over, in a fixed order.
func (b *Book) keptCells() []address {
	var all []address
	add := func(a address) {
		if p, ok := b.was.find(a); ok == here && b.open(p) {
			all = append(all, a)
		}
	}
	for _, table := range slices.Sorted(maps.Keys(keptColumns)) {
		keys := slices.Sorted(maps.Keys(b.was.rows[table]))
		for _, column := range keptColumns[table] {
			for _, key := range keys {
				add(address{table: table, column: column, key: key})
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(b.was.f.Names)) {
		if b.was.f.Names[name].One() && keepsName(name) {
			add(named(name))
		}
	}
	return all
}

// uses tells of every cell that people may type into what it is for.
func (b *Book) uses() map[sheet.Place]use {
	uses := map[sheet.Place]use{}
	for _, in := range inputs(b.Quote) {
		if p, ok := b.was.find(in.at); ok == here {
			uses[p] = taken
		}
	}
	for _, a := range b.keptCells() {
		p, _ := b.was.find(a)
		uses[p] = kept
	}
	for _, name := range []string{"payments_amount", "payments_date", "payments_note"} {
		p := b.was.f.Names[name]
		for row := p.R1; row <= p.R2; row++ {
			uses[place(p.Sheet, row, p.C1)] = taken
		}
	}
	for _, table := range []string{"tents", "build"} {
		for key := range b.was.rows[table] {
			columns := []string{"id"}
			if strings.HasPrefix(key, spareKey) {
				columns = []string{"id", "quantity", "hand", "note"}
			} else if table == "build" && itemIndex(key) < 0 {
				continue
			}
			for _, column := range columns {
				if p, ok := b.was.find(address{table: table, column: column, key: key}); ok == here {
					uses[p] = taken
				}
			}
		}
	}
	return uses
}

// overwritten tells of cells that people should not have typed into: what
// stands there is computed or comes from the job, and is written anew.
func (d *differ) overwritten() {
	uses := d.b.uses()
	for _, s := range d.b.found.f.Sheets {
		was, ok := d.b.sheets[s.Name]
		if !ok {
			continue
		}
		rows := d.b.rows[s.Name]
		for i := range s.Rows {
			for j := range s.Rows[i] {
				p := place(was, rows[i+1], j+1)
				if rows[i+1] > 0 && uses[p] == unused {
					d.notTaken(p, place(s.Name, i+1, j+1))
				}
			}
		}
	}
}

// notTaken looks at one cell that is not for typing, or from which nothing
// follows.
func (d *differ) notTaken(was, now sheet.Place) {
	laid := d.b.laidCell(was)
	if laid == nil || laid.Formula == "" && (laid.Value == nil || laid.Value == "") && laid.Style.Role.Locked() {
		return // a free cell
	}
	old, cell := d.b.was.cell(was), d.b.found.cell(now)
	if laid.Formula != "" && cell.Formula != "" || shown(cell) == "" || same(old, cell) {
		return
	}
	p := diag.Problem{Pos: at(d.b.File, now), Code: Overwritten, Warning: true, Path: d.words(was),
		Message: fmt.Sprintf("found %q typed over what the program writes; it is not taken over and is computed anew", brief(shown(cell))),
		Advice:  "change a cell with a light ground instead, such as a quantity, a price on the Price List or % off"}
	if laid.Formula == "" && !laid.Style.Role.Locked() {
		p.Code, p.Advice = Unused, ""
		p.Message = fmt.Sprintf("found %q, but nothing follows from this cell; it is not taken over", brief(shown(cell)))
	}
	d.list.Add(p)
}

// mostBrief is the most characters of a found text that a message repeats.
const mostBrief = 60

func brief(text string) string {
	if letters := []rune(text); len(letters) > mostBrief {
		return string(letters[:mostBrief]) + "..."
	}
	return text
}
