package parts

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/frame"
	"tentwright/quote/job"
)

// Codes of the problems that counting parts finds.
const (
	NoWallPanel  = "no-wall-panel"  // no stock panel hangs at the tent's eave height
	DoorTooWide  = "door-too-wide"  // doors that leave no side
	SharedWall   = "shared-wall"    // a wall asked for where a gutter hangs
	WeightDiffer = "weight-differs" // one stock section would weigh different in two tents
)

// tents builds the graph of each tent of the job and closes its sides.
func (b *builder) tents() {
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
		tent := Tent{Job: t, Family: f, Size: s, Leg: leg, Graph: graph, Ground: b.j.Ground(b.c, t), Shared: b.j.SharedSides(t)}
		for _, side := range graph.Sides {
			tent.Walls = append(tent.Walls, b.wall(&tent, side))
		}
		tent.anchor()
		b.r.placed[t.ID] = len(b.r.Tents)
		b.r.Tents = append(b.r.Tents, tent)
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

// anchor counts the customary anchors: stakes at every foot that has a side
// where one may be driven, ballast at the others. A side that hangs on a
// gutter has no room for a stake.
func (t *Tent) anchor() {
	a := &t.Family.Anchorage
	for _, leg := range t.Graph.Legs() {
		switch {
		case !t.mayStake(leg.Sides):
			t.Held += a.Ballast
		case leg.Corner:
			t.Staked += a.Corner
		default:
			t.Staked += a.PerLeg
		}
	}
}

// mayStake tells whether a foot on some sides of the plan can be held by
// stakes. One free side will do; a foot inside the plan asks the ground alone.
func (t *Tent) mayStake(sides []string) bool {
	if t.Ground != nil && t.Ground.NoStakes {
		return false
	}
	for _, side := range sides {
		ask := t.Job.Side(side)
		if !slices.Contains(t.Shared, side) && (ask == nil || !ask.NoStakes) {
			return true
		}
	}
	return len(sides) == 0
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
