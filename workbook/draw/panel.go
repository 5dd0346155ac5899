package draw

import (
	"fmt"
	"math"

	"gonum.org/v1/plot/vg"

	"tentwright/quote/layout"
)

// estimate stands on each drawing.
const estimate = "A planning estimate, not a design. Measure on site. Have buried utilities marked before a stake is driven. Local code and the authority having jurisdiction govern."

// panel writes what is said beside the drawing.
func (d *plan) panel() {
	b := &board{plan: d, left: Width - panelWide, wide: panelWide - edge, y: Height - edge - 6}
	d.style(0.5, black)
	d.ring(box(1, 1, Width-2, Height-2))
	d.line(vg.Point{X: b.left - 7, Y: 1}, vg.Point{X: b.left - 7, Y: Height - 1})
	b.lines("SITE PLAN", 12, true, 1)
	b.lines(d.p.Reference, 8, true, 1)
	b.lines(d.p.Event, 8, false, 2)
	for i, line := range d.p.Where {
		if i < 2 {
			b.lines(line, 7, false, 1)
		}
	}
	b.lines(d.p.Shop+", "+d.p.Date.String(), 7, false, 1)
	b.y -= 2
	b.bar()
	b.legend()
	foot := wrapped(estimate, 5.5, false, b.wide, 6)
	least := vg.Length(edge) + 7*vg.Length(len(foot))
	b.list(least + 4)
	b.y = least
	b.lines(estimate, 5.5, false, 6)
}

// board is the panel while it is filled, from the top down.
type board struct {
	*plan
	left, wide, y vg.Length
}

// lines writes a text in lines of the panel's width.
func (b *board) lines(text string, size vg.Length, bold bool, most int) {
	for _, line := range wrapped(text, size, bold, b.wide, most) {
		b.write(vg.Point{X: b.left, Y: b.y}, words{text: line, size: size, bold: bold})
		b.y -= size * 1.3
	}
}

// bar draws the scale and, beside it, which way north lies.
func (b *board) bar() {
	b.north(vg.Point{X: b.left + b.wide - 24, Y: b.y - 6})
	b.write(vg.Point{X: b.left, Y: b.y - 4}, words{text: "Scale " + b.s.name, size: 8, bold: true})
	b.write(vg.Point{X: b.left, Y: b.y - 13}, words{text: "if printed 10 in (254 mm) wide", size: 6})
	part := vg.Length(b.s.bar * b.perMetre / 4)
	y := b.y - 32
	for i := range 4 {
		x := b.left + vg.Length(i)*part
		b.style(0.6, black)
		b.ring(box(x, y, part, 4))
		if i%2 == 0 {
			b.SetColor(black)
			b.area(box(x, y, part, 4))
		}
	}
	for i, text := range []string{"0", b.s.half, b.s.whole} {
		w := words{text: text, size: 6.5, align: 0.5}
		if i == 0 {
			w.align = 0
		}
		b.write(vg.Point{X: b.left + 2*part*vg.Length(i), Y: y - 6}, w)
	}
	b.y = y - 18
}

// north is an arrow with its letter; without a plot nobody has said where north
// lies.
func (b *board) north(at vg.Point) {
	if !b.p.Given {
		return
	}
	sin, cos := math.Sincos(b.p.North * math.Pi / 180)
	ahead := func(up, right float64) vg.Point {
		return vg.Point{X: at.X + vg.Length(up*sin+right*cos), Y: at.Y + vg.Length(up*cos-right*sin)}
	}
	b.SetColor(black)
	b.area([]vg.Point{ahead(10, 0), ahead(-8, 4.5), ahead(-4, 0)})
	b.style(0.7, black)
	b.ring([]vg.Point{ahead(10, 0), ahead(-4, 0), ahead(-8, -4.5)})
	b.write(ahead(15.5, 0), words{text: "N", size: 8, bold: true, align: 0.5})
}

// entry is a sign of the drawing and what it means.
type entry struct {
	there bool
	draw  func(x, y vg.Length) // in a box 22 points wide, about half its height
	text  string
}

// legend explains the signs that the drawing has.
func (b *board) legend() {
	b.y -= 1
	for _, e := range b.entries() {
		if e.there {
			e.draw(b.left, b.y)
			b.write(vg.Point{X: b.left + 27, Y: b.y}, words{text: e.text, size: 6.5})
			b.y -= 10
		}
	}
	b.walkWords()
	b.y -= 3
}

func (b *board) entries() []entry {
	at := func(x, y vg.Length) vg.Point { return vg.Point{X: x + 11, Y: y} }
	stroke := func(w vg.Length, dashes ...vg.Length) func(x, y vg.Length) {
		return func(x, y vg.Length) {
			b.style(w, black, dashes...)
			b.line(vg.Point{X: x, Y: y}, vg.Point{X: x + 22, Y: y})
		}
	}
	has := b.signs()
	return []entry{
		{true, stroke(0.9), "open side of a roof: also a way out"},
		{has.wall, stroke(2.4), "wall"},
		{has.exit, func(x, y vg.Length) {
			b.exit(layout.Segment{From: b.from(vg.Point{X: x + 3, Y: y - 3}), To: b.from(vg.Point{X: x + 3, Y: y + 3})})
		}, "EXIT: door, a way out"},
		{has.gutter, func(x, y vg.Length) { stroke(0.8)(x, y-1); stroke(0.8)(x, y+1) }, "gutter between tents"},
		{true, func(x, y vg.Length) { b.leg(at(x, y)) }, "leg"},
		{has.pole, func(x, y vg.Length) { b.SetColor(black); b.Fill(circle(at(x, y), 1.5)) }, "pole inside"},
		{has.guy, func(x, y vg.Length) {
			b.style(0.4, grey)
			b.line(vg.Point{X: x, Y: y}, vg.Point{X: x + 18, Y: y})
			b.cross(vg.Point{X: x + 18, Y: y})
		}, "guy to its stake or stakes"},
		{has.plate, func(x, y vg.Length) { b.leg(at(x, y)); b.cross(at(x, y)) }, "staked through the base plate"},
		{has.ballast, func(x, y vg.Length) { b.weight(at(x, y)) }, "leg held by ballast"},
		{b.legsIn, b.sample("3·4"), "leg 3 of the walk*, 4 stakes"},
		{b.legsIn && has.ballast, b.sample("5·2B"), "leg 5, 2 pieces of ballast"},
		{has.guy, stroke(0.6, 3, 2.2), "ground that is staked"},
		{has.noStakes, stroke(2.2, 1.2, 3), "no stakes along this side"},
		{len(b.p.Obstacles) > 0, func(x, y vg.Length) {
			b.style(0.4, grey)
			b.hatch(box(x, y-3, 22, 7), 4)
			b.style(1, black)
			b.ring(box(x, y-3, 22, 7))
		}, "keep clear"},
		{b.p.Given, stroke(1.1, 9, 2.5, 1.5, 2.5), "edge of the plot"},
	}
}

// sample writes words as they stand on the drawing.
func (b *board) sample(text string) func(x, y vg.Length) {
	return func(x, y vg.Length) {
		b.write(vg.Point{X: x + 11, Y: y}, words{text: text, size: legSize, align: 0.5})
	}
}

// walkWords say how legs are counted.
func (b *board) walkWords() {
	if b.legsIn {
		b.lines("*from the front left corner along front, right, back and left; as on the sheet Anchorage", 5.5, false, 2)
	}
	if b.legsOut {
		b.lines("Some legs have no number here: no room at this scale.", 5.5, false, 2)
	}
}

// from is the place on the plot that lies at a point of the canvas.
func (p *pen) from(at vg.Point) layout.Point {
	return layout.Point{X: float64(at.X-p.zero.X) / p.perMetre, Y: float64(at.Y-p.zero.Y) / p.perMetre}
}

// signs tells which signs a drawing has.
type signs struct{ wall, exit, gutter, pole, guy, plate, ballast, noStakes bool }

func (b *board) signs() (has signs) {
	for i := range b.p.Tents {
		t := &b.p.Tents[i]
		has.pole = has.pole || len(t.Poles) > 0
		has.guy = has.guy || len(t.Guys) > 0
		has.plate = has.plate || len(t.Stakes) > len(t.Guys)
		has.ballast = has.ballast || len(t.Ballast) > 0
		for k := range t.Sides {
			s := &t.Sides[k]
			has.wall = has.wall || s.Wall != ""
			has.exit = has.exit || len(s.Exits) > 0
			has.gutter = has.gutter || s.Gutter
			has.noStakes = has.noStakes || s.NoStakes
		}
	}
	return has
}

// list says what is wrong, by the numbers on the drawing, and then which tents
// have only a number there; as much as fits above a height.
func (b *board) list(least vg.Length) {
	if !b.p.Given {
		b.lines("No plot is given: the tents stand as there is room, to show what ground they take.", 6.5, false, 3)
	}
	if len(b.p.Faults) > 0 {
		b.lines("NOT RIGHT YET", 8, true, 1)
		for i := range b.p.Faults {
			f := &b.p.Faults[i]
			text := wrapped(fmt.Sprintf("%s by %s", f.Words(), b.p.AtLeast(f.Missing)), 6.5, false, b.wide-14, 2)
			if b.y-9*vg.Length(len(text))-9 < least {
				b.lines(fmt.Sprintf("and %d more: see the sheet Site Plan", len(b.p.Faults)-i), 6.5, false, 1)
				return
			}
			b.mark(vg.Point{X: b.left + 5.5, Y: b.y}, i+1)
			for _, line := range text {
				b.write(vg.Point{X: b.left + 14, Y: b.y}, words{text: line, size: 6.5})
				b.y -= 9
			}
			b.y -= 4
		}
	}
	b.small(least)
}

// small lists the tents that are too small on the drawing for their names.
func (b *board) small(least vg.Length) {
	for i := range b.p.Tents {
		t := &b.p.Tents[i]
		if lines, _ := b.labelLines(t); len(lines) > 0 {
			continue
		}
		if b.y-9 < least {
			b.lines("more on the sheet Site Plan", 6.5, false, 1)
			return
		}
		held := ""
		if weighted(t) {
			held = ", on ballast"
		}
		b.lines(fmt.Sprintf("%d  %s, %s%s", t.Number, t.Label(), b.p.SizeOf(t), held), 6.5, false, 1)
	}
}
