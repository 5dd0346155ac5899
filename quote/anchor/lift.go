package anchor

import "tentwright/quote/frame"

// Limits of the rounds between sideways and up. Guys that are all tied at one
// height settle in the first, since what they pull outward turns nothing over;
// ballast between them takes its part at the foot, and the rounds close in.
const (
	mostPasses = 60
	margin     = 1e-6 // of what a guy must pull, on top, so that the rounds end with all held
)

// settle balances one case sideways and up. Nothing but its slanting guys keeps
// a guyed leg from being lifted, and a guy cannot pull down without pulling
// outward: each pulls at least its part of the lift, times its run over its
// rise, whatever wind asks for sideways. The lift counts without the weight of
// the tent, which is on the safe side and keeps every force in proportion to the
// pressure. The whole then balances with these outward pulls in it. In words what
// cannot be settled.
func settle(spared, all *sideways, feet []foot, whole *load, reactions []frame.Point, pulls []float64) string {
	s := spared
	s.slacken()
	all.slacken()
	for range mostPasses {
		if !s.solve(whole, reactions, pulls) {
			if s == all || !all.solve(whole, reactions, pulls) {
				return "nothing holds it sideways"
			}
			s = all
		}
		if !balanceUp(feet, whole, reactions) {
			return "its legs cannot balance the lift"
		}
		if s.tighten(feet, reactions) {
			return ""
		}
		if s == spared { // what it holds by is carried on should it fail
			all.tighten(feet, reactions)
		}
	}
	return "the outward pull of its guys cannot be balanced"
}

// slacken lets every guy hang loose.
func (s *sideways) slacken() {
	for k := range s.holds {
		s.holds[k].least = 0
	}
}

// tighten makes each guy pull what the lift of its leg asks of it, and tells
// whether all did already.
func (s *sideways) tighten(feet []foot, reactions []frame.Point) bool {
	held := true
	for k := range s.holds {
		h := &s.holds[k]
		if !h.guy {
			continue
		}
		f := &feet[h.leg]
		need := max(0, -reactions[h.leg].Z) * f.run / f.rise / float64(f.guys())
		held = held && s.found[k] >= need*(1-1e-12)
		h.least = need * (1 + margin)
	}
	return held
}
