package unit

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Miles per hour, kilometres per hour and knots in metres per second: NIST SP
// 811, appendix B.8.
func TestParseSpeed(t *testing.T) {
	for text, metres := range map[string]float64{"1 mph": 0.44704, "90 mph": 40.2336, "36 km/h": 10, "1 kn": 0.514444, "18 m/s": 18, "40.5 mph": 18.10512} {
		got, err := ParseSpeed(text)
		if err != nil || math.Abs(got.MetresPerSecond()-metres) > 1e-6 {
			t.Errorf("%q: %g m/s, %v; %g was expected", text, got.MetresPerSecond(), err, metres)
		}
	}
	for _, text := range []string{"", "40", "-4 mph", "40 mp", "4 mph 3 mph", "1e3 mph"} {
		if got, err := ParseSpeed(text); err == nil {
			t.Errorf("%q was read as %v; an error was expected", text, got)
		}
	}
}

// Fixed points of the two scales: NIST SP 811, appendix B.9.
func TestParseTemperature(t *testing.T) {
	for text, celsius := range map[string]float64{"32 F": 0, "212 F": 100, "-40 F": -40, "-40 C": -40, "68 F": 20, "0 C": 0, "20.5 C": 20.5, "0.5 F": -17.5} {
		got, err := ParseTemperature(text)
		if err != nil || math.Abs(got.Celsius()-celsius) > 1e-9 {
			t.Errorf("%q: %g C, %v; %g was expected", text, got.Celsius(), err, celsius)
		}
	}
	for _, text := range []string{"", "-", "20", "--4 C", "20 K", "2000 C", "68 f 3 f"} {
		if got, err := ParseTemperature(text); err == nil {
			t.Errorf("%q was read as %v; an error was expected", text, got)
		}
	}
}

func TestWeatherReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Speed(rapid.Int64Range(0, 1e9).Draw(t, "speed"))
		text, err := v.MarshalText()
		if back, again := ParseSpeed(string(text)); err != nil || again != nil || back != v {
			t.Fatalf("speed %d is written %q and read as %d (%v, %v)", v, text, back, err, again)
		}
		degrees := Temperature(rapid.Int64Range(-30000, 80000).Draw(t, "degrees"))
		text, err = degrees.MarshalText()
		if back, again := ParseTemperature(string(text)); err != nil || again != nil || back != degrees {
			t.Fatalf("temperature %d is written %q and read as %d (%v, %v)", degrees, text, back, err, again)
		}
	})
}

// A pound-force is 4.448222 N and a pound-force per square foot 47.88026 Pa
// (NIST SP 811, appendix B.8).
func TestForces(t *testing.T) {
	if got := Imperial.Force(4448.222); math.Abs(got-1000) > 1e-3 {
		t.Errorf("4448.222 N is %g lb; 1000 was expected", got)
	}
	if got := Imperial.Pressure(47.88026); math.Abs(got-1) > 1e-6 {
		t.Errorf("47.88026 Pa is %g psf; 1 was expected", got)
	}
	if got := Metric.Newtons(Metric.Force(1234)); got != 1234 {
		t.Errorf("1234 N came back as %g", got)
	}
}
