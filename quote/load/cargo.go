package load

import (
	"math"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"
)

// yard is what a plan is made from: vehicles and goods.
type yard struct {
	c     *catalog.Catalog
	kinds []kind
	cargo []cargo // one for each part line, in their order
	list  diag.List

	picks []pick // scratch of the search
	trial stow   // scratch of the search
}

// cargo is one part line as it rides.
type cargo struct {
	part     *catalog.Part
	quantity int
	each     unit.Mass
	holds    int
	tare     unit.Mass   // of one empty pack
	pack     unit.Mass   // of one full pack
	size     unit.Volume // of one pack
	longest  unit.Length
	apart    bool   // rides only in the open, where the fleet has such a vehicle
	wet      string // said behind a weight that is not the dry one
}

// rides tells whether the pieces may ride on a vehicle, weight and room apart.
func (g *cargo) rides(v *catalog.Vehicle) bool {
	return v.Longest >= g.longest && (v.Open || !g.apart)
}

// mass is the weight of a quantity with the packs that it needs.
func (g *cargo) mass(quantity int) unit.Mass {
	return unit.Mass(quantity)*g.each + unit.Mass(PackCount(quantity, g.holds))*g.tare
}

// volume is the room of a quantity; a pack that is not full takes all of its.
func (g *cargo) volume(quantity int) unit.Volume {
	return unit.Volume(PackCount(quantity, g.holds)) * g.size
}

// goods takes the part lines in.
func (y *yard) goods(lines []parts.Line) {
	y.cargo = make([]cargo, len(lines))
	open := slices.ContainsFunc(y.kinds, func(k kind) bool { return k.v.Open })
	for i := range lines {
		l := &lines[i]
		g := cargo{part: l.Part, quantity: l.Total(), each: l.Each, holds: max(l.Part.Pack.Holds, 1),
			tare: Tare(l.Part), size: l.Part.Pack.Size.Volume(), longest: l.Part.Pack.Size.Longest(), apart: l.Part.Apart && open}
		g.pack = unit.Mass(g.holds)*g.each + g.tare
		y.cargo[i] = g
	}
}

// soak turns the goods into those of the way back: what is used up is gone,
// what may get wet is heavier. Water that filled a weight stays on the site.
func (y *yard) soak() {
	for i := range y.cargo {
		g := &y.cargo[i]
		switch {
		case g.part.Consumable:
			g.quantity = 0
		case g.part.Wets:
			// In decimals, as a sheet computes ROUND(each*factor,2).
			wet := money.Round(money.Int(int(g.each)).Mul(y.c.Rates.WetFactor), 0)
			g.each = unit.Mass(wet.IntPart()).RoundTo(y.c.Company.Units)
			g.pack = unit.Mass(g.holds)*g.each + g.tare
			g.wet = " wet"
		}
	}
}

// rank puts what few vehicles can take first, then what takes the largest
// share of weight and room: small things fill the gaps. What is not carried is
// left out. Shares of about a size count as equal, so that the lines are put
// into classes instead of sorted and large jobs stay linear.
func (y *yard) rank() (order []int) {
	mass, volume := y.total()
	class := make([]int, len(y.cargo))
	first := make([]int, (len(y.kinds)+1)*sizes+1)
	carried := 0
	for i := range y.cargo {
		g := &y.cargo[i]
		if g.quantity == 0 {
			continue
		}
		fits := 0
		for k := range y.kinds {
			if g.rides(y.kinds[k].v) {
				fits++
			}
		}
		class[i] = fits*sizes + sizeClass(float64(g.mass(g.quantity))/mass+float64(g.volume(g.quantity))/volume)
		first[class[i]+1]++
		carried++
	}
	for k := range first[1:] {
		first[k+1] += first[k]
	}
	order = make([]int, carried)
	for i := range y.cargo {
		if y.cargo[i].quantity > 0 {
			order[first[class[i]]] = i
			first[class[i]]++
		}
	}
	return order
}

// sizes is the number of classes of size, each 0.71 of the one before.
const sizes = 32

// sizeClass is 0 for shares from 1.41 to 2, then one more for each step down
// by the root of 2.
func sizeClass(share float64) int {
	fraction, exponent := math.Frexp(share) // fraction from 0.5 to 1
	class := 2 * (1 - exponent)
	if fraction < math.Sqrt2/2 {
		class++
	}
	return min(max(class, 0), sizes-1)
}

// total is the weight and volume of all in floating point, which can't
// overflow, and never zero.
func (y *yard) total() (mass, volume float64) {
	mass, volume = 1, 1
	for i := range y.cargo {
		g := &y.cargo[i]
		n := float64(PackCount(g.quantity, g.holds))
		mass += float64(g.quantity)*float64(g.each) + n*float64(g.tare)
		volume += n * float64(g.size)
	}
	return mass, volume
}

// check finds what no vehicle could carry, however often it drives.
func (y *yard) check() {
	if !slices.ContainsFunc(y.cargo, func(g cargo) bool { return g.quantity > 0 }) {
		return
	}
	if len(y.kinds) == 0 {
		y.list.Addf(y.c.Fleet.Where.Pos(), NoVehicle, "no vehicle of the fleet can carry anything; one whose rating exceeds its own weight with fuel and riders was expected")
		return
	}
	if mass, volume := y.total(); mass > math.MaxInt64/4 || volume > math.MaxInt64/4 {
		y.list.Addf(y.c.Fleet.Where.Pos(), TooMuch, "the job weighs more than can be counted; a load that the fleet carries in %d turns was expected", maxTurns)
		return
	}
	for i := range y.cargo {
		if y.cargo[i].quantity > 0 {
			y.checkPiece(&y.cargo[i])
		}
	}
}

// checkPiece finds a pack that fits no vehicle, and names the first reason.
func (y *yard) checkPiece(g *cargo) {
	var longest unit.Length
	var strongest unit.Mass
	var roomiest unit.Volume
	one := min(g.quantity, g.holds)
	long, strong := false, false
	for i := range y.kinds {
		k := &y.kinds[i]
		longest = max(longest, k.v.Longest)
		if !g.rides(k.v) {
			continue
		}
		long = true
		strongest = max(strongest, k.alone)
		if k.alone < g.mass(one) {
			continue
		}
		strong = true
		roomiest = max(roomiest, k.room)
	}
	// Length first, then weight, then room: each reason looks only at vehicles
	// that the one before leaves.
	sys, at := y.c.Company.Units, g.part.Where.Pos()
	switch {
	case !long && g.apart:
		y.list.Addf(at, TooLong, "part %q may not be shut in and rides in packs %s long, but no open or vented vehicle takes it; a longer one was expected",
			g.part.ID, g.longest.In(sys))
	case !long:
		y.list.Addf(at, TooLong, "part %q rides in packs %s long, but the longest piece that a vehicle takes is %s; a shorter piece or a longer vehicle was expected",
			g.part.ID, g.longest.In(sys), longest.In(sys))
	case !strong:
		y.list.Addf(at, TooHeavy, "one pack of part %q weighs %s%s, but a vehicle long enough carries at most %s; a smaller pack or a stronger vehicle was expected",
			g.part.ID, g.mass(one).Text(sys), g.wet, strongest.Text(sys))
	case roomiest < g.size:
		y.list.Addf(at, TooBulky, "one pack of part %q takes %s, but a vehicle that can carry it has room for %s; a smaller pack or a larger vehicle was expected",
			g.part.ID, g.size.Text(sys), roomiest.Text(sys))
	}
}
