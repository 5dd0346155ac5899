package catalog

import (
	"fmt"
	"slices"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/source"
)

// checkLifting checks what the crew file says of lifting and raising.
func (k *checker) checkLifting() {
	if l := k.c.Crew.Lifting; l != nil {
		k.checkFrequency(l.Frequency)
		k.checkLifts(l)
		k.checkTeams(l.Team)
		k.wantAll(k.labour, l.Rules, entries(l.Where, "rules"))
	}
	raising := newKnown("raising")
	addAll(k, raising, "crew.yaml", k.c.Crew.Raising, func(r *Raising) (string, source.Where) { return r.ID, r.Where })
	for i := range k.c.Crew.Raising {
		k.checkRaising(&k.c.Crew.Raising[i])
	}
}

// entries gives the place of every entry of a list of ids.
func entries(w source.Where, field string) func(int) diag.Pos {
	return func(n int) diag.Pos { return w.Of(fmt.Sprintf("%s[%d]", field, n)) }
}

// checkFrequency wants the rows to rise and to have a multiplier for each of
// three durations. More lifts, longer ones and lower ones never allow more.
func (k *checker) checkFrequency(rows []FrequencyRow) {
	for i := range rows {
		r := &rows[i]
		if !k.form.Sound(r.Where, "per_minute", "low", "high") {
			continue
		}
		if len(r.Low) != 3 || len(r.High) != 3 {
			k.list.Addf(r.Where.Of("low"), BadLift, "a row of frequencies for %s a minute has %d and %d multipliers; three of each were expected, up to 1 h, 2 h and 8 h",
				r.PerMinute, len(r.Low), len(r.High))
			continue
		}
		for n := range r.Low {
			if r.Low[n].GreaterThan(r.High[n]) || n > 0 && (r.Low[n].GreaterThan(r.Low[n-1]) || r.High[n].GreaterThan(r.High[n-1])) {
				k.list.Addf(r.Where.Of("low"), BadLift, "a row of frequencies for %s a minute allows more low down or for longer; multipliers that never rise from 1 h to 8 h, and low at most high, were expected", r.PerMinute)
				break
			}
		}
		k.afterRow(rows, i)
	}
}

// afterRow wants a row of frequencies to come after fewer lifts, and to allow
// no more than they do.
func (k *checker) afterRow(rows []FrequencyRow, i int) {
	if i == 0 || !k.form.Sound(rows[i-1].Where, "per_minute", "low", "high") {
		return
	}
	r, before := &rows[i], &rows[i-1]
	if r.PerMinute.LessThanOrEqual(before.PerMinute) {
		k.list.Addf(r.Where.Of("per_minute"), BadSteps, "a row of frequencies for %s a minute comes after one for %s; rising rows were expected", r.PerMinute, before.PerMinute)
		return
	}
	more := func(a, b []money.Number) bool {
		return len(a) == len(b) && slices.ContainsFunc([]int{0, 1, 2}, func(n int) bool { return n < len(a) && a[n].GreaterThan(b[n]) })
	}
	if more(r.Low, before.Low) || more(r.High, before.High) {
		k.list.Addf(r.Where.Pos(), BadLift, "a row of frequencies for %s a minute allows more than one for %s; at most as much was expected", r.PerMinute, before.PerMinute)
	}
}

// checkLifts wants each part and each kind of pack to be lifted in one way.
func (k *checker) checkLifts(l *Lifting) {
	ways, parts, packs := newKnown("way of lifting"), newKnown("part to lift"), newKnown("pack to lift")
	addAll(k, ways, "crew.yaml", l.Lifts, func(x *Lift) (string, source.Where) { return x.ID, x.Where })
	for i := range l.Lifts {
		x := &l.Lifts[i]
		k.wantAll(k.parts, x.Parts, entries(x.Where, "parts"))
		for n, id := range x.Parts {
			parts.add(k.list, id, entries(x.Where, "parts")(n))
		}
		for n, kind := range x.Packs {
			packs.add(k.list, kind, entries(x.Where, "packs")(n))
		}
		k.checkLift(x)
	}
}

// checkLift wants a lift to be of something and, by hand, to be measured.
func (k *checker) checkLift(x *Lift) {
	if len(x.Parts)+len(x.Packs) == 0 && k.form.Sound(x.Where, "parts", "packs") {
		k.list.Addf(x.Where.Pos(), BadLift, "way of lifting %q is of nothing; parts, or packs, was expected", x.ID)
	}
	if x.Machine || !k.form.Sound(x.Where, "machine", "horizontal", "from", "to", "hours", "coupling") {
		return
	}
	switch {
	case x.Horizontal <= 0:
		k.list.Addf(x.Where.Pos(), BadLift, "way of lifting %q does not say how far the hands are from the ankles; horizontal was expected, or machine: yes", x.ID)
	case x.From <= 0 && x.To <= 0:
		k.list.Addf(x.Where.Pos(), BadLift, "way of lifting %q does not say how high the hands are; from and to were expected, above the ground", x.ID)
	case !slices.Contains([]int{1, 2, 8}, x.Hours):
		k.list.Addf(x.Where.Of("hours"), BadLift, "way of lifting %q lasts %d hours; 1, 2 or 8 was expected, as the multipliers have it", x.ID, x.Hours)
	case x.Coupling == "":
		k.list.Addf(x.Where.Pos(), BadLift, "way of lifting %q does not say how good the grip is; coupling: good, fair or poor was expected", x.ID)
	}
}

// checkTeams wants each row of the team table to have more people, and them to
// lift more.
func (k *checker) checkTeams(rows []TeamShare) {
	before, lifted := 1, money.One
	for i := range rows {
		r := &rows[i]
		if !k.form.Sound(r.Where, "people", "share") {
			return
		}
		sum := money.Int(r.People).Mul(r.Share)
		switch {
		case r.People <= before:
			k.list.Addf(r.Where.Of("people"), BadSteps, "a team of %d comes after one of %d; rising rows were expected", r.People, before)
		case sum.LessThanOrEqual(lifted):
			k.list.Addf(r.Where.Of("share"), BadLift, "a team of %d lifts %s times what one person does, and one of %d lifts %s times; more was expected", r.People, sum, before, lifted)
		}
		before, lifted = r.People, sum
	}
}

// checkRaising wants known ids, and people beside a jack.
func (k *checker) checkRaising(r *Raising) {
	k.wantAll(k.families, r.Families, entries(r.Where, "families"))
	k.wantAll(k.labour, r.Rules, entries(r.Where, "rules"))
	k.parts.want(k.list, r.Jack, r.Where.Of("jack"))
	if !k.form.Sound(r.Where, "hands", "jack", "with_jack") {
		return
	}
	switch {
	case (r.Jack == "") != r.WithJack.IsZero():
		k.list.Addf(r.Where.Pos(), BadRaising, "raising %q has a jack or people with one, but not both; jack and with_jack together were expected", r.ID)
	case r.WithJack.GreaterThan(r.Hands):
		k.list.Addf(r.Where.Of("with_jack"), BadRaising, "raising %q takes %s people at a leg with a jack and %s without; at most as many were expected", r.ID, r.WithJack, r.Hands)
	}
}
