package cli

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"tentwright/catalog"
	"tentwright/workbook/revise"
)

// ratesFlags is what the command rates may be told.
type ratesFlags struct{ write, json bool }

// newRates is the command that takes a manager's figures over into the shop.
func newRates(a *app) *cobra.Command {
	var f ratesFlags
	cmd := &cobra.Command{
		Use:   "rates BOOK.xlsx",
		Short: "List the prices, rates and minutes changed in a workbook, or keep them",
		Long: `Lists the figures of the shop that were changed in a quote workbook, beside what
the shop has today. With --write they go into the shop's files, so that they hold
for every later quote: only those figures change, comments and order stay, and
each file as it was is kept beside it, ending in .old. A figure that the shop has
changed otherwise in the meantime is listed and not written; the exit code is
then 1.`,
		Example: `  tentwright rates dinner.xlsx --shop my-yard
  tentwright rates dinner.xlsx --shop my-yard --write`,
		Args: oneBook,
		RunE: func(_ *cobra.Command, args []string) error { return a.rates(args[0], &f) },
	}
	cmd.Flags().BoolVar(&f.write, "write", false, "write the figures into the shop's files")
	cmd.Flags().BoolVar(&f.json, "json", false, "print the list as JSON")
	return cmd
}

// rateReport is a changed figure as JSON.
type rateReport struct {
	File    string `json:"file"`
	Path    string `json:"path"`
	Cell    string `json:"cell"`
	What    string `json:"what"`
	Old     string `json:"old"`
	New     string `json:"new"`
	Present string `json:"present"`
	State   string `json:"state"`
}

// rates lists the changed figures and, if told so, writes them.
func (a *app) rates(path string, f *ratesFlags) error {
	b, _, err := a.openBook(path)
	if err != nil {
		return err
	}
	s, err := a.findShop(filepath.Dir(path), ".")
	if err != nil {
		return err
	}
	if err := s.load(); err != nil {
		return err
	}
	rates, list := b.Rates(s.catalog)
	if list.Err() != nil {
		return faults("the job of "+path+" in the shop "+s.dir, list, s.source)
	}
	if f.write {
		if err := a.writeRates(s, rates); err != nil {
			return err
		}
	}
	if err := a.listRates(rates, f); err != nil {
		return err
	}
	n := counted(rates, revise.RateDiffers)
	switch {
	case f.write && n > 0:
		return &failure{code: Faults, problem: fmt.Sprintf("figures not taken, since the shop has changed them otherwise: %d", n),
			advice: "change them in the shop's files if they are to hold; the others were written"}
	case !f.write && counted(rates, revise.RateOpen) > 0:
		a.note("nothing was written", "--write keeps them in the shop")
	}
	return nil
}

// counted is how many figures have that state.
func counted(rates []revise.Rate, state revise.RateState) int {
	n := 0
	for i := range rates {
		if rates[i].State == state {
			n++
		}
	}
	return n
}

// listRates prints the figures.
func (a *app) listRates(rates []revise.Rate, f *ratesFlags) error {
	if f.json {
		reports := []rateReport{}
		for i := range rates {
			r := &rates[i]
			reports = append(reports, rateReport{r.File, r.Shop.Path, r.Pos.Sheet + "!" + r.Pos.Cell, r.What, r.Old, r.New, r.Present, string(r.State)})
		}
		return a.json(reports)
	}
	for i := range rates {
		r := &rates[i]
		line := fmt.Sprintf("%s  %s: %s -> %s", r.File, r.What, r.Old, r.New)
		switch r.State {
		case revise.RateOpen:
			if f.write {
				line += "  written"
			}
		case revise.RateDiffers:
			line += "  NOT TAKEN, the shop now has " + r.Present
		default:
			line += "  " + string(r.State)
		}
		a.printf("%s\n", line)
	}
	if len(rates) == 0 {
		a.printf("no figure of the shop was changed\n")
	}
	return nil
}

// writeRates writes the open figures into the shop's files and keeps the files
// as they were.
func (a *app) writeRates(s *shop, rates []revise.Rate) error {
	if s.dir == builtIn {
		return fileError(`make a shop with "tentwright new DIR" and name it with --shop`, "the built-in shop cannot be changed")
	}
	changed, list := revise.WriteRates(s.catalog.Source, rates)
	if list.Err() != nil {
		return faults("shop "+s.dir+" with these figures", list, s.source)
	}
	return a.replaceShop(s, changed)
}

// replaceShop writes files of a shop, each as it was kept beside it.
func (a *app) replaceShop(s *shop, changed catalog.Shop) error {
	var files []output
	for _, name := range slices.Sorted(maps.Keys(changed)) {
		path := filepath.Join(s.dir, name)
		files = append(files, output{oldName(path), s.catalog.Source[name]}, output{path, changed[name]})
	}
	if err := writeAll(files, true, nil); err != nil {
		return err
	}
	for i := 0; i < len(files); i += 2 {
		a.note("kept "+files[i].path, "")
	}
	return nil
}

// oldName is a free name for a file as it was: with .old, or .old2, .old3 ...
func oldName(path string) string {
	for n := 1; ; n++ {
		name := path + ".old"
		if n > 1 {
			name += fmt.Sprint(n)
		}
		if _, err := os.Lstat(name); err != nil {
			return name
		}
	}
}
