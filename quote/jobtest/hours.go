package jobtest

import (
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// hours says how the crew gets in, and when and in what weather it works. It
// comes last, so that all else of a seed's job stays what it was.
func (m *maker) hours() {
	if m.chance("access", 40) {
		m.j.Event.Access, m.j.Event.Parking = *one(m, "way in", words), *one(m, "parking", words)
	}
	for i := range m.j.Labour.Windows {
		if m.chance("hours", 60) {
			m.windowHours(&m.j.Labour.Windows[i])
		}
	}
	if m.chance("weather", 20) {
		degrees := m.degrees("at work", -5, 42)
		m.j.Labour.Weather = &job.Weather{Temperature: &degrees, Humidity: money.Int(m.choose("humidity", 101))}
	}
	if m.chance("tries", 20) {
		m.j.Labour.Tries = m.between("schedules", 1, 40)
	}
}

// windowHours splits the people of a window into crews and sets its times, in
// quarters of an hour: a crew that is called late may have next to no time, for
// the plan must say so.
func (m *maker) windowHours(w *job.WindowCrew) {
	people, site := w.Crew, m.c.Crew == nil
	for i := range m.c.Rates.Windows {
		if spec := &m.c.Rates.Windows[i]; spec.ID == w.Window && people == 0 {
			people = spec.Crew
		}
	}
	w.Crews = m.choose("crews", min(people, 4)+1)
	if m.c.Crew != nil {
		for i := range m.c.Crew.Days {
			site = site || m.c.Crew.Days[i].Window == w.Window && m.c.Crew.Days[i].Site
		}
	}
	from := 4 * 5 // 5:00
	if site && m.chance("from", 40) {
		from = m.between("from", 4*5, 4*19)
		w.From = quarters(from)
	}
	if site && m.chance("until", 40) {
		w.Until = quarters(m.between("until", from+1, 4*24))
	}
	if m.chance("ready", 40) {
		w.Ready = quarters(m.between("ready", from+1, 4*24))
	}
	if site && m.chance("inspect", 30) {
		last := 4 * 24
		if w.Until != 0 {
			last = int(w.Until) / 15
		}
		w.Inspect = quarters(m.between("inspect", from+1, last))
	}
	w.Stay = site && m.chance("stay", 20)
}

// quarters is a time of day by the quarters of an hour since midnight.
func quarters(n int) unit.Clock { return unit.Clock(15 * n) }
