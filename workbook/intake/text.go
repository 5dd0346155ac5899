package intake

import (
	"maps"
	"slices"
	"unicode/utf16"
)

// short is a text of at most so many UTF-16 units, in which the file format
// counts; one that is cut ends in three points.
func short(s string, most int) string {
	if len(utf16.Encode([]rune(s))) <= most {
		return s
	}
	used := 1 // the three points are one sign
	for i, r := range s {
		if used += utf16.RuneLen(r); used > most {
			return s[:i] + "…"
		}
	}
	return s
}

// sorted lists the keys of a map.
func sorted[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
