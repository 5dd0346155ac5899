package quote

// checkDates looks for days that have passed or clash.
func (q *Quote) checkDates() {}
