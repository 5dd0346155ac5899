package cli

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"tentwright/catalog"
)

// newNew is the command that makes a shop to start from.
func newNew(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "new DIR",
		Short: "Make a shop folder to start from",
		Long: `Copies the demonstration yard into a new folder: its tents, parts, prices, crews
and vehicles. Every file begins with a word on how to change it. Open the files
in a text editor, one by one, and put in what your yard owns and charges.`,
		Example: `  tentwright new my-yard`,
		Args:    oneArg("the folder to make"),
		RunE: func(_ *cobra.Command, args []string) error {
			if err := startShop(args[0]); err != nil {
				return err
			}
			a.printf(nextSteps, args[0], filepath.Join(args[0], company), args[0], args[0])
			return nil
		},
	}
}

// nextSteps is what to do with a new shop.
const nextSteps = `made the shop %s; its names and prices are invented
next:
  1. put your own name and address into %s
  2. go through the prices in rates.yaml, accessories.yaml and tents.yaml
  3. weigh your vehicles for trucks.yaml, count your stock for parts.yaml
  4. look for faults:   tentwright check %s
  5. try a quote:       tentwright quote --shop %s --tent hip:20x40 --guests 60 --date 2027-06-12 --miles 12
`

// oneArg wants exactly one argument and says what it is.
func oneArg(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		see := `see "` + cmd.CommandPath() + ` --help"`
		switch {
		case len(args) == 0:
			return misuse(see, "%s is missing", what)
		case len(args) > 1:
			return misuse(see, "one thing was expected, %s; then came %q", what, args[1])
		}
		return nil
	}
}

// startShop copies the demonstration shop into dir, which must be new or
// empty. On failure nothing is left there.
func startShop(dir string) error {
	entries, err := os.ReadDir(dir)
	switch {
	case err == nil && len(entries) > 0:
		return fileError("choose a new name, or empty it first", "folder %q is not empty", dir)
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return fileError("", "folder %q cannot be made: %s", dir, cause(err))
	}
	made := err != nil
	if err := os.CopyFS(dir, catalog.Demo()); err != nil {
		clear(dir, made)
		return fileError("nothing is left behind", "folder %q cannot be made: %s", dir, cause(err))
	}
	return nil
}

// clear takes away what was copied into dir, and dir if it was made for it.
func clear(dir string, made bool) {
	if made {
		os.RemoveAll(dir)
		return
	}
	entries, _ := os.ReadDir(dir)
	for _, e := range entries {
		os.RemoveAll(filepath.Join(dir, e.Name()))
	}
}
