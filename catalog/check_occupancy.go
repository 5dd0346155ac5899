package catalog

import (
	"tentwright/catalog/diag"
	"tentwright/catalog/source"
)

// checkOccupancy checks the file, which the shop has.
func (k *checker) checkOccupancy() {
	o := k.c.Occupancy
	k.checkUses(o)
	for i := range o.Takes {
		t := &o.Takes[i]
		k.parts.want(k.list, t.Part, t.Where.Of("part"))
	}
	rows := o.Exits.Rows
	k.checkSteps(len(rows), func(n int) (int, diag.Pos) { return rows[n].From, rows[n].Where.Of("from") }, true)
	seats := o.Wheelchairs
	k.checkSteps(len(seats), func(n int) (int, diag.Pos) { return seats[n].From, seats[n].Where.Of("from") }, false)
	if o.Signs != nil {
		k.tags.want(k.list, o.Signs.SignTag, o.Signs.Where.Of("sign_tag"))
		k.tags.want(k.list, o.Signs.LightTag, o.Signs.Where.Of("light_tag"))
	}
	if o.Permit != nil {
		k.items.want(k.list, o.Permit.Item, o.Permit.Where.Of("item"))
	}
	if o.Fire != nil {
		k.checkFire(o.Fire)
	}
	k.checkClear()
}

// checkUses checks the uses of floor, and what takes floor for one of them.
func (k *checker) checkUses(o *Occupancy) {
	uses := newKnown("use of floor")
	for i := range o.Uses {
		u := &o.Uses[i]
		uses.add(k.list, u.ID, u.Where.Of("id"))
		k.wantArea(float64(u.Area), u.Where, "area")
		if u.ID == NoPeople {
			k.list.Addf(u.Where.Of("id"), RepeatedID, "%q stands for floor on which nobody is; another id was expected", NoPeople)
		}
	}
	for i := range o.Takes {
		if t := &o.Takes[i]; t.Use != NoPeople {
			uses.want(k.list, t.Use, t.Where.Of("use"))
		}
	}
}

// checkFire checks the hazards, and that the one in force is among them.
func (k *checker) checkFire(f *FireRule) {
	k.tags.want(k.list, f.Tag, f.Where.Of("tag"))
	hazards := newKnown("hazard")
	for i := range f.Hazards {
		h := &f.Hazards[i]
		hazards.add(k.list, h.ID, h.Where.Of("id"))
		k.wantArea(float64(h.Area), h.Where, "area")
	}
	k.wantArea(float64(f.Most), f.Where, "most")
	k.wantArea(float64(f.Travel), f.Where, "travel")
	hazards.want(k.list, f.Hazard, f.Where.Of("hazard"))
}

// checkClear wants no door wider inside its frame than outside.
func (k *checker) checkClear() {
	for i := range k.c.Families {
		for n := range k.c.Families[i].Doors {
			if d := &k.c.Families[i].Doors[n]; d.Clear > d.Width && k.form.Sound(d.Where, "clear", "width") {
				k.list.Addf(d.Where.Of("clear"), diag.OutOfRange, "door %q is %s clear but takes %s of its side; no more than that was expected",
					d.Kind, d.Clear.In(k.c.Company.Units), d.Width.In(k.c.Company.Units))
			}
		}
	}
}

// wantArea reports a measure of zero by which something is divided.
func (k *checker) wantArea(measure float64, where source.Where, field string) {
	if measure <= 0 && k.form.Sound(where, field) {
		k.list.Addf(where.Of(field), diag.OutOfRange, "%s is zero; more was expected", field)
	}
}

// UseIDs lists the ids of the uses in the order of the file.
func (o *Occupancy) UseIDs() []string {
	ids := make([]string, len(o.Uses))
	for i := range o.Uses {
		ids[i] = o.Uses[i].ID
	}
	return ids
}
