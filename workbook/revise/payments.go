package revise

import (
	"strings"

	"tentwright/catalog/diag"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// payments takes the list of payments as it now stands.
func (d *differ) payments() {
	was, _, _ := d.paid(d.b.was)
	now, first, faults := d.paid(d.b.found)
	d.list.Join(faults)
	if faults.Err() != nil || first.Sheet == "" || paidText(was) == paidText(now) {
		return
	}
	d.b.Edits = append(d.b.Edits, Edit{Pos: at(d.b.File, first), What: "Payments received", Old: paidText(was), New: paidText(now), path: "payments",
		job: func(j *job.Job) { j.Payments = now }})
}

// paid reads the payments that a workbook lists, and where the list begins.
func (d *differ) paid(v *view) ([]job.Payment, sheet.Place, diag.List) {
	var all []job.Payment
	var list diag.List
	amounts, ok := v.f.Names["payments_amount"]
	dates, ok2 := v.f.Names["payments_date"]
	notes, ok3 := v.f.Names["payments_note"]
	if !ok || !ok2 || !ok3 {
		return nil, sheet.Place{}, nil
	}
	for row := amounts.R1; row <= amounts.R2; row++ {
		cell := func(p sheet.Place, k kind) value {
			p.R1, p.R2 = row, row
			got, err := read(v.cell(p), k, d.b.Quote.Catalog.Company.Units)
			if err != nil {
				list.Add(diag.Problem{Pos: at(d.b.File, p), Code: Unreadable, Path: "Payments received", Message: err.Error()})
			}
			return got
		}
		s := v.f.Sheet(amounts.Sheet)
		if shown(s.At(row, amounts.C1))+shown(s.At(row, dates.C1))+shown(s.At(row, notes.C1)) == "" {
			continue
		}
		all = append(all, job.Payment{Amount: cell(amounts, number).number, Date: cell(dates, day).day, Note: cell(notes, word).text})
	}
	return all, amounts, list
}

// paidText is payments in words.
func paidText(all []job.Payment) string {
	var words []string
	for _, p := range all {
		words = append(words, strings.TrimSpace(p.Amount.String()+" on "+p.Date.String()+" "+p.Note))
	}
	return strings.Join(words, "; ")
}
