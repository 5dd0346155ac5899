package egress

import (
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"
)

// Measures turns what is measured into numbers of the shop's units, rounded so
// that a workbook reckons with the same.
type Measures struct{ Units unit.System }

// WidthUnit is what exits and aisles are measured in.
func (m Measures) WidthUnit() string {
	if m.Units == unit.Metric {
		return "cm"
	}
	return "in"
}

// InLength is how many units of width are one of length.
func (m Measures) InLength() int {
	if m.Units == unit.Metric {
		return 100
	}
	return 12
}

// AreaPlaces is to how many places areas are reckoned: a square foot is
// 0.09290304 square metres exactly, so that a floor of whole square feet holds
// as many people in a shop that counts in metres.
const AreaPlaces = 8

// Area is an area to so many places, a floor or what one person takes of it.
func (m Measures) Area(a unit.Area) money.Number {
	return money.Round(money.Float(a.In(m.Units)), AreaPlaces)
}

// Length is a length in feet or metres to two places.
func (m Measures) Length(l unit.Length) money.Number { return parts.Length(m.Units, l) }

// Width is a length in inches or centimetres to two places.
func (m Measures) Width(l unit.Length) money.Number { return m.width(l, 2) }

// Each is the width for one person to four places.
func (m Measures) Each(l unit.Length) money.Number { return m.width(l, 4) }

func (m Measures) width(l unit.Length, places int) money.Number {
	one := unit.Inch
	if m.Units == unit.Metric {
		one = unit.Centimetre
	}
	return money.DivRound(money.Int(int(l)), money.Int(int(one)), places)
}
