package revise

import (
	"fmt"
	"slices"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/labour"
	"tentwright/quote/learn"
	"tentwright/workbook/sheet"
)

// HoursTwice is the code of two workbooks of one job with different hours.
const HoursTwice = "hours-twice"

// Actuals is what the tasks of a job took, as far as anyone noted it.
type Actuals struct {
	File     string
	Number   string // of the quote
	Revision int
	Units    unit.System
	Tasks    []learn.Task
}

// Actuals reads the hours that were typed beside the tasks. Amounts and site
// factors are those of the job as it now stands, with what the office changed in
// the workbook. The list names the cells with hours that cannot be; the result is
// nil where there are such.
func (b *Book) Actuals() (*Actuals, diag.List) {
	q, list := b.stands()
	if q == nil {
		return nil, list
	}
	a := &Actuals{File: b.File, Number: q.Job.Number, Revision: q.Job.Revision, Units: q.Catalog.Company.Units}
	for i := range q.Labour.Tasks {
		t := &q.Labour.Tasks[i]
		hours, known, pos := b.hoursOf(t, &list)
		if known {
			a.Tasks = append(a.Tasks, learn.Task{Job: a.Number, Rule: t.Rule.ID, Driver: t.Rule.Driver, Amount: t.Amount, Factor: t.Factor, Plan: t.Hours, Hours: hours, Pos: pos})
		}
	}
	if list.Err() != nil {
		return nil, list.Sorted()
	}
	return a, list.Sorted()
}

// mostHours is the most person-hours of one task that its cell takes.
const mostHours = 10000

// hoursOf reads the person-hours that a task took, to two places; false where
// nobody noted any.
func (b *Book) hoursOf(t *labour.Task, list *diag.List) (hours money.Number, known bool, pos diag.Pos) {
	cell, pos := b.typed(address{table: "task", column: "actual", key: t.Key}, list)
	if shown(cell) == "" && (cell.Kind != sheet.FoundEmpty || cell.Formula == "") {
		return money.Zero, false, pos
	}
	v, err := read(cell, number, "")
	switch what := t.Rule.Name + ", actual hours"; {
	case err != nil:
		list.Add(diag.Problem{Pos: pos, Code: Unreadable, Path: what, Message: err.Error()})
	case v.number.IsNegative():
		list.Add(diag.Problem{Pos: pos, Code: Unreadable, Path: what, Message: fmt.Sprintf("found %s; hours not below zero were expected", v.text)})
	case v.number.GreaterThan(money.Int(mostHours)):
		list.Add(diag.Problem{Pos: pos, Code: Unreadable, Path: what, Message: fmt.Sprintf("found %s; at most %d hours were expected", v.text, mostHours)})
	}
	return money.Round(v.number, 2), true, pos
}

// LeftOut is a workbook that tells nothing, and why.
type LeftOut struct{ File, Why string }

// Latest takes the hours of each job once, from the latest revision that has
// any: a revision carries the hours of those before it. The list has the
// workbooks that stand against each other.
func Latest(all []*Actuals) ([]learn.Task, []LeftOut, diag.List) {
	last := map[string]*Actuals{}
	for _, a := range all {
		if have := last[a.Number]; len(a.Tasks) > 0 && (have == nil || a.Revision > have.Revision) {
			last[a.Number] = a
		}
	}
	var tasks []learn.Task
	var left []LeftOut
	var list diag.List
	for _, a := range all {
		switch x := last[a.Number]; {
		case a == x:
			tasks = append(tasks, a.Tasks...)
		case len(a.Tasks) == 0:
			left = append(left, LeftOut{a.File, "it has no actual hours"})
		case a.Revision < x.Revision:
			left = append(left, LeftOut{a.File, fmt.Sprintf("the hours of revision %d of quote %s count, %s", x.Revision, x.Number, x.File)})
		case a.same(x):
			left = append(left, LeftOut{a.File, "it has the same hours as " + x.File})
		default:
			list.Add(diag.Problem{Pos: diag.Pos{File: a.File}, Code: HoursTwice, Related: []diag.Pos{{File: x.File}},
				Message: fmt.Sprintf("this is quote %s, revision %d, and so is %s, with other hours; one workbook of a job was expected", a.Number, a.Revision, x.File),
				Advice:  "leave one of the two out"})
		}
	}
	return tasks, left, list
}

// same tells whether two workbooks have the same hours of the same work.
func (a *Actuals) same(x *Actuals) bool {
	return slices.EqualFunc(a.Tasks, x.Tasks, func(s, t learn.Task) bool {
		return s.Rule == t.Rule && s.Amount.Equal(t.Amount) && s.Factor.Equal(t.Factor) && s.Hours.Equal(t.Hours)
	})
}
