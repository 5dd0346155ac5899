package intake

import (
	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// placeFields are what the tents must stand up to, and what keeps people warm
// and lit. Forms of earlier versions do not have them.
func placeFields(sys unit.System) []field {
	degrees, length := sys.TemperatureUnit(), sys.LengthUnit()
	fields := []field{
		{name: "intake_gust", path: "wind.gust", label: "Gust to plan for, " + sys.SpeedUnit(), help: "At the height of the roof; empty: as your shop plans. Above its limit an engineer designs what holds.", unit: sys.SpeedUnit(), to: func(j *job.Job) any { return &j.Wind.Gust }},
		{name: "intake_terrain", path: "wind.terrain", label: "Terrain", help: "Round the site; empty: the first of the list.", list: "terrains", of: terrains, to: func(j *job.Job) any { return &j.Wind.Terrain }},
		{name: "intake_inside", along: true, path: "heat.inside", label: "Warm inside, " + degrees, help: "Empty: not heated. The table of places says which tents are; else every one with a wall.", unit: degrees, to: func(j *job.Job) any { return &heat(j).Inside }},
		{name: "intake_outside", along: true, path: "heat.outside", label: "Coldest outside, " + degrees, help: "Needed with the one above.", unit: degrees, to: func(j *job.Job) any { return &heat(j).Outside }},
		{name: "intake_heat_hours", along: true, path: "heat.hours", label: "Hours of heating", help: "In all; needed with the two above.", plain: true, to: func(j *job.Job) any { return &heat(j).Hours }},
		{name: "intake_work_degrees", along: true, path: "labour.weather.temperature", label: "At work, " + degrees, help: "Forecast for the crew, in the shade; empty: as the heat of the site says.", unit: degrees, to: func(j *job.Job) any { return &weather(j).Temperature }},
		{name: "intake_work_humidity", along: true, path: "labour.weather.humidity", label: "Humidity at work, %", help: "Of the same hours; needed with the one above.", plain: true, most: 100, to: func(j *job.Job) any { return &weather(j).Humidity }},
		{name: "intake_power", along: true, path: "power.source", label: "Power", help: "Empty: none is planned.", list: "supplies", of: supplies, to: func(j *job.Job) any { return &supply(j).Source }},
		{name: "intake_power_distance", along: true, path: "power.distance", label: "Cable to the farthest tent, " + length, help: "From the generator or the supply of the site.", unit: length, to: func(j *job.Job) any { return &supply(j).Distance }},
		{name: "intake_power_hours", path: "power.hours", label: "Hours of the generator", help: "In all; empty: none.", plain: true, to: func(j *job.Job) any { return &supply(j).Hours }},
	}
	for i := range fields {
		fields[i].late = true
	}
	return fields
}

// plotFields are the ground that the tents share; its obstacles stand below
// them. They are late too.
func plotFields(sys unit.System) []field {
	length := sys.LengthUnit()
	fields := []field{
		{name: "intake_plot_width", along: true, path: "plot.width", label: "Plot width, " + length, help: "Along the front; empty: the plot is not measured.", unit: length, to: func(j *job.Job) any { return &plot(j).Width }},
		{name: "intake_plot_depth", along: true, path: "plot.depth", label: "Plot depth, " + length, help: "From the front to the back; needed with the width.", unit: length, to: func(j *job.Job) any { return &plot(j).Depth }},
		{name: "intake_plot_north", path: "plot.north", label: "North", help: "Degrees from the back of the plot, with the clock: 0 if north is at the back, 90 at the right. Empty: 0.", plain: true, most: 360, to: func(j *job.Job) any { return &plot(j).North }},
	}
	for i := range fields {
		fields[i].late = true
	}
	return fields
}

// plot is the job's plot, made when the first of its cells is filled.
func plot(j *job.Job) *job.Plot {
	if j.Plot == nil {
		j.Plot = &job.Plot{}
	}
	return j.Plot
}

// weather is the forecast for the crew, likewise.
func weather(j *job.Job) *job.Weather {
	if j.Labour.Weather == nil {
		j.Labour.Weather = &job.Weather{}
	}
	return j.Labour.Weather
}

// heat is the job's group of heat, made when the first of its cells is filled.
func heat(j *job.Job) *job.Heat {
	if j.Heat == nil {
		j.Heat = &job.Heat{}
	}
	return j.Heat
}

// supply is the job's group of power, likewise.
func supply(j *job.Job) *job.Power {
	if j.Power == nil {
		j.Power = &job.Power{}
	}
	return j.Power
}

func terrains(c *catalog.Catalog) choices {
	if c.Anchors == nil {
		return nil
	}
	return choose(c.Anchors.Terrains, func(t *catalog.Terrain) (string, string) { return t.ID, t.Name })
}

// uses are what the shop's code says of floors; none where it has no code.
func uses(c *catalog.Catalog) choices {
	if c.Occupancy == nil {
		return nil
	}
	return choose(c.Occupancy.Uses, func(u *catalog.FloorUse) (string, string) { return u.ID, u.Name })
}

func supplies(*catalog.Catalog) choices {
	return choices{{"generator", "Our generator"}, {"site", "A supply of the site"}}
}
