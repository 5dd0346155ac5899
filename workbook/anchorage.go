package workbook

// anchorage lays out what holds each leg, beside what it must hold.
func (l *layout) anchorage() {
	if l.q.Anchor == nil {
		return
	}
}

// anchorFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) anchorFormulas(kind, rest string) (is, limit string, ok bool) { return "", "", false }
