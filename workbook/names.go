package workbook

import (
	"slices"

	"tentwright/quote"
)

// Ident turns an id into part of a defined name, as all names of the workbook
// have it.
func Ident(id string) string { return ident(id) }

// Numbers gives each order line, by its key, the number that it has on the
// quote.
func Numbers(q *quote.Quote) map[string]int { return newLayout(q).keys }

// ReturnKeys lists the lines of the check-in by their keys, with the id of the
// part of each.
func ReturnKeys(q *quote.Quote) map[string]string {
	keys := map[string]string{}
	for _, p := range returned(q) {
		keys[p.key] = p.part.ID
	}
	return keys
}

// returned lists what the check-in counts: each part once, tagged pieces one by
// one; what is used up does not come back.
func returned(q *quote.Quote) []portion {
	rows := portions(&q.Load.Out, true)
	byBin(rows)
	return slices.DeleteFunc(rows, func(p portion) bool { return p.part.Consumable || !p.part.Tracked && p.rank > 1 })
}
