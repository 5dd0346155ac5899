package load

import (
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"
)

// Every part of the demonstration shop can ride on some vehicle of its fleet,
// whether the job takes none of each, a few or far more than one turn.
func TestDemoShopLoads(t *testing.T) {
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{0, 2, 20, 100} {
		var lines []parts.Line
		for i := range c.Parts {
			p := &c.Parts[i]
			each, ok := c.Mass(p.ID)
			if !ok {
				each = 150 * unit.Pound // a section of a top, which its tent weighs
			}
			lines = append(lines, parts.Line{Part: p, Each: each, Counted: n})
		}
		plan, list := Pack(c, &parts.Result{Lines: lines}, money.Int(20))
		if err := list.Err(); err != nil {
			t.Fatal(err)
		}
		checkPlan(t, c, lines, plan)
		t.Logf("%d of each: %d trips, %s", n, len(plan.Out.Trips), plan.Out.Mass.Text(c.Company.Units))
	}
}
