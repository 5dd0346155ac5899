package workbook_test

import (
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/load"
	"tentwright/workbook/internal/calc"
)

// yard is a workbook edited by the office, and then filled in by those who
// load and count.
type yard struct {
	*editing
	riders map[string]int // by trip
	rider  float64        // weight of one person, in the shop's unit
	loaded map[string]int // by row of the pick list
	backs  map[string]*back
	tents  map[string]map[string]string // by tent and column
	tags   map[string]string
}

// back is what is typed into a row of the check-in; counted is below zero
// where nothing is.
type back struct {
	counted, damaged int
	wet              bool
	each             money.Number
}

// pickLine is one row of the pick list, reckoned anew.
type pickLine struct {
	key   string
	share *load.Share
	trip  string
	picks int
	out   int
}

// newYard draws what is typed. The edits of the office come first, so that
// loads are typed against other picks than the workbook was made with.
func newYard(t *testing.T, seed uint64) *yard {
	t.Helper()
	y := &yard{editing: newEditing(t, seed), riders: map[string]int{}, loaded: map[string]int{}, backs: map[string]*back{},
		tents: map[string]map[string]string{}, tags: map[string]string{}}
	y.draw()
	y.drawRiders()
	y.drawLoads()
	y.drawBacks()
	y.drawTents()
	return y
}

func (y *yard) drawRiders() {
	y.rider = y.q.Catalog.Fleet.Rider.In(y.q.Catalog.Company.Units)
	if y.r.IntN(2) == 0 {
		y.rider = y.decimal(50, 400, 1).InexactFloat64()
		y.set("rate_rider", y.rider)
	}
	for _, m := range []*load.Manifest{&y.q.Load.Out, &y.q.Load.Back} {
		for i := range m.Trips {
			trip := &m.Trips[i]
			y.riders[trip.Key] = trip.Riders
			if trip.Tow == "" && y.r.IntN(2) == 0 {
				y.riders[trip.Key] = y.r.IntN(21)
				y.set("riders_"+named(trip.Key), y.riders[trip.Key])
			}
		}
	}
}

// drawLoads types counts of some rows, near the pick as it was or far from it,
// and the tags of some pieces.
func (y *yard) drawLoads() {
	for _, line := range pickLines(&y.q.Load.Out, nil) {
		row := y.row("pick_key", line.key)
		if y.r.IntN(3) == 0 {
			y.loaded[line.key] = max(0, line.picks+y.r.IntN(9)-4)
			y.setAt("pick_loaded", row, y.loaded[line.key])
		}
		if line.share.Part.Tracked && y.r.IntN(2) == 0 {
			y.tags[line.key] = "tag " + strconv.Itoa(y.r.IntN(1000))
			y.setAt("pick_tag", row, y.tags[line.key])
		}
	}
}

// drawBacks counts some rows of the check-in.
func (y *yard) drawBacks() {
	for _, line := range returnLines(pickLines(&y.q.Load.Out, nil)) {
		row := y.row("return_key", line.key)
		b := &back{counted: -1}
		if p := line.share.Part; p.Replacement != nil {
			b.each = *p.Replacement
		}
		y.backs[line.key] = b
		if y.r.IntN(2) == 0 {
			y.uncounted(row, b)
			continue
		}
		b.counted = max(0, line.picks+y.r.IntN(7)-4)
		y.setAt("return_counted", row, b.counted)
		if b.damaged = y.r.IntN(b.counted + 3); y.r.IntN(3) > 0 {
			b.damaged = 0
		}
		if b.wet = y.r.IntN(2) == 0; b.wet {
			y.setAt("return_wet", row, "Yes")
		}
		if b.damaged > 0 {
			y.setAt("return_damaged", row, b.damaged)
		}
		if y.r.IntN(4) == 0 {
			y.cell("return_each", row, &b.each, 0, 400, 2)
		}
	}
}

// uncounted types of some rows what is damaged or wet, but not how many came
// back.
func (y *yard) uncounted(row int, b *back) {
	switch y.r.IntN(6) {
	case 0:
		b.damaged = 1 + y.r.IntN(5)
		y.setAt("return_damaged", row, b.damaged)
	case 1:
		b.wet = true
		y.setAt("return_wet", row, "Yes")
	}
}

// drawTents asks for some tents otherwise, or for the same again.
func (y *yard) drawTents() {
	for i := range y.q.Parts.Tents {
		tent := &y.q.Parts.Tents[i]
		row := y.row("tent_id", tent.Job.ID)
		y.tents[tent.Job.ID] = map[string]string{}
		choices := map[string][]string{"size": nil, "leg": nil, "front": {"open", tent.Family.Walls[0].Kind}, "left": {"open"}}
		for k := range tent.Family.Sizes {
			choices["size"] = append(choices["size"], tent.Family.Sizes[k].ID)
		}
		for _, leg := range tent.Family.Legs {
			choices["leg"] = append(choices["leg"], leg.In(y.q.Catalog.Company.Units))
		}
		for _, column := range slices.Sorted(maps.Keys(choices)) {
			if y.r.IntN(3) == 0 {
				choice := *some(y.editing, choices[column])
				y.tents[tent.Job.ID][column] = choice
				y.setAt("tent_"+column, row, choice)
			}
		}
	}
}

// pickLines cuts the shares of the way out into the rows of the pick list: a
// row for each tagged piece, and the last row of a part takes what the others
// leave. Totals are by part; without them each row takes its share.
func pickLines(m *load.Manifest, totals map[string]int) []pickLine {
	var list []pickLine
	rows := map[*catalog.Part][]int{}
	for i := range m.Shares {
		h := &m.Shares[i]
		many, each, trip := 1, h.Quantity, ""
		if h.Trip >= 0 {
			trip = m.Trips[h.Trip].Key
		}
		if h.Part.Tracked {
			many, each = max(1, h.Quantity), min(1, h.Quantity)
		}
		for range many {
			rows[h.Part] = append(rows[h.Part], len(list))
			key := h.Part.ID + "@" + trip
			if h.Part.Tracked {
				key += "#" + strconv.Itoa(len(rows[h.Part]))
			}
			list = append(list, pickLine{key: key, share: h, trip: trip, picks: each})
		}
	}
	for part, at := range rows {
		left := totals[part.ID]
		for n, i := range at {
			if totals != nil && n == len(at)-1 {
				list[i].picks = left
			} else if totals != nil {
				list[i].picks = min(list[i].picks, left)
			}
			left -= list[i].picks
		}
	}
	return list
}

// returnLines are the rows that are counted back: what is not used up, one for
// each part or tagged piece, with what went out of it.
func returnLines(picks []pickLine) []pickLine {
	var list []pickLine
	at := map[*catalog.Part]int{}
	for _, line := range picks {
		part := line.share.Part
		first, seen := at[part]
		switch {
		case part.Consumable:
		case seen && !part.Tracked:
			list[first].picks += line.picks
			list[first].out += line.out
		default:
			at[part] = len(list)
			list = append(list, line)
		}
	}
	return list
}

// What the yard types gives what the program reckons from the same counts,
// whatever the office has changed before.
func TestEditedYardGivesTheSameFigures(t *testing.T) {
	calc.Need(t)
	first, many := firstSeed(t)+1000, 30
	if testing.Short() {
		many = 8
	}
	t.Logf("random jobs and counts by the seeds %d to %d", first, first+uint64(many)-1)
	for at := 0; at < many; at += batchSize {
		t.Run(strconv.Itoa(at), func(t *testing.T) {
			t.Parallel()
			checkYards(t, first+uint64(at), min(batchSize, many-at))
		})
	}
}

func checkYards(t *testing.T, first uint64, many int) {
	dir, out := t.TempDir(), t.TempDir()
	var all []*yard
	var files []string
	for seed := first; seed < first+uint64(many); seed++ {
		y := newYard(t, seed)
		name := fmt.Sprintf("seed-%d", seed)
		file := filepath.Join(dir, name+"-edited.xlsx")
		if err := calc.EditCells(writeBook(t, dir, name, y.book), file, y.edits); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		all, files = append(all, y), append(files, file)
	}
	if err := calc.Recalculate(t.Context(), files, out); err != nil {
		t.Fatal(err)
	}
	compared, states := 0, map[string]int{}
	for i, y := range all {
		f := readFigures(t, filepath.Join(out, filepath.Base(files[i])))
		context := fmt.Sprintf("seed %d, after %s; and the yard's counts", y.seed, strings.Join(y.said, "; "))
		totals := y.expected(t)
		reportFigures(t, context, totals, bookFigures(f))
		want, wantWords := y.yardFigures(totals)
		got, gotWords := filledFigures(f)
		reportFigures(t, context, want, got)
		for _, key := range slices.Sorted(maps.Keys(wantWords)) {
			if got := gotWords[key]; got.Text != wantWords[key] {
				t.Errorf("%s: %s, %s: wanted %q, got %q", context, got.place, key, wantWords[key], got.Text)
			}
			word, _, _ := strings.Cut(wantWords[key], " ")
			states[word]++
		}
		compared += len(totals) + len(want) + len(wantWords)
	}
	for _, word := range []string{"short", "over", "missing", "complete", "OVER", "OK", "requote", "counted", "count", "more"} {
		if states[word] == 0 {
			t.Errorf("no %q among the states of %d workbooks; some were expected", word, many)
		}
	}
	t.Logf("%d figures in %d workbooks; states %v", compared, many, states)
}
