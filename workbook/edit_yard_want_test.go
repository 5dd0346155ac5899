package workbook_test

import (
	"fmt"
	"math"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/load"
	"tentwright/workbook/sheet"
)

// yardFigures is what the yard's lists must say after the edits; totals are
// the figures that the program computes from the edited job.
func (y *yard) yardFigures(totals map[string]float64) (numbers map[string]float64, words map[string]string) {
	numbers, words = map[string]float64{}, map[string]string{}
	picks := map[string]int{}
	for key, n := range totals {
		if part, found := strings.CutPrefix(key, "pick "); found {
			picks[part] = int(n)
		}
	}
	lines := pickLines(&y.q.Load.Out, picks)
	for i := range lines {
		line := &lines[i]
		n, typed := y.loaded[line.key]
		if line.out = line.picks; typed {
			line.out = n
		}
		numbers["row "+line.key], numbers["out "+line.key] = float64(line.picks), float64(line.out)
		words["pick "+line.key] = loadState(line, typed)
	}
	for _, line := range returnLines(lines) {
		y.backFigures(&line, numbers, words)
	}
	y.tripFigures(lines, numbers, words)
	for i := range y.q.Parts.Tents {
		words["tent "+y.q.Parts.Tents[i].Job.ID] = y.tentState(y.q.Parts.Tents[i].Job.ID)
	}
	return numbers, words
}

// loadState is the word on a row of the pick list.
func loadState(line *pickLine, typed bool) string {
	switch {
	case !typed && line.picks == 0:
		return "not ordered"
	case line.out < line.picks:
		return fmt.Sprintf("short %d", line.picks-line.out)
	case line.out > line.picks:
		return fmt.Sprintf("over %d", line.out-line.picks)
	case line.share.Part.Tracked && line.out > 1:
		return fmt.Sprintf("needs %d tags", line.out)
	}
	return ""
}

// backFigures is what a row of the check-in must say.
func (y *yard) backFigures(line *pickLine, numbers map[string]float64, words map[string]string) {
	b := y.backs[line.key]
	missing := 0
	state := noneOut(line.out)
	if b.counted >= 0 {
		missing = max(0, line.out-b.counted)
		switch {
		case b.damaged > b.counted:
			state = "more damaged than back"
		case missing > 0:
			state = fmt.Sprintf("missing %d", missing)
		case b.counted > line.out:
			state = fmt.Sprintf("too many, %d", b.counted-line.out)
		case b.damaged > 0:
			state = "to mending"
		case b.wet:
			state = "dry first"
		default:
			state = "complete"
		}
	}
	if b.counted < 0 && (b.damaged > 0 || b.wet) {
		state = "count first"
	}
	charge := money.Round(b.each.Mul(money.Int(missing+min(b.damaged, max(0, b.counted)))), 2).InexactFloat64()
	numbers["went "+line.key], numbers["missing "+line.key], numbers["charge "+line.key] = float64(line.out), float64(missing), charge
	numbers["total_replacement"] += charge
	words["back "+line.key] = state
	if line.share.Part.Tracked {
		words["tag "+line.key] = y.tags[line.key]
	}
}

// tripFigures is what trips may carry with other riders, and what they carry of
// what was loaded, out and home.
func (y *yard) tripFigures(lines []pickLine, numbers map[string]float64, words map[string]string) {
	sys := y.q.Catalog.Company.Units
	mass, room := map[string]float64{}, map[string]float64{}
	for _, line := range lines {
		p, n := line.share.Part, line.out
		packs := float64((n + max(1, p.Pack.Holds) - 1) / max(1, p.Pack.Holds))
		mass[line.trip] += float64(n)*line.share.Each.In(sys) + packs*load.Tare(p).In(sys)
		room[line.trip] += packs * p.Pack.Size.Volume().In(sys)
	}
	y.homeFigures(lines, mass, room)
	for _, m := range []*load.Manifest{&y.q.Load.Out, &y.q.Load.Back} {
		for i := range m.Trips {
			trip := &m.Trips[i]
			v, payload := trip.Vehicle, trip.Payload.In(sys)
			if trip.Tow == "" {
				// The plate, or what a combination's rating leaves of it.
				own := min((v.Rating - v.Empty - v.Fuel - v.Reserve).In(sys), payload+float64(trip.Riders)*y.q.Catalog.Fleet.Rider.In(sys))
				payload = own - float64(y.riders[trip.Key])*y.rider
			}
			numbers["payload "+trip.Key] = payload
			carries, fills := math.Round(mass[trip.Key]*100)/100, math.Round(room[trip.Key]*10)/10
			numbers["load "+trip.Key], numbers["volume "+trip.Key] = carries, fills
			words["trip "+trip.Key] = "OK"
			if carries > payload+1e-6 || fills > math.Round(trip.Room.In(sys)*10)/10 {
				words["trip "+trip.Key] = "OVER"
			}
		}
	}
}

// homeFigures adds what trips home carry: what went out and is not used up, some
// of it wet. Each trip takes its share, and a part's last what the others leave.
func (y *yard) homeFigures(lines []pickLine, mass, room map[string]float64) {
	sys, left, rows := y.q.Catalog.Company.Units, map[*catalog.Part]int{}, map[*catalog.Part]int{}
	for i := range lines {
		left[lines[i].share.Part] += lines[i].out
	}
	m := &y.q.Load.Back
	for i := range m.Shares {
		rows[m.Shares[i].Part]++
	}
	for i := range m.Shares {
		h := &m.Shares[i]
		p, n := h.Part, h.Quantity
		if rows[p]--; p.Consumable || h.Trip < 0 {
			continue
		}
		if n = min(n, left[p]); rows[p] == 0 {
			n = left[p]
		}
		left[p] -= n
		each := money.Float(y.q.Parts.Find(p.ID).Each.In(sys))
		if p.Wets {
			each = money.Round(each.Mul(y.now.Catalog.Rates.WetFactor), 2)
		}
		packs := float64((n + max(1, p.Pack.Holds) - 1) / max(1, p.Pack.Holds))
		mass[m.Trips[h.Trip].Key] += float64(n)*each.InexactFloat64() + packs*load.Tare(p).In(sys)
		room[m.Trips[h.Trip].Key] += packs * p.Pack.Size.Volume().In(sys)
	}
}

// tentState compares what is asked for of a tent now with what it was.
func (y *yard) tentState(id string) string {
	row := y.row("tent_id", id)
	for column, now := range y.tents[id] {
		if y.value("tent_"+column, row) != now {
			return "requote"
		}
	}
	return "counted"
}

// filledFigures reads the same from a workbook.
func filledFigures(f figures) (numbers map[string]float64, words map[string]found) {
	numbers, words = map[string]float64{"total_replacement": f.at("total_replacement")}, map[string]found{}
	for _, x := range []struct{ what, keys, values string }{
		{"row", "pick_key", "pick_quantity"}, {"out", "pick_key", "pick_out"}, {"went", "return_key", "return_out"}, {"missing", "return_key", "return_missing"},
		{"charge", "return_key", "return_charge"}, {"payload", "trip_key", "trip_payload"}, {"payload", "back_key", "back_payload"},
		{"load", "trip_key", "trip_load"}, {"volume", "trip_key", "trip_volume"}, {"load", "back_key", "back_load"}, {"volume", "back_key", "back_volume"},
	} {
		for key, n := range f.column(x.keys, x.values) {
			numbers[x.what+" "+key] = n
		}
	}
	for _, x := range []struct{ what, keys, values string }{{"pick", "pick_key", "pick_state"}, {"back", "return_key", "return_state"},
		{"tag", "return_key", "return_tag"}, {"trip", "trip_key", "trip_state"}, {"trip", "back_key", "back_state"}, {"tent", "tent_id", "tent_state"}} {
		for key, word := range f.words(x.keys, x.values) {
			words[x.what+" "+key] = word
		}
	}
	return numbers, words
}

// words pairs the texts of one named range with the cells beside them in
// another.
func (f figures) words(keys, values string) map[string]found {
	place, k, err := placeOf(f.book, keys)
	_, v, err2 := placeOf(f.book, values)
	if err != nil || err2 != nil {
		return nil // a job without tents
	}
	list := map[string]found{}
	for row := k.R1; row <= k.R2; row++ {
		if key := f.cells[place][sheet.Ref(row, k.C1)].Text; key != "" {
			ref := sheet.Ref(row, v.C1)
			list[key] = found{place + "!" + ref, f.cells[place][ref]}
		}
	}
	return list
}
