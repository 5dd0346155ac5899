package revise_test

import (
	"strings"
	"testing"

	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// A workbook that was only opened and saved by another program has no edits.
func TestOnlySaved(t *testing.T) {
	var scenes []scene
	for _, name := range demoJobs {
		scenes = append(scenes, scene{name, name, func(*office) {}, func(t *testing.T, s *saved) {
			s.says(t)
			r, next := s.next(t)
			if len(r.Changes) > 0 || len(s.book.Edits) > 0 || r.Quote != s.book.Quote {
				t.Errorf("changes %v of nothing", r.Changes)
			}
			next.says(t)
		}})
	}
	playScenes(t, scenes)
}

// Cells overwritten with what cannot be read are all told, each with what was
// found and expected.
func TestUnreadableCells(t *testing.T) {
	playScenes(t, []scene{
		{"all at once", "garden", workAllAtOnce, checkAllAtOnce},
		{"percent as a part of one", "garden", workPercentAsAPartOfOne, checkPercentAsAPartOfOne},
		{"percent with its sign", "garden", workPercentWithItsSign, checkPercentWithItsSign},
		{"two days of collection", "garden", workTwoDaysOfCollection, checkTwoDaysOfCollection},
		{"two charges for one part", "fairground", workTwoChargesForOnePart, checkTwoChargesForOnePart},
	})
}

func workAllAtOnce(o *office) {
	quantity := "build_quantity/L:1"
	o.typed("job_days", "two days")
	o.typed("job_distance", "12 ft")
	o.typed("rate_waiver", "7,5")
	o.typed("rate_deposit", "30%")
	o.typed("job_exempt", "perhaps")
	o.typed("job_date_from", "next Friday")
	o.typed("job_date_to", 12)
	o.typed("rate_min_order", nil)
	o.typed(quantity, "a dozen")
	p := o.at("rate_mileage", 0)
	o.Formula(p.Sheet, p.R1, p.C1, "=1/0")
	p = o.at("job_guests", 0)
	o.Type(p.Sheet, p.R1, p.C1, 46180)
	o.Format(p.Sheet, p.R1, p.C1, "YYYY-MM-DD")
	o.typed("build_id/S:1", "chair-foldin")
	o.typed("build_quantity/S:1", 4)
	o.typed("build_quantity/S:2", 4)
	o.typed("tent_size/lawn", "99x99")
	o.typed("rate_wet", 9)
	o.typed("payments_amount", 100)
}

func checkAllAtOnce(t *testing.T, s *saved) {
	if s.book != nil {
		t.Fatal("a workbook with faults was taken")
	}
	s.says(t, `Rates!C5: Charged days: found "two days"; a whole number such as 4 was expected [unreadable-cell]`,
		`Rates!C6: Distance: found "12 ft"; a number of mi such as 12.5`,
		`found "7,5"; a number such as 5 for five percent was expected, with a point and no comma`,
		`found "30%"; a number such as 5 for five percent was expected, without the percent sign`,
		`found "perhaps"; Yes or No was expected`,
		`found "next Friday"; a date such as 2026-07-04 was expected`,
		`found the number 12; a date such as 2026-07-04 was expected`,
		`Minimum order: the cell is empty; a number such as 12.5 was expected`,
		`found "a dozen"; a number such as 12.5 was expected`,
		`the cell shows the error #DIV/0!; a number such as 12.5 was expected`,
		`found the date 2026-06-07; a whole number such as 4 was expected`,
		`found "chair-foldin"; an id of the Price List was expected`,
		`a quantity of 4 has no item beside it`,
		`size of hip "99x99" is not known`, `Wet cloth`, `Payments received: the cell is empty; a date`)
}

func workPercentAsAPartOfOne(o *office) {
	p := o.at("job_discount", 0)
	o.Type(p.Sheet, p.R1, p.C1, 0.03)
}

func checkPercentAsAPartOfOne(t *testing.T, s *saved) {
	s.says(t, "found 0.03; it is taken for 0.03 percent, less than one")
}

// A spreadsheet program keeps 3% as 0.03 in a cell that shows percent.
func workPercentWithItsSign(o *office) {
	workPercentAsAPartOfOne(o)
	p := o.at("job_discount", 0)
	o.Format(p.Sheet, p.R1, p.C1, "0%")
}

func checkPercentWithItsSign(t *testing.T, s *saved) {
	if s.book == nil || len(s.list) > 0 || len(s.book.Edits) != 1 || s.book.Edits[0].New != "3" {
		t.Errorf("3%% was typed; found %v, %v", s.book, s.list)
	}
}

func workTwoDaysOfCollection(o *office) {
	o.typed("job_days_out", 9)
	o.typed("job_date_collect", 46205)
}

func checkTwoDaysOfCollection(t *testing.T, s *saved) {
	s.says(t, "for the same; one value was expected [two-values]")
}

func workTwoChargesForOnePart(o *office) {
	p := o.at("return_each", 0)
	q := o.found
	keys := q.Names["return_part"]
	first := map[string]int{}
	for row := keys.R1; row <= keys.R2; row++ {
		part := q.Sheet(keys.Sheet).At(row, keys.C1).Text
		if other, seen := first[part]; seen && part != "" && q.Sheet(p.Sheet).At(row, p.C1).Number > 0 {
			o.Type(p.Sheet, other, p.C1, 11)
			o.Type(p.Sheet, row, p.C1, 12)
			return
		}
		first[part] = row
	}
	o.t.Fatal("no part stands in two rows")
}

func checkTwoChargesForOnePart(t *testing.T, s *saved) {
	s.says(t, "found 12 here, but 11 in Return Check-in!")
}

// What people did to rows, names and sheets is read or told.
func TestRowsNamesAndSheets(t *testing.T) {
	playScenes(t, []scene{
		{"overwritten formulas", "garden", workOverwrittenFormulas, checkOverwrittenFormulas},
		{"deleted name and row", "garden", workDeletedNameAndRow, checkDeletedNameAndRow},
		{"copied row of the rates", "garden", workCopiedRowOfTheRates, checkCopiedRowOfTheRates},
		{"renamed, deleted and added sheets", "garden", workRenamedDeletedAndAddedSheets, checkRenamedDeletedAndAddedSheets},
		{"a sheet named like one of ours", "garden", workASheetNamedLikeOneOfOurs, checkASheetNamedLikeOneOfOurs},
	})
}

func workOverwrittenFormulas(o *office) {
	o.typed("total_due", 1000)
	o.typed("build_amount/L:1", 5)
	p := o.at("tents_amount/T:lawn", 0)
	o.Type(p.Sheet, p.R1, p.C1+1, 7)
	o.Type("Quote", 1, 1, "Larkmere Tents")
	o.typed("item_markup/chair-folding", 12)
}

func checkOverwrittenFormulas(t *testing.T, s *saved) {
	s.says(t, `found "1000" typed over what the program writes`, `found "5" typed over`, `found "7" typed over`, `found "Larkmere Tents" typed over`,
		`found "12", but nothing follows from this cell; it is not taken over [unused-cell]`)
	if len(s.book.Edits) > 0 {
		t.Error(s.book.Edits)
	}
}

func workDeletedNameAndRow(o *office) {
	o.DropName("job_discount")
	o.DropName("record_text")
	p := o.at("rate_waiver", 0)
	o.Delete(p.Sheet, p.R1, 1)
	p = o.at("item_id/chair-padded", 0)
	o.Delete(p.Sheet, p.R1, 1)
}

func checkDeletedNameAndRow(t *testing.T, s *saved) {
	s.says(t, `the name "job_discount" points nowhere any more`, `the name "rate_waiver" points nowhere any more`, `Folding chair, padded, white: its row was deleted; it is kept as it was`)
}

func workCopiedRowOfTheRates(o *office) {
	p := o.at("item_id/chair-padded", 0)
	o.Insert(p.Sheet, p.R1+1, 1)
	o.Copy(p.Sheet, p.R1, p.R1+1)
	p = o.at("period_day_from", 0)
	o.Insert(p.Sheet, p.R1+1, 1)
	o.Copy(p.Sheet, p.R1, p.R1+1)
}

func checkCopiedRowOfTheRates(t *testing.T, s *saved) {
	s.says(t, `has the key "chair-padded" of row`, `rows stand here; `)
}

func workRenamedDeletedAndAddedSheets(o *office) {
	o.typed("rate_waiver", 8)
	o.Rename("Rates", "Money")
	o.Rename("Truck Manifest", "Lorry")
	o.Remove("Part Counts")
	o.Add("Sums")
	o.Type("Sums", 1, 1, "our own sums")
	o.Formula("Sums", 2, 1, "=$Money.C15*2")
	o.Merge("Sums", sheet.Range{R1: 4, C1: 1, R2: 4, C2: 3})
	o.Width("Sums", 1, 6000)
	o.Remark("Sums", 2, 1, "twice the waiver")
}

func checkRenamedDeletedAndAddedSheets(t *testing.T, s *saved) {
	s.says(t, `the sheet "Part Counts" was deleted`)
	r, next := s.next(t)
	if len(r.Changes) != 1 || !strings.HasPrefix(r.Changes[0].Place, "Money!") {
		t.Errorf("changes %+v", r.Changes)
	}
	next.says(t)
	if next.found.Sheet("Money") == nil || next.found.Sheet("Rates") != nil || next.found.Sheet("Lorry") == nil || next.found.Sheet("Part Counts") == nil {
		t.Error("sheets have lost their names")
	}
	sums := next.found.Sheet("Sums")
	if !next.holds("Sums", "our own sums") || sums.At(2, 1).Formula == "" || len(sums.Merges) != 1 || sums.Widths[1] < 25 || !next.holds("Sums", "twice the waiver") {
		t.Errorf("the added sheet is %+v", sums)
	}
}

func workASheetNamedLikeOneOfOurs(o *office) {
	o.typed("rate_waiver", 8)
	o.Add("Changes")
	o.Type("Changes", 1, 1, "call the club")
}

func checkASheetNamedLikeOneOfOurs(t *testing.T, s *saved) {
	r, _ := s.book.Revise(nil)
	lost, added := s.book.Keep(workbook.LayoutWith(r.Quote, workbook.Options{Changes: r.Changes}))
	if len(lost) != 1 || len(added) > 0 || !strings.Contains(lost[0].What, "with the name of one of this workbook's") {
		t.Errorf("lost %v, added %v", lost, added)
	}
}
