package job

// BadPlot is a plot or an obstacle without a size, of two shapes, or away from
// each other.
const BadPlot = "bad-plot"

// plot checks the plot, its obstacles and the places of the tents. What is in
// the way of what is found later, with its distance; it refuses no job.
func (k *checker) plot() {
	k.places()
	p := k.j.Plot
	if p == nil {
		return
	}
	if (p.Width == 0 || p.Depth == 0) && k.form.Sound(p.Where, "width", "depth") {
		k.list.Addf(p.Where.Pos(), BadPlot, "the plot has no ground; a width and a depth above 0 were expected")
	}
	seen := map[string]bool{}
	for i := range p.Obstacles {
		o := &p.Obstacles[i]
		k.repeated(seen, o.Name, o.Where.Of("name"), "obstacle %q stands twice on the plot; each name may stand once, whatever its capitals", o.Name)
		k.obstacle(p, o)
	}
}

// obstacle checks that an obstacle has one shape, and lies on the plot at least
// in part.
func (k *checker) obstacle(p *Plot, o *Obstacle) {
	bad := func(field, format string, args ...any) { k.list.Addf(o.Where.Of(field), BadPlot, format, args...) }
	if !k.form.Sound(o.Where, "x", "y", "width", "depth", "radius") {
		return
	}
	sys := k.c.Company.Units
	switch round, square := o.Radius > 0, o.Width > 0 || o.Depth > 0; {
	case round && square:
		bad("radius", "obstacle %q is both a circle and a rectangle; radius, or width and depth, was expected", o.Name)
	case !round && (o.Width == 0 || o.Depth == 0):
		bad("name", "obstacle %q has no shape; radius, or width and depth, was expected", o.Name)
	case o.X-o.Radius >= p.Width && k.form.Sound(p.Where, "width"):
		bad("x", "obstacle %q lies beside the plot, which is %s wide; x is measured from its left edge", o.Name, p.Width.In(sys))
	case o.Y-o.Radius >= p.Depth && k.form.Sound(p.Where, "depth"):
		bad("y", "obstacle %q lies behind the plot, which is %s deep; y is measured from its front edge", o.Name, p.Depth.In(sys))
	}
}

// places checks that tents which share gutters are placed once: the place of
// one gives those of the others.
func (k *checker) places() {
	for i := range k.j.Tents {
		t := &k.j.Tents[i]
		if t.Place == nil {
			continue
		}
		for _, other := range k.j.together(t) {
			if other.Place != nil {
				k.list.Addf(t.Where.Of("place"), BadJoin, "tents %q and %q stand together, so one place holds for both; leave this one out", other.ID, t.ID)
				break
			}
		}
	}
}

// together lists the tents before one in the job that it is joined with, also
// by way of others.
func (j *Job) together(t *Tent) []*Tent {
	in := map[string]bool{t.ID: true}
	for grown := true; grown; {
		grown = false
		for i := range j.Tents {
			id, joins := j.Tents[i].ID, j.Tents[i].Joins
			if joins != "" && in[id] != in[joins] {
				in[id], in[joins], grown = true, true, true
			}
		}
	}
	var out []*Tent
	for i := range j.Tents {
		if other := &j.Tents[i]; other == t {
			break
		} else if in[other.ID] {
			out = append(out, other)
		}
	}
	return out
}
