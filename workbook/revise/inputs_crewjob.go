package revise

import (
	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// crewJob is what the job says of crews, times and weather, for the plan to keep
// to. An emptied time is none.
func (l *inputList) crewJob() {
	if l.c.Crew == nil {
		return
	}
	for i := range l.q.Labour.Windows {
		l.hoursOf(l.q.Labour.Windows[i].Spec)
	}
	l.ofJob(named("job_tries"), whole, "labour.tries", func(j *job.Job, v value) { j.Labour.Tries = int(v.number.IntPart()) })
	l.most(mostTries)
	l.weather()
}

// hoursOf is one window.
func (l *inputList) hoursOf(spec *catalog.Window) {
	cell := func(column string) address { return address{table: "hours", key: spec.ID, column: column} }
	path := "labour.windows{" + spec.ID + "}."
	l.ofJob(cell("crews"), whole, path+"crews", func(j *job.Job, v value) { windowOf(j, spec).Crews = int(v.number.IntPart()) })
	l.most(mostCrews)
	for _, x := range []struct {
		column string
		of     func(*job.WindowCrew) *unit.Clock
	}{
		{"from", func(w *job.WindowCrew) *unit.Clock { return &w.From }}, {"until", func(w *job.WindowCrew) *unit.Clock { return &w.Until }},
		{"ready", func(w *job.WindowCrew) *unit.Clock { return &w.Ready }}, {"inspect", func(w *job.WindowCrew) *unit.Clock { return &w.Inspect }},
	} {
		l.ofJob(cell(x.column), clock, path+x.column, func(j *job.Job, v value) { *x.of(windowOf(j, spec)) = v.at })
		l.all[len(l.all)-1].none = true
	}
	l.ofJob(cell("stay"), truth, path+"stay", func(j *job.Job, v value) { windowOf(j, spec).Stay = v.yes })
}

// weather is the forecast. Emptying either figure takes it out; a humidity alone
// is refused with the job.
func (l *inputList) weather() {
	set := func(name, path string, do func(*job.Weather, value)) {
		l.ofJob(named(name), number, path, func(j *job.Job, v value) {
			if v.text == "" {
				j.Labour.Weather = nil
				return
			}
			if j.Labour.Weather == nil {
				j.Labour.Weather = &job.Weather{}
			}
			do(j.Labour.Weather, v)
		})
		l.all[len(l.all)-1].none = true
	}
	set("job_weather_temperature", "labour.weather.temperature", func(w *job.Weather, v value) {
		t := unit.TemperatureIn(v.number.InexactFloat64(), l.c.Company.Units)
		w.Temperature = &t
	})
	set("job_weather_humidity", "labour.weather.humidity", func(w *job.Weather, v value) { w.Humidity = v.number })
}
