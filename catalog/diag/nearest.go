package diag

import (
	"fmt"
	"slices"
	"strings"
)

// shortList is the most names that advice spells out when none is near.
const shortList = 8

// Nearest is the known name that word most likely means, by edit distance
// with swapped neighbours counted once. Case, "-", "_" and spaces do not
// count. False when none is within a third of the word's length, or 1. Of
// equally near names the first in alphabetical order is taken.
func Nearest(word string, known []string) (string, bool) {
	from := plain(word)
	if len(from) == 0 {
		return "", false
	}
	best, found := max(1, len(from)/3)+1, ""
	for _, name := range known {
		to := plain(name)
		// The difference in length is a lower bound of the distance.
		if len(to) == 0 || len(to)-len(from) > best || len(from)-len(to) > best {
			continue
		}
		n := distance(from, to)
		// A change of every letter is another word, however short it is.
		if n >= max(len(from), len(to)) {
			continue
		}
		if n < best || n == best && found != "" && name < found {
			best, found = n, name
		}
	}
	return found, found != ""
}

// DidYouMean is advice for an unknown word: `did you mean "x"?`, or the known
// names when none is near and there are at most 8 of them, or "".
func DidYouMean(word string, known []string) string {
	if name, ok := Nearest(word, known); ok {
		return fmt.Sprintf("did you mean %q?", name)
	}
	if len(known) == 0 || len(known) > shortList {
		return ""
	}
	return "known: " + strings.Join(known, ", ")
}

// HasWords tells whether every word of asked begins a word of one of the texts,
// in any case; "-", "_", commas and spaces part words. No word is in no text.
func HasWords(asked string, texts ...string) bool {
	words := wordsOf(asked)
	have := wordsOf(strings.Join(texts, " "))
	for _, word := range words {
		if !slices.ContainsFunc(have, func(h string) bool { return strings.HasPrefix(h, word) }) {
			return false
		}
	}
	return len(words) > 0
}

func wordsOf(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" -_,:;()", r) })
}

// plain is a name without what people mix up: case and joining marks.
func plain(name string) []rune {
	return []rune(strings.Map(func(r rune) rune {
		if r == '-' || r == '_' || r == ' ' {
			return -1
		}
		return r
	}, strings.ToLower(name)))
}

// distance is the least number of letters inserted, removed, replaced or
// swapped with their neighbour that turns a into b, no letter touched twice
// (Damerau-Levenshtein in the restricted form).
func distance(a, b []rune) int {
	// Three rows are enough: a swap looks back two.
	before, above, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range above {
		above[j] = j
	}
	for i := range a {
		row[0] = i + 1
		for j := range b {
			change := 1
			if a[i] == b[j] {
				change = 0
			}
			row[j+1] = min(above[j+1]+1, row[j]+1, above[j]+change)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, above, row = above, row, before
	}
	return above[len(b)]
}
