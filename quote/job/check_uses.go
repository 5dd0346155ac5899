package job

import (
	"tentwright/catalog/unit"
)

// UseTooLarge is the code of uses that take more floor than a tent has.
const UseTooLarge = "use-too-large"

// uses checks what the floors are for: by the shop's table, where it has one,
// and against the floor of the tent.
func (k *checker) uses() {
	var known []string
	table := k.c.Occupancy != nil
	if table {
		known = k.c.Occupancy.UseIDs()
		k.want("use of floor", k.j.Event.Use, k.j.Event.Where.Of("use"), known)
	}
	for i := range k.j.Tents {
		t := &k.j.Tents[i]
		var sum unit.Area
		for n := range t.Uses {
			u := &t.Uses[n]
			if table {
				k.want("use of floor", u.Use, u.Where.Of("use"), known)
			}
			sum += u.Area
		}
		k.fits(t, sum)
	}
}

// areaSlack is how much larger than its floor the uses of a tent may add up to,
// so that areas rounded in other units still fit: a tenth of a square foot.
const areaSlack = unit.Area(0.01)

// fits reports uses that take more than the floor of a tent.
func (k *checker) fits(t *Tent, sum unit.Area) {
	f := k.c.Family(t.Family)
	if f == nil || f.Size(t.Size) == nil || len(t.Uses) == 0 {
		return
	}
	floor := f.Size(t.Size).Floor()
	if sum > floor+areaSlack {
		sys := k.c.Company.Units
		k.list.Addf(t.Where.Of("uses"), UseTooLarge, "the uses of tent %q take %s, but its floor has %s; no more than that was expected",
			t.ID, sum.Text(sys), floor.Text(sys))
	}
}
