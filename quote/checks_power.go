package quote

// checkPower holds heat and current against what gives them.
func (q *Quote) checkPower() {}
