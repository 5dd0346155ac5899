package quote_test

import (
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tentwright/catalog"
	"tentwright/catalog/diag/diagtest"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/quote/labour"
	"tentwright/quote/load"
	"tentwright/quote/parts"

	"gopkg.in/yaml.v3"
	"pgregory.net/rapid"
)

// Units of the other system, exactly (NIST SP 811, appendix B).
const (
	metres     = 0.3048
	squares    = 0.09290304
	kilometres = 1.609344
	kilograms  = 0.45359237
)

// perUnit is how large the unit of a measured driver or item is; the others
// are counted.
var perUnit = map[string]float64{
	"ft": metres, "perimeter": metres, "walled": metres, "gutter": metres,
	"sq ft": squares, "area": squares, "roof-area": squares, "all-area": squares,
	"distance": kilometres, "truck-miles": kilometres, "back-truck-miles": kilometres, "ride-miles": kilometres, "back-ride-miles": kilometres,
	"weight-out": kilograms, "weight-back": kilograms,
}

// bothShops is the demonstration shop as it is and as one whose every length,
// weight and price by measure is metric. Neither has quantity breaks on what is
// measured: those are at whole units of one system.
func bothShops(t *testing.T) (imperial, metric *catalog.Catalog) {
	t.Helper()
	one, other := diagtest.With(t, catalog.Demo(), "", nil), fstest.MapFS{}
	for name, file := range one {
		other[name] = file
		if !strings.HasSuffix(name, ".yaml") {
			continue
		}
		var plain, turned yaml.Node
		for _, into := range []*yaml.Node{&plain, &turned} {
			if err := yaml.Unmarshal(file.Data, into); err != nil {
				t.Fatal(err)
			}
			withoutBreaks(into)
		}
		turn(&turned)
		one[name], other[name] = yamlFile(t, &plain), yamlFile(t, &turned)
	}
	return loaded(t, one), loaded(t, other)
}

func yamlFile(t *testing.T, n *yaml.Node) *fstest.MapFile {
	t.Helper()
	data, err := yaml.Marshal(n)
	if err != nil {
		t.Fatal(err)
	}
	return &fstest.MapFile{Data: data}
}

func loaded(t *testing.T, shop fs.FS) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("shop", shop)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	if list := quote.CheckShop(c); len(list) > 0 {
		t.Fatal(list.Err())
	}
	return c
}

// field is the value of a field; nil if it is not given.
func field(n *yaml.Node, name string) *yaml.Node {
	for i := 0; i+1 < len(n.Content) && n.Kind == yaml.MappingNode; i += 2 {
		if n.Content[i].Value == name {
			return n.Content[i+1]
		}
	}
	return nil
}

// withoutBreaks takes the quantity breaks off every measured item below n.
func withoutBreaks(n *yaml.Node) {
	if u := field(n, "unit"); u != nil && perUnit[u.Value] > 0 {
		if at := slices.IndexFunc(n.Content, func(c *yaml.Node) bool { return c.Value == "breaks" }); at >= 0 {
			n.Content = slices.Delete(n.Content, at, at+2)
		}
	}
	for _, c := range n.Content {
		withoutBreaks(c)
	}
}

// turn makes everything below n metric.
func turn(n *yaml.Node) {
	per := func(size float64, names ...string) {
		for _, name := range names {
			if v := field(n, name); v != nil {
				divide(v, size)
			}
		}
	}
	if d := field(n, "driver"); d != nil && perUnit[d.Value] > 0 {
		per(perUnit[d.Value], "minutes", "per")
	}
	if u := field(n, "unit"); u != nil && perUnit[u.Value] > 0 {
		size := perUnit[u.Value]
		per(size, "price", "cost")
		if contents := field(n, "contents"); contents != nil {
			for _, c := range contents.Content {
				divide(field(c, "count"), size)
			}
		}
		u.Value = map[float64]string{metres: "m", squares: "sq m"}[size]
	}
	per(squares, "area_price", "area_cost")
	per(kilometres, "per_mile", "mile_cost")
	if u := field(n, "units"); u != nil {
		u.Value = "metric"
	}
	if n.Kind == yaml.ScalarNode {
		n.Value, n.Style = inMetric(n.Value), yaml.DoubleQuotedStyle&n.Style
	}
	for _, c := range n.Content {
		turn(c)
	}
}

// inMetric is a length, weight or size in metres and kilograms; other texts
// stay as they are.
func inMetric(text string) string {
	exact := func(l unit.Length) string { return fmt.Sprintf("%d.%06d m", l/unit.Metre, l%unit.Metre) }
	if l, err := unit.ParseLength(text); err == nil {
		return exact(l)
	}
	if m, err := unit.ParseMass(text); err == nil {
		return fmt.Sprintf("%d.%010d kg", m/unit.Kilogram, m%unit.Kilogram)
	}
	if z, err := unit.ParseSize(text); err == nil {
		return exact(z.L) + " x " + exact(z.W) + " x " + exact(z.H)
	}
	return text
}

// divide makes a number for the unit of the one system one for the unit of the
// other.
func divide(n *yaml.Node, size float64) {
	number, _ := money.Parse(n.Value)
	n.Value, n.Tag = money.DivRound(number, money.Float(size), 15).String(), ""
}

// inMetres is a job with its measured quantities in metres. The distance is a
// multiple of 6.4 miles: those are tenths of a kilometre as well, within 1 in
// 50,000. Heat and current are left out: whole heaters and cylinders would
// differ at the edge of a rounding; package power compares the two systems.
func inMetres(c *catalog.Catalog, j *job.Job) (imperial, metric *job.Job) {
	one, other := *j, *j
	one.Heat, one.Power, other.Heat, other.Power = nil, nil, nil, nil
	one.Delivery.Distance = max(1, j.Delivery.Distance/(10*unit.Mile)) * (64 * unit.Mile / 10)
	other.Delivery.Distance = one.Delivery.Distance
	other.Items = slices.Clone(j.Items)
	for i := range other.Items {
		if size := perUnit[c.Item(other.Items[i].Item).Unit]; size > 0 {
			other.Items[i].Quantity = other.Items[i].Quantity.Mul(money.Float(size))
		}
	}
	return &one, &other
}

// near fails where two numbers differ by more than a share of the first and a
// sum.
func near(t failer, what string, got, want money.Number, share, sum float64) {
	t.Helper()
	a, b := got.InexactFloat64(), want.InexactFloat64()
	if math.Abs(a-b) > share*math.Abs(b)+sum {
		t.Fatalf("%s is %v in the metric shop and %v in the imperial one", what, a, b)
	}
}

// A yard that counts in metres and kilograms quotes the same job with the same
// parts, weights and hours, and the same money but for what rounding a price
// by the metre to the cent makes of it.
func TestMetricShopIsTheSameShop(t *testing.T) {
	imperial, metric := bothShops(t)
	rapid.Check(t, func(t *rapid.T) {
		a, b := inMetres(imperial, jobtest.Draw(t, imperial))
		one, other := quoted(t, imperial, a), quoted(t, metric, b)
		sameCounts(t, one.Parts, other.Parts)
		light := sameParts(t, one.Parts, other.Parts)
		if off := math.Abs((one.Load.Out.Mass - other.Load.Out.Mass).Kilograms()); off > light {
			t.Fatalf("the load weighs %s and %s", one.Load.Out.Mass.Text(unit.Metric), other.Load.Out.Mass.Text(unit.Metric))
		}
		if driven(one) != driven(other) {
			t.Skip("a load at the edge of a vehicle goes another way")
		}
		sameHours(t, one.Labour, other.Labour)
		sameMoney(t, one, other)
	})
}

// driven is which vehicles go out and back.
func driven(q *quote.Quote) string {
	var trips []string
	for _, m := range []*load.Manifest{&q.Load.Out, &q.Load.Back} {
		for i := range m.Trips {
			trips = append(trips, m.Trips[i].Vehicle.ID)
		}
		trips = append(trips, "/")
	}
	return strings.Join(trips, " ")
}

// sameCounts compares what is counted exactly, and what is measured within the
// two places that either shop rounds to.
func sameCounts(t failer, one, other *parts.Result) {
	t.Helper()
	if len(one.Counts) != len(other.Counts) {
		t.Fatalf("%d counts and %d", len(one.Counts), len(other.Counts))
	}
	for i := range one.Counts {
		a, b := &one.Counts[i], &other.Counts[i]
		size := perUnit[a.Driver]
		if strings.HasPrefix(a.Driver, "wall ") {
			size = metres
		}
		if size == 0 {
			alike(t, a.Key, b.Amount, a.Amount)
			continue
		}
		near(t, a.Key, b.Per, a.Per.Mul(money.Float(size)), 2e-5, 0.01)
	}
}

// sameParts wants the same of each part, but one more or less of what a rule
// asks for by measure, and weights to the hundredth of a pound and kilogram. It
// gives the kilograms by which the load may differ.
func sameParts(t failer, one, other *parts.Result) float64 {
	t.Helper()
	slack := map[*catalog.Part]int{}
	for i := range one.Needs {
		n := &one.Needs[i]
		at := slices.IndexFunc(one.Counts, func(c parts.Count) bool { return c.Key == n.Count })
		if n.Rule != "" && at >= 0 && perUnit[one.Counts[at].Driver] > 0 {
			slack[n.Part] += 2 // a spare may go with it
		}
	}
	if len(one.Lines) != len(other.Lines) {
		t.Fatalf("%d parts and %d", len(one.Lines), len(other.Lines))
	}
	kilos := 0.1
	for i := range one.Lines {
		a, b := &one.Lines[i], &other.Lines[i]
		if off := a.Total() - b.Total(); a.Part.ID != b.Part.ID || max(off, -off) > slack[a.Part] {
			t.Fatalf("%d of %s and %d of %s", a.Total(), a.Part.ID, b.Total(), b.Part.ID)
		}
		const step = 0.005 + 0.005*kilograms
		if math.Abs((a.Each - b.Each).Kilograms()) > step+1e-9 {
			t.Fatalf("%s weighs %s and %s", a.Part.ID, a.Each.Text(unit.Imperial), b.Each.Text(unit.Metric))
		}
		kilos += step*float64(a.Total()) + float64(slack[a.Part])*a.Each.Kilograms()
		if a.Part.Pack.Tare != nil {
			kilos += step*float64(a.Total()) + float64(slack[a.Part])*a.Part.Pack.Tare.Kilograms()
		}
	}
	return kilos
}

// sameHours compares each task; a light part that is weighed to the hundredth
// makes a load up to a few percent heavier.
func sameHours(t failer, one, other *labour.Result) {
	t.Helper()
	if len(one.Tasks) != len(other.Tasks) {
		t.Fatalf("%d tasks and %d", len(one.Tasks), len(other.Tasks))
	}
	for i := range one.Tasks {
		a, b := &one.Tasks[i], &other.Tasks[i]
		share := 0.002
		if strings.HasPrefix(a.Rule.Driver, "weight") {
			share = 0.03
		}
		near(t, a.Key, b.Hours, a.Hours, share, 0.02)
	}
	near(t, "hours", other.Hours, one.Hours, 0.01, 0.2)
}

// sameMoney compares each line: what is counted to the cent, what is measured
// or takes hours to a share.
func sameMoney(t failer, one, other *quote.Quote) {
	t.Helper()
	a, b := one.Price, other.Price
	if len(a.Lines) != len(b.Lines) {
		t.Fatalf("%d lines and %d", len(a.Lines), len(b.Lines))
	}
	for i := range a.Lines {
		x, y := &a.Lines[i], &b.Lines[i]
		if x.Order != nil && (x.Order.Item == nil && x.Order.Tent.Size.Price != nil || x.Order.Item != nil && perUnit[x.Unit] == 0) {
			alike(t, x.Key, y.Amount, x.Amount)
			alike(t, x.Key+", cost", y.Cost, x.Cost)
			continue
		}
		slack := 2.0
		if strings.HasPrefix(x.Key, "O:") {
			slack = 20 // overtime is what is left above a limit: a rounded distance shows in it most
		}
		near(t, x.Key, y.Amount, x.Amount, 0.015, slack)
		near(t, x.Key+", cost", y.Cost, x.Cost, 0.015, 2)
	}
	near(t, "subtotal", b.Subtotal, a.Subtotal, 0.01, 5)
	near(t, "tax", b.Tax, a.Tax, 0.01, 5)
	near(t, "total", b.Total, a.Total, 0.01, 5)
}
