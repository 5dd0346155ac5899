package crew

import (
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/load"
)

// upright is what a tent consists of until it stands: parts of these uses must
// be there before it goes up.
var upright = []string{"mark", "gear", "anchor", "frame", "top"}

// turns splits the unloading, or the loading of the way home, by the turns of
// the vehicles, and puts in the round trip of each vehicle that drives again.
func (b *winder) turns() {
	if len(b.trip.later) == 0 {
		return
	}
	driver, phase := "weight-out", "unload"
	if b.trip.back {
		driver, phase = "weight-back", "reload"
	}
	for _, i := range slices.Clone(b.mainWeight(driver, phase)) {
		b.splitByTurn(i)
	}
}

// mainWeight is the works that carry all the goods.
func (b *winder) mainWeight(driver, phase string) []int {
	var out []int
	for i := range b.site.works {
		if r := b.site.works[i].rule; r.Driver == driver && r.Phase == phase {
			out = append(out, i)
		}
	}
	return out
}

// splitByTurn makes of one work one for each turn, by the weight of the turn.
func (b *winder) splitByTurn(at int) {
	masses := map[int]unit.Mass{}
	last := 1
	for i := range b.trip.m.Trips {
		t := &b.trip.m.Trips[i]
		masses[t.Turn] += t.Mass
		last = max(last, t.Turn)
	}
	all := max(1, b.trip.m.Mass)
	base := b.site.works[at]
	before := at
	for turn := 1; turn <= last; turn++ {
		one := base
		one.turn = turn
		one.key, one.name = fmt.Sprintf("%s/turn %d", base.key, turn), fmt.Sprintf("%s (turn %d)", base.name, turn)
		one.share = part(base.share, masses[turn], all)
		if turn == 1 {
			b.site.works[at] = one
			continue
		}
		one.after = b.fetch(turn, before)
		before = b.site.put(one)
	}
}

const millionths = 1_000_000

// part is a share of the work by weight, in millionths, so that the fraction
// stays small.
func part(s share, some, all unit.Mass) share {
	return share{s.num * int64(float64(some)/float64(all)*millionths+0.5), s.den * millionths}
}

// fetch puts in the round trips of a turn, each behind the work that empties or
// fills its vehicle, and returns them.
func (b *winder) fetch(turn, behind int) []int {
	var out []int
	for _, t := range b.trip.later {
		if t.Turn != turn {
			continue
		}
		key := "fetch/" + t.Key
		if at := slices.IndexFunc(b.site.works, func(w work) bool { return w.key == key }); at >= 0 {
			out = append(out, at)
			continue
		}
		name := "Fetch load " + fmt.Sprint(turn)
		if b.site.works[behind].rule.Phase == "reload" {
			name = "Take a load home and come back"
		}
		out = append(out, b.site.put(work{key: key, name: name + ": " + vehicleName(t), kind: Fetch, crew: -1,
			share: share{int64(2 * max(1, b.trip.drive)), 1}, least: 1, most: 1, skill: catalog.DriverSkill, after: []int{behind}}))
	}
	return out
}

// vehicleName is the vehicle of a trip for people.
func vehicleName(t *load.Trip) string {
	if t.Vehicle.Count > 1 {
		return fmt.Sprintf("%s, no. %d", t.Vehicle.Name, t.Number)
	}
	return t.Vehicle.Name
}

// comesLater tells whether a work need not wait for the unloading of a later
// turn: a tent goes up with what a tent consists of.
func (b *winder) comesLater(w, waits *work) bool {
	if waits.turn <= 1 || w.phase > slices.Index(catalog.Phases(), "anchor") || waits.rule.Phase != "unload" {
		return false
	}
	last := 1
	for i := range b.trip.m.Shares {
		if s := &b.trip.m.Shares[i]; s.Quantity > 0 && s.Trip >= 0 && slices.Contains(upright, s.Part.Use) {
			last = max(last, b.trip.m.Trips[s.Trip].Turn)
		}
	}
	return waits.turn > last
}
