package revise_test

import (
	"strings"
	"testing"

	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// words is a cell that holds a text.
func words(s string) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundText, Text: s} }

// windowOf is what a job says of a window.
func windowOf(j *job.Job, id string) job.WindowCrew {
	for _, w := range j.Labour.Windows {
		if w.Window == id {
			return w
		}
	}
	return job.WindowCrew{}
}

// Hours, crews and weather that were typed stand in the next revision's job,
// however they were typed; an emptied time is none.
func TestHoursAreTakenOver(t *testing.T) {
	q := demoQuote(t, "fairground")
	f := workbook.Layout(q).Found()
	install, strike, out := rowOf(t, f, "hours_id", "install"), rowOf(t, f, "hours_id", "strike"), rowOf(t, f, "hours_id", "yard-out")
	typeInto(t, f, typed{"hours_from", install, num(8.25 / 24)}, typed{"hours_until", install, sheet.FoundCell{}}, typed{"hours_ready", install, words("17:45")},
		typed{"hours_inspect", install, num(16.5 / 24)}, typed{"hours_stay", install, words("Yes")}, typed{"hours_crews", install, num(1)},
		typed{"hours_crews", strike, num(2)}, typed{"hours_ready", out, words("15:00")},
		typed{"job_weather_temperature", 0, num(95)}, typed{"job_weather_humidity", 0, num(35)}, typed{"job_tries", 0, num(60)},
		typed{"job_event_access", 0, words("Gate 3")}, typed{"job_event_parking", 0, words("")})
	b, list := revise.Open("fairground.xlsx", f)
	if b == nil || len(list) > 0 {
		t.Fatal(list)
	}
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	j := r.Quote.Job
	want := job.WindowCrew{Window: "install", Crew: 8, Days: 3, Crews: 1, From: 495, Ready: 17*60 + 45, Inspect: 16*60 + 30, Stay: true}
	got := windowOf(j, "install")
	got.Where, got.Worked = want.Where, want.Worked
	if got != want {
		t.Errorf("the job has %+v; %+v was expected", got, want)
	}
	if w := windowOf(j, "strike"); w.Crews != 2 || w.From != 570 || w.Until != 21*60 {
		t.Errorf("the strike has %+v", w)
	}
	if w := windowOf(j, "yard-out"); w.Ready != 15*60 || w.Crew != 4 {
		t.Errorf("the yard has %+v", w)
	}
	if w := j.Labour.Weather; w == nil || w.Temperature.Text(unit.Imperial) != "95 F" || w.Humidity.String() != "35" || j.Labour.Tries != 60 {
		t.Errorf("the weather is %+v, %d schedules", w, j.Labour.Tries)
	}
	if j.Event.Access != "Gate 3" || j.Event.Parking != "" {
		t.Errorf("access %q, parking %q", j.Event.Access, j.Event.Parking)
	}
	told := ""
	for _, c := range r.Changes {
		told += c.What + ": " + c.Old + " -> " + c.New + "\n"
	}
	for _, line := range []string{"09:30 -> 08:15\n", "21:00 -> \n", "18:00 -> 17:45\n", " -> 16:30\n", "No -> Yes\n"} {
		if !strings.Contains(told, line) {
			t.Errorf("the changes do not say %q:\n%s", line, told)
		}
	}
	next, list := revise.Open("next.xlsx", workbook.Layout(r.Quote).Found())
	if next == nil || len(list) > 0 || len(next.Edits) > 0 {
		t.Errorf("the next workbook has edits of its own: %v", list)
	}
}

// The same time typed otherwise is no edit, and none either that is not there.
func TestTheSameHourIsNoEdit(t *testing.T) {
	f := workbook.Layout(demoQuote(t, "fairground")).Found()
	install := rowOf(t, f, "hours_id", "install")
	typeInto(t, f, typed{"hours_from", install, words("9:30")}, typed{"hours_until", install, num(0.8750000001)}, typed{"hours_inspect", install, words(" ")}, typed{"hours_stay", install, words("no")})
	if b, list := revise.Open("fairground.xlsx", f); b == nil || len(list) > 0 || len(b.Edits) > 0 {
		t.Errorf("%v; no edit was expected", list)
	}
}

// What is no time of day, and times that cannot be kept, are told of with their
// cell.
func TestHoursThatCannotBe(t *testing.T) {
	for _, x := range []struct {
		column string
		cell   sheet.FoundCell
		want   string
	}{
		{"hours_from", words("nine"), `found "nine"; a time of day in whole minutes such as 07:30 or 18:00 was expected`},
		{"hours_from", num(9), "found the number 9; a time of day"},
		{"hours_until", words("9:00"), "until 09:00 is not after from 09:30"},
		{"hours_crews", num(9), "8 people cannot be split into 9 crews"},
		{"hours_stay", words("perhaps"), "Yes or No was expected"},
		{"job_weather_humidity", words("damp"), "a number such as 12.5 was expected"},
	} {
		f := workbook.Layout(demoQuote(t, "fairground")).Found()
		row := 0
		if strings.HasPrefix(x.column, "hours_") {
			row = rowOf(t, f, "hours_id", "install")
		}
		typeInto(t, f, typed{x.column, row, x.cell})
		_, list := revise.Open("fairground.xlsx", f)
		if b, more := revise.Open("fairground.xlsx", f); b != nil {
			_, list = b.Revise(nil)
			list.Join(more)
		}
		if len(list) != 1 || !strings.Contains(list[0].Message, x.want) || list[0].Pos.Sheet != workbook.SheetCrew || list[0].Pos.Cell == "" {
			t.Errorf("%s: %v; %q at its cell was expected", x.column, list, x.want)
		}
	}
}

// A humidity alone is refused; emptying either figure takes the forecast out.
func TestWeatherIsBothOrNone(t *testing.T) {
	f := workbook.Layout(demoQuote(t, "dinner")).Found()
	typeInto(t, f, typed{"job_weather_humidity", 0, num(50)})
	if b, list := revise.Open("dinner.xlsx", f); b == nil {
		t.Error(list)
	} else if r, list := b.Revise(nil); r != nil || !strings.Contains(list.Err().Error(), "temperature") {
		t.Errorf("a humidity alone was taken: %v", list)
	}
	for _, name := range []string{"job_weather_temperature", "job_weather_humidity"} {
		f := workbook.Layout(demoQuote(t, "fairground")).Found()
		typeInto(t, f, typed{name, 0, sheet.FoundCell{}})
		b, list := revise.Open("fairground.xlsx", f)
		if b == nil {
			t.Fatal(list)
		}
		if r, list := b.Revise(nil); r == nil || r.Quote.Job.Labour.Weather != nil {
			t.Errorf("%s emptied: the forecast stayed, %v", name, list)
		}
	}
}

// Ticks, the winds that were read and the signatures of the crew lead's sheet
// come along into the next revision.
func TestCrewSheetIsKept(t *testing.T) {
	f := workbook.Layout(demoQuote(t, "dinner")).Found()
	typeInto(t, f, typed{"arrival_tick", rowOf(t, f, "arrival_id", "overhead"), words(workbook.TickedBox)}, typed{"handover_tick", rowOf(t, f, "handover_id", "exits"), words(workbook.TickedBox)},
		typed{"crewsheet_emergency", 0, words("555-0100")}, typed{"crewsheet_notes", 0, words("gate was shut")}, typed{"crewsheet_wind_arrival", 0, num(12)},
		typed{"sign_lead_name", 0, words("Ann")}, typed{"sign_handover_time", 0, num(0.75)}, typed{"job_guests", 0, num(150)})
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil || len(list) > 0 || len(b.Edits) != 1 {
		t.Fatal(list)
	}
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	book := workbook.LayoutWith(r.Quote, workbook.Options{Kept: b.Kept()})
	if lost, _ := b.Keep(book); len(lost) > 0 {
		t.Errorf("lost %v", lost)
	}
	next := book.Found()
	cell := func(name string, row int) sheet.FoundCell {
		p := next.Names[name]
		return next.Sheet(p.Sheet).At(p.R1+row, p.C1)
	}
	for _, x := range []struct {
		name string
		row  int
		want string
	}{{"arrival_tick", rowOf(t, next, "arrival_id", "overhead"), workbook.TickedBox}, {"handover_tick", rowOf(t, next, "handover_id", "exits"), workbook.TickedBox},
		{"arrival_tick", rowOf(t, next, "arrival_id", "room"), ""}, {"crewsheet_emergency", 0, "555-0100"}, {"crewsheet_notes", 0, "gate was shut"}, {"sign_lead_name", 0, "Ann"}} {
		if got := cell(x.name, x.row).Text; got != x.want {
			t.Errorf("%s is %q; %q was expected", x.name, got, x.want)
		}
	}
	if cell("sign_handover_time", 0).Number != 0.75 || cell("crewsheet_wind_arrival", 0).Number != 12 {
		t.Error("the wind or the time of signing was not kept")
	}
}
