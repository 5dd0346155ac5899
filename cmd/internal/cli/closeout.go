package cli

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"tentwright/catalog/money"
	"tentwright/workbook"
	"tentwright/workbook/revise"
)

// newCloseout is the command that settles a job once it is over.
func newCloseout(a *app) *cobra.Command {
	var f asideFlags
	cmd := &cobra.Command{
		Use:   "closeout BOOK.xlsx",
		Short: "Settle a job from what came back, was paid and was worked",
		Long: `Reads the Return Check-in, the counts of the Pick List, the payments and the
actual hours of a quote workbook, and writes a workbook with the final charges for
the customer, a list of what to mend, to replace, to dry and still to count, and
the hours beside those planned. What nobody counted is neither missing nor back.
Each damaged line can be waived, and hours beyond the quote charged, by a Yes in
the new workbook; by itself neither happens.`,
		Example: `  tentwright closeout dinner.xlsx
  tentwright closeout dinner.xlsx -o settled/dinner.xlsx`,
		Args: func(cmd *cobra.Command, args []string) error {
			if err := oneBook(cmd, args); err != nil {
				return err
			}
			return f.named()
		},
		RunE: func(_ *cobra.Command, args []string) error { return a.closeout(args[0], &f) },
	}
	f.add(cmd, "default: the name with -closeout")
	return cmd
}

// closeout reads a workbook and writes what is left to settle.
func (a *app) closeout(path string, f *asideFlags) error {
	b, _, err := a.openBook(path)
	if err != nil {
		return err
	}
	c, list := b.Closeout()
	if c == nil {
		return faults("workbook "+path, list, nil)
	}
	a.problems(list, nil)
	if n := len(b.Edits); n > 0 {
		a.note(fmt.Sprintf("%s was edited since it was quoted (edits: %d); the total is computed with them", path, n), "")
	}
	if f.book == "" {
		f.book = besideName(path, "closeout")
	}
	if err := f.write(workbook.LayoutClosing(c.Quote, &c.Closing), a.inputs(path)...); err != nil {
		return err
	}
	if f.json {
		return a.json(closeReport(c))
	}
	a.closed(c)
	a.printf("wrote %s\n", f.book)
	return nil
}

// closed prints what is left to settle.
func (a *app) closed(c *revise.Closeout) {
	cur := c.Quote.Price.Currency
	r := closeSums(c)
	_, hours, price := c.Beyond(c.Quote)
	a.printf("Quote %s: %s, for %s\n", c.Quote.Job.Number, c.Quote.Job.Event.Name, c.Quote.Job.Customer.Name)
	for _, x := range []struct {
		words  string
		amount money.Number
	}{{"quote with tax", r.quote}, {"missing and damaged", r.replaced}, {"received", r.received.Neg()}, {"balance due", r.due}} {
		a.printf("  %-22s%16s\n", x.words, cur.Text(x.amount))
	}
	a.printf("  hours beyond the quote %s, %s if charged\n", signed(hours.StringFixed(2), hours.IsPositive()), cur.Text(price))
	for _, group := range groups {
		a.printf("%s\n", group.title)
		none := true
		for i := range c.Lines {
			x := &c.Lines[i]
			many, charge := group.pieces(x), ""
			if many == 0 {
				continue
			}
			if none = false; group.charged {
				charge = cur.Text(x.Charge(many, cur))
			}
			a.printf("  %s\n", strings.TrimRight(fmt.Sprintf("%-8s%-46s%6d%16s", x.Part.Bin, clip(x.Name, 45), many, charge), " "))
			if note := strings.Join(strings.Fields(x.Note), " "); note != "" {
				a.printf("          %s\n", clip(note, screenWidth-10))
			}
		}
		if none {
			a.printf("  nothing\n")
		}
	}
}

// groups are the lists of what to do with what came back.
var groups = []struct {
	key, title string
	charged    bool
	pieces     func(*workbook.ClosingLine) int
}{
	{"mend", "To mend", true, func(x *workbook.ClosingLine) int { return x.Damaged }},
	{"replace", "To replace", true, (*workbook.ClosingLine).Missing},
	{"dry", "To dry", false, (*workbook.ClosingLine).Drying},
	{"not_counted", "Not counted yet", false, (*workbook.ClosingLine).Open},
}

// sums is the money of a close-out with nothing waived or added.
type sums struct{ quote, replaced, received, due money.Number }

func closeSums(c *revise.Closeout) sums {
	s := sums{quote: c.Quote.Price.Total, replaced: c.Replacements(c.Quote.Price.Currency), received: c.Quote.Price.Received}
	s.due = s.quote.Add(s.replaced).Sub(s.received)
	return s
}

// The close-out as JSON.
type (
	closedLineReport struct {
		Do     string      `json:"do"` // mend, replace, dry or not_counted
		Part   string      `json:"part"`
		Key    string      `json:"key"`
		Name   string      `json:"name"`
		Bin    string      `json:"bin"`
		Tag    string      `json:"tag"`
		Out    int         `json:"went_out"`
		Pieces int         `json:"pieces"`
		Each   json.Number `json:"charge_each"`
		Charge json.Number `json:"charge"`
		Note   string      `json:"note"`
	}
	closedTaskReport struct {
		Rule    string      `json:"rule"`
		Name    string      `json:"name"`
		Window  string      `json:"window"`
		Skill   string      `json:"skill"`
		Planned json.Number `json:"planned"`
		Tasks   int         `json:"tasks"`
		Noted   int         `json:"tasks_noted"`
		Base    json.Number `json:"planned_of_noted"`
		Actual  json.Number `json:"actual"`
		Beyond  json.Number `json:"difference"`
	}
	closedReport struct {
		Number      string             `json:"number"`
		Revision    int                `json:"revision"`
		Total       json.Number        `json:"quote_total"`
		Replaced    json.Number        `json:"replacement_charges"`
		Received    json.Number        `json:"received"`
		Due         json.Number        `json:"balance_due"`
		HoursBeyond json.Number        `json:"hours_beyond"`
		HoursPrice  json.Number        `json:"hours_beyond_price"` // not in balance_due
		Lines       []closedLineReport `json:"lines"`
		Tasks       []closedTaskReport `json:"tasks"`
	}
)

// closeReport is a close-out as plain data.
func closeReport(c *revise.Closeout) closedReport {
	s := closeSums(c)
	_, hours, price := c.Beyond(c.Quote)
	r := closedReport{Number: c.Quote.Job.Number, Revision: c.Quote.Job.Revision, Total: figure(s.quote), Replaced: figure(s.replaced), Received: figure(s.received),
		Due: figure(s.due), HoursBeyond: figure(hours), HoursPrice: figure(price), Lines: []closedLineReport{}, Tasks: []closedTaskReport{}}
	for _, group := range groups {
		for i := range c.Lines {
			x := &c.Lines[i]
			many, charge := group.pieces(x), money.Zero
			if many == 0 {
				continue
			}
			if group.charged {
				charge = x.Charge(many, c.Quote.Price.Currency)
			}
			r.Lines = append(r.Lines, closedLineReport{group.key, x.Part.ID, x.Key, x.Name, x.Part.Bin, x.Tag, x.Out, many, figure(x.Each), figure(charge), x.Note})
		}
	}
	for i := range c.Tasks {
		x := &c.Tasks[i]
		r.Tasks = append(r.Tasks, closedTaskReport{x.Rule, x.Name, x.WindowID, x.SkillID, figure(x.Planned), x.Tasks, x.Noted, figure(x.PlannedNoted), figure(x.Actual), figure(x.Beyond())})
	}
	return r
}
