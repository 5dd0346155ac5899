package cli

import (
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"tentwright/quote"
	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// fit tells whether the flags and arguments go together.
func (f *quoteFlags) fit(cmd *cobra.Command, args []string) error {
	see := `see "` + cmd.CommandPath() + ` --help" for both ways`
	given := f.phone.given(cmd.Flags())
	switch {
	case len(args) > 1:
		return misuse("quote one job at a time", "one job file was expected; then came %q", args[1])
	case len(args) == 1 && given != "":
		return misuse("leave out the file to price by phone, or put it into the file", "--%s does not go with a job file", given)
	case len(args) == 0 && given == "":
		return misuse(see, "a job file is missing, or --tent for a price by phone")
	case slices.ContainsFunc(f.without, func(stage string) bool { return stage != recordStage && stage != planStage }):
		return misuse("the stages that can be left out are "+recordStage+" and "+planStage, "--without %s: no such stage", strings.Join(f.without, ","))
	case f.phone.save != "" && !endsIn(f.phone.save, jobEndings()...):
		return misuse("name a file ending in .yaml", "--save %q is not the name of a job file", f.phone.save)
	}
	if err := secondsFit(f.seconds); err != nil {
		return err
	}
	if err := bookNamed("-o", f.book); err != nil {
		return err
	}
	if err := calendarNamed(f.calendar); err != nil {
		return err
	}
	if err := planNamed(f.plan); err != nil {
		return err
	}
	return bookNamed("--customer", f.customer)
}

// endsIn tells whether a path has one of the endings, in any case.
func endsIn(path string, endings ...string) bool {
	return slices.Contains(endings, strings.ToLower(filepath.Ext(path)))
}

// files makes the workbooks and the other files asked for.
func (f *quoteFlags) files(q *quote.Quote) ([]output, error) {
	var files []output
	add := func(path string, book *sheet.Book) error {
		data, err := bookBytes(book)
		files = append(files, output{path, data})
		return err
	}
	if f.book != "" {
		if err := add(f.book, workbook.LayoutWith(q, workbook.Options{NoRecord: slices.Contains(f.without, recordStage), NoPlan: slices.Contains(f.without, planStage)})); err != nil {
			return nil, err
		}
	}
	if f.customer != "" {
		if err := add(f.customer, workbook.Customer(q)); err != nil {
			return nil, err
		}
	}
	files, err := withPlan(files, f.plan, q)
	if err != nil {
		return nil, err
	}
	return withCalendar(files, f.calendar, q)
}

// jobNames completes the name of a job file at the command line.
func jobNames(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"yaml", "yml", "xlsx"}, cobra.ShellCompDirectiveFilterFileExt
}
