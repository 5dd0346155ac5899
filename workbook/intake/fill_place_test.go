package intake

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"

	"pgregory.net/rapid"
)

// site types where things stand, what floors are for and which tents are warm.
func (p *filler) site(j *job.Job) {
	if j.Plot != nil {
		for i, o := range j.Plot.Obstacles {
			p.obstacle(p.place["intake_obstacle_no"].R1+i, &o)
		}
	}
	for i := range j.Tents {
		row, t := p.place["intake_place_no"].R1+i, &j.Tents[i]
		for n, u := range t.Uses {
			p.set(row, []string{"place_use", "place_other"}[n], p.use(u.Use))
			p.set(row, []string{"place_area", "place_others"}[n], areaWords(u.Area))
		}
		if t.Place != nil {
			p.set(row, "place_x", distance(t.Place.X))
			p.set(row, "place_y", distance(t.Place.Y))
			p.words(row, "place_turn", t.Place.Turn)
		}
		if j.Heat != nil && slices.Contains(j.Heat.Tents, t.ID) {
			p.set(row, "place_heated", "Yes")
		}
	}
}

// hours types the hours of a window, times as programs keep them.
func (p *filler) hours(w *job.WindowCrew) {
	row := p.row("hours", "id", w.Window)
	p.count(row, "hours_crews", w.Crews)
	for column, at := range map[string]unit.Clock{"from": w.From, "until": w.Until, "ready": w.Ready, "inspect": w.Inspect} {
		if at != 0 {
			p.set(row, "hours_"+column, sheet.TimeOfDay(at))
		}
	}
	if w.Stay {
		p.set(row, "hours_stay", "Yes")
	}
}

// unsaidWindow tells whether an entry for a window says nothing.
func unsaidWindow(w job.WindowCrew) bool {
	return w.Crew == 0 && w.Days == 0 && w.Worked.IsZero() && w.Crews == 0 && w.From == 0 && w.Until == 0 && w.Ready == 0 && w.Inspect == 0 && !w.Stay
}

// use is what people see of a use.
func (p *filler) use(id string) string {
	if len(uses(p.c)) == 0 {
		return id
	}
	return uses(p.c).text(id)
}

// obstacle types a rectangle or a circle.
func (p *filler) obstacle(row int, o *job.Obstacle) {
	p.set(row, "obstacle_name", o.Name)
	p.set(row, "obstacle_x", distance(o.X))
	p.set(row, "obstacle_y", distance(o.Y))
	p.words(row, "obstacle_kind", kinds().text(o.Kind))
	if o.Radius != 0 {
		p.set(row, "obstacle_radius", distance(o.Radius))
		return
	}
	p.set(row, "obstacle_width", distance(o.Width))
	p.set(row, "obstacle_depth", distance(o.Depth))
}

// areaWords is an area as people write it, exactly.
func areaWords(a unit.Area) string {
	text, err := a.MarshalText()
	if err != nil {
		panic(err)
	}
	return string(text)
}

// canonSite puts the heated tents into the order of the form; false when it has
// no room for what stands on the plot or for the uses of a floor.
func canonSite(j *job.Job) bool {
	if j.Heat != nil {
		order := func(id string) int {
			return slices.IndexFunc(j.Tents, func(t job.Tent) bool { return t.ID == id })
		}
		slices.SortFunc(j.Heat.Tents, func(a, b string) int { return order(a) - order(b) })
	}
	for i := range j.Tents {
		if len(j.Tents[i].Uses) > 2 {
			return false
		}
	}
	return j.Plot == nil || len(j.Plot.Obstacles) <= obstacles
}

// floors draws uses of floors and heated tents for a job that has none.
func floors(t *rapid.T, c *catalog.Catalog, j *job.Job) {
	ids := []string{"seated at tables", "dancing"}
	if list := uses(c); len(list) > 0 {
		ids = nil
		for _, u := range list {
			ids = append(ids, u.id)
		}
	}
	use := rapid.SampledFrom(ids)
	if j.Event.Use == "" && rapid.Bool().Draw(t, "event use") {
		j.Event.Use = use.Draw(t, "use")
	}
	for i := range j.Tents {
		tent := &j.Tents[i]
		taken := len(tent.Uses) > 0 // a job's own uses may leave no floor
		for range rapid.IntRange(0, 2).Draw(t, "uses") {
			if !taken {
				tent.Uses = append(tent.Uses, job.FloorUse{Use: use.Draw(t, "use"), Area: unit.Area(rapid.IntRange(1, 4).Draw(t, "area"))})
			}
		}
		if j.Heat != nil && rapid.Bool().Draw(t, "heated") && !slices.Contains(j.Heat.Tents, tent.ID) {
			j.Heat.Tents = append(j.Heat.Tents, tent.ID)
		}
	}
}
