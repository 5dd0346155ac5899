package draw

import (
	"image/color"
	"slices"
	"strconv"

	"gonum.org/v1/plot/vg"

	"tentwright/quote/layout"
)

// Parts of the page, in points.
const (
	panelWide = 180 // of what is said beside the drawing
	edge      = 8   // white all round
	rulerRoom = 18  // for the plot's own measures, at the left and below
)

// plan is the plot while it is drawn.
type plan struct {
	*pen
	p *layout.Plan
	s scale

	legsIn  bool // a leg's number is written
	legsOut bool // one has no room
}

// drawPlan draws the whole page: first the ground, then what stands on it, then
// words, so that no line runs through them.
func drawPlan(c vg.Canvas, p *layout.Plan) {
	low, high := p.Extent()
	low = layout.Point{X: min(low.X, p.Low.X), Y: min(low.Y, p.Low.Y)}
	high = layout.Point{X: max(high.X, p.High.X), Y: max(high.Y, p.High.Y)}
	from := vg.Point{X: edge + rulerRoom, Y: edge + rulerRoom}
	space := vg.Point{X: Width - panelWide - edge - from.X, Y: Height - 2*edge - from.Y}
	size := high.Minus(low)
	d := &plan{p: p, s: scaleFor(p.Units, size.X, size.Y, space)}
	d.pen = &pen{Canvas: c, perMetre: d.s.perMetre}
	// In the middle of its space.
	spare := vg.Point{X: (space.X - vg.Length(size.X*d.perMetre)) / 2, Y: (space.Y - vg.Length(size.Y*d.perMetre)) / 2}
	d.zero = from.Add(spare).Sub(vg.Point{X: vg.Length(low.X * d.perMetre), Y: vg.Length(low.Y * d.perMetre)})

	d.ground()
	for i := range p.Tents {
		d.staking(&p.Tents[i])
	}
	for i := range p.Tents {
		d.tent(&p.Tents[i])
	}
	d.gaps()
	d.distances()
	for i := range p.Tents {
		d.named(&p.Tents[i])
	}
	d.obstacleNames()
	d.signsTaken()
	for i := range p.Tents {
		d.sideNames(&p.Tents[i])
	}
	for i := range p.Tents {
		d.legNumbers(&p.Tents[i])
	}
	for i := range p.Faults {
		if area := p.Faults[i].Area; len(area) > 0 {
			d.mark(d.spot(area), i+1)
		}
	}
	d.panel()
}

// ground draws the plot's edges with their measures, what stands on it, and what
// is taken twice.
func (d *plan) ground() {
	plot := d.all(layout.Rectangle(d.p.Low, d.p.High))
	if d.p.Given {
		d.style(1.1, black, 9, 2.5, 1.5, 2.5)
		d.ring(plot)
		d.measure(vg.Point{X: plot[0].X, Y: plot[0].Y - 11}, vg.Point{X: plot[1].X, Y: plot[1].Y - 11}, d.p.Text(d.p.High.X-d.p.Low.X))
		d.measure(vg.Point{X: plot[0].X - 11, Y: plot[0].Y}, vg.Point{X: plot[3].X - 11, Y: plot[3].Y}, d.p.Text(d.p.High.Y-d.p.Low.Y))
	}
	for i := range d.p.Obstacles {
		area := d.all(d.p.Obstacles[i].Area)
		d.style(0.4, grey)
		d.hatch(area, 4)
		d.style(1, black)
		d.ring(area)
	}
	for i := range d.p.Faults {
		area := d.all(d.p.Faults[i].Area)
		if len(area) == 0 {
			continue
		}
		d.SetColor(color.RGBA{255, 210, 210, 255})
		d.area(area)
		d.style(0.8, red)
		d.ring(area)
	}
}

// staking draws what holds a tent beyond its roof.
func (d *plan) staking(t *layout.Tent) {
	if len(t.Guys) > 0 {
		d.style(0.6, black, 3, 2.2)
		d.ring(d.all(t.Footprint))
	}
	d.style(0.4, grey)
	for _, g := range t.Guys {
		d.line(d.to(g.From), d.to(g.To))
	}
}

// cross is the mark of a stake.
func (d *plan) cross(at vg.Point) {
	const r = 1.7
	d.style(0.8, black)
	d.line(vg.Point{X: at.X - r, Y: at.Y - r}, vg.Point{X: at.X + r, Y: at.Y + r})
	d.line(vg.Point{X: at.X - r, Y: at.Y + r}, vg.Point{X: at.X + r, Y: at.Y - r})
}

// tent draws roof, walls with their exits, legs and poles.
func (d *plan) tent(t *layout.Tent) {
	d.style(0.5, pale)
	for _, r := range t.Ridges {
		d.line(d.to(r.From), d.to(r.To))
	}
	d.style(0.9, black)
	d.ring(d.all(t.Outline))
	for i := range t.Sides {
		d.side(&t.Sides[i])
	}
	for i := range t.Legs {
		d.leg(d.to(t.Legs[i].At))
	}
	for _, at := range t.Ballast {
		d.weight(d.to(at))
	}
	for _, at := range t.Stakes {
		d.cross(d.to(at))
	}
	d.SetColor(black)
	for _, at := range t.Poles {
		d.Fill(circle(d.to(at), 1.5))
	}
}

func (d *plan) leg(at vg.Point) {
	d.SetColor(white)
	d.Fill(circle(at, 1.8))
	d.style(0.7, black)
	d.Stroke(circle(at, 1.8))
}

func (d *plan) weight(at vg.Point) {
	d.SetColor(black)
	d.area(box(at.X-2, at.Y-2, 4, 4))
}

// side draws a wall thick between its exits, and where no stake may be driven.
func (d *plan) side(s *layout.Side) {
	last := s.Line.From
	d.style(2.4, black)
	for _, e := range append(slices.Clip(s.Exits), layout.Segment{From: s.Line.To, To: s.Line.To}) {
		if s.Wall != "" {
			d.line(d.to(last), d.to(e.From))
		}
		last = e.To
	}
	for _, e := range s.Exits {
		// A gap also in the thin line of the roof.
		d.style(2.4, white)
		d.line(d.to(e.From), d.to(e.To))
	}
	out := s.Line.Outward()
	beside := func(at layout.Point, by vg.Length) vg.Point {
		q := d.to(at)
		return vg.Point{X: q.X + by*vg.Length(out.X), Y: q.Y + by*vg.Length(out.Y)}
	}
	if s.NoStakes {
		d.style(2.2, black, 1.2, 3)
		d.line(beside(s.Line.From, 4), beside(s.Line.To, 4))
	}
	if s.Gutter {
		d.style(0.8, black)
		d.line(beside(s.Line.From, -2), beside(s.Line.To, -2))
	}
}

// measure is a line with its length: ticks at both ends, the words on the line
// where they fit, else beside it.
func (d *plan) measure(a, b vg.Point, text string) {
	const size, tick = 6, 2.2
	d.style(0.5, black)
	d.line(a, b)
	for _, at := range []vg.Point{a, b} {
		d.line(vg.Point{X: at.X - tick, Y: at.Y - tick}, vg.Point{X: at.X + tick, Y: at.Y + tick})
	}
	upright := max(a.X, b.X)-min(a.X, b.X) < max(a.Y, b.Y)-min(a.Y, b.Y)
	long := max(a.X, b.X) - min(a.X, b.X) + max(a.Y, b.Y) - min(a.Y, b.Y)
	middle := vg.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
	w := words{text: text, size: size, align: 0.5, halo: 1.2}
	switch short := long < width(text, size, false)+8; {
	case short && upright:
		w.align = 0
		middle.X += 4
	case short:
		middle.Y += 6
	case upright:
		w.turn = 1
	}
	d.write(middle, w)
}

// mostGaps is how many distances a drawing can hold and still be read.
const mostGaps = 80

// distances draws those from what is staked to buildings and vehicles nearby.
func (d *plan) distances() {
	drawn := 0
	for i := range d.p.Distances {
		g := &d.p.Distances[i]
		long := g.Line.Length() * d.perMetre
		near := 2 * max(g.Wanted, layout.Between.Metres())
		if g.Kind == layout.ToEdge || g.Kind == layout.ToTent || long < 5 || g.Is > near || drawn > mostGaps {
			continue
		}
		drawn++
		d.measure(d.to(g.Line.From), d.to(g.Line.To), d.p.Text(g.Is))
	}
}

// gaps draws the distances between roofs, and to the edges.
func (d *plan) gaps() {
	if len(d.p.Gaps) > mostGaps {
		return
	}
	for _, g := range d.p.Gaps {
		a, b := d.to(g.Line.From), d.to(g.Line.To)
		if long := g.Line.Length() * d.perMetre; long >= 5 {
			d.measure(a, b, d.p.Text(g.Line.Length()))
		}
	}
}

// spot is where the number of a fault stands: in the middle of a small area, in
// the corner of one that has room for other words.
func (d *plan) spot(area layout.Polygon) vg.Point {
	const large = 60
	low, high := area.Box()
	if a, b := d.to(low), d.to(high); b.X-a.X > large && b.Y-a.Y > large {
		return vg.Point{X: a.X + 12, Y: b.Y - 12}
	}
	return d.to(area.Middle())
}

// mark is the number of a fault, as it stands in the list beside the drawing.
func (d *plan) mark(at vg.Point, number int) {
	d.SetColor(red)
	d.Fill(circle(at, 5.5))
	d.style(0.8, black)
	d.Stroke(circle(at, 5.5))
	d.write(at, words{text: strconv.Itoa(number), size: 7, bold: true, align: 0.5, color: white})
}
