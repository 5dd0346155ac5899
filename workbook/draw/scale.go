package draw

import (
	"fmt"
	"math"

	"gonum.org/v1/plot/vg"

	"tentwright/catalog/unit"
)

// scale is how plot and drawing go together.
type scale struct {
	name     string
	perMetre float64 // points
	bar      float64 // metres of the scale bar, four equal parts
	half     string  // words at its middle and its end
	whole    string
}

// feetScales are the feet to the inch of an engineer's scale, and their tens;
// metricScales are those of a metric one. Both are what people measure with.
var (
	feetScales   = []float64{5, 10, 20, 30, 40, 50, 60, 80, 100, 200, 300, 400, 500, 600, 1000, 2000, 4000, 8000, 20000}
	metricScales = []float64{50, 100, 200, 250, 500, 1000, 2000, 2500, 5000, 10000, 20000, 50000, 100000, 250000}
)

// scaleFor is the largest round scale at which a ground of a size in metres
// fits a space on paper; past the last one, whatever fits.
func scaleFor(sys unit.System, wide, deep float64, space vg.Point) scale {
	fits := func(perMetre float64) bool {
		return wide*perMetre <= space.X.Points() && deep*perMetre <= space.Y.Points()
	}
	if sys == unit.Metric {
		for _, ratio := range metricScales {
			if s := metricScale(ratio); fits(s.perMetre) {
				return s
			}
		}
		return metricScale(100 * math.Ceil(max(wide/space.X.Points(), deep/space.Y.Points())*72/2.54))
	}
	for _, feet := range feetScales {
		if s := feetScale(feet); fits(s.perMetre) {
			return s
		}
	}
	return feetScale(math.Ceil(max(wide/space.X.Points(), deep/space.Y.Points()) * 72 / unit.Foot.Metres()))
}

// feetScale is so many feet to the inch; its bar is two inches long.
func feetScale(feet float64) scale {
	foot := unit.Foot.Metres()
	return scale{name: fmt.Sprintf("1 in = %g ft", feet), perMetre: 72 / (feet * foot), bar: 2 * feet * foot,
		half: fmt.Sprintf("%g", feet), whole: fmt.Sprintf("%g ft", 2*feet)}
}

// metricScale is one to a ratio; its bar is four centimetres long.
func metricScale(ratio float64) scale {
	return scale{name: fmt.Sprintf("1:%g", ratio), perMetre: 72 / 0.0254 / ratio, bar: ratio / 25,
		half: fmt.Sprintf("%g", ratio/50), whole: fmt.Sprintf("%g m", ratio/25)}
}
