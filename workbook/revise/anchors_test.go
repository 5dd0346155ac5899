package revise_test

import (
	"strings"
	"testing"

	"tentwright/catalog/unit"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// What is typed on the sheet of anchors becomes the job's gust and the shop's own
// figures, with their units, and the next revision plans the anchors anew.
func TestAnchorageIsTakenOver(t *testing.T) {
	q := demoQuote(t, "fairground")
	f := workbook.Layout(q).Found()
	down := rowOf(t, f, "action_id", "down")
	typeInto(t, f, typed{"wind_gust", 0, num(52)}, typed{"wind_limit", 0, num(55)}, typed{"wind_safety_stake", 0, num(2.5)},
		typed{"wind_safety_ballast", 0, num(1.75)}, typed{"wind_gust_factor", 0, num(1.6)},
		typed{"action_gust", down, num(38)}, typed{"action_gust", rowOf(t, f, "action_id", "watch"), sheet.FoundCell{}},
		typed{"hold_pull", rowOf(t, f, "hold_key", "stake-42:grass:guy"), num(1234)},
		typed{"friction_mu", rowOf(t, f, "friction_key", "water-barrel:hard"), num(0.37)})
	b, list := revise.Open("fairground.xlsx", f)
	if b == nil || len(list) > 0 {
		t.Fatal(list)
	}
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	if got := r.Quote.Job.Wind.Gust.Text(unit.Imperial); got != "52 mph" {
		t.Errorf("the job's gust is %s; 52 mph was expected", got)
	}
	file := string(r.Shop["anchors.yaml"])
	for _, want := range []string{"limit: 55 mph", "{stake: 2.5, ballast: 1.75,", "gust_factor: 1.6", "{id: down, gust: 38 mph,", "{id: watch, demo: yes",
		"{stake: stake-42, surface: grass, way: guy, pull: 1234 lb,", "{ballast: water-barrel, surface: hard, mu: 0.37,"} {
		if !strings.Contains(file, want) {
			t.Errorf("anchors.yaml does not hold %q", want)
		}
	}
	a := r.Quote.Anchor
	if !a.Own || a.Gust <= q.Anchor.Gust || a.Tents[0].Pressure <= q.Anchor.Tents[0].Pressure {
		t.Errorf("the wind that is planned for is %s, the job's own: %t; 52 mph of its own was expected", a.Gust.Text(unit.Imperial), a.Own)
	}
}

// An emptied gust is no wind of this place: the shop's holds again.
func TestEmptiedGustIsTheShops(t *testing.T) {
	q := demoQuote(t, "garden")
	q.Job.Wind.Gust = unit.SpeedIn(47, unit.Imperial)
	f := workbook.Layout(q).Found()
	typeInto(t, f, typed{"wind_gust", 0, sheet.FoundCell{}})
	b, list := revise.Open("garden.xlsx", f)
	if b == nil {
		t.Fatal(list)
	}
	r, list := b.Revise(nil)
	if r == nil || r.Quote.Job.Wind.Gust != 0 || r.Quote.Anchor.Own {
		t.Fatalf("the gust is kept; none was expected, %v", list)
	}
}

// rowOf is the row of a key among its column, from 0.
func rowOf(t *testing.T, f *sheet.Found, name, key string) int {
	t.Helper()
	p := f.Names[name]
	for row := p.R1; row <= p.R2; row++ {
		if f.Sheet(p.Sheet).At(row, p.C1).Text == key {
			return row - p.R1
		}
	}
	t.Fatalf("%s has no %q", name, key)
	return 0
}
