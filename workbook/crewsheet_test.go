package workbook_test

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/quote/jobtest"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// says tells whether a cell of the crew lead's sheet holds a text.
func (f figures) says(text string) bool {
	for _, cell := range f.cells[workbook.SheetCrewSheet] {
		if cell.Text == text {
			return true
		}
	}
	return false
}

// holds tells whether a cell of it holds a number.
func (f figures) holds(n float64) bool {
	for _, cell := range f.cells[workbook.SheetCrewSheet] {
		if cell.Kind == calc.Number && math.Abs(cell.Number-n) < 1e-9 {
			return true
		}
	}
	return false
}

// What the office corrects elsewhere stands on the crew lead's sheet: names,
// phones, days, hours, the gusts of the manager, how many tents, and who rides.
func TestCrewSheetFollowsWhatIsTyped(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	q := demoQuotes(t, demoCatalog(t))["dinner"]
	if q.Crew == nil || len(q.Crew.Windows) == 0 {
		t.Fatal("the dinner has no crew plan")
	}
	later := q.Job.Dates.Deliver.AddDays(-20)
	long := strings.Repeat("Mind the wet grass. ", 30)
	f := recalculated(t, []typing{{"dinner", workbook.Layout(q), []typed{
		{"job_customer_phone", "", "555-0999"}, {"job_customer_contact", "", ""}, {"job_event_address", "", "Lower Meadow, Larkmere"}, {"job_event_contact", "", "the new warden"},
		{"job_event_access", "", "Back gate\nof 10 ft"}, {"job_event_parking", "", "On the road"}, {"job_notes", "", long}, {"job_date_deliver", "", later.Serial()},
		{"hours_ready", "hours_id=install", 0.6875}, {"hours_inspect", "hours_id=install", nil}, {"action_gust", "action_id=clear", 27}, {"action_gust", "action_id=down", nil},
		{"qty_t.dinner", "", 3}, {"site_slope_degree", "", "level"}, {"people_name", "people_key=install.1", "Ann"}, {"job_weather_temperature", "", 91}, {"job_weather_humidity", "", 0}, {"job_tries", "", 30},
	}}})[0]
	for _, want := range []string{"555-0999", "Lower Meadow, Larkmere", "the new warden", "Back gate of 10 ft", "On the road", long[:239] + "…", "Soft or wet ground", "ask"} {
		if !f.says(want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	for _, n := range []float64{float64(later.Serial()), 0.6875, 27, 3} {
		if !f.holds(n) {
			t.Errorf("the sheet does not show %v", n)
		}
	}
	if f.holds(36) {
		t.Error("the sheet still shows the gust that was cleared")
	}
	for ref, cell := range f.cells[workbook.SheetCrewSheet] {
		if strings.HasPrefix(ref, "M") && cell.Kind == calc.Number {
			t.Errorf("%s still shows the inspection that was cleared", ref)
		}
	}
	named := false
	for _, cell := range f.cells[workbook.SheetCrewSheet] {
		named = named || strings.HasPrefix(cell.Text, "Ann, drives; no. ")
	}
	if !named {
		t.Error("the name typed on Schedule does not stand beside the vehicle")
	}
	if got := f.beside(t, "hours_state", "hours_id", "install"); got.Text != "requote" {
		t.Errorf("hours that were changed are %q; requote was expected", got.Text)
	}
	f.beside(t, "hours_state", "hours_id", "strike").text(t, "unchanged hours", "")
	if states := f.texts("work_state"); len(states) != 3 || f.beside(t, "check_value", "check_key", "requote schedule").Number < 4 {
		t.Errorf("weather and schedules are %q, and the check says %v", states, f.beside(t, "check_value", "check_key", "requote schedule").Cell)
	}
}

// The figures of the sheet, and of the hours that it rests on, are those of the
// program: with a plan and without, with names typed, in metres, with much text
// and with many tents.
func TestCrewSheetIsTrue(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	c := demoCatalog(t)
	fair, dinner := demoQuotes(t, c)["fairground"], demoQuotes(t, c)["dinner"]
	without := *fair
	without.Crew = &crew.Result{}
	many := mustQuote(t, c, jobtest.Times(fair.Job, 8))
	names := workbook.Options{Kept: workbook.Kept{Names: map[string]any{"install.1": "Ann", "install.2": 7.0, "install.3": "O'Hara \"Red\""}}}
	books := map[string]*sheet.Book{"fairground": workbook.Layout(planned(fair)), "no-plan": workbook.Layout(&without), "many": workbook.Layout(many),
		"names": workbook.LayoutWith(dinner, names), "metric": workbook.Layout(metricFair(t, fair))}
	dir, out := t.TempDir(), t.TempDir()
	var files []string
	for name, b := range books {
		files = append(files, writeBook(t, dir, name, b))
	}
	if err := calc.Recalculate(t.Context(), files, out); err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		diffs, count, err := calc.Compare(file, filepath.Join(out, filepath.Base(file)))
		if err != nil || count < leastCount {
			t.Fatal(file, count, err)
		}
		for _, d := range diffs {
			// The fair in metres is counted in feet: only its papers are metric.
			ours := d.Sheet == workbook.SheetCrewSheet || d.Sheet == workbook.SheetJob || d.Sheet == workbook.SheetCrew && filepath.Base(file) != "metric.xlsx"
			if ours {
				t.Errorf("%s: %v", filepath.Base(file), d)
			}
		}
	}
}

// metricFair is the fair in a shop whose papers are in metres.
func metricFair(t *testing.T, q *quote.Quote) *quote.Quote {
	t.Helper()
	with := *q
	c := *q.Catalog
	c.Company.Units, c.Company.Paper = unit.Metric, "a4"
	with.Catalog = &c
	return &with
}

// A shop without a crew file has neither the sheet nor the hours.
func TestCrewSheetWantsACrewFile(t *testing.T) {
	c := *demoCatalog(t)
	c.Crew = nil
	q := mustQuote(t, &c, jobOf(t, "items: [{item: chair-folding, quantity: 4}]"))
	book := workbook.Layout(q)
	for _, s := range book.Sheets {
		if s.Name == workbook.SheetCrewSheet {
			t.Error("the sheet stands where nothing is known for it")
		}
	}
	for _, n := range book.Names {
		if strings.HasPrefix(n.Name, "hours_") || n.Name == "job_tries" {
			t.Errorf("%s is for typing, though nothing follows from it", n.Name)
		}
	}
}

// An hour that the job does not have is an empty cell, and one of the yard's is
// not for typing where it means nothing.
func TestHoursOnTheSheet(t *testing.T) {
	_, book := laidOut(t, demoCatalog(t), `items: [{item: chair-folding, quantity: 4}]
labour: {windows: [{window: install, crew: 6, crews: 2, from: "09:30", inspect: "24:00", stay: yes}], tries: 7, weather: {temperature: 95 F, humidity: 40}}
`)
	shown := map[string]string{}
	for _, column := range []string{"id", "crews", "from", "until", "ready", "inspect", "stay"} {
		cells, _, _ := cellsOf(t, book, "hours_"+column)
		for i, cell := range cells {
			shown[fmt.Sprint(column, i)] = fmt.Sprintf("%v %t", cell.Value, cell.Style.Role.Locked())
		}
	}
	for key, want := range map[string]string{"id1": "install true", "crews1": "2 false", "crews0": "1 false", "from1": fmt.Sprint(9.5/24, " false"), "until1": "<nil> false", "inspect1": "1 false",
		"stay1": "Yes false", "stay2": "No false", "from0": "<nil> true", "ready0": "<nil> false", "stay0": " true"} {
		if shown[key] != want {
			t.Errorf("%s is %q; %q was expected", key, shown[key], want)
		}
	}
	for name, want := range map[string]any{"job_tries": 7, "job_weather_temperature": 95.0, "job_weather_humidity": 40.0} {
		cells, _, _ := cellsOf(t, book, name)
		if len(cells) != 1 || fmt.Sprint(cells[0].Value) != fmt.Sprint(want) {
			t.Errorf("%s holds %v; %v was expected", name, cells, want)
		}
	}
}
