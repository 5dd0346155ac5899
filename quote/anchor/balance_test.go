package anchor_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/quote/anchor"
	"tentwright/quote/frame"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/quote/tent"

	"pgregory.net/rapid"
)

// drawn is a random job whose tents can be planned: any tents, sides, gutters
// and grounds, at a site without slope or snow.
func drawn(t *rapid.T, c *catalog.Catalog) *job.Job {
	j := jobtest.Draw(t, c)
	j.Site = slices.DeleteFunc(j.Site, func(s job.SiteChoice) bool { return s.Factor != catalog.Surface })
	return j
}

// wrench is a force with its moment about the origin.
type wrench struct{ f, m frame.Point }

func (w *wrench) add(f, at frame.Point) {
	w.f.X, w.f.Y, w.f.Z = w.f.X+f.X, w.f.Y+f.Y, w.f.Z+f.Z
	w.m.X += at.Y*f.Z - at.Z*f.Y
	w.m.Y += at.Z*f.X - at.X*f.Z
	w.m.Z += at.X*f.Y - at.Y*f.X
}

func (w *wrench) plus(o wrench) {
	w.f = frame.Point{X: w.f.X + o.f.X, Y: w.f.Y + o.f.Y, Z: w.f.Z + o.f.Z}
	w.m = frame.Point{X: w.m.X + o.m.X, Y: w.m.Y + o.m.Y, Z: w.m.Z + o.m.Z}
}

func (w wrench) times(n float64) wrench {
	return wrench{frame.Point{X: n * w.f.X, Y: n * w.f.Y, Z: n * w.f.Z}, frame.Point{X: n * w.m.X, Y: n * w.m.Y, Z: n * w.m.Z}}
}

func (w *wrench) most() float64 {
	most := 0.0
	for _, v := range []float64{w.f.X, w.f.Y, w.f.Z, w.m.X, w.m.Y, w.m.Z} {
		most = max(most, math.Abs(v))
	}
	return most
}

// Sums of forces and moments, by no code of the package: the reactions of the
// legs, with what a joined tent takes over, undo the pressures, and over a group
// nothing is left over.
func TestEquilibrium(t *testing.T) {
	t.Run("European", func(t *testing.T) { balances(t, demo(t)) })
	t.Run("American", func(t *testing.T) { balances(t, anchor.American(t)) })
}

func balances(t *testing.T, c *catalog.Catalog) {
	planned := 0
	rapid.Check(t, func(t *rapid.T) {
		j := drawn(t, c)
		tents, list := tent.Build(c, j)
		if list.Err() != nil {
			t.Fatal(list.Err())
		}
		r, held := anchor.Build(c, j, tents)
		at := tent.Offsets(held)
		for n := range casesOf(r) {
			between := map[int]*wrench{}
			scale := map[int]float64{}
			for i := range r.Tents {
				x := &r.Tents[i]
				if n >= len(x.Cases) {
					continue
				}
				planned++
				k, g := &x.Cases[n], at[i].Group
				size := leftOver(t, x, k)
				if between[g] == nil {
					between[g] = &wrench{}
				}
				off := frame.Point{X: at[i].X, Y: at[i].Y}
				between[g].add(k.Next, off)
				between[g].plus(wrench{m: k.NextMoment})
				scale[g] = max(scale[g], size*(1+math.Abs(off.X)+math.Abs(off.Y)))
			}
			for g, w := range between {
				if w.most() > 1e-6*scale[g] {
					t.Fatalf("group %d, case %d: %v is left between its tents of %g", g, n, *w, scale[g])
				}
			}
		}
	})
	if planned < 1000 {
		t.Errorf("%d cases were planned; at least 1000 were expected", planned)
	}
}

// casesOf is the most cases that a tent has.
func casesOf(r *anchor.Result) int {
	most := 0
	for i := range r.Tents {
		most = max(most, len(r.Tents[i].Cases))
	}
	return most
}

// leftOver fails where a case of one tent does not balance, and tells how large
// the pressures are.
func leftOver(t *rapid.T, x *anchor.Tent, k *anchor.Case) float64 {
	w := wrench{k.Force, k.Moment}
	size := w.most()
	for l, f := range k.Legs {
		p := x.Legs[l].At
		p.Z = x.Legs[l].Rise
		w.add(f, p)
	}
	w.plus(wrench{k.Next, k.NextMoment})
	if w.most() > 1e-6*size {
		t.Fatalf("tent %s, %s: %v is left of %g", x.ID, k.Name, w, size)
	}
	return size
}

// Guys only pull, and only away from the tent: no leg is pushed by one, or held
// along its side. No anchor is a stake where none may be driven, and under a
// gutter there is no guy.
func TestGuysOnlyPull(t *testing.T) {
	c := demo(t)
	out := map[string]frame.Point{"front": {Y: -1}, "right": {X: 1}, "back": {Y: 1}, "left": {X: -1}}
	rapid.Check(t, func(t *rapid.T) {
		j := drawn(t, c)
		tents, _ := tent.Build(c, j)
		r, held := anchor.Build(c, j, tents)
		for i := range r.Tents {
			x, h := &r.Tents[i], &held[i]
			for n := range x.Legs {
				l := &x.Legs[n]
				var free []string
				marked := false
				for _, side := range l.Sides {
					marked = marked || !h.MayStakeAt(side)
					if h.MayStakeAt(side) && !slices.Contains(h.Shared, side) {
						free = append(free, side)
					}
				}
				switch l.Holding.Way {
				case anchor.Upright:
					if marked {
						t.Fatalf("leg %s of %s is staked on a marked side", l.Name, x.ID)
					}
				case anchor.Guyed:
					if len(free) == 0 {
						t.Fatalf("leg %s of %s is guyed though no side of it is free", l.Name, x.ID)
					}
					for _, k := range x.Cases {
						f, pulled := k.Legs[n], frame.Point{}
						for _, side := range free {
							n := max(0, f.X*out[side].X+f.Y*out[side].Y)
							pulled = frame.Point{X: pulled.X + n*out[side].X, Y: pulled.Y + n*out[side].Y}
						}
						// A guy lifts as its line does: what it pulls out keeps the leg down.
						for _, side := range free {
							out := f.X*out[side].X + f.Y*out[side].Y
							if asked := max(0, -f.Z) * l.Run / l.Rise / float64(len(free)); out < asked-1e-6*(1+asked) {
								t.Fatalf("leg %s of %s is lifted by %g in %s; its guy to the %s pulls out %g of %g", l.Name, x.ID, -f.Z, k.Name, side, out, asked)
							}
						}
						if math.Hypot(f.X-pulled.X, f.Y-pulled.Y) > 1e-6*(1+math.Hypot(f.X, f.Y)) {
							t.Fatalf("leg %s of %s is held by %v in %s, which no guy from %v gives", l.Name, x.ID, f, k.Name, free)
						}
					}
				}
			}
		}
	})
}

// integral is the force and moment of a pressure of 1 down on a plane over a
// polygon of the plan, by the moments of the polygon's area (Green's theorem):
// the plane is z = z0 + a x + b y, and its force on a plan area dA is (a, b, -1).
func integral(plane, over []frame.Point) wrench {
	p, q, r := plane[0], plane[1], plane[2]
	det := (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X)
	if det == 0 {
		r = plane[3]
		det = (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X)
	}
	a := ((q.Z-p.Z)*(r.Y-p.Y) - (q.Y-p.Y)*(r.Z-p.Z)) / det
	b := ((q.X-p.X)*(r.Z-p.Z) - (q.Z-p.Z)*(r.X-p.X)) / det
	z0 := p.Z - a*p.X - b*p.Y
	var area, sx, sy float64
	for i, u := range over {
		v := over[(i+1)%len(over)]
		d := u.X*v.Y - v.X*u.Y
		area, sx, sy = area+d/2, sx+d*(u.X+v.X)/6, sy+d*(u.Y+v.Y)/6
	}
	if area < 0 {
		area, sx, sy = -area, -sx, -sy
	}
	sz := z0*area + a*sx + b*sy
	return wrench{f: frame.Point{X: a * area, Y: b * area, Z: -area}, m: frame.Point{X: -sy - sz*b, Y: sz*a + sx, Z: sx*b - sy*a}}
}

// cutAt is the part of a polygon on one side of a line of the plan.
func cutAt(polygon []frame.Point, side func(frame.Point) float64) []frame.Point {
	var kept []frame.Point
	for i, p := range polygon {
		q := polygon[(i+1)%len(polygon)]
		a, b := side(p), side(q)
		if a >= 0 {
			kept = append(kept, p)
		}
		if a*b < 0 {
			t := a / (a - b)
			kept = append(kept, frame.Point{X: p.X + t*(q.X-p.X), Y: p.Y + t*(q.Y-p.Y), Z: p.Z + t*(q.Z-p.Z)})
		}
	}
	return kept
}

// The resultant of each case is what the pressures on roof, walls and gables add
// up to, integrated here in another way and from the case's name.
func TestResultants(t *testing.T) {
	c := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		j := drawn(t, c)
		tents, _ := tent.Build(c, j)
		r, held := anchor.Build(c, j, tents)
		for i := range r.Tents {
			if !r.Tents[i].Planned {
				continue
			}
			for n := range r.Tents[i].Cases {
				k := &r.Tents[i].Cases[n]
				want := expected(&held[i], &r.Tents[i], k.Name)
				got := wrench{k.Force, k.Moment}
				off := got
				off.plus(want.times(-1))
				if off.most() > 1e-6*want.most() {
					t.Fatalf("%s, %s: got %v; %v was expected", r.Tents[i].ID, k.Name, got, want)
				}
			}
		}
	})
}

// expected works the resultant of a European case out from its name.
func expected(t *tent.Tent, x *anchor.Tent, name string) wrench {
	from, how, _ := strings.Cut(strings.TrimPrefix(name, "wind from the "), ", ")
	value := x.Down
	if strings.HasSuffix(how, "up") {
		value = -x.Up
	}
	var windward, leeward float64
	switch strings.Fields(how)[0] {
	case "both":
		windward, leeward = value, value
	case "windward":
		windward = value
	default:
		leeward = value
	}
	length, width := t.Graph.Length.Metres(), t.Graph.Width.Metres()
	halves := from
	if t.Family.Kind == "clear-span" && (from == "left" || from == "right") {
		// A gable roof is halved at its ridge, wherever wind is from.
		halves = map[string]string{"left": "front", "right": "back"}[from]
	}
	near := map[string]func(frame.Point) float64{
		"front": func(p frame.Point) float64 { return width/2 - p.Y }, "back": func(p frame.Point) float64 { return p.Y - width/2 },
		"left": func(p frame.Point) float64 { return length/2 - p.X }, "right": func(p frame.Point) float64 { return p.X - length/2 }}[halves]
	var all wrench
	for _, plane := range t.Graph.Planes {
		all.plus(integral(plane, cutAt(plane, near)).times(windward))
		all.plus(integral(plane, cutAt(plane, func(p frame.Point) float64 { return -near(p) })).times(leeward))
	}
	// Closed sides push along the wind: 1.0 to windward and 0.5 to leeward.
	blow := map[string]frame.Point{"front": {Y: 1}, "back": {Y: -1}, "left": {X: 1}, "right": {X: -1}}[from]
	all.plus(pushed(t, from, blow))
	all.plus(pushed(t, job.Opposite(from), blow).times(0.5))
	return all
}

// pushed is a pressure of 1 along the wind on a closed side and on the gable of a
// clear-span structure.
func pushed(t *tent.Tent, side string, blow frame.Point) wrench {
	var all wrench
	if slices.Contains(t.Shared, side) {
		return all
	}
	length, width := t.Graph.Length.Metres(), t.Graph.Width.Metres()
	eave, rise := t.Graph.Eave.Metres(), t.Graph.Peak.Metres()-t.Graph.Eave.Metres()
	end := side == "left" || side == "right"
	at := map[string]frame.Point{"front": {X: length / 2}, "back": {X: length / 2, Y: width}, "left": {Y: width / 2}, "right": {X: length, Y: width / 2}}[side]
	push := func(area, z float64) {
		at.Z = z
		all.add(frame.Point{X: area * blow.X, Y: area * blow.Y}, at)
	}
	across := length
	if end {
		across = width
	}
	if slices.ContainsFunc(t.Walls, func(w tent.Wall) bool { return w.Side == side && w.Spec != nil }) {
		push(across*eave, eave/2)
	}
	if end && t.Family.Kind == "clear-span" {
		push(width*rise/2, eave+rise/3)
	}
	return all
}
