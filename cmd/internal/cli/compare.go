package cli

import (
	"encoding/json"

	"github.com/spf13/cobra"

	"tentwright/catalog/money"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// asideFlags is what a command that makes a workbook beside another may be told.
type asideFlags struct {
	book        string
	force, json bool
}

// add adds the flags to a command.
func (f *asideFlags) add(cmd *cobra.Command, where string) {
	flags := cmd.Flags()
	flags.StringVarP(&f.book, "output", "o", "", "write the workbook `OUT.xlsx` ("+where+")")
	flags.BoolVar(&f.force, "force", false, "replace a file that exists already")
	flags.BoolVar(&f.json, "json", false, "print the result as JSON")
	flags.SortFlags = false
}

// named wants a name for the workbook that is one.
func (f *asideFlags) named() error { return bookNamed("-o", f.book) }

// bookNamed wants that the name behind a flag, if there is one, ends like a
// workbook's.
func bookNamed(flag, name string) error {
	if name != "" && !endsIn(name, ".xlsx") {
		return misuse("name a file ending in .xlsx", "%s %q is not the name of a workbook", flag, name)
	}
	return nil
}

// write writes the workbook, if one is asked for.
func (f *asideFlags) write(book *sheet.Book, inputs ...string) error {
	if f.book == "" {
		return nil
	}
	data, err := bookBytes(book)
	if err != nil {
		return err
	}
	return writeAll([]output{{f.book, data}}, f.force, inputs)
}

// newCompare is the command that holds two revisions against each other.
func newCompare(a *app) *cobra.Command {
	var f asideFlags
	cmd := &cobra.Command{
		Use:   "compare OLD.xlsx NEW.xlsx",
		Short: "Compare two revisions of a quote, and change a load that was pulled",
		Long: `Reads two workbooks of one quote, each as it now stands, and shows what differs:
price, tax, cost and margin, hours, weight, vehicles, every line. For a load that
was pulled for the older one it lists what to add and what to take off, by the
walking order of the yard. What is on the trucks is taken from the ticks and
counts of the older pick list; where there are none, from its plan.`,
		Example: `  tentwright compare dinner.xlsx dinner-r1.xlsx
  tentwright compare dinner.xlsx dinner-r1.xlsx -o load-changes.xlsx`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) != 2 {
				return misuse(`see "`+cmd.CommandPath()+` --help"`, "the names of two workbooks were expected; %d came", len(args))
			}
			for _, path := range args {
				if err := oneBook(cmd, []string{path}); err != nil {
					return err
				}
			}
			return f.named()
		},
		RunE: func(_ *cobra.Command, args []string) error { return a.compare(args[0], args[1], &f) },
	}
	f.add(cmd, "default: none")
	return cmd
}

// compare reads two workbooks and tells what differs.
func (a *app) compare(old, now string, f *asideFlags) error {
	x, _, err := a.openBook(old)
	if err != nil {
		return err
	}
	y, _, err := a.openBook(now)
	if err != nil {
		return err
	}
	c, list := revise.Compare(x, y)
	if c == nil {
		return faults("the comparison of "+old+" and "+now, list, nil)
	}
	a.problems(list, nil)
	if err := f.write(workbook.LayoutSideBySide(c.New, &c.SideBySide), append(a.inputs(old), now)...); err != nil {
		return err
	}
	if f.json {
		return a.json(compareReport(c))
	}
	a.compared(c)
	if f.book != "" {
		a.printf("wrote %s\n", f.book)
	}
	return nil
}

// compared prints what differs.
func (a *app) compared(c *revise.Comparison) {
	show := func(f sheet.Format, n money.Number) string {
		switch f {
		case sheet.Money:
			return c.New.Price.Currency.Text(n)
		case sheet.Whole:
			return n.String()
		}
		return n.StringFixed(2)
	}
	a.printf("Old  %s\nNew  %s\n", c.SideBySide.Old, c.SideBySide.New)
	pairs := func(list []workbook.Pair) {
		for _, p := range list {
			d := p.Difference()
			a.printf("  %-24s%16s%16s%16s\n", clip(p.Name, 23), show(p.Format, p.Old), show(p.Format, p.New), signed(show(p.Format, d), d.IsPositive()))
		}
	}
	a.printf("%-26s%16s%16s%16s\n", "Totals", "old", "new", "difference")
	pairs(c.Totals)
	a.printf("  vehicles, old  %s\n  vehicles, new  %s\n", orNone(c.Vehicles[0]), orNone(c.Vehicles[1]))
	a.printf("Hours by window of work\n")
	pairs(c.Windows)
	a.comparedLines(c.Lines, show)
	a.comparedLoads(c)
}

// comparedLines prints the lines that differ.
func (a *app) comparedLines(lines []workbook.LinePair, show func(sheet.Format, money.Number) string) {
	same := 0
	a.printf("Lines\n")
	for i := range lines {
		p := &lines[i]
		if p.State == workbook.LineSame {
			same++
			continue
		}
		d := p.Amount.Difference()
		a.printf("  %-8s%-36s%16s%18s\n", p.State, clip(p.Name, 35), quantities(p), signed(show(sheet.Money, d), d.IsPositive()))
		if o, n := p.Price.Old, p.Price.New; p.State == workbook.LineChanged && p.Unit != "" && !o.Equal(n) {
			a.printf("          price of one %s -> %s\n", show(sheet.Money, o), show(sheet.Money, n))
		}
	}
	a.printf("  %d lines are the same\n", same)
}

// quantities are how many of a line there were and are.
func quantities(p *workbook.LinePair) string {
	switch {
	case p.Unit == "":
		return ""
	case p.State == workbook.LineAdded:
		return p.Quantity.New.String() + " " + p.Unit
	case p.State == workbook.LineDropped:
		return p.Quantity.Old.String() + " " + p.Unit
	}
	return p.Quantity.Old.String() + " -> " + p.Quantity.New.String()
}

// comparedLoads prints what to add to the load and what to take off.
func (a *app) comparedLoads(c *revise.Comparison) {
	for _, add := range []bool{true, false} {
		a.printf("%s\n", map[bool]string{true: "Add to the load", false: "Take off the load"}[add])
		none := true
		for i := range c.Loads {
			if x := &c.Loads[i]; x.Want > x.On == add {
				none = false
				a.printf("  %-8s%-27s%6d  %-18s %s\n", x.Part.Bin, clip(x.Part.Name, 26), x.Pieces(), x.Packs(), x.Vehicle)
			}
		}
		if none {
			a.printf("  nothing\n")
		}
	}
	if len(c.Moves) > 0 {
		a.printf("Move to another vehicle\n")
	}
	for i := range c.Moves {
		x := &c.Moves[i]
		a.printf("  %-8s%-27s%6d  %s -> %s\n", x.Part.Bin, clip(x.Part.Name, 26), x.Pieces, x.From, x.To)
	}
	a.printf("On the trucks\n  %s\n", c.Basis)
}

// The comparison as JSON.
type (
	twoReport struct {
		Key        string      `json:"key"`
		Name       string      `json:"name"`
		Old        json.Number `json:"old"`
		New        json.Number `json:"new"`
		Difference json.Number `json:"difference"`
	}
	linePairReport struct {
		State       string      `json:"state"`
		Key         string      `json:"key"`
		Section     string      `json:"section"`
		Name        string      `json:"name"`
		Extra       bool        `json:"optional_extra"`
		Unit        string      `json:"unit"`
		QuantityOld json.Number `json:"quantity_old"`
		QuantityNew json.Number `json:"quantity_new"`
		PriceOld    json.Number `json:"price_old"`
		PriceNew    json.Number `json:"price_new"`
		AmountOld   json.Number `json:"amount_old"`
		AmountNew   json.Number `json:"amount_new"`
		Difference  json.Number `json:"difference"`
	}
	loadReport struct {
		Part    string `json:"part"`
		Name    string `json:"name"`
		Bin     string `json:"bin"`
		Do      string `json:"do"` // add or take off
		Pieces  int    `json:"pieces"`
		Packs   string `json:"packs"`
		On      int    `json:"on_trucks"`
		Want    int    `json:"wanted"`
		Vehicle string `json:"vehicle"`
	}
	sideReport struct {
		Number   string           `json:"number"`
		Old      string           `json:"old"`
		New      string           `json:"new"`
		Totals   []twoReport      `json:"totals"`
		Vehicles [2]string        `json:"vehicles"`
		Windows  []twoReport      `json:"windows"`
		Lines    []linePairReport `json:"lines"`
		Basis    string           `json:"on_trucks_by"`
		Loads    []loadReport     `json:"load_changes"`
		Moves    []moveReport     `json:"load_moves"`
	}
)

// moveReport is a part that rides elsewhere, as JSON.
type moveReport struct {
	Part   string `json:"part"`
	Name   string `json:"name"`
	Bin    string `json:"bin"`
	Pieces int    `json:"pieces"`
	From   string `json:"from"`
	To     string `json:"to"`
}

// figure is a decimal number as JSON has it.
func figure(n money.Number) json.Number { return json.Number(n.String()) }

// compareReport is a comparison as plain data.
func compareReport(c *revise.Comparison) sideReport {
	pairs := func(list []workbook.Pair) []twoReport {
		out := []twoReport{}
		for _, p := range list {
			out = append(out, twoReport{p.Key, p.Name, figure(p.Old), figure(p.New), figure(p.Difference())})
		}
		return out
	}
	r := sideReport{Number: c.New.Job.Number, Old: c.SideBySide.Old, New: c.SideBySide.New, Totals: pairs(c.Totals), Vehicles: c.Vehicles,
		Windows: pairs(c.Windows), Lines: []linePairReport{}, Basis: c.Basis, Loads: []loadReport{}, Moves: []moveReport{}}
	for i := range c.Lines {
		p := &c.Lines[i]
		r.Lines = append(r.Lines, linePairReport{p.State, p.Key, p.Section, p.Name, p.Extra, p.Unit, figure(p.Quantity.Old), figure(p.Quantity.New),
			figure(p.Price.Old), figure(p.Price.New), figure(p.Amount.Old), figure(p.Amount.New), figure(p.Amount.Difference())})
	}
	for i := range c.Loads {
		x := &c.Loads[i]
		do := "take off"
		if x.Want > x.On {
			do = "add"
		}
		r.Loads = append(r.Loads, loadReport{x.Part.ID, x.Part.Name, x.Part.Bin, do, x.Pieces(), x.Packs(), x.On, x.Want, x.Vehicle})
	}
	for i := range c.Moves {
		x := &c.Moves[i]
		r.Moves = append(r.Moves, moveReport{x.Part.ID, x.Part.Name, x.Part.Bin, x.Pieces, x.From, x.To})
	}
	return r
}
