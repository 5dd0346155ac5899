package crew

import (
	"cmp"
	"slices"
	"strconv"

	"tentwright/catalog"
)

// closing is the papers of the drivers at the end of the last day, in the yard
// beside whatever else is done there.
func (b *winder) closing() {
	if b.trip.closing == 0 || len(b.trip.vehicles) == 0 || len(b.site.works) == 0 {
		return
	}
	n := len(b.trip.vehicles)
	b.tail.put(work{key: "closing", name: b.trip.close, kind: Drive, crew: -1, share: share{int64(b.trip.closing * n), 1},
		least: n, most: n, skill: catalog.DriverSkill})
}

// allot gives each tent to one of the crews: the tent with the most hours to
// the crew with the fewest. What is of the whole job either crew does.
func (b *winder) allot() {
	crews := b.crews()
	if crews == 1 {
		return
	}
	minutes := map[string]int{}
	var tents []string
	of := func(w *work) string { return w.tent + "/" + strconv.Itoa(w.part) }
	for i := range b.site.works {
		if w := &b.site.works[i]; w.tent != "" {
			if _, known := minutes[of(w)]; !known {
				tents = append(tents, of(w))
			}
			minutes[of(w)] += w.share.minutes(1)
		}
	}
	slices.SortStableFunc(tents, func(x, y string) int { return cmp.Compare(minutes[y], minutes[x]) })
	loads, crew := make([]int, crews), map[string]int{}
	for _, t := range tents {
		least := 0
		for k := range loads {
			if loads[k] < loads[least] {
				least = k
			}
		}
		crew[t] = least
		loads[least] += minutes[t]
	}
	for i := range b.site.works {
		if w := &b.site.works[i]; w.tent != "" {
			w.crew = crew[of(w)]
		}
	}
}

// crews is into how many the people of the window are split.
func (b *winder) crews() int { return max(1, min(b.ask.Crews, b.w.Crew)) }

// inspection puts in the visit of the authority: a lead goes round with it once
// the tents stand and the current is connected.
func (b *winder) inspection() {
	if b.ask.Inspect == 0 || len(b.site.works) == 0 {
		return
	}
	walls := slices.Index(catalog.Phases(), "sidewalls")
	w := work{key: "inspection", name: "The authority inspects", kind: Inspect, crew: -1,
		share: share{int64(max(1, b.c.Crew.Inspection)), 1}, least: 1, most: 1, skill: catalog.LeadSkill}
	held := b.held(func(w *work) bool { return w.rule != nil && w.rule.Inspected })
	for i := range b.site.works {
		if s := &b.site.works[i]; s.rule != nil && !held[i] && (s.phase <= walls || s.rule.Driver == "tag:distro" || s.rule.Driver == "tag:generator") {
			w.after = append(w.after, i)
		}
	}
	at := b.site.put(w)
	for i := range b.site.works[:at] {
		if s := &b.site.works[i]; s.rule != nil && s.rule.Inspected {
			s.after = append(s.after, at)
		}
	}
}

// release sets the inspection to its time on the days as they are.
func (b *winder) release(ax *axis) {
	if last := len(b.site.works) - 1; last >= 0 && b.site.works[last].kind == Inspect {
		b.site.works[last].release = ax.minute(b.due(), b.ask.Inspect)
	}
}
