package revise

import (
	"tentwright/catalog/source"
	"tentwright/workbook"
)

// spread is how far minutes spread: by the shop's percentages, and by the minutes
// of its rules, which an empty cell leaves to the percentages.
func (l *inputList) spread() {
	if l.c.Crew == nil {
		return
	}
	own := func(name string, where source.Where, field string) {
		l.ofShop(named(name), number, where, field)
		l.all[len(l.all)-1].none = true
	}
	l.ofShop(named("spread_optimistic"), percent, l.c.Crew.Spread.Where, "optimistic")
	l.ofShop(named("spread_pessimistic"), percent, l.c.Crew.Spread.Where, "pessimistic")
	for i := range l.c.Labour {
		r := &l.c.Labour[i]
		id := workbook.Ident(r.ID)
		own("optimistic_"+id, r.Where, "optimistic")
		own("pessimistic_"+id, r.Where, "pessimistic")
	}
}
