package workbook

import (
	"tentwright/catalog/money"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// spareLines is how many lines the office can add by hand.
const spareLines = 12

// spareRows are lines for the office: an id and a quantity give the rest.
func (l *layout) spareRows(t *table) {
	first := t.next()
	for n := 1; n <= spareLines; n++ {
		l.spareRow(t, n)
	}
	ids := sheet.Range{R1: first, C1: t.col("id"), R2: t.next() - 1, C2: t.col("id")}
	l.name("build_added", t.s, ids, "")
	many := sheet.Range{R1: first, C1: t.col("quantity"), R2: t.next() - 1, C2: t.col("quantity")}
	l.allowPieces(t, many)
	lines := sheet.Range{R1: first, C1: t.left, R2: t.next() - 1, C2: t.left + len(t.cols) - 1}
	t.s.Highlights = append(t.s.Highlights, sheet.Highlight{Range: lines, Formula: "LEN(" + t.at("id", first) + ")=0", Role: sheet.Faint})
	t.s.Validations = append(t.s.Validations, sheet.Validation{Kind: sheet.List, Source: "item_addable", Range: ids, AllowBlank: true,
		Title: "Add a line", Prompt: "An id of the Price List; walls, doors and gutters follow from a tent's sides instead. Its weight is an estimate, and parts, hours and vehicles follow, when the job is quoted again.", Error: "This id is not on the Price List."})
}

// allowPieces limits the quantities of added lines. Which of them come in pieces
// is looked up by what is typed beside them, since an id may be changed later;
// a part of a piece then shows in red.
func (l *layout) allowPieces(t *table, many sheet.Range) {
	quantity := t.at("quantity", many.R1)
	pieces := "COUNTIFS(item_id," + t.at("id", many.R1) + `,item_whole,"Yes")>0`
	number := func(then string) string { return "IF(ISNUMBER(" + quantity + ")," + then + ",FALSE)" }
	broken := "AND(" + pieces + "," + quantity + "<>INT(" + quantity + "))"
	l.allowRange(t.s, many, sheet.Validation{Kind: sheet.Custom, AllowBlank: true,
		Source: number("AND(" + quantity + ">=0," + quantity + "<=1000000,NOT(" + broken + "))")},
		"how many; of what comes in pieces, a whole number")
	t.s.Highlights = append(t.s.Highlights, sheet.Highlight{Range: many, Formula: number(broken), Role: sheet.Warn})
}

// anyBreak is the quantity break of whatever item a line holds.
func (l *layout) anyBreak(n *line) string {
	f := "0"
	class := find("item_break", "item_id", n.at("id"))
	for i := range l.q.Catalog.Rates.Breaks {
		id := l.q.Catalog.Rates.Breaks[i].ID
		f = "IF(" + class + "=" + quoted(id) + "," + breakFormula(id, n.at("quantity")) + "," + f + ")"
	}
	return f
}

// spareRow is empty until an id of the Price List is typed into it. Every formula
// asks for it first: a look-up of nothing, or of a word that was pasted in, would
// be an error in each sum below.
func (l *layout) spareRow(t *table, number int) {
	n := t.line()
	id := n.at("id")
	some := func(f, none string) string {
		return "IF(OR(LEN(" + id + ")=0,COUNTIF(item_id," + id + ")=0)," + none + "," + f + ")"
	}
	n.set("key", text("S:"+itoa(number)))
	n.set("section", text("Added lines"))
	n.set("id", in(text(""), input(sheet.Text)))
	n.set("quantity", in(value(nil), input(sheet.General)))
	n.set("hand", value(0))
	n.set("note", in(text(""), sheet.Style{Role: sheet.InputText}))
	n.set("break", formula(some(l.anyBreak(n), "0"), 0))
	n.set("ordered", formula(some(n.at("quantity")+"+0", "0"), 0))
	for _, col := range []string{"name", "unit", "kind", "tax"} {
		n.set(col, formula(some(find("item_"+col, "item_id", id), `""`), ""))
	}
	for _, col := range []string{"price", "factor", "weight"} {
		n.set(col, formula(some(find("item_"+col, "item_id", id), "0"), 0))
	}
	n.set("cost_each", formula(some(find("item_cost", "item_id", id), "0"), 0))
	for _, off := range []string{"class", "job"} {
		name := map[string]string{"class": "job_class_discount", "job": "job_discount"}[off]
		n.set(off, formula("IF("+n.at("kind")+"="+quoted(price.Hire)+","+name+",0)", 0))
	}
	l.results(n, money.Zero, money.Zero, money.Zero, false)
	n.add()
}
