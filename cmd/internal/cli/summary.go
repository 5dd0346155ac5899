package cli

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/quote"
	"tentwright/quote/labour"
	"tentwright/quote/load"
)

// summary is a quote in a few lines: money, hours, the crew plan, vehicles, failed
// checks.
func summary(q *quote.Quote) []string {
	sys, p, cur := q.Catalog.Company.Units, q.Price, q.Price.Currency
	lines := []string{
		fmt.Sprintf("Quote %s: %s, for %s", numbered(q), q.Job.Event.Name, q.Job.Customer.Name),
		fmt.Sprintf("  total     %s, of it tax %s", cur.Text(p.Total), cur.Text(p.Tax)),
		fmt.Sprintf("  deposit   %s with the order, balance %s by %s", cur.Text(p.Deposit), cur.Text(p.Balance), p.BalanceBy),
		fmt.Sprintf("  hours     %s person-hours of work", q.Labour.Hours.StringFixed(2)),
	}
	lines = append(lines, wrap("            ", crews(q))...)
	lines = append(lines, ready(q)...)
	lines = append(lines, vehicles(q, "  vehicles  ")...)
	lines = append(lines, fmt.Sprintf("  weight    %.0f %s out, %.0f %s back", q.Load.Out.Mass.In(sys), sys.MassUnit(), q.Load.Back.Mass.In(sys), sys.MassUnit()))
	failed := q.Failed()
	lines = append(lines, fmt.Sprintf("  checks    %d of %d passed", len(q.Checks)-len(failed), len(q.Checks)))
	return append(lines, verdicts(failed)...)
}

// verdicts is failed checks with what to do.
func verdicts(failed []quote.Check) []string {
	var lines []string
	for i := range failed {
		lines = append(lines, verdict(&failed[i]))
		if failed[i].Advice != "" {
			lines = append(lines, "        "+failed[i].Advice)
		}
	}
	return lines
}

// stops tells whether one of the failed checks stops the work.
func stops(failed []quote.Check) bool {
	return slices.ContainsFunc(failed, func(c quote.Check) bool { return c.Severe })
}

// numbered is the number of a quote, and its revision from the first on.
func numbered(q *quote.Quote) string {
	if q.Job.Revision == 0 {
		return q.Job.Number
	}
	return fmt.Sprintf("%s revision %d", q.Job.Number, q.Job.Revision)
}

// verdict is a failed check in a line: LOOK, or STOP where it is severe.
func verdict(c *quote.Check) string {
	line := fmt.Sprintf("  %s  %s", strings.ToUpper(c.State()), c.Title)
	switch {
	case c.AtLeast:
		return fmt.Sprintf("%s: %s, below %s", line, c.Value, c.Limit)
	case !c.Limit.IsZero():
		return fmt.Sprintf("%s: %s, above %s", line, c.Value, c.Limit)
	case c.Value.IntPart() != 1:
		return fmt.Sprintf("%s: %s", line, c.Value)
	}
	return line
}

// crews is the people of each window of work that has any.
func crews(q *quote.Quote) []string {
	var all []string
	for i := range q.Labour.Windows {
		if w := &q.Labour.Windows[i]; w.Hours.IsPositive() {
			all = append(all, fmt.Sprintf("%s %d x %s h", strings.ToLower(w.Spec.Name), w.Crew, w.Person.StringFixed(1)))
		}
	}
	return all
}

// vehicles is a line for each trip out, the first behind the label.
func vehicles(q *quote.Quote, label string) []string {
	sys := q.Catalog.Company.Units
	var lines []string
	for i := range q.Load.Out.Trips {
		t := &q.Load.Out.Trips[i]
		lines = append(lines, fmt.Sprintf("%s%s: %.0f of %.0f %s", label, tripName(t), t.Mass.In(sys), t.Payload.In(sys), sys.MassUnit()))
		label = strings.Repeat(" ", len(label))
	}
	if len(lines) == 0 {
		lines = append(lines, label+"none: nothing is carried")
	}
	return lines
}

// tripName is a trip's key and vehicle.
func tripName(t *load.Trip) string {
	name := t.Key + " " + t.Vehicle.Name
	switch {
	case t.Turn > 1:
		name += fmt.Sprintf(", trip %d", t.Turn)
	case t.Tow != "":
		name += ", behind " + t.Tow
	}
	return name
}

// drives is the number of vehicle trips out, trailers apart.
func drives(q *quote.Quote) int { return labour.Drives(&q.Load.Out) }
