// Package tent resolves the tents of a job against a catalog: each as a graph,
// its sides closed with doors and stock panels, on the ground that it stands on.
package tent

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
	"tentwright/quote/frame"
	"tentwright/quote/job"
)

// Codes of the problems that resolving tents finds.
const (
	NoWallPanel = "no-wall-panel" // no stock panel hangs at the tent's eave height
	DoorTooWide = "door-too-wide" // doors that leave no side
	SharedWall  = "shared-wall"   // a wall asked for where a gutter hangs
)

// Tent is one tent line of the job, resolved and built.
type Tent struct {
	Job    *job.Tent
	Family *catalog.Family
	Size   *catalog.Size
	Leg    unit.Length
	Graph  *frame.Tent
	Ground *catalog.SiteOption
	Walls  []Wall
	Shared []string // sides at which a gutter hangs
	Holding

	grounds map[string]*catalog.SiteOption // of sides that have their own
}

// Holding is what holds one tent to the ground: by custom, until a calculation
// replaces it.
type Holding struct {
	Staked int     // stakes
	Held   int     // ballast pieces
	Filled int     // ballast pieces that are filled with water on site
	Legs   []Held  // of each leg, in the order of the graph's legs
	Parts  []Taken // the anchors and what goes with each; none: the shop's rules take them
}

// Held is the anchors of one leg.
type Held struct{ Stakes, Ballast int }

// Taken is so many of one part for one tent.
type Taken struct {
	Part  string
	Count int
}

// Wall is how one side is closed.
type Wall struct {
	Side   string
	Spec   *catalog.WallSpec // nil: open
	Length unit.Length       // to be covered, doors taken out
	Panels []int             // count of each of Widths
	Stock  []catalog.WallPanel
	Doors  []*catalog.DoorSpec
}

// Build builds the graph of each tent of the job, closes its sides and holds it
// by custom. The job must have passed its check against the catalog.
func Build(c *catalog.Catalog, j *job.Job) ([]Tent, diag.List) {
	b := &builder{c: c, j: j}
	b.build()
	return b.tents, b.list
}

type builder struct {
	c     *catalog.Catalog
	j     *job.Job
	tents []Tent
	list  diag.List
}

func (b *builder) build() {
	for i := range b.j.Tents {
		t := &b.j.Tents[i]
		f := b.c.Family(t.Family)
		s := f.Size(t.Size)
		leg := t.LegOf(f)
		graph, problems := frame.Build(b.c, f, s, leg)
		b.list.Join(problems)
		if graph == nil {
			continue
		}
		tent := Tent{Job: t, Family: f, Size: s, Leg: leg, Graph: graph, Ground: b.j.Ground(b.c, t), Shared: b.j.SharedSides(t),
			grounds: grounds(b.c, t)}
		for _, side := range graph.Sides {
			tent.Walls = append(tent.Walls, b.wall(&tent, side))
		}
		tent.Holding = tent.Customary()
		b.tents = append(b.tents, tent)
	}
}

// wall closes one side: doors first, then the fewest panels over what is left.
func (b *builder) wall(t *Tent, side frame.Side) Wall {
	w := Wall{Side: side.Name, Length: side.Length}
	ask := t.Job.Side(side.Name)
	if ask == nil {
		return w
	}
	if slices.Contains(t.Shared, side.Name) {
		if ask.Wall != "" && ask.Wall != "open" {
			b.list.Addf(ask.Where.Of("wall"), SharedWall, "side %s of tent %q hangs on a gutter and takes no wall; open was expected", side.Name, t.Job.ID)
		}
		return w
	}
	for _, kind := range ask.Doors {
		door := doorSpec(t.Family, kind)
		w.Doors = append(w.Doors, door)
		w.Length -= door.Width
	}
	if w.Length < 0 {
		b.list.Addf(ask.Where.Of("doors"), DoorTooWide, "doors of side %s of tent %q are wider than its %s; fewer were expected", side.Name, t.Job.ID, side.Length.In(b.c.Company.Units))
		return w
	}
	w.Spec = wallSpec(t.Family, ask.Wall)
	if w.Spec != nil {
		b.panels(t, &w, ask)
	}
	return w
}

// panels covers what the doors leave of a side with stock panels, which must be
// as high as the tent's eave: a wall that is too long lies in the mud.
func (b *builder) panels(t *Tent, w *Wall, ask *job.TentSide) {
	var widths []unit.Length
	for _, panel := range w.Spec.Panels {
		if panel.Height == t.Leg {
			w.Stock = append(w.Stock, panel)
			widths = append(widths, panel.Width)
		}
	}
	counts, ok := frame.WallCover(w.Length, widths, w.Spec.Overlap)
	if !ok {
		b.list.Addf(ask.Where.Of("wall"), NoWallPanel, "no %s panel of %s is made for an eave of %s; a panel of that height was expected in tents.yaml",
			w.Spec.Kind, t.Family.Name, t.Leg.In(b.c.Company.Units))
	}
	w.Panels = counts
}

// wallSpec is the family's wall of a kind; nil for an open side.
func wallSpec(f *catalog.Family, kind string) *catalog.WallSpec {
	for i := range f.Walls {
		if f.Walls[i].Kind == kind {
			return &f.Walls[i]
		}
	}
	return nil
}

// doorSpec is the family's door of a kind, which the job's check has found.
func doorSpec(f *catalog.Family, kind string) *catalog.DoorSpec {
	for i := range f.Doors {
		if f.Doors[i].Kind == kind {
			return &f.Doors[i]
		}
	}
	return &catalog.DoorSpec{}
}

// Customary counts the customary anchors: stakes at every foot that has a side
// where one may be driven, ballast at the others. A side that hangs on a
// GutterLength has no room for a stake.
func (t *Tent) Customary() Holding {
	a, h := &t.Family.Anchorage, Holding{}
	for _, leg := range t.Graph.Legs() {
		var one Held
		switch {
		case !t.MayStake(leg.Sides):
			one.Ballast = a.Ballast
		case leg.Corner:
			one.Stakes = a.Corner
		default:
			one.Stakes = a.PerLeg
		}
		h.Legs = append(h.Legs, one)
		h.Staked, h.Held = h.Staked+one.Stakes, h.Held+one.Ballast
	}
	return h
}

// MayStake tells whether a foot on some sides of the plan can be held by
// stakes. One free side will do; a foot inside the plan asks the ground alone.
func (t *Tent) MayStake(sides []string) bool {
	for _, side := range sides {
		if !slices.Contains(t.Shared, side) && t.MayStakeAt(side) {
			return true
		}
	}
	return len(sides) == 0 && (t.Ground == nil || !t.Ground.NoStakes)
}

// MayStakeAt tells whether a stake may be driven along a side: neither its
// ground nor the job forbids it.
func (t *Tent) MayStakeAt(side string) bool {
	ground, ask := t.GroundAt(side), t.Job.Side(side)
	return (ground == nil || !ground.NoStakes) && (ask == nil || !ask.NoStakes)
}

// GroundAt is the ground along a side: its own, else the tent's.
func (t *Tent) GroundAt(side string) *catalog.SiteOption {
	if o := t.grounds[side]; o != nil {
		return o
	}
	return t.Ground
}

// grounds finds the ground of each side that has its own.
func grounds(c *catalog.Catalog, t *job.Tent) map[string]*catalog.SiteOption {
	found := map[string]*catalog.SiteOption{}
	surface := c.SiteFactor(catalog.Surface)
	for i := range t.Sides {
		if s := &t.Sides[i]; surface != nil && s.Ground != "" {
			found[s.Side] = surface.Option(s.Ground)
		}
	}
	return found
}

// Sealed tells whether every side is closed by a wall and none has a door.
func (t *Tent) Sealed() bool {
	for _, w := range t.Walls {
		if w.Spec == nil || len(w.Doors) > 0 {
			return false
		}
	}
	return len(t.Walls) > 0
}

// Closed is the length of side under walls.
func (t *Tent) Closed() unit.Length {
	var sum unit.Length
	for _, w := range t.Walls {
		if w.Spec != nil {
			sum += w.Length
		}
	}
	return sum
}

// PanelCount is the panels of every width on all sides.
func (t *Tent) PanelCount() int {
	n := 0
	for _, w := range t.Walls {
		for _, count := range w.Panels {
			n += count
		}
	}
	return n
}

// DoorCount is the doors of every kind on all sides.
func (t *Tent) DoorCount() int {
	n := 0
	for _, w := range t.Walls {
		n += len(w.Doors)
	}
	return n
}

// Hung is the gutter that this tent brings along.
func (t *Tent) Hung() unit.Length {
	if t.Job.Joins == "" || t.Family.Gutter == nil {
		return 0
	}
	return t.GutterLength()
}

// Label is how the tent is called within the job.
func (t *Tent) Label() string {
	if t.Job.Name != "" {
		return t.Job.Name
	}
	return t.Job.ID
}

// Walled is the length of side that a kind of wall covers.
func (t *Tent) Walled(spec *catalog.WallSpec) unit.Length {
	var sum unit.Length
	for _, w := range t.Walls {
		if w.Spec == spec {
			sum += w.Length
		}
	}
	return sum
}

// DoorsOf counts the doors of a kind.
func (t *Tent) DoorsOf(spec *catalog.DoorSpec) int {
	n := 0
	for _, w := range t.Walls {
		for _, door := range w.Doors {
			if door == spec {
				n++
			}
		}
	}
	return n
}

// GutterLength is the length of the side at which the tent joins another.
func (t *Tent) GutterLength() unit.Length {
	for _, side := range t.Graph.Sides {
		if side.Name == t.Job.JoinAt {
			return side.Length
		}
	}
	return 0
}
