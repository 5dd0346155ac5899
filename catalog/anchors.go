package catalog

import "tentwright/catalog/source"

// Anchors is what a shop knows of wind, soil, stakes and ballast.
type Anchors struct {
	Where source.Where
}

// checkAnchors checks the file, which the shop has.
func (k *checker) checkAnchors() {}
