package workbook_test

import (
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/job"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// some chooses one of a list.
func some[T any](e *editing, list []T) *T { return &list[e.r.IntN(len(list))] }

// rule chooses a labour rule that the job has a task of.
func (e *editing) rule() *catalog.LabourRule {
	id := some(e, e.q.Labour.Tasks).Rule.ID
	at := slices.IndexFunc(e.now.Catalog.Labour, func(r catalog.LabourRule) bool { return r.ID == id })
	return &e.now.Catalog.Labour[at]
}

// zone is the one that holds.
func (e *editing) zone() *catalog.Zone { return e.now.Job.Zone(e.now.Catalog) }

// zonePrice changes a price of the zone that holds.
func (e *editing) zonePrice(name string, into *money.Number, most, places int) bool {
	return e.cell(name, e.row("zones_id", e.zone().ID), into, 0, most, places)
}

// window is the job's own say on a window of work.
func (e *editing) window() *job.WindowCrew {
	id := some(e, e.now.Catalog.Rates.Windows).ID
	windows := &e.now.Job.Labour.Windows
	at := slices.IndexFunc(*windows, func(w job.WindowCrew) bool { return w.Window == id })
	if at < 0 {
		at = len(*windows)
		*windows = append(*windows, job.WindowCrew{Window: id})
	}
	return &(*windows)[at]
}

// decimal is a random number between two, to some places.
func (e *editing) decimal(least, most, places int) money.Number {
	one := 1
	for range places {
		one *= 10
	}
	return money.Int(least*one + e.r.IntN((most-least)*one+1)).Shift(int32(-places))
}

func (e *editing) number(name string, into *money.Number, least, most, places int) bool {
	return e.cell(name, 0, into, least, most, places)
}

// cell types a number into a row of a named range, from 0.
func (e *editing) cell(name string, row int, into *money.Number, least, most, places int) bool {
	n := e.decimal(least, most, places)
	if !e.setAt(name, row, n.InexactFloat64()) {
		return false
	}
	*into = n
	return true
}

func (e *editing) whole(name string, into *int, least, most int) bool {
	n := least + e.r.IntN(most-least+1)
	if !e.set(name, n) {
		return false
	}
	*into = n
	return true
}

func (e *editing) yes(name string, into func(bool)) bool {
	y := e.r.IntN(2) == 0
	into(y)
	return e.set(name, map[bool]string{true: "Yes", false: "No"}[y])
}

func (e *editing) set(name string, v any) bool { return e.setAt(name, 0, v) }

// setAt types a value; a cell that was edited already gets the later value.
func (e *editing) setAt(name string, row int, v any) bool {
	place, at, err := placeOf(e.book, name)
	if err != nil || row < 0 {
		e.t.Fatalf("seed %d, after %s: no row %d of %q", e.seed, e.said, row, name)
	}
	e.edits = append(e.edits, calc.Edit{Sheet: place, Ref: sheet.Ref(at.R1+row, at.C1), Value: v})
	return true
}

// row finds a value in a named range of one column, from 0.
func (e *editing) row(name string, v any) int {
	_, at, err := placeOf(e.book, name)
	for row := range at.R2 - at.R1 + 1 {
		if err == nil && e.value(name, row) == v {
			return row
		}
	}
	return -1
}

// value is what the book holds in a row of a named range.
func (e *editing) value(name string, row int) any {
	place, at, err := placeOf(e.book, name)
	if err != nil {
		return nil
	}
	s := e.book.Sheets[slices.IndexFunc(e.book.Sheets, func(s *sheet.Sheet) bool { return s.Name == place })]
	if cells := s.Rows[at.R1+row-1].Cells; at.C1 <= len(cells) {
		return cells[at.C1-1].Value
	}
	return nil
}

// named is an id as it stands in a defined name.
func named(id string) string {
	return strings.NewReplacer(":", ".", "-", "_", " ", "_20_").Replace(strings.ToLower(id))
}
