package cli

import (
	"encoding/json"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"tentwright/quote"
	"tentwright/quote/job"
)

// quoteFlags is what the command quote may be told.
type quoteFlags struct {
	book, customer string
	calendar       string // of dates
	plan           string // drawing of the site
	force, json    bool
	seconds        int      // to look for a crew plan
	without        []string // stages left out
	phone          phone
}

// Stages of a workbook that can be left out: what it was made from, and the
// picture of the site plan.
const (
	recordStage = "record"
	planStage   = "plan"
)

// newQuote is the command that makes the workbook.
func newQuote(a *app) *cobra.Command {
	var f quoteFlags
	cmd := &cobra.Command{
		Use:   "quote [JOB.yaml or INTAKE.xlsx]",
		Short: "Price a job: make its workbook, or give a price by phone",
		Long: `With a job file or a filled intake form, makes the workbook of the quote beside
it and prints a summary. Cells of a form that must be mended are listed, all at
once, and stand on a sheet of a copy of the form.
Without one, prices what --tent and --item name, for a caller on the phone: price,
hours, vehicles and warnings on one screen. Such a job is delivered the day before
the event and taken down the day after it; --save keeps it as a job file. The ids
of tents and items are those of "tentwright list", e.g. tentwright list items chair.`,
		Example: `  tentwright quote dinner.yaml
  tentwright quote intake.xlsx
  tentwright quote dinner.yaml -o offers/dinner.xlsx --customer offers/for-them.xlsx
  tentwright quote --tent hip:20x40 --guests 60 --date 2026-07-04 --miles 12
  tentwright quote --tent pole:40x60x2 --item chair-folding=200 --walls solid \
    --guests 200 --date 2026-07-04 --days 3 --miles 30 --save fair.yaml
  tentwright quote --tent hip:20x40 --guests 60 --date 2026-07-05 --miles 12 \
    --loading sunday --site surface=gravel --class trade`,
		Args: func(cmd *cobra.Command, args []string) error {
			return f.fit(cmd, args)
		},
		ValidArgsFunction: jobNames,
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 1 {
				return a.quoteFile(args[0], &f)
			}
			return a.quotePhone(&f)
		},
	}
	f.flags(cmd.Flags())
	a.completePhone(cmd, &f.phone)
	return cmd
}

// flags declares them, as the help lists them.
func (f *quoteFlags) flags(flags *pflag.FlagSet) {
	flags.StringVarP(&f.book, "output", "o", "", "write the workbook to `BOOK.xlsx` (default: the job's name, ending in .xlsx)")
	flags.StringVar(&f.customer, "customer", "", "write the customer's own file, without anything internal, to `FILE.xlsx`")
	flags.StringVar(&f.calendar, "calendar", "", calendarHelp)
	flags.StringVar(&f.plan, "plan", "", planHelp)
	flags.IntVar(&f.seconds, "seconds", 0, secondsHelp)
	flags.BoolVar(&f.force, "force", false, "replace files that exist already")
	flags.BoolVar(&f.json, "json", false, "print the whole quote as JSON; no workbook unless -o names one")
	flags.StringSliceVar(&f.without, "without", nil, "leave out `STAGES` of the workbook, to measure the others: "+recordStage+" is what requote needs, "+planStage+" the picture of the site plan")
	flags.MarkHidden("without") // for who measures the program; a workbook without its record cannot be requoted
	f.phone.flags(flags)
	flags.SortFlags = false
}

// quoteFile quotes a job from a file.
func (a *app) quoteFile(path string, f *quoteFlags) error {
	q, file, s, err := a.open(path)
	if err != nil {
		return err
	}
	if f.book == "" && !f.json {
		f.book = strings.TrimSuffix(path, filepath.Ext(path)) + ".xlsx"
		if endsIn(path, bookEndings()...) {
			f.book = quoteName(path)
		}
	}
	return a.deliver(q, f, summary, append(s.paths(), file.path))
}

// quotePhone quotes a job from flags.
func (a *app) quotePhone(f *quoteFlags) error {
	s, err := a.findShop(".")
	if err != nil {
		return err
	}
	if err := s.load(); err != nil {
		return err
	}
	made, err := f.phone.job(s.catalog, today(a.now()))
	if err != nil {
		return err
	}
	a.warn(s)
	// Read from what --save would write, so that both give the same quote to the
	// last byte.
	file := &jobFile{data: job.Write(made)}
	q, err := file.build(s)
	if err != nil {
		return err
	}
	return a.deliver(q, f, screen, s.paths())
}

// deliver writes the files asked for and prints the result.
func (a *app) deliver(q *quote.Quote, f *quoteFlags, text func(*quote.Quote) []string, inputs []string) error {
	q, err := a.think(q, time.Duration(f.seconds)*time.Second)
	if err != nil {
		return err
	}
	files, err := f.files(q)
	if err != nil {
		return err
	}
	if f.phone.save != "" {
		files = append(files, output{f.phone.save, job.Write(q.Job)})
	}
	if err := writeAll(files, f.force, inputs); err != nil {
		return err
	}
	a.remark = a.remark || stops(q.Failed())
	if f.json {
		return a.json(q.Report())
	}
	for _, line := range text(q) {
		a.printf("%s\n", line)
	}
	a.wrote(files)
	return nil
}

// json prints a value for another program.
func (a *app) json(value any) error {
	out := json.NewEncoder(a.out)
	out.SetIndent("", "  ")
	out.SetEscapeHTML(false)
	return out.Encode(value)
}
