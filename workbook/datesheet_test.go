package workbook_test

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/dates"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
)

// dateBody is a job with every day apart, on a lawn.
const dateBody = `number: T-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 40}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-14, strike: 2027-06-15, collect: 2027-06-17}
delivery: {distance: 8 mi}
tents: [{id: a, family: hip, size: 20x20}, {id: b, family: hip, size: 10x10, ground: deck}]
`

// manyRules is a calendar with a rule for many mixtures of anchor, count and
// rolling, and days on which only the yard is shut.
func manyRules(t *testing.T, r *rand.Rand, many int) *catalog.Calendar {
	t.Helper()
	c := *demoCatalog(t).Calendar
	c.Closed = append(c.Closed, catalog.ClosedDay{From: unit.Date{Year: 2027, Month: 7, Day: 26}, To: unit.Date{Year: 2027, Month: 8, Day: 6}, Why: "Summer"})
	c.Dates = nil
	pick := func(of ...string) string { return of[r.IntN(len(of))] }
	from := func() *catalog.DayFrom {
		d := &catalog.DayFrom{From: pick("quoted", "signed", "deliver", "event_from", "event_to", "strike", "collect"),
			Count: pick("", "calendar", "business", "business", "yard", "yard"), Roll: pick("", "", "before", "after"), On: pick("", "", "business", "yard"), Days: r.IntN(81) - 40}
		if d.From == "signed" {
			d.Unsigned = pick("", "quoted", "deliver")
		}
		return d
	}
	for i := range many {
		rule := catalog.DateRule{ID: "r" + strconv.Itoa(i), Name: "Rule " + strconv.Itoa(i), Needs: pick("", "", "stakes", "tents"), Stop: r.IntN(4) == 0}
		switch r.IntN(4) {
		case 0:
			rule.Day = from()
		case 1:
			rule.Earliest = from()
		case 2:
			rule.Latest = from()
		default:
			rule.Earliest, rule.Latest = from(), from()
		}
		c.Dates = append(c.Dates, rule)
	}
	return &c
}

// retyped changes days of the job and numbers of days, on the sheets and in the
// values that the stage is computed from anew.
func retyped(r *rand.Rand, q *quote.Quote, c *catalog.Catalog) ([]typed, *quote.Quote) {
	now := *q
	j, shop, cal := *q.Job, *c, *c.Calendar
	cal.Dates = append([]catalog.DateRule(nil), cal.Dates...)
	shop.Calendar, now.Job, now.Catalog = &cal, &j, &shop
	var all []typed
	for _, f := range workbook.JobFields() {
		if f.Day != nil && r.IntN(3) > 0 {
			*f.Day(&j) = unit.Date{Year: 2026, Month: 9, Day: 1}.AddDays(r.IntN(420))
			all = append(all, typed{f.Name, "", f.Day(&j).Serial()})
		}
	}
	type end struct {
		column string
		spec   **catalog.DayFrom
	}
	for i := range cal.Dates {
		rule := &cal.Dates[i]
		for _, x := range []end{{"date_days_first", &rule.Earliest}, {"date_days_last", &rule.Latest}, {"date_days_last", &rule.Day}} {
			if *x.spec != nil && r.IntN(2) == 0 {
				changed := **x.spec
				changed.Days = r.IntN(61) - 30
				*x.spec = &changed
				all = append(all, typed{x.column, "date_key=" + rule.ID, changed.Days})
			}
		}
	}
	now.Dates = dates.Build(&shop, &j, q.Parts)
	return all, &now
}

// Whatever days and numbers of days are typed, the office program's own counting
// by WORKDAY gives the day, state and words that the stage gives.
func TestDatesFollowWhatIsTyped(t *testing.T) {
	calc.Need(t)
	seed := firstSeed(t) + 900
	r := rand.New(rand.NewPCG(seed, 1))
	const books, rules = 6, 60
	var list []typing
	var want []*quote.Quote
	for i := range books {
		c := *demoCatalog(t)
		c.Calendar = manyRules(t, r, rules)
		if i == 1 {
			c.Calendar.Holidays = nil
		}
		if i == 2 {
			c.Calendar.Holidays, c.Calendar.Closed = nil, nil
		}
		q := mustQuote(t, &c, jobOf(t, dateBody))
		all, now := retyped(r, q, &c)
		list, want = append(list, typing{fmt.Sprintf("seed %d, book %d", seed, i), workbook.Layout(q), all}), append(want, now)
	}
	days := 0
	for i, f := range recalculated(t, list) {
		name := list[i].name
		f.named(t, "date_known").number(t, name, float64(want[i].Dates.Known.Serial()))
		for k := range want[i].Dates.Dates {
			d := &want[i].Dates.Dates[k]
			key := d.Rule.ID
			f.beside(t, "date_rule", "date_key", key).text(t, name, d.Words())
			f.beside(t, "date_state", "date_key", key).text(t, name, d.State)
			days += sameDay(t, name, f.beside(t, "date_first", "date_key", key), d, d.First) + sameDay(t, name, f.beside(t, "date_last", "date_key", key), d, d.Last)
		}
		checkRule(t, f, name)
	}
	t.Logf("%d days of %d rules compared, seed %d", days, books*rules, seed)
}

// sameDay holds a cell against an end; it gives 1 for a day.
func sameDay(t *testing.T, context string, cell found, d *dates.Date, e *dates.End) int {
	t.Helper()
	if e == nil || !d.Needed || e.Day.IsZero() {
		if cell.Text != "" || cell.Number != 0 {
			t.Errorf("%s: %s: %v; nothing was expected for %s", context, cell.place, cell.Cell, d.Rule.ID)
		}
		return 0
	}
	if int(cell.Number) != e.Day.Serial() {
		t.Errorf("%s: %s: %v; %s (%d) was expected by %s", context, cell.place, cell.Cell, e.Day, e.Day.Serial(), d.Words())
	}
	return 1
}

// Shops whose offices work on other days, or that have no days off, make true
// sheets too; what no program can count stands there as a value.
func TestDatesOfOtherWeeks(t *testing.T) {
	calc.Need(t)
	r := rand.New(rand.NewPCG(5, 5))
	var trials []trial
	for name, change := range map[string]func(*catalog.Calendar){
		"six-days":   func(c *catalog.Calendar) { c.Week = append([]string{"saturday"}, c.Week...) },
		"other-rest": func(c *catalog.Calendar) { c.Week = []string{"sunday", "monday", "tuesday", "wednesday", "thursday"} },
		"no-days":    func(c *catalog.Calendar) { c.Holidays, c.Closed = nil, nil },
		"signed":     func(*catalog.Calendar) {},
	} {
		c := *demoCatalog(t)
		c.Calendar = manyRules(t, r, 30)
		change(c.Calendar)
		j := jobOf(t, dateBody)
		if name == "signed" {
			j.Dates.Signed = unit.Date{Year: 2027, Month: 3, Day: 1}
		}
		q := mustQuote(t, &c, j)
		book := workbook.Layout(q)
		trials = append(trials, trial{name, q, book, 100})
		formulas := 0
		for _, column := range []string{"date_first", "date_last"} {
			cells, _, _ := cellsOf(t, book, column)
			for _, cell := range cells {
				if cell.Formula != "" {
					formulas++
				}
			}
		}
		if plain := name != "six-days" && name != "other-rest"; plain && formulas < 30 || !plain && (formulas == 0 || formulas > 25) {
			t.Errorf("%s: %d days follow by formula", name, formulas)
		}
	}
	checkTruth(t, trials)
}

// A shop without a calendar has no such sheet, and its checks none of dates.
func TestNoCalendarNoSheet(t *testing.T) {
	_, book := laidOut(t, smallShop(t), "items: [{item: chair, quantity: 50}]")
	for _, s := range book.Sheets {
		if s.Name == workbook.SheetDates {
			t.Error("a shop without a calendar has a sheet of dates")
		}
	}
}
