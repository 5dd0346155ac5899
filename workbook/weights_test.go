package workbook

import (
	"math"
	"os"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/anchor"
	"tentwright/quote/job"
	"tentwright/quote/parts"
	"tentwright/quote/tent"
)

// What the price list says of a size is what a job of that one tent takes along
// for it, on ground for stakes and on ground without: no spares, and nothing
// that is for the job as a whole.
func TestSizeWeighsWhatItsTentTakes(t *testing.T) {
	for name, c := range map[string]*catalog.Catalog{"demo": demoShop(t), "small": smallestShop(t)} {
		for _, surface := range c.SiteFactor(catalog.Surface).Options {
			site := []job.SiteChoice{{Factor: catalog.Surface, Option: surface.ID}}
			l := &layout{q: &quote.Quote{Catalog: c, Job: &job.Job{Site: site}}, sys: c.Company.Units}
			for i := range c.Families {
				f := &c.Families[i]
				for k := range f.Sizes {
					want := tentMass(t, c, &job.Job{Site: site, Tents: []job.Tent{{ID: "a", Family: f.ID, Size: f.Sizes[k].ID}}})
					got := l.sizeMass(f, &f.Sizes[k])
					if math.Abs(float64(got-want)) > 1e-6*float64(want) {
						t.Errorf("%s, %s %s on %s: %s, %s was expected", name, f.ID, f.Sizes[k].ID, surface.ID, got.Text(l.sys), want.Text(l.sys))
					}
				}
			}
		}
	}
}

// tentMass adds up what the first tent of a job and its counts ask for.
func tentMass(t *testing.T, c *catalog.Catalog, j *job.Job) unit.Mass {
	t.Helper()
	tents, list := tent.Build(c, j)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	r, list := parts.Build(c, j, anchor.ByCustom(c, j, tents), nil)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	ofTent := map[string]bool{}
	for _, count := range r.Counts {
		ofTent[count.Key] = count.Tent != "" && count.Driver != "all-area"
	}
	var sum unit.Mass
	for _, need := range r.Needs {
		if need.Order != "" || ofTent[need.Count] {
			sum += unit.Mass(need.Quantity) * r.Find(need.Part.ID).Each
		}
	}
	return sum
}

// A foot of wall weighs what a foot of one of its panels does, laps taken off.
func TestHungGoodsWeighByTheLength(t *testing.T) {
	for name, c := range map[string]*catalog.Catalog{"demo": demoShop(t), "small": smallestShop(t)} {
		l := &layout{q: &quote.Quote{Catalog: c, Job: &job.Job{}}, sys: c.Company.Units}
		for i := range c.Families {
			f := &c.Families[i]
			for k := range f.Walls {
				item := c.Item(f.Walls[k].Item)
				each, least, most := float64(l.itemMass(item)), math.Inf(1), 0.0
				for _, panel := range f.Walls[k].Panels {
					mass, _ := c.Mass(panel.Part)
					per := float64(mass) / (panel.Width - f.Walls[k].Overlap).Feet()
					least, most = min(least, per), max(most, per)
				}
				const rounding = 0.006 // of a pound, in which the list weighs
				slack := float64(unit.MassOf(rounding * 0.45359237))
				if each < least-slack || each > most+slack || each <= 0 {
					t.Errorf("%s, %s: %s a foot, between %v and %v grams was expected", name, item.ID, unit.Mass(each).Text(l.sys), least, most)
				}
			}
		}
	}
}

// Everything that is carried weighs something on the price list.
func TestWhatIsCarriedHasAWeight(t *testing.T) {
	c := demoShop(t)
	l := &layout{q: &quote.Quote{Catalog: c, Job: &job.Job{}}, sys: c.Company.Units}
	for i := range c.Items {
		it := &c.Items[i]
		if mass := l.itemMass(it); mass <= 0 && (it.Geometry || len(it.Contents) > 0) {
			t.Errorf("%s weighs %s", it.ID, mass.Text(l.sys))
		}
	}
}

func demoShop(t *testing.T) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	return c
}

func smallestShop(t *testing.T) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("small", os.DirFS("../testdata/shops/small"))
	if c == nil {
		t.Fatal(list.Err())
	}
	return c
}
