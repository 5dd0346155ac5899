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
		{name: "intake_inside", path: "heat.inside", label: "Warm inside, " + degrees, help: "Empty: not heated. Every tent with a wall is.", unit: degrees, to: func(j *job.Job) any { return &heat(j).Inside }},
		{name: "intake_outside", path: "heat.outside", label: "Coldest outside, " + degrees, help: "Needed with the one above.", unit: degrees, to: func(j *job.Job) any { return &heat(j).Outside }},
		{name: "intake_heat_hours", path: "heat.hours", label: "Hours of heating", help: "In all; needed with the two above.", plain: true, to: func(j *job.Job) any { return &heat(j).Hours }},
		{name: "intake_power", path: "power.source", label: "Power", help: "Empty: none is planned.", list: "supplies", of: supplies, to: func(j *job.Job) any { return &supply(j).Source }},
		{name: "intake_power_distance", path: "power.distance", label: "Cable to the farthest tent, " + length, help: "From the generator or the supply of the site.", unit: length, to: func(j *job.Job) any { return &supply(j).Distance }},
		{name: "intake_power_hours", path: "power.hours", label: "Hours of the generator", help: "In all; empty: none.", plain: true, to: func(j *job.Job) any { return &supply(j).Hours }},
	}
	for i := range fields {
		fields[i].late = true
	}
	return fields
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

func supplies(*catalog.Catalog) choices {
	return choices{{"generator", "Our generator"}, {"site", "A supply of the site"}}
}
