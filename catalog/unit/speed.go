package unit

import (
	"fmt"
	"strconv"
)

// Speed is a speed in whole micrometres per second.
type Speed int64

// Speeds of the units. A mile is 1,609.344 m and a nautical mile 1,852 m (NIST
// SP 811).
const (
	MetrePerSecond Speed = 1e6
	MilePerHour    Speed = 447040
)

var speedForm = form{"a speed", `"40 mph", "18 m/s" or "65 km/h"`}

// speedUnits is what a person may write behind a number.
var speedUnits = map[string]scale{
	"mph": {447040, 1}, "m/s": {1e6, 1}, "km/h": {1e9, 3600}, "kn": {1852e6, 3600}, "kt": {1852e6, 3600},
}

// ParseSpeed reads "40 mph", "18 m/s", "65 km/h" or "35 kn", rounded half up to
// a micrometre per second. A bare or negative number is an error.
func ParseSpeed(s string) (Speed, error) {
	n, err := speedForm.single(s, speedUnits)
	return Speed(n), err
}

// ParseText sets v from a text as [ParseSpeed] reads it.
func (v *Speed) ParseText(s string) (err error) {
	*v, err = ParseSpeed(s)
	return err
}

// MarshalText is a text that [ParseSpeed] reads back exactly: miles per hour
// when two places suffice, else metres per second. A negative speed has none.
func (v Speed) MarshalText() ([]byte, error) {
	if v < 0 {
		return nil, fmt.Errorf("a negative speed, %s, cannot be written", v.Text(Metric))
	}
	if text := v.Text(Imperial); reads(ParseSpeed, text, v) {
		return []byte(text), nil
	}
	return []byte(decimalText(int64(v), 6, 6) + " m/s"), nil
}

// MetresPerSecond is the speed in metres per second.
func (v Speed) MetresPerSecond() float64 { return float64(v) / float64(MetrePerSecond) }

// MilesPerHour is the speed in miles per hour.
func (v Speed) MilesPerHour() float64 { return float64(v) / float64(MilePerHour) }

// In is the speed in miles per hour or metres per second.
func (v Speed) In(sys System) float64 { return pick(sys, v.MilesPerHour(), v.MetresPerSecond()) }

// Text is the speed for people, to the nearest hundredth: "40 mph".
func (v Speed) Text(sys System) string {
	return decimalText(whole(100*v.In(sys)), 2, 2) + " " + sys.SpeedUnit()
}

// SpeedUnit is "mph" or "m/s", for wind.
func (s System) SpeedUnit() string { return pick(s, "mph", "m/s") }

// SpeedIn is a speed of so many of a system's unit.
func SpeedIn(n float64, sys System) Speed {
	return Speed(whole(n * float64(pick(sys, MilePerHour, MetrePerSecond))))
}

// ForceUnit is "lb" or "kN", for anchors.
func (s System) ForceUnit() string { return pick(s, "lb", "kN") }

// poundForce is a pound-force in newtons (NIST SP 811).
const poundForce = 4.4482216152605

// Force is newtons in pounds-force or kilonewtons.
func (s System) Force(newtons float64) float64 { return newtons / pick(s, poundForce, 1000) }

// Newtons is so many pounds-force or kilonewtons in newtons.
func (s System) Newtons(n float64) float64 { return n * pick(s, poundForce, 1000) }

// PressureUnit is "psf" or "kN/m2".
func (s System) PressureUnit() string { return pick(s, "psf", "kN/m2") }

// Pressure is pascals in pounds-force per square foot or kilonewtons per square
// metre.
func (s System) Pressure(pascals float64) float64 {
	return pascals / pick(s, poundForce/squareFoot, 1000)
}

// Temperature is a temperature, or a difference from 0 C, in nineties of a
// degree Celsius, so that halves of a degree of both scales are whole.
type Temperature int64

const (
	celsius    Temperature = 90
	fahrenheit Temperature = 50
	ice                    = 32 * fahrenheit // 0 C on the scale of Fahrenheit
)

var temperatureForm = form{"a temperature", `"68 F" or "20 C"`}

// ParseTemperature reads "68 F" or "-5.5 C", to the nearest ninetieth of a
// degree Celsius. A bare number is an error.
func ParseTemperature(s string) (Temperature, error) {
	text, below := s, false
	if len(s) > 0 && s[0] == '-' {
		text, below = s[1:], true
	}
	n, err := temperatureForm.single(text, map[string]scale{"c": {90, 1}, "f": {50, 1}, "°c": {90, 1}, "°f": {50, 1}})
	if err != nil {
		return 0, err
	}
	if n > 1000*int64(celsius) {
		return 0, temperatureForm.bad(s, tooLarge)
	}
	t := Temperature(n)
	if below {
		t = -t
	}
	if last := text[len(text)-1]; last == 'F' || last == 'f' {
		t -= ice
	}
	return t, nil
}

// ParseText sets t from a text as [ParseTemperature] reads it.
func (t *Temperature) ParseText(s string) (err error) {
	*t, err = ParseTemperature(s)
	return err
}

// MarshalText is a text that [ParseTemperature] reads back exactly.
func (t Temperature) MarshalText() ([]byte, error) {
	for _, sys := range []System{Imperial, Metric} {
		if text := t.Text(sys); reads(ParseTemperature, text, t) {
			return []byte(text), nil
		}
	}
	return []byte(strconv.FormatFloat(t.Celsius(), 'f', 6, 64) + " C"), nil
}

// Celsius is the temperature in degrees Celsius.
func (t Temperature) Celsius() float64 { return float64(t) / float64(celsius) }

// Fahrenheit is the temperature in degrees Fahrenheit.
func (t Temperature) Fahrenheit() float64 { return float64(t+ice) / float64(fahrenheit) }

// In is the temperature in degrees Fahrenheit or Celsius.
func (t Temperature) In(sys System) float64 { return pick(sys, t.Fahrenheit(), t.Celsius()) }

// Text is the temperature for people, to the nearest hundredth: "68 F".
func (t Temperature) Text(sys System) string {
	return decimalText(whole(100*t.In(sys)), 2, 2) + " " + sys.TemperatureUnit()
}

// TemperatureUnit is "F" or "C".
func (s System) TemperatureUnit() string { return pick(s, "F", "C") }

// TemperatureIn is so many degrees of a system's scale.
func TemperatureIn(n float64, sys System) Temperature {
	return pick(sys, Temperature(whole(n*float64(fahrenheit)))-ice, Temperature(whole(n*float64(celsius))))
}
