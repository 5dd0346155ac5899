package layout

import (
	"cmp"
	"math"
	"slices"
)

// Gap is the clear distance from the roof of one tent straight across to the
// next, or to the edge of the plot.
type Gap struct {
	Line Segment
	Edge bool // it ends at the edge of the plot
}

const (
	// least is how much two tents must face each other for a distance to be drawn
	// between them, in metres.
	least = 0.5
	// aside is at which share of a side its distance is drawn: not in the middle,
	// where most exits are, and of most sides not at a leg.
	aside = 0.22
)

// gaps finds what stands next to each side of each tent. All sides run along
// the edges of the plot, since tents are turned by quarters only. Of two edges
// across from each other the nearer one is enough to find the place by.
func (p *Plan) gaps() {
	drawn := map[[2]int]bool{}
	boxes := p.boxes()
	for i := range p.Tents {
		var edges [2][]Segment
		for way := range 4 {
			line, other := p.across(boxes, i, way)
			switch {
			case line.Length() <= Close:
			case other < 0 && p.Given && p.holds(p.Tents[i].Outline):
				edges[way%2] = append(edges[way%2], line)
			case other >= 0 && !drawn[[2]int{min(i, other), max(i, other)}]:
				drawn[[2]int{min(i, other), max(i, other)}] = true
				p.Gaps = append(p.Gaps, Gap{Line: line})
			}
		}
		for _, lines := range edges {
			if len(lines) > 0 {
				nearer := slices.MinFunc(lines, func(a, b Segment) int { return cmp.Compare(a.Length(), b.Length()) })
				p.Gaps = append(p.Gaps, Gap{nearer, true})
			}
		}
	}
}

// boxes is the roofs of all tents, for each turn of the plot by quarters.
func (p *Plan) boxes() (out [4][]box) {
	for turn := range out {
		for i := range p.Tents {
			low, high := p.Tents[i].Outline.turned(turn).Box()
			out[turn] = append(out[turn], box{low, high})
		}
	}
	return out
}

// across is the line from a side of a tent to what is nearest straight across:
// another tent, by its index, or the edge of the plot, -1. The sides count from
// the front, against the clock. There is no line from what lies beyond an edge,
// nor one through a tent that the first one overlaps.
func (p *Plan) across(boxes [4][]box, i, way int) (line Segment, other int) {
	// Turned so that the way is to the right.
	turn := (5 - way) % 4
	low, high := boxes[turn][i].low, boxes[turn][i].high
	_, edge := Rectangle(p.Low, p.High).turned(turn).Box()
	x, y, other := edge.X, low.Y+aside*(high.Y-low.Y), -1
	for k := range p.Tents {
		if k == i {
			continue
		}
		a, b := boxes[turn][k].low, boxes[turn][k].high
		from, to := max(low.Y, a.Y), min(high.Y, b.Y)
		if to-from >= least && a.X >= high.X-Close && (other < 0 || a.X < x) {
			x, y, other = a.X, from+aside*(to-from), k
		}
	}
	for k := range p.Tents {
		if a, b := boxes[turn][k].low, boxes[turn][k].high; k != i && a.X < x-Close && b.X > high.X+Close && a.Y < y && b.Y > y {
			return Segment{}, -1
		}
	}
	back := (4 - turn) % 4
	start := Point{high.X, y}
	return Segment{start.turned(back), Point{math.Max(x, high.X), y}.turned(back)}, other
}

// holds tells whether an area lies within the edges of the plot.
func (p *Plan) holds(g Polygon) bool {
	low, high := g.Box()
	return low.X >= p.Low.X-Close && low.Y >= p.Low.Y-Close && high.X <= p.High.X+Close && high.Y <= p.High.Y+Close
}

// turned is the area turned about the origin by quarters of a circle.
func (g Polygon) turned(quarters int) Polygon {
	out := make(Polygon, len(g))
	for i, p := range g {
		out[i] = p.turned(quarters)
	}
	return out
}
