package workbook

// heatPower lays out heat, light and current.
func (l *layout) heatPower() {
	if l.q.Power == nil {
		return
	}
}

// powerFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) powerFormulas(kind, rest string) (is, limit string, ok bool) { return "", "", false }
