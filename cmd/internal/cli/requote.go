package cli

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// requoteFlags is what the command requote may be told.
type requoteFlags struct {
	book, customer       string
	calendar             string // of dates
	plan                 string // drawing of the site
	force, json, reprice bool
	free                 bool // find a name that no file has
}

// newRequote is the command that computes the next revision of a workbook.
func newRequote(a *app) *cobra.Command {
	var f requoteFlags
	cmd := &cobra.Command{
		Use:   "requote BOOK.xlsx",
		Short: "Compute the next revision from a workbook that was worked in",
		Long: `Reads what was changed in a quote workbook - quantities, Yes and No, rates, minutes,
discounts, names, days, added lines - says what it found, computes parts, hours,
vehicles and price anew, and writes the next revision as a new file with a sheet
that lists each change with its effect. Notes, ticks, added sheets and the widths
of columns come along. The workbook itself stays as it is; without a change, no
revision is written; --customer and --plan then give the quote as it stands. The
shop's figures are those that the workbook was made with; --reprice takes the shop
as it is now.`,
		Example: `  tentwright requote dinner.xlsx
  tentwright requote dinner-r1.xlsx -o offers/dinner-final.xlsx
  tentwright requote dinner.xlsx --reprice --shop my-yard`,
		Args: func(cmd *cobra.Command, args []string) error {
			if err := oneBook(cmd, args); err != nil {
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
		},
		RunE: func(_ *cobra.Command, args []string) error { return a.requote(args[0], &f) },
	}
	f.flags(cmd.Flags())
	return cmd
}

// flags declares them, as the help lists them.
func (f *requoteFlags) flags(flags *pflag.FlagSet) {
	flags.StringVarP(&f.book, "output", "o", "", "write the revision to `BOOK.xlsx` (default: the name with -r1, -r2 ...)")
	flags.StringVar(&f.customer, "customer", "", "write the customer's own file, without anything internal, to `FILE.xlsx`")
	flags.StringVar(&f.calendar, "calendar", "", calendarHelp)
	flags.StringVar(&f.plan, "plan", "", planHelp)
	flags.BoolVar(&f.reprice, "reprice", false, "take the shop's present prices and rates, and list what differs")
	flags.BoolVar(&f.force, "force", false, "replace files that exist already")
	flags.BoolVar(&f.json, "json", false, "print the whole quote as JSON")
	flags.SortFlags = false
}

// oneBook wants the name of one workbook.
func oneBook(cmd *cobra.Command, args []string) error {
	switch {
	case len(args) == 0:
		return misuse(`see "`+cmd.CommandPath()+` --help"`, "the name of a workbook is missing")
	case len(args) > 1:
		return misuse("give one at a time", "one workbook was expected; then came %q", args[1])
	case !endsIn(args[0], ".xlsx", ".xlsm"):
		return misuse("a workbook ends in .xlsx", "%q does not end like a workbook", args[0])
	}
	return nil
}

// requote reads a workbook and writes its next revision.
func (a *app) requote(path string, f *requoteFlags) error {
	b, file, err := a.openBook(path)
	if err != nil {
		return err
	}
	result, err := a.revise(b, f)
	if err != nil {
		return err
	}
	if len(result.Changes) == 0 {
		return a.unchanged(b, f)
	}
	r, err := revision(b, file, result)
	if err != nil {
		return err
	}
	if f.book == "" {
		f.book = nextName(path, result.Quote.Job.Revision)
		if f.free {
			f.book = freeName(f.book)
		}
	}
	files, err := f.withCustomer([]output{{f.book, r.data}}, result.Quote)
	if err != nil {
		return err
	}
	if err := writeAll(files, f.force, a.inputs(path)); err != nil {
		return err
	}
	a.remark = a.remark || stops(result.Quote.Failed()) || len(r.worse) > 0
	return a.told(result, r, files, f.json)
}

// told prints what a revision changed and what was written, or the quote as JSON.
func (a *app) told(result *revise.Result, r *revised, files []output, json bool) error {
	if json {
		for i := range r.worse {
			a.note(worseWords+" "+strings.TrimSpace(verdict(&r.worse[i])), r.worse[i].Advice)
		}
		return a.json(result.Quote.Report())
	}
	a.changes(result, append(result.Changes, r.lost...))
	for _, line := range summary(result.Quote) {
		a.printf("%s\n", line)
	}
	if len(r.worse) > 0 {
		a.printf("  %s\n%s\n", worseWords, strings.Join(verdicts(r.worse), "\n"))
	}
	a.wrote(files)
	return nil
}

// unchanged says that there is no revision; the customer's file can still be
// wanted.
func (a *app) unchanged(b *revise.Book, f *requoteFlags) error {
	files, err := f.withCustomer(nil, b.Quote)
	if err != nil {
		return err
	}
	if err := writeAll(files, f.force, a.inputs(b.File)); err != nil {
		return err
	}
	a.remark = true
	if f.json {
		return a.json(b.Quote.Report())
	}
	a.printf("nothing was changed in %s; no revision was written\n", b.File)
	a.wrote(files)
	return nil
}

// withCustomer adds the customer's file of a quote, its calendar and its site
// plan, where they are wanted.
func (f *requoteFlags) withCustomer(files []output, q *quote.Quote) ([]output, error) {
	files, err := withCalendar(files, f.calendar, q)
	if err != nil {
		return files, err
	}
	files, err = withPlan(files, f.plan, q)
	if f.customer == "" || err != nil {
		return files, err
	}
	data, err := bookBytes(workbook.Customer(q))
	return append(files, output{f.customer, data}), err
}

// inputs is what a command that reads the workbook never writes over: this and
// the shop around it.
func (a *app) inputs(path string) []string {
	s, err := a.findShop(filepath.Dir(path), ".")
	if err != nil {
		return []string{path} // the shop is not needed here
	}
	return append(s.paths(), path)
}

// revise computes the next revision.
func (a *app) revise(b *revise.Book, f *requoteFlags) (*revise.Result, error) {
	var shop *catalog.Catalog
	if f.reprice {
		s, err := a.useShop(filepath.Dir(b.File), ".")
		if err != nil {
			return nil, err
		}
		shop = s.catalog
	}
	result, list := b.Revise(shop)
	if result == nil {
		return nil, faults("workbook "+b.File, list, nil)
	}
	a.problems(list, nil)
	return result, nil
}

// revised is the workbook of the next revision.
type revised struct {
	data  []byte
	lost  []workbook.Change // what the office wrote that found no place
	worse []quote.Check     // see worseChecks
}

// revision makes the workbook of the next revision, with what the office wrote
// beside the quote.
func revision(b *revise.Book, file *bookFile, result *revise.Result) (*revised, error) {
	changes := result.Changes
	kept := b.Kept()
	next := workbook.LayoutWith(result.Quote, workbook.Options{Changes: changes, Kept: kept})
	lost, added := b.Keep(next)
	if len(lost) > 0 {
		// What lost its place is told on a sheet that must be laid out with it.
		next = workbook.LayoutWith(result.Quote, workbook.Options{Changes: append(changes, lost...), Kept: kept})
		b.Keep(next)
	}
	data, err := bookBytesWith(next, xlsx.Foreign{Data: file.data, Sheets: added, Names: b.OwnNames(added)})
	return &revised{data, lost, worseChecks(next, result.Quote)}, err
}

// worseWords stands before the checks that only the workbook fails.
const worseWords = "with the yard's own counts and people in the workbook:"

// worseChecks is the checks of trips that hold for the plan of the quote, but not
// in its workbook, with the counts and riders that the yard typed.
func worseChecks(next *sheet.Book, q *quote.Quote) []quote.Check {
	f := next.Found()
	cell := func(column string, row int) sheet.FoundCell {
		p := f.Names["check_"+column]
		return f.Sheet(p.Sheet).At(row, p.C1)
	}
	rows := map[string]int{}
	for p, row := f.Names["check_key"], f.Names["check_key"].R1; row <= p.R2; row++ {
		rows[cell("key", row).Text] = row
	}
	var worse []quote.Check
	for _, c := range q.Checks {
		kind, _, _ := strings.Cut(c.Key, ":")
		row, known := rows[c.Key]
		if kind != "payload" && kind != "room" || !known || !c.Holds() {
			continue
		}
		c.Value, c.Limit = money.Float(cell("value", row).Number), money.Float(cell("limit", row).Number)
		if !c.Holds() {
			// To quote again would take the same counts along.
			c.Advice = "mend the counts on the Pick List and the riders on the Truck Manifest, or send more vehicles"
			worse = append(worse, c)
		}
	}
	return worse
}

// changes prints what was changed and what it did.
func (a *app) changes(r *revise.Result, all []workbook.Change) {
	cur, sys := r.Quote.Price.Currency, r.Quote.Catalog.Company.Units
	a.printf("Changes\n")
	for _, c := range all {
		line := "  " + joinWords(c.Place, c.What)
		if c.Old != "" || c.New != "" {
			line += fmt.Sprintf(": %s -> %s", orNone(c.Old), orNone(c.New))
		}
		a.printf("%s\n", line)
		switch e := c.Effect; {
		case e == nil && c.Note != "":
			a.printf("      %s\n", c.Note)
		case e != nil && !(e.Price.IsZero() && e.Hours.IsZero() && e.Weight.IsZero()):
			a.printf("      price %s, hours %s, weight %s %s\n", signed(cur.Text(e.Price), e.Price.IsPositive()), signed(e.Hours.StringFixed(2), e.Hours.IsPositive()),
				signed(e.Weight.StringFixed(0), e.Weight.IsPositive()), sys.MassUnit())
		}
	}
}

// joinWords puts a place and what stands there together.
func joinWords(place, what string) string {
	if place == "" {
		return what
	}
	return place + "  " + what
}

// orNone is a text, or a word for an empty one.
func orNone(text string) string {
	if text == "" {
		return "(empty)"
	}
	return strings.ReplaceAll(text, "\n", " ")
}

// signed puts a plus before what became more.
func signed(text string, more bool) string {
	if more {
		return "+" + text
	}
	return text
}

// revisionEnd is how the names of revisions end.
var revisionEnd = regexp.MustCompile(`-r[0-9]+$`)

// nextName is the name of a revision: that of the first workbook with -r and the
// revision's number.
func nextName(path string, revision int) string {
	stem := strings.TrimSuffix(path, filepath.Ext(path))
	return fmt.Sprintf("%s-r%d.xlsx", revisionEnd.ReplaceAllString(stem, ""), revision)
}
