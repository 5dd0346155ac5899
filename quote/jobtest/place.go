package jobtest

import (
	"slices"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// place is what holds for the site: wind, heat, power and the plot.
func (m *maker) place() {
	if m.chance("gust", 50) {
		m.j.Wind.Gust = unit.Speed(m.between("gust halves", 20, 160)) * unit.MilePerHour / 2
	}
	if m.c.Anchors != nil && len(m.c.Anchors.Terrains) > 0 && m.chance("terrain", 40) {
		m.j.Wind.Terrain = one(m, "terrain", m.c.Anchors.Terrains).ID
	}
	if m.chance("heat", 30) {
		inside, outside := m.degrees("inside", 15, 25), m.degrees("outside", -10, 20)
		m.j.Heat = &job.Heat{Inside: &inside, Outside: &outside, Hours: money.Int(m.choose("heat hours", 60))}
	}
	if m.chance("power", 30) {
		m.j.Power = &job.Power{Source: *one(m, "source", []string{"generator", "site"}),
			Distance: unit.Length(m.choose("cable", 120)) * unit.Metre, Hours: money.Int(m.choose("power hours", 80))}
	}
	if m.chance("plot", 30) {
		m.plot()
	}
}

// degrees is a temperature of whole degrees Celsius.
func (m *maker) degrees(what string, from, to int) unit.Temperature {
	return unit.TemperatureIn(float64(m.between(what, from, to)), unit.Metric)
}

// plot draws the ground with what stands on it, and says of some tents where
// they stand, whether there is room or not.
func (m *maker) plot() {
	metres := func(what string, from, to int) unit.Length {
		return unit.Length(m.between(what, from, to)) * unit.Metre
	}
	wide, deep := m.between("plot width", 20, 200), m.between("plot depth", 20, 200)
	m.j.Plot = &job.Plot{Width: unit.Length(wide) * unit.Metre, Depth: unit.Length(deep) * unit.Metre, North: money.Int(m.choose("north", 360))}
	for range m.choose("obstacles", 4) {
		o := job.Obstacle{Name: *one(m, "obstacle", words), X: metres("x", 0, wide-1), Y: metres("y", 0, deep-1)}
		if m.chance("round", 50) {
			o.Radius = metres("radius", 1, 9)
		} else {
			o.Width, o.Depth = metres("width", 1, 20), metres("depth", 1, 20)
		}
		known := slices.ContainsFunc(m.j.Plot.Obstacles, func(other job.Obstacle) bool { return other.Name == o.Name })
		if len(o.Name) <= 60 && !known {
			m.j.Plot.Obstacles = append(m.j.Plot.Obstacles, o)
		}
	}
	for i := range m.j.Tents {
		if t := &m.j.Tents[i]; t.Joins == "" && m.chance("placed", 40) {
			t.Place = &job.Place{X: metres("tent x", 0, 120), Y: metres("tent y", 0, 120), Turn: *one(m, "turn", []string{"", "0", "90", "180", "270"})}
		}
	}
}
