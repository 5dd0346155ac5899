package revise_test

import (
	"strings"
	"testing"

	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// Order lines are added, deleted, copied and typed over.
func TestOrderLines(t *testing.T) {
	playScenes(t, []scene{
		{"every way", "garden", workEveryWay, checkEveryWay},
		{"tent typed over and doubled", "garden", workTentTypedOverAndDoubled, checkTentTypedOverAndDoubled},
		{"tent that another joins", "fairground", workTentThatAnotherJoins, checkTentThatAnotherJoins},
		{"both tents", "fairground", workBothTents, checkBothTents},
		{"steps that rise only together", "garden", workStepsThatRiseOnlyTogether, checkStepsThatRiseOnlyTogether},
	})
}

func workEveryWay(o *office) {
	o.typed("build_id/L:1", "chair-padded")
	o.typed("build_id/S:3", "hip:20x20")
	o.typed("build_quantity/S:3", 1)
	o.typed("build_id/S:1", "table-cocktail")
	o.typed("build_quantity/S:1", 5)
	o.typed("build_hand/S:1", 10)
	spare := o.at("build_id/S:1", 0)
	o.Type(spare.Sheet, spare.R1, 40, "from the barn")
	third := o.at("build_id/L:3", 0)
	o.Type(third.Sheet, third.R1, 40, "beside line 3")
	o.Remark(third.Sheet, third.R1, third.C1, "remark on line 3")
	second := o.at("build_id/L:2", 0)
	keys := o.found.Names["pick_key"]
	for row := keys.R1; row < keys.R2; row++ {
		if key := o.found.Sheet(keys.Sheet).At(row, keys.C1).Text; strings.HasPrefix(key, "table-60@") {
			o.typed("pick_note/"+key, "one leg is loose")
		}
	}
	o.Delete(second.Sheet, second.R1, 1)
}

func checkEveryWay(t *testing.T, s *saved) {
	s.says(t)
	r, next := s.next(t)
	j := r.Quote.Job
	if len(j.Items) != 6 || j.Items[0].Item != "chair-padded" || j.Items[1].Item != "table-banquet-8" || j.Items[5].Item != "table-cocktail" || j.Items[5].Discount.IntPart() != 10 {
		t.Errorf("items %+v", j.Items)
	}
	if len(j.Tents) != 2 || j.Tents[1].Size != "20x20" {
		t.Errorf("tents %+v", j.Tents)
	}
	next.says(t)
	for _, x := range []struct{ key, words string }{{"L:2", "beside line 3"}, {"L:6", "from the barn"}} {
		p := placeIn(t, next.found, "build_id/"+x.key, 0)
		if got := next.cell(p.Sheet, p.R1, 40); got != x.words {
			t.Errorf("beside %s stands %q; %q was expected", x.key, got, x.words)
		}
	}
	p := placeIn(t, next.found, "build_id/L:2", 0)
	notes := next.found.Sheet(p.Sheet).Notes
	if len(notes) != 1 || notes[0].Row != p.R1 || notes[0].Text != "remark on line 3" {
		t.Errorf("remarks %+v", notes)
	}
	// Words on a part that is not picked any more are told, then and later.
	for range 2 {
		if !next.holds("Changes", "one leg is loose") {
			t.Error("words were lost")
		}
		typeInto(t, next.found, typed{"job_guests", 0, num(float64(20 + len(next.book.Quote.Job.Items) + next.book.Quote.Job.Revision))})
		_, next = reopened(t, next).next(t)
	}
}

func workTentTypedOverAndDoubled(o *office) {
	o.typed("tents_id/T:lawn", "hip:20x20")
	p := o.at("tents_id/T:lawn", 0)
	o.Insert(p.Sheet, p.R1+1, 1)
	o.Type(p.Sheet, p.R1+1, p.C1, "hip:10x10")
	many := o.at("tents_quantity/T:lawn", 0)
	o.Type(p.Sheet, p.R1+1, many.C1, 3)
}

func checkTentTypedOverAndDoubled(t *testing.T, s *saved) {
	r, next := s.next(t)
	if tents := r.Quote.Job.Tents; len(tents) != 2 || tents[0].Size != "20x20" || tents[1].Size != "10x10" || tents[1].Count != 3 {
		t.Errorf("tents %+v", tents)
	}
	s.says(t)
	next.says(t)
}

func workTentThatAnotherJoins(o *office) {
	p := o.at("tents_key/T:produce", 0)
	o.Delete(p.Sheet, p.R1, 1)
}

func checkTentThatAnotherJoins(t *testing.T, s *saved) {
	if s.book == nil {
		t.Fatal(s.list)
	}
	_, list := s.book.Revise(nil)
	if len(list) == 0 || !strings.Contains(list[0].String(), `tent "produce" was taken out, but tent`) || list[0].Pos.Sheet != "Price Build-up" {
		t.Errorf("said %v", list)
	}
}

func workBothTents(o *office) {
	o.typed("tents_quantity/T:produce", 0)
	for _, x := range demoQuote(o.t, "fairground").Job.Tents {
		if x.Joins == "produce" {
			o.typed("tents_quantity/T:"+x.ID, 0)
		}
	}
}

func checkBothTents(t *testing.T, s *saved) {
	r, next := s.next(t)
	if r.Quote.Job.Tent("produce") != nil {
		t.Error("the tent is still there")
	}
	next.says(t)
}

func workStepsThatRiseOnlyTogether(o *office) {
	p := o.at("period_day_from", 0)
	for row := 1; row <= p.R2-p.R1; row++ {
		o.Type(p.Sheet, p.R1+row, p.C1, 20+row)
	}
	full := o.found.Names["period_day_from"]
	for row := full.R1 + 1; row <= full.R2; row++ {
		o.Type(full.Sheet, row, full.C1, 100+row)
	}
}

func checkStepsThatRiseOnlyTogether(t *testing.T, s *saved) {
	s.says(t)
	r, _ := s.next(t)
	if n := len(r.Changes); n < 2 || r.Changes[0].Effect != nil || r.Changes[n-1].Effect == nil {
		t.Errorf("changes %+v", r.Changes)
	}
}

// What the office writes beside the quote stays through three revisions, and
// each sheet of changes is of the last step.
func TestWordsStayThroughRevisions(t *testing.T) {
	playScenes(t, []scene{
		{"words", "dinner", workWords, checkWords},
	})
}

func workWords(o *office) {
	o.typed("rate_waiver", 8)
	o.typed("pick_loaded", 3)
	o.typed("pick_note", "left of the door")
	o.typed("return_counted", 2)
	o.typed("sign_customer_name", "M. Weir")
	o.typed("pick_checked_by", "Ash")
	o.typed("driver_v1", "Rowan")
	p := o.at("rate_waiver", 0)
	o.Type(p.Sheet, p.R1, 9, "ask about this")
	o.Type(p.Sheet, p.R1, 10, 46180)
	o.Format(p.Sheet, p.R1, 10, "YYYY-MM-DD")
	o.Remark(p.Sheet, p.R1, p.C1, "since May")
	o.Width(p.Sheet, 1, 9000)
	o.Width(p.Sheet, 9, 5000)
	pick := o.found.Sheet("Pick List")
	o.Type("Pick List", len(pick.Rows)+3, 2, "below the list")
	o.Type("Rates", 4, 2, "in an empty row")
	o.Insert("Rates", 8, 2)
	o.Insert("Pick List", 3, 1)
}

func checkWords(t *testing.T, s *saved) {
	s.says(t)
	for n := 1; n <= 3; n++ {
		r, next := s.next(t)
		if len(r.Changes) != 1 || r.Quote.Job.Revision != demoQuote(t, "dinner").Job.Revision+n {
			t.Errorf("revision %d has %d changes, %v; one was expected", r.Quote.Job.Revision, len(r.Changes), r.Changes)
		}
		next.says(t)
		rates := next.found.Sheet("Rates")
		p := placeIn(t, next.found, "rate_waiver", 0)
		for what, ok := range map[string]bool{"words beside a rate": next.cell("Rates", p.R1, 9) == "ask about this", "day": rates.At(p.R1, 10).Day,
			"remark": next.holds("Rates", "since May"), "empty row": next.cell("Rates", 4, 2) == "in an empty row",
			"below": next.holds("Pick List", "below the list"), "loaded": next.shows(t, "pick_loaded") == "3", "note": next.shows(t, "pick_note") == "left of the door",
			"counted": next.shows(t, "return_counted") == "2", "signed": next.shows(t, "sign_customer_name") == "M. Weir", "by": next.shows(t, "pick_checked_by") == "Ash",
			"driver": next.shows(t, "driver_v1") == "Rowan", "width": rates.Widths[1] > 40 && rates.Widths[9] > 20, "no edits": len(next.book.Edits) == 0,
			"changes": strings.Contains(next.shows(t, "change_place"), "Rates!") && n == 1 || n > 1} {
			if !ok {
				t.Errorf("revision %d: %s is not as it was", n, what)
			}
		}
		// The next step, typed by hand.
		typeInto(t, next.found, typed{"job_guests", 0, num(float64(60 + n))})
		s = reopened(t, next)
	}
}

// Ticks, words and remarks stay with their lines when a list is sorted.
func TestSortedLists(t *testing.T) {
	playScenes(t, []scene{{"sorted", "dinner", workSorted, checkSorted}})
}

// someLine is a line of the pick list that sorting moves.
const someLine = 3

func workSorted(o *office) {
	o.typed("rate_waiver", 8)
	loaded, note := o.at("pick_loaded", someLine), o.at("pick_note", someLine)
	o.Type(loaded.Sheet, loaded.R1, loaded.C1, 2)
	o.Type(note.Sheet, note.R1, note.C1, "by the door")
	o.Type(loaded.Sheet, loaded.R1, 60, "beside")
	o.Remark(loaded.Sheet, loaded.R1, loaded.C1, "counted twice")
	block, item := o.found.Names["pick_key"], o.found.Names["pick_item"]
	o.Sort(block.Sheet, sheet.Range{R1: block.R1, C1: 1, R2: block.R2 - 1, C2: 60}, item.C1)
}

func checkSorted(t *testing.T, s *saved) {
	s.says(t)
	keys := workbook.Layout(s.book.Quote).Found()
	was := placeIn(t, keys, "pick_key", someLine)
	key := keys.Sheet(was.Sheet).At(was.R1, was.C1).Text
	if p := placeIn(t, s.found, "pick_key/"+key, 0); p.R1 == was.R1 {
		t.Error("the list was not sorted")
	}
	_, next := s.next(t)
	next.says(t)
	p := placeIn(t, next.found, "pick_loaded/"+key, 0)
	tab := next.found.Sheet(p.Sheet)
	if next.cell(p.Sheet, p.R1, p.C1) != "2" || next.shows(t, "pick_note/"+key) != "by the door" || next.cell(p.Sheet, p.R1, 60) != "beside" {
		t.Errorf("the line %s holds %+v", key, tab.Rows[p.R1-1])
	}
	if len(tab.Notes) != 1 || tab.Notes[0].Row != p.R1 || tab.Notes[0].Text != "counted twice" {
		t.Errorf("remarks %+v; one in row %d was expected", tab.Notes, p.R1)
	}
}
