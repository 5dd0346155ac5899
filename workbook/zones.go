package workbook

import (
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// deliveryRates are every delivery zone of the shop, what holds at the job's
// distance, and the loadings of the job.
func (l *layout) deliveryRates(s *sheet.Sheet) {
	band(s, "Delivery", l.rateCols())
	l.zoneTable(s)
	named := sheet.Validation{Kind: sheet.List, Source: "zones_id", AllowBlank: true}
	l.settings(s, []setting{{"job_zone", "Zone of this job", "holds at any distance; empty: the first that reaches the site", l.q.Job.Delivery.Zone, sheet.Text, named}})
	l.zoneTerms(s)
	var list []setting
	for i := range l.q.Price.Lines {
		if line := &l.q.Price.Lines[i]; line.Kind == price.Loading {
			list = append(list, setting{"loading_" + ident(line.Key), line.Name, "percent of labour and delivery", float(line.Quantity), sheet.PercentPoint,
				sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "300"}})
		}
	}
	l.settings(s, list)
}

// zoneTable writes the zones in the shop's order, of which the first that
// reaches the site holds. Each row tells whether it does, so that zones need
// not be sorted by distance.
func (l *layout) zoneTable(s *sheet.Sheet) {
	each := l.sys.DistanceUnit()
	heads(s, "Zone", "Id", "Up to, "+each, "Each trip", "Each "+each, "Minimum", "Reaches")
	first := len(s.Rows) + 1
	for i := range l.q.Catalog.Rates.Zones {
		z := &l.q.Catalog.Rates.Zones[i]
		row := len(s.Rows) + 1
		limit, id := sheet.Ref(row, 3), sheet.Ref(row, 2)
		upTo := value(nil)
		if z.UpTo > 0 {
			upTo.Value = l.q.Catalog.Distance(z.UpTo)
		}
		reaches := "IF(IF(LEN(job_zone)>0," + id + "=job_zone,OR(" + limit + "=0,job_distance<=" + limit + ")),\"Yes\",\"No\")"
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(z.Name), body(sheet.Text)), in(text(z.ID), sheet.Style{Role: sheet.Key}),
			in(upTo, input(sheet.Num1)), in(value(z.Flat), input(sheet.Money)), in(value(z.PerMile), input(sheet.Money)), in(value(z.Minimum), input(sheet.Money)),
			in(formula(reaches, yes(l.reaches(i))), calc(sheet.Text))}})
	}
	for i, col := range []string{"name", "id", "upto", "flat", "each", "minimum", "reaches"} {
		l.rangeName("zones_"+col, s, i+1, first)
	}
	limits := amounts()
	limits.AllowBlank = true
	l.allowDown(s, first, 3, limits, "farthest distance one way in "+each+"; empty: no limit")
	l.allowDown(s, first, 4, amounts(), "flat, for each vehicle trip")
	l.allowDown(s, first, 5, amounts(), "for each "+each+" one way, of each vehicle trip")
	l.allowDown(s, first, 6, amounts(), "of the whole delivery, at least")
}

// reaches tells whether a zone may hold: the named one, or one as far as the
// site.
func (l *layout) reaches(zone int) bool {
	z, d := &l.q.Catalog.Rates.Zones[zone], &l.q.Job.Delivery
	if d.Zone != "" {
		return z.ID == d.Zone
	}
	return d.Within(l.q.Catalog, z)
}

// zoneTerms are those of the zone that holds. Beyond every zone there is none,
// and Checks says so.
func (l *layout) zoneTerms(s *sheet.Sheet) {
	z := l.q.Job.Zone(l.q.Catalog)
	lookup := func(col, none string) string {
		return "IFERROR(" + find("zones_"+col, "zones_reaches", quoted(yes(true))) + "," + none + ")"
	}
	for _, x := range []struct {
		name, label, explain, none string
		value                      any
		format                     sheet.Format
	}{
		{"name", "Zone that holds", "the named one, else the first that reaches the site", quoted("no zone"), z.Name, sheet.Text},
		{"flat", "Each vehicle trip", "flat, in this zone", "0", z.Flat, sheet.Money},
		{"each", "Each " + l.sys.DistanceUnit() + " one way", "of each vehicle trip, in this zone", "0", z.PerMile, sheet.Money},
		{"minimum", "Minimum", "of the whole delivery, in this zone", "0", z.Minimum, sheet.Money},
	} {
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(x.label), sheet.Style{Role: sheet.Label}),
			in(text(x.explain), sheet.Style{Role: sheet.Faint}), in(formula(lookup(x.name, x.none), x.value), calc(x.format))}})
		l.cellName("zone_"+x.name, s, 3)
	}
}
