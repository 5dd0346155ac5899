package jobtest

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// uses says what floors are for, of a shop that asks.
func (m *maker) uses() {
	if m.c.Occupancy == nil {
		return
	}
	if m.chance("use", 60) {
		m.j.Event.Use = one(m, "event use", m.c.Occupancy.Uses).ID
	}
	for i := range m.j.Tents {
		t := &m.j.Tents[i]
		left := smallest(m.c.Family(t.Family))
		for m.chance("tent use", 30) {
			// Whole percents of what is left, in hundredths of a square metre.
			area := left * unit.Area(m.between("percent of floor", 0, 100)) / 100
			area = unit.Area(money.Round(money.Float(float64(area)), 2).InexactFloat64())
			if area > left {
				break
			}
			left -= area
			t.Uses = append(t.Uses, job.FloorUse{Use: one(m, "use of tent", m.c.Occupancy.Uses).ID, Area: area})
		}
	}
}

// smallest is the floor of a family's smallest size, so that the uses of a tent
// fit whatever size it is made later.
func smallest(f *catalog.Family) unit.Area {
	var least unit.Area
	for i := range f.Sizes {
		s := &f.Sizes[i]
		if floor := unit.Area(s.Length.Metres() * s.Width.Metres()); least == 0 || floor < least {
			least = floor
		}
	}
	return least
}
