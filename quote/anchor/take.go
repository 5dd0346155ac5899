package anchor

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/tent"
)

// take adds up what holds one tent, and what goes with it.
func (b *builder) take(t *tent.Tent, legs []Leg) tent.Holding {
	var all tent.Holding
	stakes, ballast := map[*catalog.Stake]int{}, map[*catalog.BallastPiece]int{}
	for i := range legs {
		h, one := &legs[i].Holding, tent.Held{}
		// What is held by custom may be so for want of a kind that fits.
		if h.Ballast != nil || h.Stake == nil && !t.MayStake(legs[i].Sides) {
			one.Ballast = h.Count
			if h.Part != nil && h.Part.Full != nil {
				all.Filled += h.Count
			}
		} else {
			one.Stakes = h.Count
		}
		all.Legs = append(all.Legs, one)
		all.Staked, all.Held = all.Staked+one.Stakes, all.Held+one.Ballast
		if h.Stake != nil {
			stakes[h.Stake] += h.Count
		}
		if h.Ballast != nil {
			ballast[h.Ballast] += h.Count
		}
	}
	for i := range b.a.Stakes {
		s := &b.a.Stakes[i]
		takeWith(&all, s.Part, stakes[s], s.With)
	}
	for i := range b.a.Ballast {
		p := &b.a.Ballast[i]
		takeWith(&all, p.Part, ballast[p], p.With)
	}
	return all
}

// takeWith takes so many of a kind of anchor, and what goes with each, rounded
// up for the tent.
func takeWith(all *tent.Holding, part string, count int, with []catalog.Along) {
	if count == 0 {
		return
	}
	takePart(all, part, count)
	for _, a := range with {
		takePart(all, a.Part, money.RoundUp(a.Count.Mul(money.Int(count))))
	}
}

// takePart adds to what is taken of a part already.
func takePart(all *tent.Holding, part string, count int) {
	for i := range all.Parts {
		if all.Parts[i].Part == part {
			all.Parts[i].Count += count
			return
		}
	}
	if count > 0 {
		all.Parts = append(all.Parts, tent.Taken{Part: part, Count: count})
	}
}
