package workbook

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/workbook/sheet"
)

// crewJob reads a job of the demonstration.
func crewJob(t *testing.T, c *catalog.Catalog, name string) *job.Job {
	t.Helper()
	file := filepath.Join("..", "testdata", "jobs", name+".yaml")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	j, list := job.ReadFor(c, file, data)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	return j
}

// crewPage lays the sheet of a job out alone.
func crewPage(t *testing.T, c *catalog.Catalog, j *job.Job, plan bool) *crewSheet {
	t.Helper()
	q, list := quote.Build(c, j)
	if q == nil {
		t.Fatal(list.Err())
	}
	if !plan {
		q.Crew = &crew.Result{}
	}
	l := newLayout(q)
	l.crewSheet()
	return &crewSheet{layout: l, s: l.book.Sheets[0]}
}

// wordy is a job whose every text is as long as a job may have it.
func wordy(j *job.Job) *job.Job {
	long := *j
	long.Event.Name, long.Customer.Name = strings.Repeat("Wide meadow ", 10), strings.Repeat("Water club ", 10)
	long.Customer.Contact, long.Customer.Phone = strings.Repeat("who may be asked ", 14), strings.Repeat("555-0100 ", 27)
	long.Event.Address = strings.Split(strings.Repeat("a street and its number,", 12), ",")
	long.Event.Access, long.Event.Parking, long.Event.Contact = strings.Repeat("gate and key\n", 19), strings.Repeat("park WIDE and WELL ", 13), strings.Repeat("marshal by day ", 16)
	long.Notes = strings.Repeat("Say it again.\n", 280)
	long.Tents = append([]job.Tent(nil), long.Tents...)
	for i := range long.Tents {
		long.Tents[i].Name = strings.Repeat("MW ", 40)
	}
	return &long
}

// longPoints is a shop with as much to look at as its check allows.
func longPoints(t *testing.T) *catalog.Catalog {
	t.Helper()
	c := *demoShop(t)
	spec := *c.Crew
	spec.Arrival, spec.Handover = nil, nil
	for i := range 16 {
		p := catalog.CrewPoint{ID: fmt.Sprint("p", i), What: strings.Repeat("Look well at it. ", 4)[:60]}
		spec.Arrival, spec.Handover = append(spec.Arrival, p), append(spec.Handover, p)
	}
	c.Crew = &spec
	return &c
}

// However much there is to say, the sheet prints on one page, in letters of 8
// points as those of a quote that is squeezed.
func TestCrewSheetIsOnePage(t *testing.T) {
	c, full := demoShop(t), longPoints(t)
	fair := crewJob(t, c, "fairground")
	pages := map[string]*crewSheet{
		"garden": crewPage(t, c, crewJob(t, c, "garden"), true), "dinner": crewPage(t, c, crewJob(t, c, "dinner"), true), "fairground": crewPage(t, c, fair, true),
		"no plan": crewPage(t, c, fair, false), "long texts": crewPage(t, c, wordy(fair), true), "long points": crewPage(t, full, fair, true),
		"long texts and points": crewPage(t, full, wordy(fair), true), "12 fairs": crewPage(t, c, jobtest.Times(fair, 12), false),
	}
	for seed := range uint64(20) {
		pages[fmt.Sprint("seed ", seed)] = crewPage(t, c, jobtest.Random(c, seed), seed%3 > 0)
	}
	for name, p := range pages {
		if high, room := p.high(), p.room(); high > room {
			t.Errorf("%s: %g points high; %g were expected at most", name, high, room)
		}
		if p.s.Page.FitTall != 1 || !p.s.Page.FitWide || len(p.s.Breaks) > 0 || p.s.Page.Landscape {
			t.Errorf("%s: prints with %+v", name, p.s.Page)
		}
	}
	for i := range pages["fairground"].q.Parts.Tents {
		if label := pages["fairground"].q.Parts.Tents[i].Label(); !strings.Contains(said(pages["fairground"].s), label+"\n") {
			t.Errorf("the fairground's sheet does not show %s", label)
		}
	}
	// 12 times six tents, of which those with a row are told apart.
	many := pages["12 fairs"]
	rows := strings.Count(said(many.s), " legs of ")
	if want := fmt.Sprintf("and %d more: see Anchorage\n", 12*6-rows); rows == 0 || !strings.Contains(said(many.s), want) {
		t.Errorf("%d rows of tents and not %q", rows, want)
	}
}

// Where days are left out, each stretch of work still shows when it begins, and
// when something must be ready.
func TestFewDays(t *testing.T) {
	var all []crewDay
	for order, many := range []int{9, 4} {
		for n := range many {
			all = append(all, crewDay{order: order, number: n + 1, last: n == 6 || order == 1 && n == 2})
		}
	}
	for most, want := range map[int]string{2: "0.1 1.1", 4: "0.1 0.7 1.1 1.3", 5: "0.1 0.2 0.7 1.1 1.3", 20: "0.1 0.2 0.3 0.4 0.5 0.6 0.7 0.8 0.9 1.1 1.2 1.3 1.4"} {
		var got []string
		for _, d := range fewDays(all, most) {
			got = append(got, fmt.Sprintf("%d.%d", d.order, d.number))
		}
		if strings.Join(got, " ") != want {
			t.Errorf("of %d days %v; %s was expected", most, got, want)
		}
	}
}

// said is every text of a sheet, each on a line.
func said(s *sheet.Sheet) string {
	var b strings.Builder
	for _, row := range s.Rows {
		for _, cell := range row.Cells {
			fmt.Fprintln(&b, cell.Value)
		}
	}
	return b.String()
}

// Nothing of the office's stands on the sheet that a customer may hold: no
// price, no share, no remark; and no formula reaches one.
func TestCrewSheetIsForStrangers(t *testing.T) {
	c := demoShop(t)
	for _, name := range []string{"garden", "dinner", "fairground"} {
		j := crewJob(t, c, name)
		p := crewPage(t, c, j, true)
		words := said(p.s)
		for _, secret := range []string{strings.TrimSpace(j.Internal), j.Discount.Reason, "margin", "$", "cost", "%"} {
			if secret != "" && strings.Contains(words, secret) {
				t.Errorf("%s: the sheet says %q", name, secret)
			}
		}
		for _, row := range p.s.Rows {
			for _, cell := range row.Cells {
				if f := cell.Style.Format; f == sheet.Money || f == sheet.Percent || f == sheet.PercentWhole || f == sheet.PercentPoint {
					t.Errorf("%s: a cell shows money or a share: %v", name, cell.Value)
				}
				for _, of := range []string{"build_", "total_", "rate_", "skill_", "office", "discount", "price"} {
					if strings.Contains(cell.Formula, of) {
						t.Errorf("%s: a formula reaches %s: %s", name, of, cell.Formula)
					}
				}
			}
		}
	}
}

// A point stands there only where the job has what it is for.
func TestCrewPointsFollowTheJob(t *testing.T) {
	c := demoShop(t)
	shows := func(body func(*job.Job), id string) bool {
		j := *crewJob(t, c, "garden")
		body(&j)
		return strings.Contains("\n"+said(crewPage(t, c, &j, true).s), "\n"+id+"\n")
	}
	lines := func(items ...string) func(*job.Job) {
		return func(j *job.Job) {
			for _, id := range items {
				j.Items = append(j.Items, job.Line{Item: id, Quantity: j.Items[0].Quantity})
			}
		}
	}
	none := func(*job.Job) {}
	deck := func(j *job.Job) { j.Tents = []job.Tent{j.Tents[0]}; j.Tents[0].Ground = "deck" }
	bare := func(j *job.Job) { j.Tents = nil }
	open := func(j *job.Job) { j.Tents = []job.Tent{j.Tents[0]}; j.Tents[0].Sides = nil }
	for _, x := range []struct {
		job    func(*job.Job)
		id     string
		stands bool
	}{
		{none, "marks", true}, {deck, "marks", false}, {bare, "marks", false}, {none, "bears", false}, {deck, "bears", true}, {deck, "ballast", true},
		{none, "pins", true}, {bare, "pins", false}, {bare, "way", true}, {none, "walls", true}, {open, "walls", false},
		{none, "heaters", false}, {lines("heater-170"), "heaters", true}, {none, "stage", false}, {lines("stage-kit"), "stage", true},
		{none, "cables", true}, {func(j *job.Job) { j.Items = j.Items[:1] }, "cables", false}, {func(j *job.Job) { j.Items = []job.Line{{Item: "generator-7", Quantity: money.One}} }, "cables", true},
	} {
		if got := shows(x.job, x.id); got != x.stands {
			t.Errorf("%s stands: %t; %t was expected", x.id, got, x.stands)
		}
	}
}
