package catalog

import (
	"fmt"
	"slices"

	"tentwright/catalog/diag"
	"tentwright/catalog/source"
)

func (k *checker) checkFamilies() {
	for i := range k.c.Families {
		f := &k.c.Families[i]
		k.fabrics.want(k.list, f.Fabric, f.Where.Of("fabric"))
		k.periods.want(k.list, f.Period, f.Where.Of("period"))
		k.taxClasses.want(k.list, f.Tax, f.Where.Of("tax"))
		for j := range f.Members {
			k.profiles.want(k.list, f.Members[j].Profile, f.Members[j].Where.Of("profile"))
		}
		for j := range f.Fittings {
			k.parts.want(k.list, f.Fittings[j].Part, f.Fittings[j].Where.Of("part"))
		}
		k.checkSides(f)
		k.checkSizes(f)
	}
}

// checkSides checks what hangs on the sides of a family: walls, doors, gutter.
func (k *checker) checkSides(f *Family) {
	length := k.c.Company.Units.LengthUnit()
	byLength := func(item string, pos diag.Pos) {
		k.items.want(k.list, item, pos)
		if it := k.c.Item(item); it != nil && it.Unit != length && k.form.Sound(it.Where, "unit") && k.c.Company.Units != "" {
			k.list.Addf(pos, UnitMismatch, "item %q is measured along a side but priced by the %s; unit %q was expected", item, it.Unit, length)
		}
	}
	for i := range f.Walls {
		w := &f.Walls[i]
		byLength(w.Item, w.Where.Of("item"))
		for j := range w.Panels {
			k.parts.want(k.list, w.Panels[j].Part, w.Panels[j].Where.Of("part"))
		}
	}
	for i := range f.Doors {
		k.items.want(k.list, f.Doors[i].Item, f.Doors[i].Where.Of("item"))
	}
	if f.Gutter != nil {
		byLength(f.Gutter.Item, f.Gutter.Where.Of("item"))
		k.parts.want(k.list, f.Gutter.Part, f.Gutter.Where.Of("part"))
	}
}

func (k *checker) checkSizes(f *Family) {
	ids := newKnown("size")
	for i := range f.Sizes {
		s := &f.Sizes[i]
		ids.add(k.list, s.ID, s.Where.Of("id"))
		what := fmt.Sprintf("size %q of %q", s.ID, f.ID)
		switch {
		case !k.form.Sound(s.Where, "price", "free") || !k.form.Sound(f.Where, "area_price"):
		case s.Price != nil:
			k.checkPrice(*s.Price, s.Free, s.Where.Of("price"), what)
		case f.AreaPrice == nil:
			k.list.Addf(s.Where.Pos(), ZeroPrice, "%s has no price and its family no area_price; one of them was expected", what)
		default:
			k.checkPrice(*f.AreaPrice, s.Free, f.Where.Of("area_price"), what)
		}
		t := &s.Top
		for field, part := range map[string]string{"one_piece": t.OnePiece, "end": t.End, "middle": t.Middle, "bay": t.Bay, "gable": t.Gable} {
			k.parts.want(k.list, part, t.Where.Of(field))
		}
		if t.OnePiece == "" && t.End == "" && t.Bay == "" && k.form.Sound(t.Where, "one_piece", "end", "bay") {
			k.list.Addf(t.Where.Pos(), BadTop, "%s has no top; one_piece, end and middle, or bay and gable was expected", what)
		}
	}
}

func (k *checker) checkLabour() {
	for i := range k.c.Labour {
		r := &k.c.Labour[i]
		k.checkDriver(r.Driver, r.Where)
		k.skills.want(k.list, r.Skill, r.Where.Of("skill"))
		k.wantAll(k.families, r.Families, func(n int) diag.Pos { return r.Where.Of(fmt.Sprintf("families[%d]", n)) })
		k.checkRuleFamilies(r.Driver, r.Families, r.Where)
		k.wantAll(k.factors, r.Factors, func(n int) diag.Pos { return r.Where.Of(fmt.Sprintf("factors[%d]", n)) })
		k.wantAll(k.labour, r.After, func(n int) diag.Pos { return r.Where.Of(fmt.Sprintf("after[%d]", n)) })
	}
	k.checkAfter()
}

// checkRuleFamilies reports a rule that is for some families though its driver
// is counted once for the whole job, so that the families would change nothing.
func (k *checker) checkRuleFamilies(driver string, families []string, rule source.Where) {
	d, ok := FindDriver(driver)
	if !ok || len(families) == 0 || d.Tent || d.ID == "all-area" { // the latter is added up tent by tent
		return
	}
	k.list.Addf(rule.Of("families"), IdleFamilies,
		"driver %q is counted once for the whole job, so families change nothing; a driver that is counted per tent, or no families, was expected", driver)
}

// checkAfter reports each labour rule that waits for itself.
func (k *checker) checkAfter() {
	after := map[string][]string{}
	for _, r := range k.c.Labour {
		after[r.ID] = r.After
	}
	for i := range k.c.Labour {
		r := &k.c.Labour[i]
		if r.ID != "" && reaches(after, r.ID) {
			k.list.Addf(r.Where.Of("after"), AfterCycle, "labour rule %q waits for itself by way of its after list; an order without a circle was expected", r.ID)
		}
	}
}

// reaches tells whether a walk along the lists comes back to its start.
func reaches(next map[string][]string, start string) bool {
	seen := map[string]bool{}
	queue := slices.Clone(next[start])
	for len(queue) > 0 {
		id := queue[0]
		queue = queue[1:]
		if id == start {
			return true
		}
		if !seen[id] {
			seen[id] = true
			queue = append(queue, next[id]...)
		}
	}
	return false
}

func (k *checker) checkRates() {
	r := &k.c.Rates
	for i := range r.Periods {
		p := &r.Periods[i]
		k.checkSteps(len(p.Steps), func(n int) (int, diag.Pos) { return p.Steps[n].From, p.Steps[n].Where.Of("from") }, true)
	}
	for i := range r.Breaks {
		b := &r.Breaks[i]
		k.checkSteps(len(b.Steps), func(n int) (int, diag.Pos) { return b.Steps[n].From, b.Steps[n].Where.Of("from") }, false)
	}
	for i := range r.Taxes {
		t := &r.Taxes[i]
		k.wantAll(k.taxClasses, t.Classes, func(n int) diag.Pos { return t.Where.Of(fmt.Sprintf("classes[%d]", n)) })
	}
	for i := range r.Loadings {
		l := &r.Loadings[i]
		k.wantAll(k.windows, l.Windows, func(n int) diag.Pos { return l.Where.Of(fmt.Sprintf("windows[%d]", n)) })
	}
	k.taxClasses.want(k.list, r.LabourTax, r.Where.Of("labour_tax"))
	k.taxClasses.want(k.list, r.DeliveryTax, r.Where.Of("delivery_tax"))
	k.taxClasses.want(k.list, r.WaiverTax, r.Where.Of("waiver_tax"))
	k.checkWindows()
}

// checkSteps wants the steps of a table to rise, the first at 1 where the
// table must cover everything.
func (k *checker) checkSteps(n int, at func(int) (int, diag.Pos), fromOne bool) {
	last := 0
	for i := range n {
		from, pos := at(i)
		switch {
		case i == 0 && fromOne && from != 1:
			k.list.Addf(pos, BadSteps, "the first step is from %d; 1 was expected", from)
		case from <= last:
			k.list.Addf(pos, BadSteps, "a step from %d comes after one from %d; rising steps were expected", from, last)
		}
		last = from
	}
}

func (k *checker) checkWindows() {
	home := map[string]string{}
	for i := range k.c.Rates.Windows {
		w := &k.c.Rates.Windows[i]
		for n, phase := range w.Phases {
			if phase == "" {
				continue // it was not read
			}
			pos := w.Where.Of(fmt.Sprintf("phases[%d]", n))
			if !slices.Contains(Phases(), phase) {
				k.list.Add(diag.Problem{Pos: pos, Code: PhaseWindow, Message: fmt.Sprintf("phase %q is not known; a phase of the job was expected", phase),
					Advice: diag.DidYouMean(phase, Phases())})
			}
			if other, taken := home[phase]; taken {
				k.list.Addf(pos, PhaseWindow, "phase %q is in window %q already; one window for each phase was expected", phase, other)
			}
			home[phase] = w.ID
		}
	}
	if !k.form.Sound(k.c.Rates.Where, "windows") {
		return
	}
	for _, phase := range Phases() {
		if home[phase] == "" {
			k.list.Addf(k.c.Rates.Where.Of("windows"), PhaseWindow, "phase %q belongs to no window; one window for each phase was expected", phase)
		}
	}
}

func (k *checker) checkFleet() {
	for i := range k.c.Fleet.Vehicles {
		v := &k.c.Fleet.Vehicles[i]
		if v.Empty+v.Fuel >= v.Rating && k.form.Sound(v.Where, "empty", "fuel", "rating") {
			k.list.Addf(v.Where.Of("empty"), TruckOverEmpty, "vehicle %q weighs %s empty and fuelled but is rated for %s; less was expected",
				v.ID, (v.Empty + v.Fuel).Text(k.c.Company.Units), v.Rating.Text(k.c.Company.Units))
		}
		if v.Kind == "trailer" && len(v.TowedBy) == 0 && k.form.Sound(v.Where, "towed_by") {
			k.list.Addf(v.Where.Pos(), NoTow, "trailer %q is pulled by nothing; towed_by with a vehicle was expected", v.ID)
		}
		k.wantAll(k.vehicles, v.TowedBy, func(n int) diag.Pos { return v.Where.Of(fmt.Sprintf("towed_by[%d]", n)) })
	}
}
