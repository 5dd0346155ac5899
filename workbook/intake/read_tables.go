package intake

import (
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// table is rows of the form under named columns.
type table struct {
	r           *reader
	sheet       *sheet.FoundSheet
	first, last int
	cols        map[string]int
}

// table finds a table by the names of its columns; nil when one is gone. A
// table that a shop has no rows for is not on its form at all.
func (r *reader) table(name, path string, columns ...string) *table {
	t := &table{r: r, cols: map[string]int{}}
	whole := true
	for i, id := range columns {
		p, ok := r.found.Names["intake_"+name+"_"+id]
		s := r.found.Sheet(p.Sheet)
		if !ok || s == nil {
			r.list.Add(diag.Problem{Pos: diag.Pos{File: r.file}, Path: path, Code: LostName,
				Message: fmt.Sprintf("the column named intake_%s_%s is gone; the form with all its columns was expected", name, id), Advice: freshForm})
			r.bad[path], whole = true, false
			continue
		}
		if i == 0 {
			t.sheet, t.first = s, p.R1
		}
		t.last = max(t.last, p.R2)
		t.cols[id] = p.C1
	}
	if !whole {
		return nil
	}
	return t
}

// has tells whether the form has a table, or a column of it, that those of
// earlier versions do not have.
func (r *reader) has(table string, columns ...string) bool {
	for _, id := range columns {
		if _, there := r.found.Names["intake_"+table+"_"+id]; there {
			return true
		}
	}
	return false
}

// at is an input of a row.
func (t *table) at(row int, id, path, label string) spot {
	if path != "" {
		t.r.labels[path] = label
	}
	return spot{t.sheet, row, t.cols[id], path, label}
}

// word is what a cell of a row shows, without judging it.
func (t *table) word(row int, id string) string { return shown(t.r.at(t.at(row, id, "", ""))) }

// filled is the first column of a row that holds something; "" when none does.
func (t *table) filled(row int, columns ...string) string {
	for _, id := range columns {
		if t.r.at(t.at(row, id, "", "")).Kind != sheet.FoundEmpty {
			return id
		}
	}
	return ""
}

// keyed goes through the rows that have a key in a column, which names what the
// row is for. A row that is filled in without one is a fault.
func (t *table) keyed(key, what string, inputs []string, each func(row int, key string)) {
	seen := map[string]bool{}
	for row := t.first; row <= t.last; row++ {
		id, filled := t.word(row, key), t.filled(row, inputs...)
		s := t.at(row, key, "", "row "+fmt.Sprint(row))
		switch {
		case filled == "":
		case id == "":
			s.col = t.cols[filled]
			t.r.fault(s, NoRow, "fill in one of the rows that the form has", "the row says %q but not which %s it is for; a row of the form was expected", t.word(row, filled), what)
		case seen[id]:
			s.col = t.cols[filled]
			t.r.fault(s, catalog.RepeatedID, "keep one of them", "%s %q has a row filled in already; one row for each was expected", what, id)
		default:
			seen[id] = true
			each(row, id)
		}
	}
}

// site reads the degree of each factor.
func (r *reader) site() {
	t := r.table("site", "site", "id", "degree")
	if t == nil {
		return
	}
	t.keyed("id", "site factor", []string{"degree"}, func(row int, id string) {
		path := fmt.Sprintf("site[%d]", len(r.j.Site))
		f, entries, name := r.c.SiteFactor(id), choices(nil), id
		if f != nil {
			entries, name = degrees(f), f.Name
		}
		r.cells[path], r.labels[path] = r.pos(t.sheet.Name, row, t.cols["degree"]), name
		r.j.Site = append(r.j.Site, job.SiteChoice{Factor: id,
			Option: r.choice(t.at(row, "degree", path+".option", name), entries, "a degree of it")})
	})
}

// loadings reads which surcharges are due.
func (r *reader) loadings() {
	if _, any := r.found.Names["intake_loading_id"]; !any && len(r.c.Rates.Loadings) == 0 {
		return
	}
	t := r.table("loading", "delivery.loadings", "id", "due")
	if t == nil {
		return
	}
	t.keyed("id", "surcharge", []string{"due"}, func(row int, id string) {
		path := fmt.Sprintf("delivery.loadings[%d]", len(r.j.Delivery.Loadings))
		name := id
		if n := slices.IndexFunc(r.c.Rates.Loadings, func(l catalog.Loading) bool { return l.ID == id }); n >= 0 {
			name = r.c.Rates.Loadings[n].Name
		}
		if r.choice(t.at(row, "due", path, name), yesNo(), "Yes or No") == "yes" {
			r.j.Delivery.Loadings = append(r.j.Delivery.Loadings, id)
		}
	})
}

// payments reads what was received, row by row.
func (r *reader) payments() {
	t := r.table("payment", "payments", "date", "amount", "note")
	if t == nil {
		return
	}
	for row := t.first; row <= t.last; row++ {
		if t.filled(row, "date", "amount", "note") == "" {
			continue
		}
		n := len(r.j.Payments)
		path, label := fmt.Sprintf("payments[%d]", n), fmt.Sprintf("payment in row %d", row)
		var p job.Payment
		p.Date = r.needDay(t.at(row, "date", path+".date", label+", day"))
		p.Amount = r.needNumber(t.at(row, "amount", path+".amount", label+", amount"), "500")
		p.Note = r.words(t.at(row, "note", path+".note", label+", note"))
		r.cells[path], r.labels[path] = r.cells[path+".date"], label
		r.j.Payments = append(r.j.Payments, p)
	}
}

// needNumber reads a number that the rest of its row asks for.
func (r *reader) needNumber(s spot, example string) money.Number {
	if r.blank(s) {
		r.fault(s, HalfFilled, "fill it in, or clear the row", "the cell is empty although the row is filled in; a number such as %s was expected", example)
		return money.Zero
	}
	n, _ := r.number(s, example)
	return n
}
