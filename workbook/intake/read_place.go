package intake

import (
	"fmt"
	"slices"

	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// turns are the degrees by which a tent may be turned.
func turns() choices { return choices{{"0", "0"}, {"90", "90"}, {"180", "180"}, {"270", "270"}} }

// kinds are what an obstacle may be.
func kinds() choices {
	return choices{{"building", "Building"}, {"tree", "Tree"}, {"vehicle", "Parked vehicle"}, {"line", "Buried or overhead line"}, {"other", "Something else"}}
}

// obstacles reads what stands on the plot, row by row. Forms of earlier versions
// have no such rows.
func (r *reader) obstacles() {
	inputs := []string{"name", "x", "y", "width", "depth", "radius", "kind"}
	if !r.has("obstacle", append([]string{"no"}, inputs...)...) {
		return
	}
	t := r.table("obstacle", "plot.obstacles", append([]string{"no"}, inputs...)...)
	if t == nil {
		return
	}
	t.keyed("no", "obstacle", inputs, func(row int, no string) { r.obstacle(t, row, no) })
}

// obstacle reads one row.
func (r *reader) obstacle(t *table, row int, no string) {
	p := plot(r.j)
	path := fmt.Sprintf("plot.obstacles[%d]", len(p.Obstacles))
	at := func(id, what string) spot { return t.at(row, id, path+"."+id, "obstacle "+no+", "+what) }
	name := at("name", "name")
	r.cells[path], r.labels[path] = r.pos(t.sheet.Name, row, t.cols["name"]), "obstacle "+no
	var o job.Obstacle
	if r.blank(name) {
		r.fault(name, HalfFilled, "name it, or clear the row", "the cell is empty although the row is filled in; a name such as Oak was expected")
	}
	o.Name = r.words(name)
	if kind := at("kind", "kind"); !r.blank(kind) {
		o.Kind = r.choice(kind, kinds(), "a kind of obstacle")
	}
	o.X = r.needLength(at("x", "x"), "the row is filled in", "type 0 at the left edge of the plot, or clear the row")
	o.Y = r.needLength(at("y", "y"), "the row is filled in", "type 0 at the front edge of the plot, or clear the row")
	width, depth, radius := at("width", "width"), at("depth", "depth"), at("radius", "radius")
	square := !r.blank(width) || !r.blank(depth)
	switch {
	case square && !r.blank(radius):
		r.fault(radius, HalfFilled, "clear the radius of a rectangle; clear width and depth of a circle", "a radius is given beside a width or depth; a circle or a rectangle was expected")
	case square:
		o.Width = r.needLength(width, "the depth is given", "fill it in, or give a radius alone")
		o.Depth = r.needLength(depth, "the width is given", "fill it in, or give a radius alone")
	case r.blank(radius):
		r.fault(width, HalfFilled, "fill in width and depth of a rectangle, or the radius of a circle", "the obstacle has no size; a width and a depth, or a radius, were expected")
	default:
		o.Radius = r.length(radius)
	}
	if r.bad[width.path] || r.bad[depth.path] || r.bad[radius.path] {
		r.bad[path] = true // what else its shape may lack follows from that
	}
	p.Obstacles = append(p.Obstacles, o)
}

// length reads a length of the site.
func (r *reader) length(s spot) unit.Length {
	return measure(r, s, "length", r.c.Company.Units.LengthUnit(), unit.ParseLength)
}

// needLength reads a length that something else in its row asks for.
func (r *reader) needLength(s spot, because, advice string) unit.Length {
	if r.blank(s) {
		r.fault(s, HalfFilled, advice, "the cell is empty although %s; a length such as 12 was expected", because)
		return 0
	}
	return r.length(s)
}

// places reads where tents stand, what their floors are for and which are
// heated. Forms of earlier versions have no such rows.
func (r *reader) places(index map[string]int) {
	inputs := []string{"use", "area", "x", "y", "turn", "other", "others", "heated"}
	if !r.has("place", append([]string{"no"}, inputs...)...) {
		return
	}
	t := r.table("place", "tents", append([]string{"no"}, inputs...)...)
	if t == nil {
		return
	}
	warm := &warmth{}
	t.keyed("no", "tent", inputs, func(row int, no string) {
		n, known := index[no]
		if !known {
			filled := t.filled(row, inputs...)
			r.fault(t.at(row, filled, "", "tent "+no), HalfFilled, "fill in the tent above, or clear the row", "the row says %q but the row of its tent is empty; a tent with family and size was expected", t.word(row, filled))
			return
		}
		r.place(t, row, no, n)
		r.use(t, row, no, n, "use", "area")
		r.use(t, row, no, n, "other", "others")
		heated := t.at(row, "heated", "heat.tents", "tent "+no+", heated")
		if said := r.choice(heated, yesNo(), "Yes or No"); said != "" {
			warm.say(heated, n, said == "yes")
		}
	})
	r.heated(warm)
}

// place reads where one tent stands. A turn of 0 alone says nothing.
func (r *reader) place(t *table, row int, no string, n int) {
	path := fmt.Sprintf("tents[%d].place", n)
	at := func(id string) spot { return t.at(row, id, path+"."+id, "tent "+no+", "+id) }
	x, y, turn := at("x"), at("y"), at("turn")
	turn.label = "tent " + no + ", turned"
	r.labels[turn.path], r.labels[path] = turn.label, "tent "+no+", x"
	p := job.Place{Turn: r.choice(turn, turns(), "0, 90, 180 or 270")}
	if r.blank(x) && r.blank(y) {
		if p.Turn != "" && p.Turn != "0" {
			r.fault(x, HalfFilled, "say where it stands, or clear the turn", "the cell is empty although the tent is turned; a length such as 12 was expected")
		}
		return
	}
	p.X = r.needLength(x, "y is given", "type 0 at the left edge of the plot, or clear y")
	p.Y = r.needLength(y, "x is given", "type 0 at the front edge of the plot, or clear x")
	r.cells[path] = r.pos(t.sheet.Name, row, t.cols["x"])
	r.j.Tents[n].Place = &p
}

// use reads what a part of a tent's floor is for.
func (r *reader) use(t *table, row int, no string, n int, id, areaID string) {
	tent := &r.j.Tents[n]
	path := fmt.Sprintf("tents[%d].uses[%d]", n, len(tent.Uses))
	name := t.at(row, id, path+".use", "tent "+no+", use of a part")
	area := t.at(row, areaID, path+".area", "tent "+no+", area of the part")
	if r.blank(name) && r.blank(area) {
		return
	}
	r.cells[path] = r.pos(t.sheet.Name, row, t.cols[id])
	if len(tent.Uses) == 0 {
		all := fmt.Sprintf("tents[%d].uses", n)
		r.cells[all], r.labels[all] = r.pos(t.sheet.Name, row, t.cols[areaID]), area.label
	}
	var u job.FloorUse
	if r.blank(name) {
		r.fault(name, HalfFilled, "choose it from the list, or clear the area", "the cell is empty although an area is given; a use was expected")
	}
	u.Use = r.choice(name, uses(r.c), "a use of the floor")
	sys := r.c.Company.Units
	if r.blank(area) {
		r.fault(area, HalfFilled, r.wholeFloor(tent), "the cell is empty although a use is given; an area such as 400 was expected")
	} else {
		u.Area = measure(r, area, "area", sys.AreaUnit(), unit.ParseArea)
	}
	tent.Uses = append(tent.Uses, u)
}

// wholeFloor is advice to who wants all of a tent used alike.
func (r *reader) wholeFloor(t *job.Tent) string {
	const plain = "fill it in, or clear the use"
	f := r.c.Family(t.Family)
	if f == nil || f.Size(t.Size) == nil {
		return plain
	}
	return plain + "; the whole floor has " + f.Size(t.Size).Floor().Text(r.c.Company.Units)
}

// warmth is what the rows say of heating: tents by their place in the job, each
// with its cell.
type warmth struct {
	yes, no         []int
	yesSpot, noSpot []spot
}

func (w *warmth) say(s spot, tent int, yes bool) {
	if yes {
		w.yes, w.yesSpot = append(w.yes, tent), append(w.yesSpot, s)
	} else {
		w.no, w.noSpot = append(w.no, tent), append(w.noSpot, s)
	}
}

// heated names the tents to heat: those that say Yes; where none does, those
// with a wall that do not say No. Where no row says anything the job names none,
// which means every tent with a wall.
func (r *reader) heated(w *warmth) {
	if r.j.Heat == nil {
		if len(w.yes) > 0 {
			r.fault(w.yesSpot[0], HalfFilled, "fill in the three cells, or clear the Yes", "the tent is to be heated but nothing says how warm; Warm inside, Coldest outside and Hours of heating were expected")
		}
		return
	}
	for i, n := range w.yes {
		s := w.yesSpot[i]
		r.cells[fmt.Sprintf("heat.tents[%d]", i)] = r.pos(s.sheet.Name, s.row, s.col)
		r.j.Heat.Tents = append(r.j.Heat.Tents, r.j.Tents[n].ID)
	}
	if len(w.yes) > 0 || len(w.no) == 0 {
		return
	}
	for n := range r.j.Tents {
		if t := &r.j.Tents[n]; walled(t) && !slices.Contains(w.no, n) {
			r.j.Heat.Tents = append(r.j.Heat.Tents, t.ID)
		}
	}
	if len(r.j.Heat.Tents) == 0 {
		r.fault(w.noSpot[0], HalfFilled, "say Yes at a tent, or clear Warm inside, Coldest outside and Hours of heating", "no tent with a wall is left to heat; at least one was expected")
	}
}

// walled tells whether a tent has a wall.
func walled(t *job.Tent) bool {
	return slices.ContainsFunc(t.Sides, func(s job.TentSide) bool { return s.Wall != "" && s.Wall != "open" })
}
