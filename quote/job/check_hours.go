package job

import (
	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// BadHours is a time of the job's windows of work that cannot be kept, or that
// changes nothing.
const BadHours = "bad-hours"

// hours checks crews, times and weather of the windows of work. Whether the work
// fits into these times is the plan's to say; it refuses no job.
func (k *checker) hours() {
	for i := range k.j.Labour.Windows {
		k.windowHours(&k.j.Labour.Windows[i])
	}
	w := k.j.Labour.Weather
	if w != nil && w.Temperature == nil && k.form.Sound(w.Where, "temperature") {
		k.list.Addf(w.Where.Pos(), BadHours, "the weather has a humidity but no temperature; both were expected")
	}
}

// windowHours checks one window.
func (k *checker) windowHours(w *WindowCrew) {
	bad := func(field, format string, args ...any) { k.list.Addf(w.Where.Of(field), BadHours, format, args...) }
	if !k.form.Sound(w.Where, "from", "until", "ready", "inspect", "stay", "crew", "crews") {
		return
	}
	after := func(field string, at unit.Clock) {
		if w.From != 0 && at != 0 && at <= w.From {
			bad(field, "%s %s is not after from %s; a later time was expected", field, at, w.From)
		}
	}
	after("until", w.Until)
	after("ready", w.Ready)
	after("inspect", w.Inspect)
	if w.Until != 0 && w.Inspect > w.Until {
		bad("inspect", "inspect %s is after until %s, when the site must be left; an earlier time was expected", w.Inspect, w.Until)
	}
	if people := k.peopleOf(w); people > 0 && w.Crews > people {
		bad("crews", "%d people cannot be split into %d crews; at most %d were expected", people, w.Crews, people)
	}
	if day := k.dayOf(w.Window); day != nil && !day.Site {
		k.yardHours(w, bad)
	}
}

// yardHours refuses what holds on a site alone of a window that works in the
// yard, for nothing would follow from it.
func (k *checker) yardHours(w *WindowCrew, bad func(field, format string, args ...any)) {
	for _, x := range []struct {
		field string
		given bool
	}{{"from", w.From != 0}, {"until", w.Until != 0}, {"inspect", w.Inspect != 0}, {"stay", w.Stay}} {
		if x.given {
			bad(x.field, "window of work %q is in the yard, so %s changes nothing; one with site: yes in crew.yaml was expected", w.Window, x.field)
		}
	}
}

// peopleOf is how many people a window has: the job's, else the shop's; 0 of a
// window that is not known.
func (k *checker) peopleOf(w *WindowCrew) int {
	if w.Crew > 0 {
		return w.Crew
	}
	for i := range k.c.Rates.Windows {
		if spec := &k.c.Rates.Windows[i]; spec.ID == w.Window {
			return spec.Crew
		}
	}
	return 0
}

// dayOf is what the shop's crew file says of a window; nil where it says
// nothing.
func (k *checker) dayOf(window string) *catalog.CrewDay {
	if k.c.Crew == nil {
		return nil
	}
	for i := range k.c.Crew.Days {
		if day := &k.c.Crew.Days[i]; day.Window == window {
			return day
		}
	}
	return nil
}
