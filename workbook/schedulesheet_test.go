package workbook_test

import (
	"fmt"
	"strings"
	"testing"

	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// schedules are quotes with the plan that the program makes, and with one that no
// search made.
func schedules(t *testing.T) map[string]*quote.Quote {
	t.Helper()
	all := map[string]*quote.Quote{}
	for name, q := range demoQuotes(t, demoCatalog(t)) {
		all[name], all[name+", by hand"] = q, planned(q)
	}
	return all
}

func scheduleOf(t *testing.T, q *quote.Quote) *sheet.Sheet {
	t.Helper()
	for _, s := range workbook.Layout(q).Sheets {
		if s.Name == workbook.SheetSchedule {
			return s
		}
	}
	t.Fatal("there is no sheet Schedule")
	return nil
}

// bars are the rows of charts, with the columns that hold a bar.
type barRow struct {
	row        int
	name       string
	start, end float64
	hands      any
	cells      []sheet.Cell
}

// isBar tells whether a cell is part of a bar.
func isBar(c sheet.Cell) bool { return c.Style.Role == sheet.Bar || c.Style.Role == sheet.Chain }

// barRows finds the rows of all charts of a sheet.
func barRows(s *sheet.Sheet) (list []barRow) {
	for i, r := range s.Rows {
		for _, c := range r.Cells {
			if !isBar(c) {
				continue
			}
			name, _ := r.Cells[0].Value.(string)
			start, _ := r.Cells[4].Value.(float64)
			end, _ := r.Cells[5].Value.(float64)
			list = append(list, barRow{i + 1, name, start, end, r.Cells[3].Value, r.Cells[7:]})
			break
		}
	}
	return list
}

// oneByOne tells which rows of a sheet stand on a page whose chart has each task
// in a row of its own: not on that of a day which a page in detail follows.
func oneByOne(s *sheet.Sheet) []bool {
	title := func(i int) string {
		if i >= len(s.Breaks) {
			return ""
		}
		words, _ := s.Rows[s.Breaks[i]-1].Cells[0].Value.(string)
		return words
	}
	alone := make([]bool, len(s.Rows)+1)
	for i, from := range s.Breaks {
		to := len(s.Rows)
		if i+1 < len(s.Breaks) {
			to = s.Breaks[i+1] - 1
		}
		for row := from; row <= to; row++ {
			alone[row] = !strings.HasPrefix(title(i+1), title(i)+", in detail")
		}
	}
	return alone
}

// Every task of every day has its bar: with its hands in each part of it, its
// times before it, and a star where it is on the critical chain.
func TestEveryTaskHasItsBar(t *testing.T) {
	for name, q := range schedules(t) {
		s := scheduleOf(t, q)
		var want, got []string
		for i := range q.Crew.Windows {
			w := &q.Crew.Windows[i]
			for _, d := range w.Days {
				want = append(want, wantBars(w, d.Number)...)
			}
		}
		alone := oneByOne(s)
		for _, b := range barRows(s) {
			if !alone[b.row] {
				continue
			}
			got = append(got, fmt.Sprintf("%s %.0f-%.0f", b.name, b.start*1440, b.end*1440))
			for _, c := range b.cells {
				if isBar(c) && b.hands != nil && c.Value != b.hands {
					t.Errorf("%s: row %d, %s: %v in the bar; want %v hands", name, b.row, b.name, c.Value, b.hands)
				}
				if c.Style.Role == sheet.Chain != strings.HasPrefix(b.name, "* ") && isBar(c) {
					t.Errorf("%s: row %d, %s: the bar and the star do not agree", name, b.row, b.name)
				}
			}
		}
		counts := map[string]int{}
		for _, x := range want {
			counts[x]++
		}
		for _, x := range got {
			counts[x]--
		}
		for x, n := range counts {
			if n != 0 {
				t.Errorf("%s: %q: %d bars too few", name, x, n)
			}
		}
		if len(got) < 20 {
			t.Errorf("%s: %d bars; at least 20 were expected", name, len(got))
		}
	}
}

// wantBars are the tasks of a day with their times in minutes.
func wantBars(w *crew.Window, day int) (list []string) {
	for i := range w.Tasks {
		k := &w.Tasks[i]
		from, to := -1, 0
		for _, s := range k.Spells {
			if s.Day == day {
				if from < 0 {
					from = int(s.From)
				}
				to = int(s.To)
			}
		}
		if from < 0 {
			continue
		}
		name := k.Name
		if k.Critical {
			name = "* " + name
		}
		if k.Start.Day < day {
			name += ", continued"
		}
		if k.Finish.Day > day {
			name += ", goes on"
		}
		list = append(list, fmt.Sprintf("%s %d-%d", name, from, to))
	}
	return list
}

// Everybody who is called stands on the page of the day with call, end and paid
// hours, and once in the list where names are typed.
func TestEveryPersonIsCalled(t *testing.T) {
	for name, q := range schedules(t) {
		book := workbook.Layout(q)
		keys, s, first := cellsOf(t, book, "call_person")
		want := map[string]int{}
		for i := range q.Crew.Windows {
			w := &q.Crew.Windows[i]
			for n := range w.People {
				for _, shift := range w.People[n].Days {
					if shift.End > 0 {
						want[fmt.Sprintf("%s.%d %d-%d", w.Labour.Spec.ID, w.People[n].Number, shift.Call, shift.End)]++
					}
				}
			}
		}
		for i, c := range keys {
			key, _ := c.Value.(string)
			if !strings.Contains(key, ".") {
				continue
			}
			r := s.Rows[first+i-1]
			call, _ := r.Cells[4].Value.(float64)
			end, _ := r.Cells[5].Value.(float64)
			want[fmt.Sprintf("%s %.0f-%.0f", key, call*1440, end*1440)]--
		}
		for x, n := range want {
			if n != 0 {
				t.Errorf("%s: %s: %d rows too few", name, x, n)
			}
		}
		people, _, _ := cellsOf(t, book, "people_key")
		names := 0
		for _, c := range people {
			if key, _ := c.Value.(string); key != "" {
				names++
			}
		}
		sum := 0
		for i := range q.Crew.Windows {
			sum += len(q.Crew.Windows[i].People)
		}
		if names != sum {
			t.Errorf("%s: names are asked for %d people; want %d", name, names, sum)
		}
	}
}

// Between two page breaks stands no more than a page holds at the scale to which
// the columns are fitted.
func TestChartsFitTheirPages(t *testing.T) {
	const inch, least = 72.0, 15.0
	for name, q := range schedules(t) {
		s := scheduleOf(t, q)
		wide := 0.0
		for _, c := range s.Columns[:s.PrintArea.C2] {
			wide += c.Width * sheet.ColumnPoints
		}
		high := (8.5 - 1.2) * inch * max(1, wide/((11-0.5)*inch))
		at, used := map[int]bool{}, 0.0
		for _, row := range s.Breaks {
			at[row] = true
		}
		for i, r := range s.Rows {
			if at[i+1] {
				used = 23 // the title again
			}
			h := max(least, r.Height)
			for col, c := range r.Cells {
				if words, ok := c.Value.(string); ok && c.Style.Wrap && r.Height == 0 && col < 7 && !merged(s, i+1, col+1) {
					h = max(h, sheet.TextHeight(words, 10, c.Style.Bold, true, c.Style.Indent, s.Columns[col].Width*sheet.ColumnPoints))
				}
			}
			if used += h; used > high {
				t.Fatalf("%s: row %d stands at %.0f points of a page of %.0f", name, i+1, used, high)
			}
		}
	}
}

func merged(s *sheet.Sheet, row, col int) bool {
	for _, m := range s.Merges {
		if m.R1 <= row && row <= m.R2 && m.C1 <= col && col <= m.C2 {
			return true
		}
	}
	return false
}

// What stands above the charts says what is late, unsure or not allowed, in words.
func TestScheduleWarnsInWords(t *testing.T) {
	q := planned(demoQuotes(t, demoCatalog(t))["fairground"])
	q.Crew.Windows[1].Finish.Day++
	var words []string
	for _, r := range scheduleOf(t, q).Rows {
		for _, c := range r.Cells {
			if text, ok := c.Value.(string); ok {
				words = append(words, text)
			}
		}
	}
	all := strings.Join(words, "\n")
	for _, want := range []string{"STOP: Deliver and install: the driver of V1 drives 12 h on day 1; at most 11 h are legal (49 CFR 395.3)", "LOOK: Strike and return: work goes on after dark",
		"LATE: ready by the plan", "In time, below 90 %", "NO SEAT: plan another way to the site", "a plan, not a promise", "cheapest", "asked", ", goes on", ", continued", "in detail"} {
		if !strings.Contains(all, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	if strings.Index(all, "STOP: ") > strings.Index(all, "LOOK: ") {
		t.Error("what stops the work does not stand first")
	}
}

// A shop without a crew file has no such sheet, and no check of it.
func TestNoScheduleWithoutCrewFile(t *testing.T) {
	_, book := laidOut(t, smallShop(t), redJob)
	for _, s := range book.Sheets {
		if s.Name == workbook.SheetSchedule {
			t.Error("there is a sheet Schedule; none was expected")
		}
	}
	if err := book.Check(); err != nil {
		t.Error(err)
	}
}

// The formulas of a plan with all that one can hold are true.
func TestScheduleFormulasAreTrue(t *testing.T) {
	calc.Need(t)
	var trials []trial
	for name, q := range demoQuotes(t, demoCatalog(t)) {
		q = planned(q)
		trials = append(trials, trial{"hand-" + name, q, workbook.LayoutWith(q, workbook.Options{Kept: drawKept(q, 5)}), leastCount})
	}
	checkTruth(t, trials)
}
