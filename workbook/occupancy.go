package workbook

// occupancy lays out how many people each tent may hold, and its exits.
func (l *layout) occupancy() {
	if l.q.Egress == nil {
		return
	}
}

// egressFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) egressFormulas(kind, rest string) (is, limit string, ok bool) { return "", "", false }
