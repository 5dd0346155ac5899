package cli

import (
	"strings"

	"github.com/spf13/cobra"
)

// newCheck is the command that looks for faults and makes nothing.
func newCheck(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "check [SHOP or JOB.yaml]...",
		Short: "Look for faults in a shop or in job files",
		Long: `Reads shop folders and job files and lists every fault in them, each with file,
line and column and the line itself. Nothing is made. Without a name the nearest
shop is checked; every size of tent is framed at every height. A job is checked
against the shop that a quote would use.`,
		Example: `  tentwright check my-yard
  tentwright check jobs/dinner.yaml jobs/garden.yaml`,
		RunE: func(_ *cobra.Command, args []string) error { return a.check(args) },
	}
}

// check checks every path and fails with the faults of all.
func (a *app) check(paths []string) error {
	k := &checking{app: a}
	if len(paths) == 0 {
		if err := k.shopOf("."); err != nil {
			return err
		}
	}
	for _, path := range paths {
		if err := k.path(path); err != nil {
			return err
		}
	}
	if n := len(k.list.Faults()); n > 0 {
		f := faults("what was checked", k.list, joined(k.srcs...))
		f.problem = strings.TrimSuffix(f.problem, "; nothing was written")
		return f
	}
	if len(k.list) > 0 {
		a.problems(k.list, joined(k.srcs...))
	}
	for _, line := range k.fine {
		a.printf("no faults: %s\n", line)
	}
	return nil
}
