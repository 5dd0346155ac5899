// Package unit holds quantities as whole numbers of a small base unit, so that
// sums of them are exact in feet and in metres alike.
//
//	Length   micrometres               1 in = 25400
//	Mass     tenths of a microgram     1 lb = 4535923700
//	Volume   cubic centimetres
//	Area     square metres (a float: areas are derived, never summed to bill)
//	Size     three lengths of a thing
//	Date     a civil day
//
// Each reads what a person writes ("14 ft 4 in", "12.64 lb") and refuses a
// number without a unit. MarshalText of each writes a text that reads back to
// exactly the same value; In and Text round for people. A [System] says which
// units a shop works in.
package unit

// System is the family of units that a shop shows to its people.
type System string

// The two systems.
const (
	Imperial System = "imperial" // US customary units
	Metric   System = "metric"
)

// pick is the imperial or the metric value; any other system counts as metric.
func pick[T any](s System, imperial, metric T) T {
	if s == Imperial {
		return imperial
	}
	return metric
}

// LengthUnit is "ft" or "m".
func (s System) LengthUnit() string { return pick(s, "ft", "m") }

// MassUnit is "lb" or "kg".
func (s System) MassUnit() string { return pick(s, "lb", "kg") }

// DistanceUnit is "mi" or "km", for roads.
func (s System) DistanceUnit() string { return pick(s, "mi", "km") }

// AreaUnit is "sq ft" or "m2".
func (s System) AreaUnit() string { return pick(s, "sq ft", "m2") }

// VolumeUnit is "cu ft" or "m3".
func (s System) VolumeUnit() string { return pick(s, "cu ft", "m3") }
