package catalog

import "tentwright/catalog/source"

// Occupancy is the tables of the code that governs how many people a tent may
// hold and how they get out.
type Occupancy struct {
	Where source.Where
}

// checkOccupancy checks the file, which the shop has.
func (k *checker) checkOccupancy() {}
