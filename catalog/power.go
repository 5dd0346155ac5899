package catalog

import "tentwright/catalog/source"

// Power is what a shop knows of heat, light and current.
type Power struct {
	Where source.Where
}

// checkPower checks the file, which the shop has.
func (k *checker) checkPower() {}
