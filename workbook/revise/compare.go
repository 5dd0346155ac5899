package revise

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/price"
	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// OtherQuote is the code of two workbooks that are not of one quote.
const OtherQuote = "other-quote"

// Comparison is two revisions, each as it now stands with its own edits.
type Comparison struct {
	Old, New *quote.Quote
	workbook.SideBySide
}

// Compare holds two workbooks against each other. What is on the trucks is the
// older one's pick list as it went. The list has warnings too; the comparison is
// nil where one of the two cannot be computed or a count cannot be read.
func Compare(a, b *Book) (*Comparison, diag.List) {
	var list diag.List
	before, problems := a.stands()
	list.Join(problems)
	after, problems := b.stands()
	list.Join(problems)
	if before == nil || after == nil {
		return nil, list
	}
	c := &Comparison{Old: before, New: after}
	if x, y := c.Old.Job.Number, c.New.Job.Number; x != y {
		list.Add(diag.Problem{Pos: diag.Pos{File: b.File}, Code: OtherQuote, Warning: true,
			Message: fmt.Sprintf("this is quote %q, but %s is quote %q; two revisions of one quote were expected", y, a.File, x)})
	}
	c.SideBySide.Old, c.SideBySide.New = told(a), told(b)
	c.totals()
	c.lines()
	c.windows()
	on, basis, problems := a.onTrucks(c.Old)
	list.Join(problems)
	if list.Err() != nil {
		return nil, list.Sorted()
	}
	c.Basis = basis
	c.loads(on)
	return c, list.Sorted()
}

// stands is the quote as it now stands, with the edits: the revision that it was
// written as, since nobody has written the next.
func (b *Book) stands() (*quote.Quote, diag.List) {
	r, list := b.Revise(nil)
	if r == nil {
		return nil, list
	}
	r.Quote.Job.Revision = b.Quote.Job.Revision
	return r.Quote, list
}

// told names a workbook and how it stands.
func told(b *Book) string {
	words := b.File
	if n := strings.LastIndexAny(words, `/\`); n >= 0 {
		words = words[n+1:]
	}
	switch n := len(b.Edits); n {
	case 0:
	case 1:
		words += " with its 1 edit"
	default:
		words += fmt.Sprintf(" with its %d edits", n)
	}
	return words
}

// totals are the figures of the whole job.
func (c *Comparison) totals() {
	sys := c.New.Catalog.Company.Units
	add := func(key, name string, format sheet.Format, of func(*quote.Quote) money.Number) {
		c.Totals = append(c.Totals, workbook.Pair{Key: key, Name: name, Format: format, Two: workbook.Two{Old: of(c.Old), New: of(c.New)}})
	}
	add("subtotal", "Price before tax", sheet.Money, func(q *quote.Quote) money.Number { return q.Price.Subtotal })
	add("tax", "Tax", sheet.Money, func(q *quote.Quote) money.Number { return q.Price.Tax })
	add("total", "Total with tax", sheet.Money, func(q *quote.Quote) money.Number { return q.Price.Total })
	add("cost", "Cost", sheet.Money, func(q *quote.Quote) money.Number { return q.Price.Cost })
	add("margin", "Margin before tax", sheet.Money, func(q *quote.Quote) money.Number { return q.Price.Margin })
	add("margin_percent", "Margin, percent", sheet.PercentPoint, func(q *quote.Quote) money.Number { return q.Price.Percent })
	add("hours", "Person-hours", sheet.Hours, func(q *quote.Quote) money.Number { return q.Labour.Hours })
	add("weight", "Weight out, "+sys.MassUnit(), sheet.Num2, func(q *quote.Quote) money.Number {
		return money.Float(q.Load.Out.Mass.RoundTo(sys).In(sys))
	})
	add("vehicles", "Vehicles out", sheet.Whole, func(q *quote.Quote) money.Number { return money.Int(len(q.Load.Out.Trips)) })
	c.Vehicles = [2]string{workbook.VehiclesOut(c.Old), workbook.VehiclesOut(c.New)}
}

// windows are the hours of each window of work, of either revision.
func (c *Comparison) windows() {
	put := func(q *quote.Quote, set func(*workbook.Pair, money.Number)) {
		for i := range q.Labour.Windows {
			w := &q.Labour.Windows[i]
			at := slices.IndexFunc(c.Windows, func(p workbook.Pair) bool { return p.Key == w.Spec.ID })
			if at < 0 {
				at = len(c.Windows)
				c.Windows = append(c.Windows, workbook.Pair{Key: w.Spec.ID, Name: w.Spec.Name, Format: sheet.Hours})
			}
			set(&c.Windows[at], w.Hours)
		}
	}
	put(c.Old, func(p *workbook.Pair, n money.Number) { p.Old = n })
	put(c.New, func(p *workbook.Pair, n money.Number) { p.New = n })
}

// lineIDs gives each line of a price what it is known by in another revision:
// what stands on a tent by its key with the tent's id, items by their ids among
// the ordered or the extras, one of several alike by its turn.
func lineIDs(q *quote.Quote) []string {
	ids := make([]string, len(q.Price.Lines))
	times := map[string]int{}
	for i := range q.Price.Lines {
		line := &q.Price.Lines[i]
		id := line.Key
		if line.Order != nil && line.Order.Item != nil && line.Order.Derived == "" {
			id = fmt.Sprintf("item:%s:%t", line.Order.Item.ID, line.Order.Optional)
		}
		times[id]++
		ids[i] = fmt.Sprintf("%s#%d", id, times[id])
	}
	return ids
}

// lines matches the lines of the two prices, in the order of the newer one;
// what was dropped stands behind them.
func (c *Comparison) lines() {
	old := map[string]*price.Line{}
	oldIDs, newIDs := lineIDs(c.Old), lineIDs(c.New)
	for i, id := range oldIDs {
		old[id] = &c.Old.Price.Lines[i]
	}
	for i, id := range newIDs {
		c.line(old[id], &c.New.Price.Lines[i])
		delete(old, id)
	}
	for i, id := range oldIDs {
		if old[id] != nil {
			c.line(&c.Old.Price.Lines[i], nil)
		}
	}
}

// line adds a pair, one of the two perhaps nil. A charge that is nothing on both
// sides is no line.
func (c *Comparison) line(was, now *price.Line) {
	one := now
	if one == nil {
		one = was
	}
	p := workbook.LinePair{Key: one.Key, Section: one.Section, Name: one.Name, State: workbook.LineChanged}
	if one.Order != nil {
		p.Extra = one.Order.Optional
	}
	if one.Kind != price.Loading && one.Kind != price.Waiver && one.Kind != price.Minimum {
		p.Unit = one.Unit
	}
	if was != nil {
		p.Quantity.Old, p.Price.Old, p.Amount.Old = was.Ordered, c.each(was), was.Amount
	}
	if now != nil {
		p.Quantity.New, p.Price.New, p.Amount.New = now.Ordered, c.each(now), now.Amount
	}
	same := p.Amount.Difference().IsZero() && (p.Unit == "" || p.Quantity.Difference().IsZero() && p.Price.Difference().IsZero())
	switch {
	case one.Order == nil && p.Amount.Old.IsZero() && p.Amount.New.IsZero():
		return
	case was == nil:
		p.State = workbook.LineAdded
	case now == nil:
		p.State = workbook.LineDropped
	case same:
		p.State = workbook.LineSame
	}
	c.Lines = append(c.Lines, p)
}

// each is what one of a line comes to after its discounts.
func (c *Comparison) each(l *price.Line) money.Number {
	n := l.Base
	if l.Period != "" {
		n = n.Mul(l.Factor)
	}
	for _, off := range []money.Number{l.Break, l.Class, l.Hand, l.Job} {
		n = n.Mul(money.One.Sub(money.Percent(off)))
	}
	return c.New.Price.Currency.Round(n)
}

// loads are the parts of which more or less is wanted than is on the trucks.
func (c *Comparison) loads(on map[string]*workbook.LoadChange) {
	vehicles := map[string][]string{}
	for _, p := range workbook.PickLines(c.New) {
		x := on[p.Part.ID]
		if x == nil {
			x = &workbook.LoadChange{Part: p.Part}
			on[p.Part.ID] = x
		}
		x.Part, x.Want = p.Part, x.Want+p.Quantity
		if p.Quantity > 0 && p.Vehicle != "" && !slices.Contains(vehicles[p.Part.ID], p.Vehicle) {
			vehicles[p.Part.ID] = append(vehicles[p.Part.ID], p.Vehicle)
		}
	}
	for id, x := range on {
		from, to := x.Vehicle, strings.Join(vehicles[id], ", ")
		if stay := min(x.On, x.Want); stay > 0 && !sameWords(from, to) {
			c.Moves = append(c.Moves, workbook.LoadMove{Part: x.Part, Pieces: stay, From: from, To: to})
		}
		if x.Want > x.On {
			x.Vehicle = to
		}
		if x.Want != x.On {
			c.Loads = append(c.Loads, *x)
		}
	}
	workbook.WalkLoads(c.Loads)
	workbook.WalkMoves(c.Moves)
}

// sameWords tells whether two lists with commas between hold the same.
func sameWords(a, b string) bool {
	x, y := strings.Split(a, ", "), strings.Split(b, ", ")
	slices.Sort(x)
	slices.Sort(y)
	return slices.Equal(x, y)
}
