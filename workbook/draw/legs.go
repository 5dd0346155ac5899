package draw

import (
	"math"
	"strconv"

	"gonum.org/v1/plot/vg"

	"tentwright/quote/layout"
)

// rect is a piece of the page that is taken by words or signs.
type rect struct{ left, low, right, high vg.Length }

// meets tells whether two pieces overlap.
func (r rect) meets(o rect) bool {
	return r.left < o.right && o.left < r.right && r.low < o.high && o.low < r.high
}

// around is the piece of the page about a point.
func around(at vg.Point, r vg.Length) rect { return rect{at.X - r, at.Y - r, at.X + r, at.Y + r} }

// covers is the piece of the page that words take about a place.
func (w words) covers(at vg.Point) rect { return w.over(at, width(w.text, w.size, w.bold)) }

// over is covers for words of a known width.
func (w words) over(at vg.Point, wide vg.Length) rect {
	const spare = 0.6
	high := w.size
	left := -wide * vg.Length(w.align)
	if w.turn != 0 {
		return rect{at.X - high/2 - spare, at.Y + left - spare, at.X + high/2 + spare, at.Y + left + wide + spare}
	}
	return rect{at.X + left - spare, at.Y - high/2 - spare, at.X + left + wide + spare, at.Y + high/2 + spare}
}

// clear tells whether nothing stands on a piece of the page yet, and it lies
// where the plot is drawn.
func (d *plan) clear(r rect) bool {
	if r.left < 3 || r.low < 3 || r.right > Width-panelWide-9 || r.high > Height-3 {
		return false
	}
	for _, o := range d.taken {
		if r.meets(o) {
			return false
		}
	}
	return true
}

// signsTaken marks what words of legs must not hide: legs, stakes, ways out and
// the middle of what is wrong.
func (d *plan) signsTaken() {
	for i := range d.p.Tents {
		t := &d.p.Tents[i]
		for _, leg := range t.Legs {
			d.taken = append(d.taken, around(d.to(leg.At), 2.2))
		}
		for _, at := range t.Stakes {
			d.taken = append(d.taken, around(d.to(at), 1.8))
		}
		for k := range t.Sides {
			for _, e := range t.Sides[k].Exits {
				d.taken = append(d.taken, around(d.to(e.Along(0.5)), 5))
			}
		}
	}
	for i := range d.p.Faults {
		if area := d.p.Faults[i].Area; len(area) > 0 {
			d.taken = append(d.taken, around(d.spot(area), 6))
		}
	}
}

// legSize is the size of the letters of a leg's number.
const legSize = 5

// LegText is the number of a leg on the walk and what holds it: "3·4" is leg 3
// with four stakes, "5·2B" leg 5 with two pieces of ballast.
func LegText(leg *layout.Leg) string {
	text := strconv.Itoa(leg.Number)
	switch {
	case leg.Stakes > 0 && leg.Ballast > 0:
		return text + "·" + strconv.Itoa(leg.Stakes) + "+" + strconv.Itoa(leg.Ballast) + "B"
	case leg.Stakes > 0:
		return text + "·" + strconv.Itoa(leg.Stakes)
	case leg.Ballast > 0:
		return text + "·" + strconv.Itoa(leg.Ballast) + "B"
	}
	return text
}

// legNumbers writes the number of each leg beside it; of a tent at which they do
// not all find room, only those of its corners.
func (d *plan) legNumbers(t *layout.Tent) {
	var corners, others []int
	for i := range t.Legs {
		if t.Legs[i].Corner {
			corners = append(corners, i)
		} else {
			others = append(others, i)
		}
	}
	at, missing := d.legPlaces(t, corners)
	d.legsOut = d.legsOut || missing
	d.writeLegs(t, corners, at)
	if at, missing = d.legPlaces(t, others); missing {
		d.legsOut = true
		return
	}
	d.writeLegs(t, others, at)
}

func (d *plan) writeLegs(t *layout.Tent, legs []int, at []*vg.Point) {
	for k, i := range legs {
		if at[k] != nil {
			d.write(*at[k], words{text: LegText(&t.Legs[i]), size: legSize, align: 0.5, halo: 0.4})
			d.legsIn = true
		}
	}
}

// legPlaces finds a place for the number of each of some legs, and tells whether
// one has none. No number is put on another.
func (d *plan) legPlaces(t *layout.Tent, legs []int) (places []*vg.Point, missing bool) {
	known := len(d.taken)
	defer func() { d.taken = d.taken[:known] }()
	for _, i := range legs {
		w := words{text: LegText(&t.Legs[i]), size: legSize, align: 0.5}
		place := d.legPlace(&t.Legs[i], w)
		if place == nil {
			missing = true
			if !t.Legs[i].Corner {
				return nil, true
			}
		} else {
			d.taken = append(d.taken, w.covers(*place))
		}
		places = append(places, place)
	}
	return places, missing
}

// legPlace is the first free place about a leg: outside the roof and beside its
// guy, then inside; nil if there is none.
func (d *plan) legPlace(leg *layout.Leg, w words) *vg.Point {
	out, foot := leg.Out, d.to(leg.At)
	if out.Length() == 0 {
		out = layout.Point{X: 0, Y: -1}
	}
	half := width(w.text, w.size, false) / 2
	x, y := vg.Length(out.X), vg.Length(out.Y)
	// What the words take along a direction.
	along := func(x, y vg.Length) vg.Length {
		return vg.Length(math.Abs(float64(x)))*half + vg.Length(math.Abs(float64(y)))*legSize/2
	}
	far, aside := along(x, y)+3.4, along(y, x)+2.6
	for _, step := range [][2]vg.Length{{1, 1}, {1, -1}, {1, 0}, {2, 1}, {2, -1}, {-1, 1}, {-1, -1}} {
		if leg.Corner && step[0] > 0 {
			step[1] *= 0.35 // a corner's number stands between its guys
		}
		ahead := far + 4*max(0, step[0]-1)
		if step[0] < 0 {
			ahead = -far
		}
		at := vg.Point{X: foot.X + ahead*x - aside*step[1]*y, Y: foot.Y + ahead*y + aside*step[1]*x}
		if d.clear(w.covers(at)) {
			return &at
		}
	}
	return nil
}

// sideNames writes along the inner edge of each side which it is, and of an open
// one that it is a way out, where there is room.
func (d *plan) sideNames(t *layout.Tent) {
	for i := range t.Sides {
		s := &t.Sides[i]
		for _, text := range d.sideWords(s) {
			if d.sideName(s, text) {
				break
			}
		}
	}
}

// sideWords is what may stand along a side, the longest first.
func (d *plan) sideWords(s *layout.Side) []string {
	name := map[string]string{"front": "FRONT", "right": "RIGHT", "back": "BACK", "left": "LEFT"}[s.Name]
	if s.Wall == "" && !s.Gutter && len(s.Exits) == 0 {
		return []string{name + ", open: EXIT", name}
	}
	return []string{name}
}

// sideName writes along a side, if there is room.
func (d *plan) sideName(s *layout.Side, text string) bool {
	w := words{text: text, size: legSize, align: 0.5, color: grey}
	if vg.Length(s.Line.Length()*d.perMetre) < 1.3*width(text, legSize, false)+8 {
		return false
	}
	out := s.Line.Outward()
	if math.Abs(out.X) > 0.5 {
		w.turn = 1
	}
	for _, share := range []float64{0.5, 0.35, 0.65, 0.25, 0.75} {
		q := d.to(s.Line.Along(share))
		at := vg.Point{X: q.X - 6*vg.Length(out.X), Y: q.Y - 6*vg.Length(out.Y)}
		if d.clear(w.covers(at)) {
			d.write(at, w)
			return true
		}
	}
	return false
}
