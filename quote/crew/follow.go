package crew

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// awaited is the windows before this one whose end it waits for: those in which
// a rule stands that one of its own waits for, and of earlier phases where a rule
// names none.
func (b *winder) awaited() []*Window {
	ids := map[string]bool{}
	for r, window := range b.busy {
		if window != b.w.Spec.ID {
			continue
		}
		if len(r.After) > 0 {
			b.windowsBehind(r, ids, map[string]bool{})
			continue
		}
		for e, of := range b.busy {
			if phase(e) < phase(r) {
				ids[of] = true
			}
		}
	}
	var out []*Window
	for i := range b.done {
		if w := &b.done[i]; len(w.Tasks) > 0 && w.Setting != nil && ids[w.Labour.Spec.ID] {
			out = append(out, w)
		}
	}
	return out
}

// phase is the place of a rule's phase in a job.
func phase(r *catalog.LabourRule) int { return slices.Index(catalog.Phases(), r.Phase) }

// windowsBehind adds the windows of the rules that a rule waits for, through
// rules that have nothing to do.
func (b *winder) windowsBehind(r *catalog.LabourRule, ids, seen map[string]bool) {
	for _, id := range r.After {
		before := b.rules[id]
		if before == nil || seen[id] {
			continue
		}
		seen[id] = true
		if window, busy := b.busy[before]; busy {
			ids[window] = true
		} else {
			b.windowsBehind(before, ids, seen)
		}
	}
}

// over is when a window is done with all, the way home and the yard included.
func (w *Window) over() (unit.Date, unit.Clock) {
	var m Moment
	for i := range w.Tasks {
		m = later(m, w.Tasks[i].Finish)
	}
	return w.Date(m), m.At
}

// placedByEnd tells whether a window ends before a day of the job instead of
// beginning on one: then it cannot give way.
func placedByEnd(d *catalog.CrewDay) bool { return d.First == "" && d.Last != "" }

// follow lets the window begin no earlier than those that it waits for are
// done: on the same day if that leaves time worth a call, else on the next.
func (b *winder) follow() {
	if placedByEnd(b.set) {
		return
	}
	own := b.date(1)
	var last *Window
	for _, w := range b.awaited() {
		if placedByEnd(w.Setting) {
			continue // nor does this one; see crossed
		}
		date, at := w.over()
		days := own.DaysUntil(date)
		if days < b.shift || days == b.shift && at <= max(b.set.Start, b.begin) {
			continue
		}
		last, b.shift, b.begin = w, days, at
	}
	if last == nil {
		return
	}
	b.hour, b.stay = hours{shop: true, job: true, light: true}, b.ask.Stay
	if f := b.frame(1, 0); f.total-f.lead-f.home < leastSite {
		b.shift, b.begin = b.shift+1, 0
	}
	if b.shift > 0 {
		date, at := last.over()
		b.say("follow", b.set.Site || b.ask.Ready != 0, "%s is done %s %s; %s can begin %s at the earliest, and %s was expected",
			last.Labour.Spec.Name, date, at, b.w.Spec.Name, b.date(1), own)
	}
}

// crossed says which windows that cannot give way are done after this one has
// begun.
func (b *winder) crossed(own *Window) {
	for _, w := range b.awaited() {
		if !placedByEnd(w.Setting) && !placedByEnd(b.set) {
			continue
		}
		date, at := w.over()
		first, verb := own.Tasks[0].Start, "begins"
		for i := range own.Tasks {
			if t := &own.Tasks[i]; b.set.Site && t.Kind == Drive {
				first, verb = t.Start, "drives off"
				break
			}
		}
		begun := own.Date(first)
		if date.Before(begun) || date == begun && at <= first.At {
			continue
		}
		b.say("follow."+w.Labour.Spec.ID, true, "%s is done %s %s, after %s %s %s %s; more people or an earlier day were expected",
			w.Labour.Spec.Name, date, at, b.w.Spec.Name, verb, begun, first.At)
	}
}

// opens is when a day of the crew begins.
func (b *winder) opens(n int) int {
	if n == 1 {
		return int(max(b.set.Start, b.begin))
	}
	return int(b.set.Start)
}

// given is the days that the window may take: one more than asked for where it
// begins on a day that others have used in part.
func (b *winder) given() int {
	if b.begin > b.set.Start && !b.set.Site {
		return b.w.Days + 1
	}
	return b.w.Days
}

// due is the day, of those of the window, on which the job's times of its last
// day fall.
func (b *winder) due() int { return max(1, b.w.Days-b.shift) }

// opened is when the first day begins behind other windows; 1 of other days.
func (b *winder) opened(n int) int {
	if n == 1 {
		return max(1, int(b.begin))
	}
	return 1
}

// leaving is the day on which a crew that stays goes home.
func (b *winder) leaving() int {
	if b.leave > 0 {
		return b.leave
	}
	return b.w.Days
}
