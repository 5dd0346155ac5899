package catalog

import (
	"fmt"
	"slices"

	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
)

// checkCrew checks the days of the crews: when they work, by which light, and
// what stops them.
func (k *checker) checkCrew() {
	c := k.c.Crew
	seen := map[string]bool{}
	for i := range c.Days {
		d := &c.Days[i]
		k.windows.want(k.list, d.Window, d.Where.Of("window"))
		if seen[d.Window] && d.Window != "" {
			k.list.Addf(d.Where.Of("window"), RepeatedID, "window of work %q has two days; one was expected", d.Window)
		}
		seen[d.Window] = true
		k.checkCrewDay(d)
	}
	if k.form.Sound(c.Where, "days") && !seen[""] {
		for i := range k.c.Rates.Windows {
			if id := k.c.Rates.Windows[i].ID; !seen[id] && id != "" {
				k.list.Addf(c.Where.Of("days"), BadCrewDay, "window of work %q has no day; one for each window of rates.yaml was expected", id)
			}
		}
	}
	k.checkPauses()
	k.checkDaylight()
	for n, phase := range c.Whole {
		if slices.Contains(c.Whole[:n], phase) {
			k.list.Addf(c.Where.Of(fmt.Sprintf("whole[%d]", n)), RepeatedID, "phase %q stands twice; each once was expected", phase)
		}
	}
}

// yardPhases are done in the yard; in all others somebody is on the site or on
// the way.
var yardPhases = []string{"load", "wash and dry", "put away"}

// checkCrewDay checks the day of one window.
func (k *checker) checkCrewDay(d *CrewDay) {
	if k.form.Sound(d.Where, "start", "finish") && d.Finish <= d.Start && d.Finish != 0 {
		k.list.Addf(d.Where.Of("finish"), BadCrewDay, "the crew's day finishes at %s but starts at %s; a later time was expected", d.Finish, d.Start)
	}
	if k.form.Sound(d.Where, "first", "last") && (d.First == "") == (d.Last == "") {
		k.list.Addf(d.Where.Pos(), BadCrewDay, "the days of window %q are given in no way or in two; first or last was expected", d.Window)
	}
	for i := range k.c.Rates.Windows {
		w := &k.c.Rates.Windows[i]
		if w.ID != d.Window || !k.form.Sound(d.Where, "site", "window") || !k.form.Sound(w.Where, "phases") {
			continue
		}
		away := slices.IndexFunc(w.Phases, func(p string) bool { return p != "" && !slices.Contains(yardPhases, p) })
		switch {
		case d.Site && away < 0 && len(w.Phases) > 0:
			k.list.Addf(d.Where.Of("site"), BadCrewDay, "window %q has no phase on the site, so nobody drives there; site: no was expected", d.Window)
		case !d.Site && away >= 0:
			k.list.Addf(d.Where.Pos(), BadCrewDay, "window %q has phase %q, which is on the site; site: yes was expected", d.Window, w.Phases[away])
		}
	}
}

// checkPauses wants breaks to follow each other and to last.
func (k *checker) checkPauses() {
	last := unit.Span(0)
	for i := range k.c.Crew.Breaks {
		b := &k.c.Crew.Breaks[i]
		if !k.form.Sound(b.Where, "after", "lasts") {
			continue
		}
		switch {
		case b.After <= last:
			k.list.Addf(b.Where.Of("after"), BadBreak, "break %q is %s after the day began, but the one before it lasts until %s; a later one was expected", b.Name, b.After, last)
		case b.Lasts <= 0:
			k.list.Addf(b.Where.Of("lasts"), BadBreak, "break %q lasts no time; some was expected", b.Name)
		}
		last = max(last, b.After+b.Lasts)
	}
}

// checkDaylight wants each month once, and all of them where there are any:
// the light of a month that is left out would limit nothing.
func (k *checker) checkDaylight() {
	c := k.c.Crew
	seen := map[string]bool{}
	for i := range c.Daylight {
		l := &c.Daylight[i]
		if seen[l.Month] && l.Month != "" {
			k.list.Addf(l.Where.Of("month"), RepeatedID, "month %q stands twice; each once was expected", l.Month)
		}
		seen[l.Month] = true
		if k.form.Sound(l.Where, "from", "until") && l.Until <= l.From && l.Until != 0 {
			k.list.Addf(l.Where.Of("until"), BadDaylight, "the light of %s lasts until %s but begins at %s; a later time was expected", l.Month, l.Until, l.From)
		}
	}
	if n := len(seen); n > 0 && n < 12 && !seen[""] && k.form.Sound(c.Where, "daylight") {
		k.list.Addf(c.Where.Of("daylight"), BadDaylight, "there is light for %d months; all twelve, or none, were expected", n)
	}
}

// checkSharing checks how labour rules are shared: how many people, and by
// which gear.
func (k *checker) checkSharing() {
	for i := range k.c.Labour {
		r := &k.c.Labour[i]
		if k.form.Sound(r.Where, "most", "crew") && r.Most != 0 && r.Most < r.Crew {
			k.list.Add(diag.Problem{Pos: r.Where.Of("most"), Code: BadMost, Related: []diag.Pos{r.Where.Of("crew")},
				Message: fmt.Sprintf("rule %q takes %d people at least but %d at most; %d or more was expected", r.ID, r.Crew, r.Most, r.Crew)})
		}
		k.wantAll(k.parts, r.Gear, entries(r.Where, "gear"))
		for n, part := range r.Gear {
			if slices.Contains(r.Gear[:n], part) {
				k.list.Addf(entries(r.Where, "gear")(n), RepeatedID, "part %q stands twice among the gear of rule %q; each once was expected", part, r.ID)
			}
		}
	}
}
