package cli

import (
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
			a.printParts(&r, explain)
			return nil
		},
	}
	cmd.Flags().BoolVar(&explain, "explain", false, "say what asks for each part, with the numbers")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON for another program")
	return cmd
}
