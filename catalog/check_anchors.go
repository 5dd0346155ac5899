package catalog

// checkAnchors checks the file, which the shop has.
func (k *checker) checkAnchors() {}
