package workbook

// dateSheet lays out by when each thing must be done.
func (l *layout) dateSheet() {
	if l.q.Dates == nil {
		return
	}
}

// datesFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) datesFormulas(kind, rest string) (is, limit string, ok bool) { return "", "", false }
