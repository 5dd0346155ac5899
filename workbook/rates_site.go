package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/quote/labour"
	"tentwright/quote/tent"
	"tentwright/workbook/sheet"
)

// siteRates writes every degree of every site factor, then what holds here.
func (l *layout) siteRates(s *sheet.Sheet) {
	band(s, "Site factors", l.rateCols())
	heads(s, "Factor", "Degree", "Times", "Id", "Stakes", "", "Key")
	first := len(s.Rows) + 1
	for i := range l.q.Catalog.Site {
		f := &l.q.Catalog.Site[i]
		options := len(s.Rows) + 1
		for _, o := range f.Options {
			stakes := sheet.Cell{}
			if f.ID == catalog.Surface {
				stakes = in(text(yes(!o.NoStakes)), body(sheet.Text))
			}
			s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(f.Name), body(sheet.Text)), in(text(o.Name), wrap()),
				in(value(o.Factor), input(sheet.Factor)), in(text(o.ID), body(sheet.Text)), stakes, {}, in(text(f.ID+":"+o.ID), sheet.Style{Role: sheet.Key})}})
		}
		l.rangeName("options_"+ident(f.ID), s, 4, options)
	}
	l.allowDown(s, first, 3, sheet.Validation{Kind: sheet.Decimal, Min: "0.1", Max: "10"}, "how much longer the work takes, times")
	l.rangeName("degree_key", s, 7, first)
	l.rangeName("degree_name", s, 2, first)
	l.rangeName("degree_times", s, 3, first)
	l.rangeName("degree_stakes", s, 5, first)
	heads(s, "At this site", "", "Times", "Degree", "Stakes", "As counted", "Counted for")
	first = len(s.Rows) + 1
	for i := range l.q.Labour.Sites {
		l.siteRow(s, &l.q.Labour.Sites[i])
	}
	l.rangeName("here_stakes", s, 5, first)
	l.rangeName("here_counted", s, 6, first)
}

// siteRow is the degree that holds for the job or for one tent. Anchors were
// counted on the surface that is written at the right: one where stakes can be
// driven instead of one where they cannot wants a new quote, and the other way
// round. All else only slows the work and follows at once.
func (l *layout) siteRow(s *sheet.Sheet, site *labour.Site) {
	f, o := site.Factor, site.Option
	label := f.Name
	if site.Tent != "" {
		label += ", tent " + site.Tent
	}
	name := "site_" + ident(site.Key)
	lookup := func(col string) string { return find(col, "degree_key", quoted(f.ID+":")+"&"+name+"_degree") }
	cells := []sheet.Cell{in(text(label), sheet.Style{Role: sheet.Label}), in(text("choose the degree"), sheet.Style{Role: sheet.Faint}),
		in(formula(lookup("degree_times"), o.Factor), calc(sheet.Factor)), in(text(o.ID), input(sheet.Text))}
	if l.standsOn(site) {
		stakes := yes(!o.NoStakes)
		cells = append(cells, in(formula(lookup("degree_stakes"), stakes), calc(sheet.Text)), in(text(stakes), body(sheet.Text)), in(text(o.ID), sheet.Style{Role: sheet.Key}))
	}
	s.Rows = append(s.Rows, sheet.Row{Cells: cells})
	l.cellName(name+"_degree", s, 4)
	l.cellName(name+"_times", s, 3)
	l.allow(s, len(s.Rows), 4, sheet.Validation{Kind: sheet.List, Source: "options_" + ident(f.ID)}, "the degree of "+strings.ToLower(f.Name)+"; anchors follow when the job is quoted again")
}

// standsOn tells whether some tent's anchors were counted on the surface. That
// of the whole job holds for the tents without one of their own.
func (l *layout) standsOn(site *labour.Site) bool {
	return site.Factor.ID == catalog.Surface && (site.Tent != "" ||
		slices.ContainsFunc(l.q.Parts.Tents, func(t tent.Tent) bool { return t.Job.Ground == "" }))
}
