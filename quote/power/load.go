package power

import (
	"cmp"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
)

// Load is a part of the shop's list that takes current or gives light, as the
// job takes it along.
type Load struct {
	Spec  *catalog.PowerLoad
	Part  *catalog.Part
	Count int
	Watts money.Number // of all
	Each  money.Number // volt-amperes of one: watts by the power factor, to a tenth
	VA    money.Number // of all
	Light money.Number // lumens of all
}

// loads counts every part of the list over what is ordered and planned.
func (b *builder) loads() {
	taken := b.opened()
	b.r.VA, b.r.Watts = money.Zero, money.Zero
	for i := range b.p.Loads {
		spec := &b.p.Loads[i]
		n := taken[spec.Part]
		l := Load{Spec: spec, Part: b.c.Part(spec.Part), Count: n, Watts: spec.Watts.Mul(money.Int(n)), Light: spec.Lumens.Mul(money.Int(n))}
		l.Each = money.DivRound(spec.Watts, spec.PowerFactor(), 1)
		l.VA = l.Each.Mul(money.Int(n))
		b.r.Watts, b.r.VA = b.r.Watts.Add(l.Watts), b.r.VA.Add(l.VA)
		b.r.Loads = append(b.r.Loads, l)
	}
}

// opened counts the parts of all items that are ordered and of those planned so
// far, each line opened down and rounded up by itself as the stage of the parts
// does.
func (b *builder) opened() map[string]int {
	taken := map[string]int{}
	add := func(it *catalog.Item, many money.Number) {
		per := map[string]money.Number{}
		b.c.Open(it, func(p *catalog.Part, count money.Number) { per[p.ID] = per[p.ID].Add(count) })
		for part, each := range per {
			taken[part] += money.RoundUp(each.Mul(many))
		}
	}
	for i := range b.j.Items {
		line := &b.j.Items[i]
		if it := b.c.Item(line.Item); it != nil && (!line.Optional || line.Chosen) {
			add(it, line.Quantity)
		}
	}
	for id, many := range b.plan {
		add(b.c.Item(id), many)
	}
	return taken
}

// Circuit is what is plugged into one circuit.
type Circuit struct {
	Group string
	Leg   int // counted from 1
	Box   int // likewise; 0: no box fits
	On    []On
	VA    money.Number
}

// On is so many of a load on a circuit.
type On struct {
	Load  *Load
	Count int
}

// Carries is the volt-amperes that a circuit carries for hours.
func Carries(c *catalog.Circuit) money.Number {
	return c.Volts.Mul(c.Amps).Mul(c.Continuous).Shift(-2)
}

// circuits puts the loads on circuits, the largest first onto the first that
// still carries it; groups do not mix, so that a heater that trips its circuit
// does not put out the light. A load larger than a circuit has one of its own.
// The signs and lights of the way out are spread over so many circuits, each
// kind evenly, so that one that trips leaves the others burning.
func circuits(loads []Load, most money.Number, exits int) []Circuit {
	sorted := make([]*Load, 0, len(loads))
	for i := range loads {
		if loads[i].Count > 0 && loads[i].VA.IsPositive() {
			sorted = append(sorted, &loads[i])
		}
	}
	slices.SortStableFunc(sorted, func(x, y *Load) int {
		return cmp.Or(cmp.Compare(x.Spec.Group, y.Spec.Group), y.Each.Cmp(x.Each))
	})
	var list []Circuit
	ways, before := make([][]Circuit, max(1, exits)), 0
	for _, l := range sorted {
		if l.Spec.Group != groupExit {
			list = fill(list, l, l.Count, most)
			continue
		}
		for i := range ways {
			ways[i] = fill(ways[i], l, share(l.Count, before, len(ways), i), most)
		}
		before += l.Count
	}
	return append(slices.Concat(ways...), list...)
}

// groupExit are the loads of the way out, as catalog.PowerLoad names groups.
const groupExit = "exit"

// share is how many of a kind the way i of so many is given, when they are dealt
// out in turn and so many were dealt out before.
func share(count, before, ways, i int) int {
	dealt := func(n int) int { return (n - i + ways - 1) / ways }
	return dealt(before+count) - dealt(before)
}

// fill plugs so many of a load into circuits.
func fill(list []Circuit, l *Load, left int, most money.Number) []Circuit {
	for left > 0 {
		list, left = plug(list, l, left, most)
	}
	return list
}

// plug puts as many of a load as fit on the first circuit with room, or begins
// one, and gives how many are left.
func plug(list []Circuit, l *Load, left int, most money.Number) ([]Circuit, int) {
	each := l.Each
	for i := range list {
		if c := &list[i]; c.Group == l.Spec.Group && c.VA.Add(each).LessThanOrEqual(most) {
			n := min(left, int(most.Sub(c.VA).Div(each).IntPart()))
			if n > 0 {
				c.On, c.VA = append(c.On, On{l, n}), c.VA.Add(each.Mul(money.Int(n)))
				return list, left - n
			}
		}
	}
	n := max(1, min(left, int(most.Div(each).IntPart())))
	return append(list, Circuit{Group: l.Spec.Group, On: []On{{l, n}}, VA: each.Mul(money.Int(n))}), left - n
}

// balance spreads circuits over the legs of a supply, the largest first onto the
// leg with the least load, the first of equal ones; it gives the load of each.
func balance(list []Circuit, legs int) []money.Number {
	sums := make([]money.Number, legs)
	for _, i := range largestFirst(list) {
		least := 0
		for k := range sums {
			if sums[k].LessThan(sums[least]) {
				least = k
			}
		}
		list[i].Leg = least + 1
		sums[least] = sums[least].Add(list[i].VA)
	}
	return sums
}

// largestFirst is the order of circuits by their load, equal ones as they stand.
func largestFirst(list []Circuit) []int {
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(x, y int) int { return list[y].VA.Cmp(list[x].VA) })
	return order
}
