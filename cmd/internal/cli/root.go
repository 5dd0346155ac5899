package cli

import (
	"errors"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"tentwright/catalog/diag"
)

// newRoot builds the tree of commands.
func newRoot(a *app) *cobra.Command {
	root := &cobra.Command{
		Use:   "tentwright",
		Short: "Quote tent hire: price, crew, trucks and pick list in one workbook",
		Long: `tentwright reads a shop (a folder of files with your tents, parts, prices and
vehicles) and a job (a file with what a customer asks for), and makes a
spreadsheet workbook with the quote, the crew hours, the truck manifest and the
pick list. Without a shop of your own it uses a demonstration yard, so that you
can try everything at once. Files alone, as when they are dropped on the program,
are quoted, or requoted if they are quote workbooks; what comes of them is written
beside them.`,
		Example: `  tentwright quote --tent hip:20x40 --guests 60 --date 2026-07-04 --miles 12
  tentwright list items chair
  tentwright new my-yard
  tentwright check my-yard
  tentwright quote dinner.yaml
  tentwright intake
  tentwright requote dinner.xlsx`,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          onlyFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return a.dropAll(args)
			}
			return cmd.Help()
		},
	}
	root.PersistentFlags().StringVar(&a.shop, "shop", "", "use the shop in the folder `DIR` (default: the nearest above the job file or here)")
	root.SetFlagErrorFunc(flagError)
	root.SetHelpCommand(newHelp())
	root.AddCommand(newNew(a), newCheck(a), newQuote(a), newIntake(a), newRequote(a), newCompare(a), newCloseout(a), newLearn(a), newRates(a), newImport(a), newParts(a), newList(a), newExitCodes())
	a.explainCompletion(root)
	return root
}

// commandNames lists what may stand behind the name of the program.
func commandNames(root *cobra.Command) []string {
	var names []string
	for _, cmd := range root.Commands() {
		names = append(names, cmd.Name())
	}
	return names
}

// advised is the nearest known word, or else where to look.
func advised(word string, known []string) string {
	if near, ok := diag.Nearest(word, known); ok {
		return `did you mean "` + near + `"?`
	}
	return helpAdvice
}

// flagError says in our words what is wrong with a flag.
func flagError(cmd *cobra.Command, err error) error {
	see := `see "` + cmd.CommandPath() + ` --help" for its flags`
	var (
		unknown  *pflag.NotExistError
		noValue  *pflag.ValueRequiredError
		badValue *pflag.InvalidValueError
	)
	switch {
	case errors.As(err, &unknown):
		name := unknown.GetSpecifiedName()
		var known []string
		cmd.Flags().VisitAll(func(f *pflag.Flag) { known = append(known, f.Name) })
		if near, ok := diag.Nearest(name, known); ok {
			see = "did you mean --" + near + "?"
		}
		return misuse(see, "unknown flag %q", name)
	case errors.As(err, &noValue):
		return misuse(see, "flag --%s has no value behind it", noValue.GetFlag().Name)
	case errors.As(err, &badValue):
		return misuse(see, "--%s %q: %v", badValue.GetFlag().Name, badValue.GetValue(), errors.Unwrap(badValue))
	}
	return misuse(see, "%v", err)
}
