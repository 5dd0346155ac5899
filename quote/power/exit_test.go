package power

import (
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"

	"pgregory.net/rapid"
)

// Signs and lights of the way out hang on two circuits, each kind split evenly
// (IFC 2018 section 3103.12: two separate circuits).
func TestWayOutHangsOnTwoCircuits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		loads := make([]Load, 3)
		for i := range loads {
			group := []string{groupExit, groupExit, "light"}[i]
			loads[i] = Load{Spec: &catalog.PowerLoad{Group: group}, Count: rapid.IntRange(0, 40).Draw(t, "count"), Each: money.Float(5.6)}
			loads[i].VA = loads[i].Each.Mul(money.Int(loads[i].Count))
		}
		list := circuits(loads, money.Int(1920), 2)
		hung := map[*Load][]int{}
		ways := 0
		for _, c := range list {
			if c.Group == groupExit {
				ways++
			}
			for _, on := range c.On {
				hung[on.Load] = append(hung[on.Load], on.Count)
			}
		}
		if all := loads[0].Count + loads[1].Count; ways != min(all, 2) {
			t.Fatalf("%d pieces hang on %d circuits; two were expected", all, ways)
		}
		for i := range loads[:2] {
			h := hung[&loads[i]]
			if n := loads[i].Count; n > 1 && (len(h) != 2 || h[0]+h[1] != n || h[0]-h[1] > 1 || h[1]-h[0] > 1) {
				t.Fatalf("%d of a kind hang as %v; halves were expected", n, h)
			}
		}
	})
}

// Each heater has a cylinder of its own, and as many as feed it.
func TestCylindersFeedTheHeaters(t *testing.T) {
	const short = "heat: {inside: 68 F, outside: 60 F, hours: 1}\n"
	c := demo(t)
	f := c.Power.FuelOf("propane-100")
	for _, x := range []struct {
		name   string
		steady string
		demo   bool
		want   string
	}{{"of 170,000 Btu/h from cylinders of 100,000", "100000", true, "6"}, {"from larger ones", "170000", true, "3"}, {"in a shop of its own, marked demo", "100000", false, "3"}} {
		f.Steady.Output, c.Demo = money.Float(170000), x.demo
		if x.steady == "100000" {
			f.Steady.Output = money.Int(100000)
		}
		c.Power.Cover.Demo, c.Power.Air.Demo = false, false
		r := built(t, c, hall+"items: [{item: heater-170, quantity: 3}]\n"+short)
		for _, got := range r.Fuels {
			if got.Item.ID == "propane-100" && (got.Needed.String() != x.want || got.Taken().String() != x.want) {
				t.Errorf("three heaters %s: %s cylinders are needed, %s go along; %s were expected", x.name, got.Needed, got.Taken(), x.want)
			}
		}
	}
}

// What is asked for and cannot be worked out is told apart from what is only
// not known.
func TestAskedButNotWorkedOut(t *testing.T) {
	const closed = "tents: [{id: a, family: hip, size: 20x20}]\n"
	for _, x := range []struct {
		name           string
		c              *catalog.Catalog
		body           string
		asked, missing int
	}{
		{"heat and current", ownShop(t), hall + "heat: {inside: 68 F, outside: 36 F, hours: 8}\npower: {source: site, distance: 150 ft}\n", 2, 3},
		{"light alone", ownShop(t), hall, 0, 1},
		{"heat for tents without a wall", demo(t), closed + "heat: {inside: 68 F, outside: 36 F, hours: 8}\n", 1, 1},
		{"all known", demo(t), hall + "heat: {inside: 68 F, outside: 36 F, hours: 8}\npower: {source: site, distance: 150 ft}\n", 0, 0},
	} {
		if r := built(t, x.c, x.body); r.Asked != x.asked || len(r.Missing) != x.missing {
			t.Errorf("%s: %d of %q; %d of %d were expected", x.name, r.Asked, r.Missing, x.asked, x.missing)
		}
	}
}
