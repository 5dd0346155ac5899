package anchor

import (
	"cmp"
	"slices"

	"tentwright/catalog"
)

// Strength is what one stake of a kind holds in some ground in a way in which it
// is loaded, in newtons, and where that is from; false where nothing is known.
func Strength(c *catalog.Catalog, s *catalog.Stake, ground *catalog.SiteOption, way string) (each float64, basis string, ok bool) {
	return (&builder{c: c, a: c.Anchors}).strength(s, ground, way)
}

// Tests lists the pull tests that count of a stake on a surface in a way as the
// shop's file calls it, the least first, which is the one that holds.
func Tests(c *catalog.Catalog, stake, surface, way string) []*catalog.PullTest {
	var all []*catalog.PullTest
	for i := range c.Anchors.Tests {
		if t := &c.Anchors.Tests[i]; t.Stake == stake && t.Surface == surface && t.Way == way && (!t.Demo || c.Demo) {
			all = append(all, t)
		}
	}
	slices.SortStableFunc(all, func(a, b *catalog.PullTest) int { return cmp.Compare(a.Pull, b.Pull) })
	return all
}

// Frictions lists those that count of a kind of ballast on a surface, the least
// first, which is the one that holds.
func Frictions(c *catalog.Catalog, ballast, surface string) []*catalog.Friction {
	var all []*catalog.Friction
	for i := range c.Anchors.Friction {
		if f := &c.Anchors.Friction[i]; f.Ballast == ballast && f.Surface == surface && (!f.Demo || c.Demo) {
			all = append(all, f)
		}
	}
	slices.SortStableFunc(all, func(a, b *catalog.Friction) int { return a.Mu.Cmp(b.Mu) })
	return all
}
