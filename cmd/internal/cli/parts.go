package cli

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"tentwright/quote"
)

// newParts is the command that prints what is taken along.
func newParts(a *app) *cobra.Command {
	var explain, asJSON bool
	cmd := &cobra.Command{
		Use:   "parts JOB.yaml",
		Short: "List every part that a job takes along",
		Long: `Prints the parts in the order of their bins, down to the last pin: how many, in
how many packs, and what they weigh. With --explain each part says what asks for
it and how the number was reached.`,
		Example: `  tentwright parts dinner.yaml
  tentwright parts dinner.yaml --explain`,
		Args:              oneArg("the job file"),
		ValidArgsFunction: jobNames,
		RunE: func(_ *cobra.Command, args []string) error {
			q, _, _, err := a.open(args[0])
			if err != nil {
				return err
			}
			r := q.Report()
			if asJSON {
				return a.json(struct {
					Parts []quote.ReportPart `json:"parts"`
					Needs []quote.ReportNeed `json:"needs"`
				}{r.Parts, r.Needs})
			}
			printParts(a.out, &r, explain)
			return nil
		},
	}
	cmd.Flags().BoolVar(&explain, "explain", false, "say what asks for each part, with the numbers")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON for another program")
	return cmd
}

// printParts prints the parts that are taken, by bin.
func printParts(out io.Writer, r *quote.Report, explain bool) {
	parts := slices.Clone(r.Parts)
	slices.SortStableFunc(parts, func(a, b quote.ReportPart) int { return strings.Compare(a.Bin, b.Bin) })
	table := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	fmt.Fprintf(table, "BIN\tPART\tQUANTITY\tPACKS\tWEIGHT, %s\n", r.Units.Mass)
	for _, p := range parts {
		if p.Total == 0 {
			continue
		}
		fmt.Fprintf(table, "%s\t%s\t%d\t%d\t%s\n", p.Bin, p.Name, p.Total, p.Packs, p.Mass)
		if explain {
			explainPart(table, r, &p)
		}
	}
	table.Flush()
	fmt.Fprintf(out, "weight of all with their packs: %s %s\n", r.Out.Mass, r.Units.Mass)
}

// explainPart prints each need of a part with its terms, then the spares.
func explainPart(out io.Writer, r *quote.Report, p *quote.ReportPart) {
	for _, n := range r.Needs {
		if n.Part != p.Part || n.Quantity == 0 {
			continue
		}
		least := ""
		if n.Min > 0 {
			least = fmt.Sprintf(", at least %d", n.Min)
		}
		fmt.Fprintf(out, "\t  %d for %s: %s x %s%s%s\n", n.Quantity, n.Source, n.Of, n.Per, least, rule(n.Rule))
	}
	if p.Spare > 0 {
		fmt.Fprintf(out, "\t  %d spare\n", p.Spare)
	}
}

// rule names the shop's rule behind a need.
func rule(id string) string {
	if id == "" {
		return ""
	}
	return " (rule " + id + ")"
}
