package catalog

import (
	"unicode/utf8"

	"tentwright/catalog/diag"
)

// The page of the crew lead holds so many lines in each list, each of so many
// characters: a list of more would be printed too small to read in the rain.
const (
	mostPointLines = 16
	pointLine      = 60
)

// checkCrewPoints checks what the lead looks at, on arrival and before the
// hand-over.
func (k *checker) checkCrewPoints() {
	c := k.c.Crew
	k.crewPoints("arrival", c.Arrival, c.Where.Of("arrival"))
	k.crewPoints("handover", c.Handover, c.Where.Of("handover"))
}

// crewPoints wants the ids of a list to differ, and the list to fit its page.
func (k *checker) crewPoints(list string, points []CrewPoint, where diag.Pos) {
	ids, lines := newKnown(list+" point"), 0
	for i := range points {
		p := &points[i]
		ids.add(k.list, p.ID, p.Where.Of("id"))
		lines += 1 + max(0, utf8.RuneCountInString(p.What)-1)/pointLine
	}
	if lines > mostPointLines {
		k.list.Addf(where, LongPoints, "the points of %s take %d lines of %d characters; at most %d were expected, so that they fit on the lead's one page", list, lines, pointLine, mostPointLines)
	}
}
