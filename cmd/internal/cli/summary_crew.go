package cli

import (
	"fmt"

	"tentwright/quote"
	"tentwright/quote/crew"
)

// ready is a line on when the site is ready by the crew plan: the first window of
// work there, with its people and the cheapest number of them that is in time.
func ready(q *quote.Quote) []string {
	if q.Crew == nil {
		return nil
	}
	for i := range q.Crew.Windows {
		w := &q.Crew.Windows[i]
		if len(w.Days) == 0 || w.Setting == nil || !w.Setting.Site {
			continue
		}
		words := []string{moment(w, w.Finish)}
		if by := w.Spread.Ninety; w.Spread.Runs > 0 && by.Day == w.Finish.Day {
			words = append(words, "9 of 10 sure by "+by.At.String())
		} else if w.Spread.Runs > 0 {
			words = append(words, "9 of 10 sure by "+moment(w, by))
		}
		return wrap("  ready     ", append(words, fmt.Sprintf("%d people%s", len(w.People), cheapest(w))))
	}
	return nil
}

// moment is a time of a window's days.
func moment(w *crew.Window, m crew.Moment) string {
	return fmt.Sprintf("%s %s", w.Date(m), m.At)
}

// cheapest says which crew would cost least, of those that are in time.
func cheapest(w *crew.Window) string {
	for i := range w.Sizes {
		switch z := &w.Sizes[i]; {
		case z.Cheapest && z.Asked:
			return ", the cheapest crew"
		case z.Cheapest:
			return fmt.Sprintf(", the cheapest crew is %d", z.People)
		}
	}
	if len(w.Sizes) > 0 {
		return ", no crew that was tried is in time"
	}
	return ""
}
