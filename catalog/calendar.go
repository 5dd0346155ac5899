package catalog

import "tentwright/catalog/source"

// Calendar is the days on which a shop works, and which date follows from
// which.
type Calendar struct {
	Where source.Where
}

// checkCalendar checks the file, which the shop has.
func (k *checker) checkCalendar() {}
