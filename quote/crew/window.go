package crew

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/labour"
	"tentwright/quote/load"
	"tentwright/quote/parts"
)

// winder plans one window of work.
type winder struct {
	c     *catalog.Catalog
	j     *job.Job
	p     *parts.Result
	l     *labour.Result
	rules map[string]*catalog.LabourRule
	busy  map[*catalog.LabourRule]string // window of each rule that has something to do
	w     *labour.Window
	set   *catalog.CrewDay
	ask   job.WindowCrew
	trip  travel
	done  []Window   // those before it, as they are planned
	shift int        // days that these put it off by
	begin unit.Clock // when they let it begin on its first day; 0: with the day
	leave int        // day on which the crew leaves for home, where it stays; 0: the last one asked for
	quiet int        // day on which only the inspection is left; 0: none
	stay  bool       // nights are spent near the site
	hour  hours      // of the site
	head  *network
	site  *network
	tail  *network
	says  []Caution
}

// prepare gathers what the shop and the job say of the window. It tells
// whether there is anything to do.
func (b *winder) prepare(plan *load.Plan) bool {
	for i := range b.j.Labour.Windows {
		if b.j.Labour.Windows[i].Window == b.w.Spec.ID {
			b.ask = b.j.Labour.Windows[i]
		}
	}
	b.set = b.c.Crew.Day(b.w.Spec.ID)
	if b.set == nil {
		return false
	}
	if b.set.Site {
		b.trip = b.travel(plan)
	}
	b.networks()
	if len(b.head.works)+len(b.site.works)+len(b.tail.works) == 0 {
		return false
	}
	b.follow()
	b.settleHours()
	return true
}

// has tells whether a phase is done in the window.
func (b *winder) has(phases ...string) bool {
	return slices.ContainsFunc(phases, func(p string) bool { return slices.Contains(b.w.Spec.Phases, p) })
}

// date is the day of the window with a number from 1.
func (b *winder) date(n int) unit.Date {
	of := func(name string) unit.Date {
		switch name {
		case catalog.FromStrike:
			return b.j.Dates.Strike
		case catalog.FromCollect:
			return b.j.Dates.Collect
		}
		return b.j.Dates.Deliver
	}
	if b.set.First == "" && b.set.Last != "" {
		return of(b.set.Last).AddDays(n - 1 - b.w.Days)
	}
	return of(b.set.First).AddDays(n - 1 + b.shift)
}

// tries is how many schedules are made in search of a short one. Where nobody
// asked for a number, large jobs get fewer, so that time grows with the job and
// not with its square.
func (b *winder) tries() int {
	if b.j.Labour.Tries > 0 {
		return b.j.Labour.Tries
	}
	const full = 150 // tasks up to which the shop's number holds
	return max(1, b.c.Crew.Tries*full/max(full, len(b.site.works)))
}
