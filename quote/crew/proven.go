package crew

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
