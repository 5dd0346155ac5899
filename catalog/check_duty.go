package catalog

import (
	"fmt"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
)

// checkDuty checks driving hours and heat, of which a shop may say either, both
// or nothing.
func (k *checker) checkDuty() {
	if d := k.c.Crew.Duty; d != nil {
		k.checkHours(d)
	}
	if h := k.c.Crew.Heat; h != nil {
		k.checkBands(h)
	}
}

// checkHours wants limits that mean something, and of two that belong together
// both.
func (k *checker) checkHours(d *Duty) {
	k.wantTime(d, "drive", d.Drive)
	k.wantTime(d, "window", d.Window)
	if d.Window > 0 && d.Drive > d.Window && k.form.Sound(d.Where, "drive", "window") {
		k.list.Addf(d.Where.Of("drive"), BadDuty, "%s of driving do not fit a window of %s; no more than the window was expected", d.Drive, d.Window)
	}
	if (d.After > 0) != (d.Break > 0) && k.form.Sound(d.Where, "break_after", "break") {
		k.list.Addf(d.Where.Of(given(d.After > 0, "break_after", "break")), BadDuty, "break_after is %s and break %s; both or neither was expected", d.After, d.Break)
	}
	if (d.Week > 0) != (d.Days > 0) && k.form.Sound(d.Where, "week", "days") {
		k.list.Addf(d.Where.Of(given(d.Week > 0, "week", "days")), BadDuty, "week is %s in %d days; both or neither was expected", d.Week, d.Days)
	}
	if whole := unit.Span(d.Days) * 24 * unit.Hour; d.Days > 0 && d.Week > whole && k.form.Sound(d.Where, "week", "days") {
		k.list.Addf(d.Where.Of("week"), BadDuty, "%s of duty are more than %d days have; no more than %s was expected", d.Week, d.Days, whole)
	}
}

// given names the one of two fields that is there.
func given(first bool, one, other string) string {
	if first {
		return one
	}
	return other
}

// wantTime reports a limit by which nobody could drive at all.
func (k *checker) wantTime(d *Duty, field string, limit unit.Span) {
	if limit == 0 && k.form.Sound(d.Where, field) {
		k.list.Addf(d.Where.Of(field), BadDuty, "%s is no time, so that nobody could drive; more was expected", field)
	}
}

// checkBands wants the heat to rise from band to band.
func (k *checker) checkBands(h *HeatCaution) {
	sys := k.c.Company.Units
	for i := 1; i < len(h.Bands); i++ {
		last, b := &h.Bands[i-1], &h.Bands[i]
		if b.From <= last.From && k.form.Sound(b.Where, "from") && k.form.Sound(last.Where, "from") {
			k.list.Addf(b.Where.Of("from"), BadSteps, "a band from %s comes after one from %s; rising bands were expected", b.From.Text(sys), last.From.Text(sys))
		}
	}
}

// checkSpread wants the minutes of each rule to rise from what is optimistic over
// what is likely to what is pessimistic.
func (k *checker) checkSpread() {
	for i := range k.c.Labour {
		r := &k.c.Labour[i]
		if !k.form.Sound(r.Where, "minutes") {
			continue
		}
		k.checkMinutes(r, "optimistic", r.Optimistic, r.Minutes.LessThan)
		k.checkMinutes(r, "pessimistic", r.Pessimistic, r.Minutes.GreaterThan)
	}
}

// checkMinutes reports minutes that lie on the wrong side of the likely ones. Of
// a rule that takes no time for each there is no share by which its fixed minutes
// could spread too.
func (k *checker) checkMinutes(r *LabourRule, field string, own *money.Number, wrong func(money.Number) bool) {
	switch {
	case own == nil || !k.form.Sound(r.Where, field):
	case r.Minutes.IsZero():
		k.list.Addf(r.Where.Of(field), BadSpread, "%s is given but minutes is 0; only rules with minutes for each have any", field)
	case wrong(*own):
		side := map[string]string{"optimistic": "no more", "pessimistic": "no less"}[field]
		k.list.Add(diag.Problem{Pos: r.Where.Of(field), Code: BadSpread, Related: []diag.Pos{r.Where.Of("minutes")},
			Message: fmt.Sprintf("%s is %s but minutes is %s; %s was expected", field, own, r.Minutes, side)})
	}
}

// Shares are how the minutes of a rule spread, as shares of its likely ones: by
// the rule's own where it gives any, else by the shop's. Fixed minutes spread by
// the same shares.
func (s *Spread) Shares(r *LabourRule) (optimistic, pessimistic float64) {
	share := func(own *money.Number, percent money.Number) float64 {
		if own == nil || r.Minutes.IsZero() {
			return percent.InexactFloat64() / 100
		}
		return own.InexactFloat64() / r.Minutes.InexactFloat64()
	}
	return share(r.Optimistic, s.Optimistic), share(r.Pessimistic, s.Pessimistic)
}
