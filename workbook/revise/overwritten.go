package revise

import (
	"fmt"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/workbook/sheet"
)

// overwritten tells of cells that people should not have typed into: what
// stands there is computed or comes from the job, and is written anew.
func (d *differ) overwritten() {
	for _, t := range keyedTables() {
		block, ok := d.b.was.over[t.table]
		if !ok {
			continue
		}
		for name, p := range d.b.was.f.Names {
			column, ok := strings.CutPrefix(name, t.table+"_")
			if !ok || p.Sheet != block.Sheet || p.R1 != block.R1 || p.R2 != block.R2 || column == "id" && t.table == "build" {
				continue
			}
			for key := range d.b.was.rows[t.table] {
				d.locked(address{table: t.table, column: column, key: key})
			}
		}
	}
	for name, p := range d.b.was.f.Names {
		if p.One() {
			d.locked(named(name))
		}
	}
}

// locked looks at one cell that is not for typing.
func (d *differ) locked(a address) {
	was, ok := d.b.was.find(a)
	laid := d.b.laidCell(was)
	if ok != here || laid == nil || laid.Formula == "" && !laid.Style.Role.Locked() {
		return
	}
	now, ok := d.b.found.find(a)
	if ok != here {
		return
	}
	old, cell := d.b.was.cell(was), d.b.found.cell(now)
	switch {
	case laid.Formula != "" && cell.Formula != "", cell.Kind == sheet.FoundEmpty, same(old, cell):
		return
	}
	pos := at(d.b.File, now)
	d.once(pos.String(), diag.Problem{Pos: pos, Code: Overwriten, Warning: true, Path: d.words(a, was),
		Message: fmt.Sprintf("found %q typed over what the program computes; it is not taken over and is computed anew", shown(cell)),
		Advice:  "change a cell with a light ground instead, such as a quantity, a price on the Price List or % off"})
}
