package cli

import (
	"fmt"
	"path"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"tentwright/catalog/source"
	"tentwright/quote/learn"
	"tentwright/workbook/revise"
)

// learnFlags is what the command learn may be told.
type learnFlags struct {
	jobs        int
	write, json bool
}

// newLearn is the command that takes minutes from what past jobs took.
func newLearn(a *app) *cobra.Command {
	var f learnFlags
	cmd := &cobra.Command{
		Use:   "learn BOOK.xlsx...",
		Short: "Propose new minutes from the hours that past jobs took",
		Long: `Reads the person-hours that were typed into the column Actual of Crew Hours in the
quote workbooks of past jobs, and proposes new minutes for the labour rules of the
shop: the median over the jobs, each with one vote, without what the site slowed
and without the fixed minutes. Beside it stands between which minutes the median
of all such jobs lies and with which confidence: a firm figure lies within a tenth
either way, a fair one within a quarter; what comes from fewer than six jobs is
thin. Minutes stay where the old ones are as likely as the new.

Workbooks without actual hours are left out, and so are older revisions of a
quote. With any workbook that cannot be read nothing is proposed. With --write the
new minutes go into the shop's files: only they change, comments and order stay,
and each file as it was is kept beside it, ending in .old.`,
		Example: `  tentwright learn season/*.xlsx --shop my-yard
  tentwright learn season/*.xlsx --shop my-yard --jobs 6 --write`,
		Args: func(cmd *cobra.Command, args []string) error {
			if f.jobs < learn.LeastJobs {
				return misuse("fewer jobs tell nothing", "--jobs %d: at least %d were expected", f.jobs, learn.LeastJobs)
			}
			return someBooks(cmd, args)
		},
		RunE:              func(_ *cobra.Command, args []string) error { return a.learn(args, &f) },
		ValidArgsFunction: bookNames,
	}
	cmd.Flags().IntVar(&f.jobs, "jobs", learn.LeastJobs, "propose minutes from so many jobs or more")
	cmd.Flags().BoolVar(&f.write, "write", false, "write the new minutes into the shop's files")
	cmd.Flags().BoolVar(&f.json, "json", false, "print the list as JSON, not rounded")
	return cmd
}

// someBooks wants the names of one workbook or more.
func someBooks(cmd *cobra.Command, args []string) error {
	for _, path := range args {
		if err := oneBook(cmd, []string{path}); err != nil {
			return err
		}
	}
	if len(args) == 0 {
		return oneBook(cmd, args)
	}
	return nil
}

// bookNames completes the names of workbooks at the command line.
func bookNames(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"xlsx", "xlsm"}, cobra.ShellCompDirectiveFilterFileExt
}

// lesson is what the jobs told.
type lesson struct {
	shop      *shop
	books     int
	leftBooks []revise.LeftOut
	left      []learn.Left
	all       []learn.Proposal
	changes   int
	written   bool
}

// learn reads the workbooks, prints what they tell and, if told so, writes it.
func (a *app) learn(paths []string, f *learnFlags) error {
	s, err := a.findShop(filepath.Dir(paths[0]), ".")
	if err != nil {
		return err
	}
	if f.write && s.dir == builtIn {
		return fileError(`make a shop with "tentwright new DIR" and name it with --shop`, "the built-in shop cannot be changed")
	}
	if err := s.load(); err != nil {
		return err
	}
	l := &lesson{shop: s, books: len(paths)}
	tasks, err := a.actuals(paths, l)
	if err != nil {
		return err
	}
	l.all, l.left = learn.Proposals(s.catalog.Labour, tasks, f.jobs)
	for i := range l.all {
		if l.all[i].State == learn.Change {
			l.changes++
		}
	}
	if f.write && l.changes > 0 {
		if err := a.writeMinutes(l); err != nil {
			return err
		}
		l.written = true
	}
	a.doubts(l)
	if f.json {
		return a.json(l.report())
	}
	a.lessonTable(l)
	a.lessonEnd(l)
	return nil
}

// writeMinutes writes the new minutes into the shop's files and keeps the files
// as they were.
func (a *app) writeMinutes(l *lesson) error {
	var rates []revise.Rate
	for i := range l.all {
		if p := &l.all[i]; p.State == learn.Change {
			at := p.Rule.Where
			rates = append(rates, revise.Rate{State: revise.RateOpen, Edit: revise.Edit{File: path.Base(filepath.ToSlash(at.Pos().File)),
				Shop: source.Edit{Path: at.Path() + ".minutes", Value: p.New.String()}}})
		}
	}
	changed, list := revise.WriteRates(l.shop.catalog.Source, rates)
	if list.Err() != nil {
		return faults("shop "+l.shop.dir+" with these minutes", list, l.shop.source)
	}
	return a.replaceShop(l.shop, changed)
}

// mostDoubts is how many lines of one kind are printed of what wants a look.
const mostDoubts = 20

// doubts tells what was left out, and which hours are most likely typed wrongly.
func (a *app) doubts(l *lesson) {
	var books, far []string
	for _, b := range l.leftBooks {
		books = append(books, b.File+" is left out: "+b.Why)
	}
	for i := range l.all {
		for _, x := range l.all[i].Far {
			far = append(far, fmt.Sprintf("%s: %s, %s hours: by the other jobs %s were expected; look whether hours were typed", x.Pos, l.all[i].Rule.Name, x.Hours, x.Expected))
		}
	}
	a.leftTasks(l.left)
	for _, lines := range [][]string{books, far} {
		for _, line := range lines[:min(len(lines), mostDoubts)] {
			a.note(line, "")
		}
		if more := len(lines) - mostDoubts; more > 0 {
			a.note(fmt.Sprintf("and %d more like these; --json has them all", more), "")
		}
	}
}

// leftTasks tells how many tasks are left out, for each reason, and of which
// rules.
func (a *app) leftTasks(left []learn.Left) {
	var reasons []string
	tasks, rules := map[string]int{}, map[string][]string{}
	for _, x := range left {
		if tasks[x.Why] == 0 {
			reasons = append(reasons, x.Why)
		}
		tasks[x.Why] += x.Tasks
		rules[x.Why] = append(rules[x.Why], x.Rule)
	}
	const named = 5
	for _, why := range reasons {
		names := rules[why]
		words := strings.Join(names[:min(len(names), named)], ", ")
		if more := len(names) - named; more > 0 {
			words += fmt.Sprintf(" and %s", countOf(more, "more rule"))
		}
		a.note(fmt.Sprintf("%s left out: %s", countOf(tasks[why], "task"), why), words)
	}
}

// countOf is "1 task" or "3 tasks".
func countOf(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
