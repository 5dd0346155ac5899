package cli

import (
	"github.com/spf13/cobra"

	"tentwright/catalog/diag"
	"tentwright/workbook/intake"
	"tentwright/workbook/sheet"
)

// intakeBook is where the form is written unless -o says otherwise.
const intakeBook = "intake.xlsx"

// newIntake is the command that makes a form to fill in.
func newIntake(a *app) *cobra.Command {
	var path string
	var force bool
	cmd := &cobra.Command{
		Use:   "intake",
		Short: "Make a form to fill in, a workbook with the shop's tents and items",
		Long: `Writes a blank form as a workbook: who, where and when, the tents with drop-downs
of the shop's families, sizes, walls and doors, every item with its price and a
cell for its quantity, and a page to take along to the site. Fill in the cream
cells, save it under the job's name and give it to "tentwright quote".`,
		Example: `  tentwright intake
  tentwright intake --shop my-yard -o forms/blank.xlsx`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error { return a.writeIntake(path, force) },
	}
	flags := cmd.Flags()
	flags.StringVarP(&path, "output", "o", intakeBook, "write the form to `FILE.xlsx`")
	flags.BoolVar(&force, "force", false, "replace the file if it exists already")
	flags.SortFlags = false
	return cmd
}

// noArgs wants nothing behind the command.
func noArgs(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return misuse(`see "`+cmd.CommandPath()+` --help"`, "nothing was expected behind the command; then came %q", args[0])
}

// writeIntake writes the blank form of the shop.
func (a *app) writeIntake(path string, force bool) error {
	if !endsIn(path, ".xlsx") {
		return misuse("give it a name such as "+intakeBook, "%q does not end like a workbook", path)
	}
	s, err := a.useShop(".")
	if err != nil {
		return err
	}
	data, err := bookBytes(intake.Form(s.catalog, today(a.now())))
	if err != nil {
		return err
	}
	if err := writeAll([]output{{path, data}}, force, s.paths()); err != nil {
		return err
	}
	a.printf("wrote %s\n", path)
	return nil
}

// jobFromIntake reads the job of a filled form. The file's bytes become those
// of the job file that says the same, so that what is written of it later can be
// read again. It is nil when the list has faults.
func (a *app) jobFromIntake(path string, data []byte, found *sheet.Found, s *shop) (*jobFile, diag.List) {
	data, j, list := intake.Read(path, found, s.catalog)
	if j == nil {
		return nil, list
	}
	return &jobFile{path: path, data: data, job: j}, list
}
