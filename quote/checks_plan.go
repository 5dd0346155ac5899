package quote

// checkPlan looks for what is in the way on the plot.
func (q *Quote) checkPlan() {}
