package workbook

// planSheet shows the plot, drawn to scale.
func (l *layout) planSheet() {
	if l.q.Plan == nil {
		return
	}
}

// planFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) planFormulas(kind, rest string) (is, limit string, ok bool) { return "", "", false }
