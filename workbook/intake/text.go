package intake

import (
	"maps"
	"slices"
)

// sorted lists the keys of a map.
func sorted[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
