package anchor

import (
	"slices"

	"tentwright/catalog"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// ByCustom holds tents by the customary number of the shop's usual anchors, with
// no wind looked at: an estimate, such as for the weight of a size in a list.
// Without an anchors file the tents come back as they are, and the shop's rules
// take what holds them.
func ByCustom(c *catalog.Catalog, j *job.Job, tents []tent.Tent) []tent.Tent {
	if c.Anchors == nil {
		return tents
	}
	b := &builder{c: c, j: j, a: c.Anchors, tents: slices.Clone(tents), said: map[string]bool{}, left: map[string]int{}}
	b.begin()
	for i := range b.tents {
		b.tents[i].Holding = b.take(&b.tents[i], b.r.Tents[i].Legs)
	}
	return b.tents
}
