package revise

import (
	"fmt"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/labour"
	"tentwright/workbook"
)

// Codes of problems with the check-in.
const (
	TooManyBack   = "too-many-back" // more than went out
	DamagedBeyond = "damaged-beyond-back"
	NotCounted    = "damaged-not-counted"
	NoCharge      = "no-charge"
)

// Closeout is a job that is over: the quote as it now stands and what is left to
// settle.
type Closeout struct {
	Quote *quote.Quote
	workbook.Closing
}

// Closeout reads what was counted, paid and worked. A line that nobody counted
// is neither missing nor back. The list names the cells with counts that cannot
// be; it is nil where there are such.
func (b *Book) Closeout() (*Closeout, diag.List) {
	q, list := b.stands()
	if q == nil {
		return nil, list
	}
	c := &Closeout{Quote: q}
	rows, problems := b.picks()
	list.Join(problems)
	for _, line := range workbook.CheckIn(b.Quote) {
		b.checkIn(c, line, rows, &list)
	}
	b.worked(c, &list)
	if list.Err() != nil {
		return nil, list.Sorted()
	}
	return c, list.Sorted()
}

// wentOut is what went out on a line of the check-in: a tagged piece by itself,
// else all of the part, whatever it rode in.
func wentOut(line *workbook.CheckInLine, rows []picked) int {
	out := 0
	for i := range rows {
		if p := &rows[i]; line.Part.Tracked && p.key == line.Key || !line.Part.Tracked && p.part == line.Part.ID {
			out += p.out(false)
		}
	}
	return out
}

// checkIn reads a line of the check-in. One of which nothing went out, and
// nothing came back, is left out.
func (b *Book) checkIn(c *Closeout, line workbook.CheckInLine, rows []picked, list *diag.List) {
	x := workbook.ClosingLine{Key: line.Key, Part: line.Part, Name: line.Name, Out: wentOut(&line, rows)}
	cell := func(table, column string) address { return address{table: table, column: column, key: line.Key} }
	counted, backPos := b.typed(cell("return", "counted"), list)
	x.Back, x.Counted = b.count(counted, backPos, line.Name+", came back", list)
	damaged, damagedPos := b.typed(cell("return", "damaged"), list)
	x.Damaged, _ = b.count(damaged, damagedPos, line.Name+", damaged", list)
	if wet, pos := b.typed(cell("return", "wet"), list); shown(wet) != "" {
		v, err := read(wet, truth, "")
		if err != nil {
			list.Add(diag.Problem{Pos: pos, Code: Unreadable, Path: line.Name + ", wet", Message: err.Error()})
		}
		x.Wet = v.yes
	}
	note, _ := b.typed(cell("return", "note"), list)
	x.Note = shown(note)
	if line.Part.Tracked {
		tag, _ := b.typed(cell("pick", "tag"), list)
		x.Tag = shown(tag)
	}
	b.each(&x, list)
	b.fits(&x, backPos, damagedPos, list)
	if x.Out > 0 || x.Counted && x.Back > 0 {
		c.Lines = append(c.Lines, x)
	}
}

// each reads the charge for one; what has none costs nothing, and that is told
// where it would be charged.
func (b *Book) each(x *workbook.ClosingLine, list *diag.List) {
	c, pos := b.typed(address{table: "return", column: "each", key: x.Key}, list)
	if pos.Cell == "" {
		// Its row is gone: the charge holds as it was written.
		if x.Part.Replacement != nil {
			x.Each = *x.Part.Replacement
		}
		return
	}
	if shown(c) != "" {
		v, err := read(c, number, "")
		switch {
		case err != nil:
			list.Add(diag.Problem{Pos: pos, Code: Unreadable, Path: x.Name + ", charge for one", Message: err.Error()})
		case v.number.IsNegative():
			list.Add(diag.Problem{Pos: pos, Code: Unreadable, Path: x.Name + ", charge for one", Message: fmt.Sprintf("found %s; an amount not below zero was expected", v.text)})
		}
		x.Each = v.number
	}
	if x.Each.IsZero() && x.Missing()+x.Damaged > 0 {
		list.Add(diag.Problem{Pos: pos, Code: NoCharge, Warning: true, Path: x.Name, Message: "pieces are missing or damaged, and the charge for one is nothing"})
	}
}

// fits holds the counts of a line against each other.
func (b *Book) fits(x *workbook.ClosingLine, back, damaged diag.Pos, list *diag.List) {
	switch {
	case x.Damaged > 0 && !x.Counted:
		list.Add(diag.Problem{Pos: damaged, Code: NotCounted, Path: x.Name, Related: related(back),
			Message: fmt.Sprintf("found %d damaged, but not how many came back; a count was expected beside it", x.Damaged)})
	case x.Damaged > x.Back:
		list.Add(diag.Problem{Pos: damaged, Code: DamagedBeyond, Path: x.Name, Related: related(back),
			Message: fmt.Sprintf("found %d damaged of %d that came back; at most as many were expected", x.Damaged, x.Back)})
	case x.Counted && x.Back > x.Out:
		list.Add(diag.Problem{Pos: back, Code: TooManyBack, Warning: true, Path: x.Name,
			Message: fmt.Sprintf("found %d that came back, but %d went out", x.Back, x.Out), Advice: "count again, or mend the count loaded on the Pick List"})
	}
}

// related is a place beside a problem, if it is known.
func related(p diag.Pos) []diag.Pos {
	if p.Cell == "" {
		return nil
	}
	return []diag.Pos{p}
}

// worked reads what the tasks took. Tasks of the same rule and window, of
// several tents, stand together; only those of which the hours are known are
// held against the plan.
func (b *Book) worked(c *Closeout, list *diag.List) {
	planned := map[string]*labour.Task{}
	for i := range c.Quote.Labour.Tasks {
		planned[c.Quote.Labour.Tasks[i].Key] = &c.Quote.Labour.Tasks[i]
	}
	for i := range c.Quote.Labour.Tasks {
		b.task(c, &c.Quote.Labour.Tasks[i], c.Quote.Labour.Tasks[i].Hours, list)
	}
	for i := range b.Quote.Labour.Tasks {
		if t := &b.Quote.Labour.Tasks[i]; planned[t.Key] == nil {
			b.task(c, t, money.Zero, list) // no longer planned, but perhaps worked
		}
	}
}

// task adds one task to those of its rule and window.
func (b *Book) task(c *Closeout, t *labour.Task, planned money.Number, list *diag.List) {
	actual, known, _ := b.hoursOf(t, list)
	if planned.IsZero() && !known {
		return
	}
	x := c.taskOf(t)
	x.Tasks++
	x.Planned = x.Planned.Add(planned)
	if known {
		x.Noted++
		x.PlannedNoted, x.Actual = x.PlannedNoted.Add(planned), x.Actual.Add(actual)
	}
}

// taskOf is the line of a task's rule and window.
func (c *Closeout) taskOf(t *labour.Task) *workbook.ClosingTask {
	for i := range c.Tasks {
		if x := &c.Tasks[i]; x.Rule == t.Rule.ID && x.WindowID == t.Window {
			return x
		}
	}
	x := workbook.ClosingTask{Rule: t.Rule.ID, Name: t.Rule.Name, WindowID: t.Window, Window: t.Window, SkillID: t.Rule.Skill, Skill: t.Rule.Skill}
	for i := range c.Quote.Labour.Windows {
		if w := c.Quote.Labour.Windows[i].Spec; w.ID == t.Window {
			x.Window = w.Name
		}
	}
	for i := range c.Quote.Catalog.Rates.Skills {
		if k := &c.Quote.Catalog.Rates.Skills[i]; k.ID == t.Rule.Skill {
			x.Skill = k.Name
		}
	}
	c.Tasks = append(c.Tasks, x)
	return &c.Tasks[len(c.Tasks)-1]
}
