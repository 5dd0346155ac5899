package cli

import "github.com/spf13/cobra"

// newHelp explains a command or a topic.
func newHelp() *cobra.Command {
	return &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "Explain a command or a topic",
		Example: `  tentwright help quote
  tentwright help exit-codes`,
		RunE: func(cmd *cobra.Command, args []string) error {
			found := cmd.Root()
			for _, name := range args {
				next := child(found, name)
				if next == nil {
					return misuse(advised(name, commandNames(found)), "there is no help on %q", name)
				}
				found = next
			}
			return found.Help()
		},
	}
}

// child is the command of that name below cmd; nil for none.
func child(cmd *cobra.Command, name string) *cobra.Command {
	for _, next := range cmd.Commands() {
		if next.Name() == name {
			return next
		}
	}
	return nil
}

// newExitCodes is a topic: it explains and does nothing.
func newExitCodes() *cobra.Command {
	return &cobra.Command{
		Use:   "exit-codes",
		Short: "What the exit codes of the program mean",
		Long: `A script can tell by the exit code how a command ended:

  0  the work is done; a quote may still have checks that want a look
  1  the input has faults: all are listed with file, line and column
  2  the command was not understood: wrong command, flag or value
  3  a file could not be read or written
  4  a fault of tentwright itself

Nothing is written unless the code is 0; only "rates --write" then keeps the
figures that fit, and a form with faults gets a copy that lists them.`,
	}
}
