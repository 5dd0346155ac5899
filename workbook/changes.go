package workbook

import (
	"tentwright/catalog/money"
	"tentwright/workbook/sheet"
)

// Change is one thing that the office changed in the workbook before this
// revision, and what it did to the quote.
type Change struct {
	Place  string // sheet!cell in the workbook that came back
	What   string
	Old    string
	New    string
	Effect *Effect // nil where the change has none of its own
	Note   string
}

// Effect is how much dearer, longer and heavier a job became; less where
// negative. Weight is in the shop's unit.
type Effect struct {
	Price  money.Number
	Hours  money.Number
	Weight money.Number
}

// changes lays out what this revision changed, line by line; the effects add
// up to the difference between the two revisions.
func (l *layout) changes(list []Change) {
	s := l.sheet(SheetChanges, "What was changed before this revision. Effects add up to the difference from the one before.", sheet.TabOffice, true)
	t := l.startTable(s, "change", []column{
		{"place", "Where it stood", 24, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"what", "What", 40, wrap()},
		{"old", "Old", 22, sheet.Style{Role: sheet.Body, Wrap: true, Align: sheet.Right}},
		{"new", "New", 22, sheet.Style{Role: sheet.Body, Wrap: true, Align: sheet.Right}},
		{"price", "Price", 13, body(sheet.Money)},
		{"hours", "Hours", 10, body(sheet.Hours)},
		{"weight", "Weight, " + l.sys.MassUnit(), 12, body(sheet.Num2)},
		{"note", "Note", 36, wrap()},
	})
	for i := range list {
		c := &list[i]
		n := t.line()
		for col, words := range map[string]string{"place": c.Place, "what": c.What, "note": c.Note} {
			n.set(col, text(words))
		}
		n.set("old", asTyped(c.Old))
		n.set("new", asTyped(c.New))
		if c.Effect != nil {
			n.set("price", value(c.Effect.Price))
			n.set("hours", value(c.Effect.Hours))
			n.set("weight", value(c.Effect.Weight))
		}
		n.add()
	}
	t.end()
	t.widths()
	l.changeSums(t, list)
	s.FreezeRows, s.TitleRows = t.first-1, [2]int{t.first - 1, t.first - 1}
}

// asTyped is a figure as a number and anything else as the text that it is.
func asTyped(words string) sheet.Cell {
	if n, err := money.Parse(words); err == nil {
		return value(n)
	}
	return text(words)
}

// changeSums adds the effects up under the list.
func (l *layout) changeSums(t *table, list []Change) {
	var sum Effect
	for i := range list {
		if e := list[i].Effect; e != nil {
			sum.Price, sum.Hours, sum.Weight = sum.Price.Add(e.Price), sum.Hours.Add(e.Hours), sum.Weight.Add(e.Weight)
		}
	}
	cells := make([]sheet.Cell, len(t.cols))
	cells[t.col("what")-1] = in(text("All changes"), sheet.Style{Role: sheet.Label, Bold: true})
	total := func(id string, v money.Number, f sheet.Format) {
		cells[t.col(id)-1] = in(formula("ROUND(SUM(change_"+id+"),2)", v), sheet.Style{Role: sheet.Total, Format: f})
	}
	total("hours", sum.Hours, sheet.Hours)
	total("weight", sum.Weight, sheet.Num2)
	cells[t.col("price")-1] = in(formula(l.rounded("SUM(change_price)"), sum.Price), sheet.Style{Role: sheet.Total, Format: sheet.Money})
	t.s.Rows = append(t.s.Rows, sheet.Row{Cells: cells})
}
