package crew

import (
	"fmt"
	"math"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// heatFactor is the site factor that says how hot or cold the site is.
const heatFactor = "heat"

// heatSource is where the heat index is from.
const heatSource = "heat index by Rothfusz 1990, US National Weather Service, SR 90-23; coefficients from memory"

// heatLeast is the heat index below which the regression is not meant to be used,
// and below which nothing is said where the shop has no bands, in tenths of a
// degree Fahrenheit.
const heatLeast = 800

// The formula holds no further than the chart of the National Weather Service
// that it was fitted to: an index of 137 F, and air of 112 F; from memory.
const (
	heatMost = 137 // index, in degrees Fahrenheit
	hottest  = 112 // air, likewise
)

// heatCautions are what the crew's weather asks for: by the shop's bands where the
// job gives temperature and humidity, and wherever the site is not as usual. Bands
// of the demonstration count in no other shop.
func heatCautions(c *catalog.Catalog, j *job.Job) []Caution {
	if c.Crew == nil {
		return nil
	}
	var list []Caution
	w := j.Labour.Weather
	if f := c.SiteFactor(heatFactor); f != nil {
		if o := j.Option(c, heatFactor); o != nil && o.ID != f.Options[0].ID {
			text := fmt.Sprintf("the site's weather for work is %q, not %q; what the yard's safety plan asks for then was expected", o.Name, f.Options[0].Name)
			if w == nil {
				text += "; temperature and humidity of the work (labour, weather) would give the heat index"
			}
			list = append(list, Caution{Key: "heat.site", Text: text})
		}
	}
	if w == nil || w.Temperature == nil {
		return list
	}
	return append(list, weatherCaution(c, w)...)
}

// weatherCaution is what the weather asks for by its heat index, if anything.
func weatherCaution(c *catalog.Catalog, w *job.Weather) []Caution {
	sys := c.Company.Units
	air := w.Temperature.Fahrenheit()
	tenths := int(math.Round(10 * heatIndex(air, w.Humidity.InexactFloat64())))
	index := unit.TemperatureIn(math.Round(10*unit.TemperatureIn(float64(tenths)/10, unit.Imperial).In(sys))/10, sys)
	text := fmt.Sprintf("the heat index is %s in the shade, of %s and %s %% humidity", index.Text(sys), w.Temperature.Text(sys), w.Humidity)
	if air > hottest+1e-6 || tenths > 10*heatMost {
		tenths = max(tenths, 10*heatMost+1) // never a lower band than that of the end of the chart
		text = fmt.Sprintf("the heat index is beyond the chart, above %s, of %s and %s %% humidity",
			unit.TemperatureIn(math.Round(unit.TemperatureIn(heatMost, unit.Imperial).In(sys)), sys).Text(sys), w.Temperature.Text(sys), w.Humidity)
	}
	heat := c.Crew.Heat
	if heat == nil || heat.Demo && !c.Demo {
		if tenths < heatLeast {
			return nil
		}
		return []Caution{{Key: "heat.bands", Source: heatSource,
			Text: text + "; what is done from there on is not known: the yard's own bands (crew.yaml, heat) were expected"}}
	}
	n := bandOf(heat, tenths)
	if n < 0 {
		return nil
	}
	b, source := &heat.Bands[n], heatSource
	if heat.Source != "" {
		source += "; " + heat.Source
	}
	return []Caution{{Key: "heat.index", Text: fmt.Sprintf("%s, %s: %s", text, b.Name, b.What), Source: source, Severe: n == len(heat.Bands)-1}}
}

// bandOf is the last band that a heat index in tenths of a degree Fahrenheit has
// reached; below zero for none.
func bandOf(heat *catalog.HeatCaution, tenths int) int {
	at := -1
	for n := range heat.Bands {
		if float64(tenths) >= 10*heat.Bands[n].From.Fahrenheit()-1e-6 {
			at = n
		}
	}
	return at
}

// heatIndex is what the air feels like to a person at rest in the shade and a
// light wind, in degrees Fahrenheit, from its temperature in degrees Fahrenheit
// and its relative humidity in percent. It is the regression of Rothfusz with the
// two adjustments that the National Weather Service makes, and below 80 F the
// average of the air and of the simple formula (Steadman); coefficients from
// memory, checked against values from memory too.
func heatIndex(t, r float64) float64 {
	simple := (t + 61 + (t-68)*1.2 + r*0.094) / 2
	if simple < 80 {
		return simple
	}
	index := -42.379 + 2.04901523*t + 10.14333127*r - 0.22475541*t*r - 6.83783e-3*t*t -
		5.481717e-2*r*r + 1.22874e-3*t*t*r + 8.5282e-4*t*r*r - 1.99e-6*t*t*r*r
	switch {
	case r < 13 && t >= 80 && t <= 112:
		index -= (13 - r) / 4 * math.Sqrt((17-math.Abs(t-95))/17)
	case r > 85 && t >= 80 && t <= 87:
		index += (r - 85) / 10 * (87 - t) / 5
	}
	return index
}
