package quote

// checkAnchors holds what each tent must hold against what holds it.
func (q *Quote) checkAnchors() {}
