package unit

import "fmt"

// Mass is a mass in whole tenths of a microgram, so that a hundredth of a
// pound and a hundredth of a kilogram are both whole. The range is about
// 900,000 tonnes.
type Mass int64

// Masses of the units. A pound is 453.59237 g by the 1959 agreement on yard
// and pound (NIST SP 811); an ounce, its sixteenth, is here to the nearest
// base unit.
const (
	Gram     Mass = 1e7
	Kilogram      = 1000 * Gram
	Tonne         = 1000 * Kilogram
	Pound    Mass = 4535923700
	Ounce         = (Pound + 8) / 16
)

var massForm = form{"a weight", `"12.64 lb", "18 oz" or "3 kg"`}

// massUnits is what a person may write behind a number. An ounce is given as
// a fraction, so that 16 of them are exactly a pound.
var massUnits = map[string]scale{
	"lb": {uint64(Pound), 1}, "lbs": {uint64(Pound), 1}, "pound": {uint64(Pound), 1}, "pounds": {uint64(Pound), 1},
	"oz": {uint64(Pound), 16}, "ounce": {uint64(Pound), 16}, "ounces": {uint64(Pound), 16},
	"g": {uint64(Gram), 1}, "kg": {uint64(Kilogram), 1}, "t": {uint64(Tonne), 1},
}

// ParseMass reads "12.64 lb", "18 oz", "250 g", "3 kg" or "1.2 t" (metric
// tonnes), rounded half up to the base unit. A bare or negative number is an
// error.
func ParseMass(s string) (Mass, error) {
	n, err := massForm.single(s, massUnits)
	return Mass(n), err
}

// ParseText sets m from a text as [ParseMass] reads it.
func (m *Mass) ParseText(s string) (err error) {
	*m, err = ParseMass(s)
	return err
}

// MarshalText is a text that [ParseMass] reads back exactly: pounds when two
// places suffice, else kilograms. A negative mass has none.
func (m Mass) MarshalText() ([]byte, error) {
	switch {
	case m < 0:
		return nil, fmt.Errorf("a negative weight, %s, cannot be written", m.Text(Metric))
	case m%(Pound/100) == 0:
		return []byte(m.Text(Imperial)), nil
	}
	return []byte(decimalText(int64(m), 10, 10) + " kg"), nil
}

// Pounds is the mass in pounds.
func (m Mass) Pounds() float64 { return float64(m) / float64(Pound) }

// Kilograms is the mass in kilograms.
func (m Mass) Kilograms() float64 { return float64(m) / float64(Kilogram) }

// In is the mass in pounds or kilograms.
func (m Mass) In(sys System) float64 { return pick(sys, m.Pounds(), m.Kilograms()) }

// MassOf is that many kilograms to the nearest base unit, halves away from
// zero. Not-a-number gives zero; what does not fit gives the limit.
func MassOf(kilograms float64) Mass { return Mass(whole(kilograms * float64(Kilogram))) }

// hundredths is the mass in hundredths of a pound or kilogram, halves away
// from zero.
func (m Mass) hundredths(sys System) int64 {
	step := pick(sys, Pound, Kilogram) / 100
	if m < 0 {
		return -int64((-m + step/2) / step)
	}
	return int64((m + step/2) / step)
}

// RoundTo is the mass to the nearest 0.01 lb or 0.01 kg, halves away from
// zero.
func (m Mass) RoundTo(sys System) Mass {
	return Mass(m.hundredths(sys)) * (pick(sys, Pound, Kilogram) / 100)
}

// Text is the mass for people, to the nearest hundredth, halves away from
// zero: "12.64 lb", "3 kg".
func (m Mass) Text(sys System) string {
	return decimalText(m.hundredths(sys), 2, 2) + " " + sys.MassUnit()
}
