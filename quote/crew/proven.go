package crew

import "tentwright/catalog/unit"

// Sure is the share of simulated runs that must be ready in time for a finish to
// be called sure; Spread.Ninety is of the same share.
const Sure = 0.9

// Date is the day of a moment of the window, which must have days.
func (w *Window) Date(m Moment) unit.Date {
	return w.Days[0].Date.AddDays(m.Day - w.Days[0].Number)
}

// Proven tells whether no order of the work could finish any window sooner, so
// that more time spent in search of one would be lost.
func (r *Result) Proven() bool {
	for i := range r.Windows {
		if w := &r.Windows[i]; w.Minutes > w.Shortest {
			return false
		}
	}
	return true
}

// Minutes is the working minutes of all windows.
func (r *Result) Minutes() int {
	sum := 0
	for i := range r.Windows {
		sum += r.Windows[i].Minutes
	}
	return sum
}
