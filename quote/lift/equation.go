package lift

import (
	"math"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// form is the revised lifting equation (NIOSH Publication 94-110; Waters et al.
// 1993, Ergonomics 36(7)) as it is published for one system of units. The two
// forms differ by up to 2 percent, so a shop has that of its own units.
type form struct {
	load    unit.Mass   // what an ideal lift may weigh
	step    unit.Length // the unit of all lengths below
	near    float64     // hands from the ankles: nearer counts as this
	far     float64     // and farther out nothing may be lifted
	knuckle float64     // best height of the hands
	rise    float64     // taken off for each unit above or below it
	top     float64     // higher up nothing may be lifted
	travel  float64     // multiplier of a long way up or down, and
	short   float64     // added to it over the way
	least   float64     // a shorter way counts as this
	most    float64     // a longer one is no lift
}

var forms = map[unit.System]form{
	unit.Metric: {load: 23 * unit.Kilogram, step: unit.Centimetre, near: 25, far: 63, knuckle: 75, rise: 0.003, top: 175,
		travel: 0.82, short: 4.5, least: 25, most: 175},
	unit.Imperial: {load: 51 * unit.Pound, step: unit.Inch, near: 10, far: 25, knuckle: 30, rise: 0.0075, top: 70,
		travel: 0.82, short: 1.8, least: 10, most: 70},
}

// Constant is what one person may lift at best, in either form.
func Constant(sys unit.System) unit.Mass { return forms[sys].load }

// in is a length as the equation counts it.
func (f *form) in(l unit.Length) float64 { return float64(l) / float64(f.step) }

// horizontal is the multiplier for how far the hands are from the ankles.
func (f *form) horizontal(h unit.Length) float64 {
	if f.in(h) > f.far {
		return 0
	}
	return f.near / math.Max(f.near, f.in(h))
}

// vertical is the multiplier for the height of the hands.
func (f *form) vertical(v unit.Length) float64 {
	if f.in(v) > f.top {
		return 0
	}
	return 1 - f.rise*math.Abs(f.in(v)-f.knuckle)
}

// distance is the multiplier for the way up or down.
func (f *form) distance(from, to unit.Length) float64 {
	way := math.Abs(f.in(to) - f.in(from))
	switch {
	case way > f.most:
		return 0
	case way <= f.least:
		return 1
	}
	return f.travel + f.short/way
}

// asymmetry is the multiplier for a twist of the trunk, in degrees.
func asymmetry(degrees int) float64 {
	if degrees > 135 {
		return 0
	}
	return 1 - 0.0032*float64(degrees)
}

// low tells whether hands are below the best height, where a fair grip and many
// lifts count for more.
func (f *form) low(v unit.Length) bool { return f.in(v) < f.knuckle }

// coupling is the multiplier of a grip, and whether the shop knows it.
func (b *builder) coupling(grip string, low bool) (float64, bool) {
	switch grip {
	case "good":
		return 1, true
	case "fair":
		if low {
			return 0.95, true
		}
		return 1, true
	}
	if b.poor == nil {
		return 0, false
	}
	return b.poor.Times.InexactFloat64(), true
}

// frequency is the multiplier for so many lifts a minute. Between two rows the
// later one holds, which allows less; beyond the last nothing may be lifted.
func (b *builder) frequency(l *catalog.Lift, low bool) float64 {
	at := 2 // up to 8 h
	switch {
	case l.Hours <= 1:
		at = 0
	case l.Hours <= 2:
		at = 1
	}
	for i := range b.rows {
		if row := &b.rows[i]; row.PerMinute.GreaterThanOrEqual(l.PerMinute) {
			if low {
				return row.Low[at].InexactFloat64()
			}
			return row.High[at].InexactFloat64()
		}
	}
	return 0
}

// terms are the multipliers of a lift, and whether the shop knows all of them.
// What is carried by a crew is set down with care, so both ends of a lift are
// looked at and the one that allows less holds.
func (b *builder) terms(l *catalog.Lift) (Terms, bool) {
	if len(b.rows) == 0 {
		return Terms{}, false
	}
	f := forms[b.c.Company.Units]
	end := func(height unit.Length) (Terms, bool) {
		grip, known := b.coupling(l.Coupling, f.low(height))
		return Terms{Horizontal: f.horizontal(l.Horizontal), Vertical: f.vertical(height), Distance: f.distance(l.From, l.To),
			Asymmetry: asymmetry(l.Angle), Frequency: b.frequency(l, f.low(height)), Coupling: grip}, known
	}
	begins, known := end(l.From)
	ends, _ := end(l.To)
	if ends.product() < begins.product() {
		return ends, known
	}
	return begins, known
}

// product is all multipliers together.
func (t *Terms) product() float64 {
	return t.Horizontal * t.Vertical * t.Distance * t.Asymmetry * t.Frequency * t.Coupling
}
