package anchor

import (
	"math"
	"slices"

	"tentwright/catalog/unit"
)

// beaufort is the least mean wind of each force from 1 up, in whole miles per
// hour (United States National Weather Service, Beaufort scale; other tables
// set forces 11 and 12 one lower).
var beaufort = []int{1, 4, 8, 13, 19, 25, 32, 39, 47, 55, 64, 74}

// BeaufortFrom lists the least mean wind of each force from 1 up, in whole miles
// per hour.
func BeaufortFrom() []int { return slices.Clone(beaufort) }

// Beaufort is the force of a mean wind, by the nearest mile per hour.
func Beaufort(mean unit.Speed) int {
	mph := int(math.Round(mean.MilesPerHour()))
	force := 0
	for force < len(beaufort) && mph >= beaufort[force] {
		force++
	}
	return force
}

// Kinds of wind action, in the order in which they come.
var kinds = []string{"watch", "clear", "down"}

// Undecided counts the wind actions for which the manager has given no gust, or
// one above what the anchors are planned for: too late.
func (r *Result) Undecided() int {
	n := r.Unlisted()
	for i := range r.Actions {
		if gust := r.Actions[i].Spec.Gust; gust <= 0 || gust > r.Gust {
			n++
		}
	}
	return n
}

// Unlisted counts the wind actions that the shop's file does not have at all.
func (r *Result) Unlisted() int {
	n := 0
	for _, kind := range kinds {
		if !slices.ContainsFunc(r.Actions, func(a Action) bool { return a.Spec.ID == kind }) {
			n++
		}
	}
	return n
}

// actions lists what the crew does at which gust. The gust of an entry that is
// the demonstration's counts there alone: a manager decides it.
func (b *builder) actions() {
	for i := range b.a.Actions {
		spec := b.a.Actions[i]
		if spec.Demo && !b.c.Demo {
			spec.Gust = 0
		}
		a := Action{Spec: &spec}
		factor := b.a.GustFactor
		if b.a.GustDemo && !b.c.Demo {
			factor = factor.Sub(factor)
		}
		if spec.Gust > 0 && factor.IsPositive() {
			a.Mean = unit.Speed(math.Round(float64(spec.Gust) / factor.InexactFloat64()))
			a.Beaufort = Beaufort(a.Mean)
		}
		b.r.Actions = append(b.r.Actions, a)
	}
}
