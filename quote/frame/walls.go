package frame

import "tentwright/catalog/unit"

// WallCover is how many panels of each width close a side: the fewest, and of
// those the set with the least excess; n panels cover the sum of their widths
// less n-1 overlaps. Of equal sets the one with most of the widest is taken. It
// is false when no number of panels does.
func WallCover(side unit.Length, widths []unit.Length, overlap unit.Length) (counts []int, ok bool) {
	counts = make([]int, len(widths))
	if side <= 0 {
		return counts, true
	}
	if len(widths) == 0 {
		return nil, false
	}
	// Only the widest alone tell how few panels can do.
	widest := 0
	for i, w := range widths {
		if w > widths[widest] {
			widest = i
		}
	}
	// The first panel covers its width, each further one its net width.
	net, rest := widths[widest]-overlap, side-widths[widest]
	n := 1
	switch {
	case rest > 0 && net <= 0:
		return nil, false
	case rest > 0:
		n += int((rest + net - 1) / net)
	}
	counts[widest] = n
	trim(counts, widths, widest, unit.Length(n-1)*net-rest)
	return counts, true
}

// trim swaps widest panels for narrower ones so that the widths given up come
// as near as possible to the excess of using only the widest. Sums are tried
// in rounds of one more swap, so each is first reached by the fewest.
func trim(counts []int, widths []unit.Length, widest int, excess unit.Length) {
	last := map[unit.Length]int{} // the swap by which a sum was reached
	best, round := unit.Length(0), []unit.Length{0}
	for swaps := 0; swaps < counts[widest] && len(round) > 0; swaps++ {
		var next []unit.Length
		for _, sum := range round {
			for i, w := range widths {
				more := sum + widths[widest] - w
				if _, seen := last[more]; seen || more == sum || more > excess {
					continue
				}
				last[more] = i
				next = append(next, more)
				best = max(best, more)
			}
		}
		round = next
	}
	// Back along the swaps that led to the best sum.
	for best > 0 {
		i := last[best]
		counts[i]++
		counts[widest]--
		best -= widths[widest] - widths[i]
	}
}
