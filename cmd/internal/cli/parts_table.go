package cli

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"tentwright/quote"
)

// printParts prints the parts that are taken along, by bin.
func (a *app) printParts(r *quote.Report, explain bool) {
	parts := slices.DeleteFunc(slices.Clone(r.Parts), func(p quote.ReportPart) bool { return p.Total == 0 })
	slices.SortStableFunc(parts, func(a, b quote.ReportPart) int { return strings.Compare(a.Bin, b.Bin) })
	bin, name := len("BIN"), len("PART")
	for _, p := range parts {
		bin, name = max(bin, utf8.RuneCountInString(p.Bin)), max(name, utf8.RuneCountInString(p.Name))
	}
	row := func(cells ...any) {
		a.printf("%-*s  %-*s  %8s  %5s  %10s\n", append([]any{bin, cells[0], name}, cells[1:]...)...)
	}
	row("BIN", "PART", "QUANTITY", "PACKS", "WEIGHT, "+r.Units.Mass)
	for _, p := range parts {
		row(p.Bin, p.Name, fmt.Sprint(p.Total), fmt.Sprint(p.Packs), places2(p.Mass))
		if explain {
			a.explain(r, &p, strings.Repeat(" ", bin+4))
		}
	}
	a.printf("weight of all, with their packs: %s %s\n", places2(r.Out.Mass), r.Units.Mass)
}

// places2 is a weight with two places, so that points stand below each other.
func places2(n json.Number) string {
	f, err := n.Float64()
	if err != nil {
		return n.String()
	}
	return fmt.Sprintf("%.2f", f)
}

// explain prints each need of a part with its terms, then the spares.
func (a *app) explain(r *quote.Report, p *quote.ReportPart, indent string) {
	for _, n := range r.Needs {
		if n.Part == p.Part && n.Quantity > 0 {
			a.printf("%s%d from %s %s x %s%s: %s%s\n", indent, n.Quantity, n.Of, driver(r, &n), n.Per, atLeast(n.Min), n.Source, rule(n.Rule))
		}
	}
	if p.Spare > 0 {
		a.printf("%s%d spare, %s percent of %d%s\n", indent, p.Spare, p.SpareOf, p.Counted, atLeast(p.SpareTo))
	}
}

// driver is what a need is counted by, in words.
func driver(r *quote.Report, n *quote.ReportNeed) string {
	for _, c := range r.Counts {
		if c.Key == n.Count {
			return c.Name
		}
	}
	return "ordered"
}

// atLeast names a minimum, if there is one.
func atLeast(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(", at least %d", n)
}

// rule names the shop's rule behind a need.
func rule(id string) string {
	if id == "" {
		return ""
	}
	return " (rule " + id + ")"
}
