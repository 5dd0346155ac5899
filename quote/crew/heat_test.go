package crew

import (
	"math"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// Values of the heat index of the US National Weather Service, all from memory
// (MEM), but for the last five, worked apart from the formulas (Rothfusz 1990,
// SR 90-23, and the adjustments).
func TestHeatIndex(t *testing.T) {
	for _, x := range []struct{ t, r, want float64 }{
		{90, 50, 94.6},
		{90, 70, 105.9},
		{96, 65, 121.0},
		{100, 40, 109.3},
		{70, 50, 69.05},     // (70+61+2.4+4.7)/2
		{80, 40, 79.58},     // (80+61+14.4+3.76)/2: still the simple one
		{32, 80, 28.66},     // (32+61-43.2+7.52)/2
		{95, 5, 90.18 - 2},  // regression, less 8/4 sqrt(17/17)
		{82, 95, 92.97 + 1}, // regression, and 10/10 5/5 more
	} {
		if got := heatIndex(x.t, x.r); math.Abs(got-x.want) > 0.06 {
			t.Errorf("%v F and %v %%: %.3f; %v was expected", x.t, x.r, got, x.want)
		}
	}
}

// weather is a job that is worked in it.
func weather(t unit.Temperature, humidity int) *job.Job {
	return &job.Job{Labour: job.Labour{Weather: &job.Weather{Temperature: &t, Humidity: money.Int(humidity)}}}
}

func TestHeatCautions(t *testing.T) {
	load := func() *catalog.Catalog {
		c, list := catalog.Load("demo", catalog.Demo())
		if c == nil {
			t.Fatal(list)
		}
		return c
	}
	demo, own, bare, metric, none := load(), load(), load(), load(), load()
	own.Demo, bare.Crew.Heat, metric.Company.Units, none.Crew = false, nil, unit.Metric, nil
	fahrenheit := func(n float64) unit.Temperature { return unit.TemperatureIn(n, unit.Imperial) }
	at := func(option string, j *job.Job) *job.Job {
		j.Site = []job.SiteChoice{{Factor: "heat", Option: option}}
		return j
	}
	for _, x := range []struct {
		name   string
		c      *catalog.Catalog
		j      *job.Job
		want   []string // key, and words of the text
		severe bool
	}{
		{"nothing is said of the weather", demo, &job.Job{}, nil, false},
		{"the usual degree", demo, at("mild", &job.Job{}), nil, false},
		{"a hot site", demo, at("hot", &job.Job{}), []string{`heat.site the site's weather for work is "Hot, 85 to 95 F", not "Mild, under 85 F"; what`}, false},
		{"frost", own, at("cold", &job.Job{}), []string{`heat.site the site's weather for work is "Below freezing"`}, false},
		{"pleasant", demo, weather(fahrenheit(70), 50), nil, false},
		{"just below the first band", demo, weather(fahrenheit(80), 40), nil, false},
		{"caution", demo, weather(fahrenheit(82), 40), []string{"heat.index the heat index is 81.5 F in the shade, of 82 F and 40 % humidity, caution: water"}, false},
		{"danger", demo, weather(fahrenheit(90), 70), []string{"heat.index the heat index is 105.9 F in the shade, of 90 F and 70 % humidity, danger: heavy work before noon"}, false},
		{"the last band", demo, weather(fahrenheit(100), 65), []string{"heat.index the heat index is 135.9 F in the shade, of 100 F and 65 % humidity, extreme danger: stop"}, true},
		{"hot and told", demo, at("hot", weather(fahrenheit(90), 50)), []string{"heat.site ", "heat.index the heat index is 94.6 F"}, false},
		{"metric", metric, weather(unit.TemperatureIn(32, unit.Metric), 70), []string{"heat.index the heat index is 40.4 C in the shade, of 32 C and 70 % humidity, danger"}, false},
		{"another yard", own, weather(fahrenheit(90), 70), []string{"heat.bands the heat index is 105.9 F in the shade, of 90 F and 70 % humidity; what is done from there on is not known: the yard's own bands"}, false},
		{"no bands", bare, weather(fahrenheit(90), 70), []string{"heat.bands the heat index is 105.9 F"}, false},
		{"no bands, and cool", bare, weather(fahrenheit(75), 70), nil, false},
		{"no crew file", none, at("hot", weather(fahrenheit(90), 70)), nil, false},
	} {
		got := heatCautions(x.c, x.j)
		if len(got) != len(x.want) {
			t.Errorf("%s: %+v; %q was expected", x.name, got, x.want)
			continue
		}
		for i, want := range x.want {
			if text := got[i].Key + " " + got[i].Text; !strings.HasPrefix(text, want) || got[i].Severe != x.severe {
				t.Errorf("%s: %q, severe %t; %q was expected", x.name, text, got[i].Severe, want)
			}
		}
	}
}

// The index only rises with temperature and with humidity where crews work, and
// is never far off where one formula follows another.
func TestHeatIndexRises(t *testing.T) {
	for r := 20.0; r <= 95; r += 5 {
		last := 0.0
		for tt := 60.0; tt <= 110; tt += 0.5 {
			index := heatIndex(tt, r)
			if index < last-0.3 || last > 0 && index > last+8 {
				t.Errorf("%v F and %v %%: %.2f after %.2f", tt, r, index, last)
			}
			last = index
		}
	}
}
