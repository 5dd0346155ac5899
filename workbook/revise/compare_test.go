package revise_test

import (
	"slices"
	"strings"
	"testing"

	"tentwright/catalog/money"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/revise"
)

// pair finds a figure of the whole job.
func pair(t testing.TB, c *revise.Comparison, key string) workbook.Pair {
	t.Helper()
	for _, p := range c.Totals {
		if p.Key == key {
			return p
		}
	}
	t.Fatalf("no total %q", key)
	return workbook.Pair{}
}

// A workbook is the same as itself.
func TestCompareWithItself(t *testing.T) {
	for _, name := range demoJobs {
		q := demoQuote(t, name)
		x, _ := revise.Open("a.xlsx", workbook.Layout(q).Found())
		y, _ := revise.Open("b.xlsx", workbook.Layout(q).Found())
		c, list := revise.Compare(x, y)
		if c == nil || len(list) > 0 || len(c.Loads) > 0 || !strings.Contains(c.Basis, "as planned") {
			t.Fatalf("%s: %v %+v", name, list, c)
		}
		for _, line := range c.Lines {
			if line.State != workbook.LineSame {
				t.Errorf("%s: line %s is %s", name, line.Name, line.State)
			}
		}
	}
}

// Edits of one workbook show as differences, whose amounts add up to that of the
// price before tax, and the load changes by the same pieces as the parts.
func TestCompareEdits(t *testing.T) {
	q := demoQuote(t, "dinner")
	book := workbook.Layout(q)
	path := file(t, "dinner.xlsx", book)
	x := typing{t: t, found: book.Found()}
	x.in("build", "key", "L:1", "quantity", 24) // four dinner kits more
	x.in("build", "key", "L:9", "quantity", 8)  // four cords less
	old, now := reopen(t, path), reopen(t, x.into(path))
	c, list := revise.Compare(old, now)
	if c == nil {
		t.Fatal(list)
	}
	sum := money.Zero
	changed := 0
	for _, line := range c.Lines {
		sum = sum.Add(line.Amount.Difference())
		if line.State == workbook.LineChanged && line.Unit != "" {
			changed++
		}
	}
	if d := pair(t, c, "subtotal").Difference(); !sum.Equal(d) || sum.IsZero() {
		t.Errorf("the lines differ by %s, the price before tax by %s", sum, d)
	}
	if changed < 2 {
		t.Errorf("%d lines changed", changed)
	}
	for _, part := range c.Old.Parts.Lines {
		was, is := part.Total(), 0
		if line := c.New.Parts.Find(part.Part.ID); line != nil {
			is = line.Total()
		}
		i := slices.IndexFunc(c.Loads, func(l workbook.LoadChange) bool { return l.Part.ID == part.Part.ID })
		if was == is && i >= 0 || was != is && (i < 0 || c.Loads[i].On != was || c.Loads[i].Want != is) {
			t.Errorf("%s: %d before, %d now, load change %v", part.Part.ID, was, is, i)
		}
	}
	layout := workbook.LayoutSideBySide(c.New, &c.SideBySide)
	calc.Need(t)
	allTrue(t, file(t, "compare.xlsx", layout))
}

// What is on the trucks follows ticks and counts: nothing that is not ticked,
// unless it was counted.
func TestLoadByTicks(t *testing.T) {
	q := demoQuote(t, "dinner")
	book := workbook.Layout(q)
	path := file(t, "dinner.xlsx", book)
	lots := lots(q, 3)
	of := func(n int) (id string, total int) {
		id = lots[n].Part.ID
		return id, q.Parts.Find(id).Total()
	}
	for _, ticks := range []bool{true, false} {
		x := typing{t: t, found: book.Found()}
		if ticks {
			x.in("pick", "part", lots[0].Part.ID, "ticked", "☑")
		}
		x.in("pick", "part", lots[1].Part.ID, "loaded", 2)
		c, list := revise.Compare(reopen(t, x.into(path)), reopen(t, path))
		if c == nil {
			t.Fatal(list)
		}
		on := func(n int) int {
			id, total := of(n)
			for _, l := range c.Loads {
				if l.Part.ID == id {
					return l.On
				}
			}
			return total
		}
		_, third := of(2)
		want := []int{0, 2, third}
		if _, want[0] = of(0); ticks {
			want[2] = 0
		}
		for n, w := range want {
			if on(n) != w {
				t.Errorf("ticks %t: %d of %s on the trucks, want %d; by %s", ticks, on(n), lots[n].Part.ID, w, c.Basis)
			}
		}
	}
}

// Two quotes are compared with a warning; a count that is none is a fault.
func TestCompareWarnsAndRefuses(t *testing.T) {
	x, _ := revise.Open("a.xlsx", workbook.Layout(demoQuote(t, "dinner")).Found())
	y, _ := revise.Open("b.xlsx", workbook.Layout(demoQuote(t, "garden")).Found())
	c, list := revise.Compare(x, y)
	if c == nil || len(list) != 1 || list[0].Code != revise.OtherQuote {
		t.Errorf("%v", list)
	}
	f := workbook.Layout(demoQuote(t, "garden")).Found()
	typeInto(t, f, typed{"pick_loaded", 0, txt("many")})
	z, _ := revise.Open("c.xlsx", f)
	if c, list := revise.Compare(z, y); c != nil || list[0].Pos.Cell == "" {
		t.Errorf("%v", list)
	}
}
