package draw

import (
	"math"
	"strconv"

	"gonum.org/v1/plot/vg"

	"tentwright/quote/layout"
)

// named writes what belongs to a tent: exits, sides without stakes, its number
// and, where there is room, its name and size.
func (d *plan) named(t *layout.Tent) {
	for i := range t.Sides {
		s := &t.Sides[i]
		for _, e := range s.Exits {
			d.exit(e)
		}
		if s.NoStakes {
			d.noStakes(s)
		}
	}
	middle := d.to(t.Outline.Middle())
	if lines, size := d.labelLines(t); len(lines) > 0 {
		step := size * 1.25
		middle.Y += step * vg.Length(len(lines)-1) / 2
		if len(t.Poles) > 0 {
			middle.Y -= step*vg.Length(len(lines))/2 + 3 // below the poles on the ridge
		}
		for i, line := range lines {
			d.write(middle, words{text: line, size: size, bold: i < len(lines)-d.plainLines(t), align: 0.5, halo: 1.5})
			middle.Y -= step
		}
		return
	}
	d.write(middle, words{text: strconv.Itoa(t.Number), size: 7, bold: true, align: 0.5, halo: 1})
}

// plainLines is how many lines follow a tent's name.
func (d *plan) plainLines(t *layout.Tent) int {
	if weighted(t) {
		return 2
	}
	return 1
}

// weighted tells whether a tent is held by weight alone.
func weighted(t *layout.Tent) bool {
	return len(t.Ballast) > 0 && len(t.Ballast) == len(t.Legs) && len(t.Stakes) == 0
}

// labelLines is what stands within a tent, and how large; none where it does not
// fit, so that only the number stands there and the rest in the list.
func (d *plan) labelLines(t *layout.Tent) (lines []string, size vg.Length) {
	low, high := t.Outline.Box()
	wide, deep := vg.Length((high.X-low.X)*d.perMetre)-8, vg.Length((high.Y-low.Y)*d.perMetre)-8
	full := strconv.Itoa(t.Number) + "  " + t.Label()
	for _, size := range []vg.Length{9, 8, 7, 6} {
		lines := wrapped(full, size, true, wide, 3)
		lines = append(lines, d.p.SizeOf(t))
		if weighted(t) {
			lines = append(lines, "on ballast")
		}
		if d.whole(lines[:len(lines)-d.plainLines(t)], full) && size*1.25*vg.Length(len(lines)) <= deep &&
			width(lines[len(lines)-1], size, false) <= wide && width(d.p.SizeOf(t), size, false) <= wide {
			return lines, size
		}
	}
	return nil, 0
}

// whole tells whether broken lines hold all of a text.
func (d *plan) whole(lines []string, text string) bool {
	joined := ""
	for i, line := range lines {
		if i > 0 {
			joined += " "
		}
		joined += line
	}
	return joined == clean(text)
}

// exit marks a gap in a wall: an arrow through it, and the word outside.
func (d *plan) exit(e layout.Segment) {
	out, at := e.Outward(), d.to(e.Along(0.5))
	ahead := func(by, across vg.Length) vg.Point {
		x, y := vg.Length(out.X), vg.Length(out.Y)
		return vg.Point{X: at.X + by*x - across*y, Y: at.Y + by*y + across*x}
	}
	d.style(0.8, black)
	d.line(ahead(-5, 0), ahead(2, 0))
	d.SetColor(black)
	d.area([]vg.Point{ahead(5, 0), ahead(1.5, 2), ahead(1.5, -2)})
	w := words{text: "EXIT", size: 5.5, bold: true, align: 0.5, halo: 0.8}
	by := vg.Length(9)
	if math.Abs(out.X) > 0.5 {
		// Beside the wall, from the arrow outward.
		by, w.align = 7, 0
		if out.X < 0 {
			w.align = 1
		}
	}
	d.write(ahead(by, 0), w)
}

// noStakes writes along the inner edge of a side, away from its exits, that none
// may be driven.
func (d *plan) noStakes(s *layout.Side) {
	w := words{text: "NO STAKES", size: 6, bold: true, align: 0.5, halo: 0.8}
	long := width(w.text, w.size, true)
	if vg.Length(s.Line.Length()*d.perMetre) < long+2 {
		return
	}
	out := s.Line.Outward()
	if math.Abs(out.X) > 0.5 {
		w.turn = 1
	}
	for _, t := range []float64{0.5, 0.3, 0.7, 0.2, 0.8} {
		at, clear := s.Line.Along(t), true
		for _, e := range s.Exits {
			far := at.Minus(e.Along(0.5)).Length() - e.Length()/2
			clear = clear && vg.Length(far*d.perMetre) > long/2+8
		}
		if clear || t == 0.8 {
			q := d.to(at)
			d.write(vg.Point{X: q.X - 7*vg.Length(out.X), Y: q.Y - 7*vg.Length(out.Y)}, w)
			return
		}
	}
}

// obstacleNames writes in each obstacle what it is, or below it where it is too
// small.
func (d *plan) obstacleNames() {
	for i := range d.p.Obstacles {
		o := &d.p.Obstacles[i]
		low, high := o.Area.Box()
		a, b := d.to(low), d.to(high)
		w := words{text: fit(o.Name, 6.5, true, 90), size: 6.5, bold: true, align: 0.5, halo: 1}
		at := vg.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
		long := width(w.text, w.size, true)
		if long > b.X-a.X-2 {
			at.Y = a.Y - 6
		}
		d.write(at, w)
	}
}
