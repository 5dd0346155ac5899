package cli

import (
	"fmt"
	"strings"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/parts"
)

// A price by phone fits the smallest terminal.
const (
	screenLines = 24
	screenWidth = 80
	priceWidth  = 16
	mostPrices  = 9 // sections printed one by one
)

// screen is a quote for a caller: what, price, hours, vehicles, warnings.
func screen(q *quote.Quote) []string {
	p, cur := q.Price, q.Price.Currency
	lines := append([]string{heading(q)}, prices(q)...)
	until := ", if ordered by " + p.ValidUntil.String()
	lines = append(lines,
		priced("Total"+until, cur.Text(p.Total)),
		fmt.Sprintf("Deposit %s, balance %s by %s", cur.Text(p.Deposit), cur.Text(p.Balance), p.BalanceBy),
		fmt.Sprintf("Hours   %s person-hours of work", q.Labour.Hours.StringFixed(1)))
	lines = append(lines, wrap("Crews   ", crews(q))...)
	lines = append(lines, trucks(q)...)
	lines = append(lines, warnings(q, screenLines-len(lines))...)
	for i := range lines {
		lines[i] = clip(lines[i], screenWidth)
	}
	return lines
}

// heading says what was asked for.
func heading(q *quote.Quote) string {
	j, sys := q.Job, q.Catalog.Company.Units
	distance := parts.Distance(q.Catalog, j.Delivery.Distance)
	days := "1 day"
	if n := j.ChargedDays(); n != 1 {
		days = fmt.Sprintf("%d days", n)
	}
	return fmt.Sprintf("%s: %s, %s, %d guests, %s %s", q.Catalog.Company.Name, weekday(j.Dates.From), days, j.Event.Guests, distance, sys.DistanceUnit())
}

// weekday is a date with its day of the week, as people talk on the phone.
func weekday(d unit.Date) string { return d.Weekday().String()[:3] + " " + d.String() }

// section is an amount under a heading.
type section struct {
	name   string
	amount money.Number
}

// prices is the quote by sections; tents stand one by one while there is room.
func prices(q *quote.Quote) []string {
	var all []section
	add := func(name string, amount money.Number) {
		for i := range all {
			if all[i].name == name {
				all[i].amount = all[i].amount.Add(amount)
				return
			}
		}
		all = append(all, section{name, amount})
	}
	for i := range q.Price.Lines {
		l := &q.Price.Lines[i]
		name := l.Section
		if l.Order != nil && l.Order.Item == nil {
			name = l.Quantity.String() + " x " + l.Name
		}
		if l.Amount.IsPositive() {
			add(name, l.Amount)
		}
	}
	add("Tax", q.Price.Tax)
	if rest := len(all) - mostPrices; rest > 0 {
		others := section{name: fmt.Sprintf("and %d more", rest+1)}
		for _, s := range all[mostPrices-2 : len(all)-1] {
			others.amount = others.amount.Add(s.amount)
		}
		all = append(all[:mostPrices-2:mostPrices-2], others, all[len(all)-1])
	}
	lines := make([]string, len(all))
	for i, s := range all {
		lines[i] = priced(s.name, q.Price.Currency.Text(s.amount))
	}
	return lines
}

// priced is a name and an amount, right-aligned.
func priced(name, amount string) string {
	return fmt.Sprintf("  %-*s%*s", screenWidth-priceWidth-2, clip(name, screenWidth-priceWidth-3), priceWidth, amount)
}

// trucks is the vehicles out: a line each, or one for many.
func trucks(q *quote.Quote) []string {
	const most = 4
	lines := vehicles(q, "Trucks  ")
	if len(lines) > most {
		rest := len(lines) - most + 1
		lines = append(lines[:most-1], fmt.Sprintf("        and %d more; %d trips that someone drives", rest, drives(q)))
	}
	return lines
}

// warnings is the failed checks, severe ones first, in so many lines at most.
func warnings(q *quote.Quote, room int) []string {
	var severe, mild []string
	failed := q.Failed()
	for i := range failed {
		line := strings.TrimLeft(verdict(&failed[i]), " ")
		if failed[i].Severe {
			severe = append(severe, line)
		} else {
			mild = append(mild, line)
		}
	}
	all := append(severe, mild...)
	if len(all) > room {
		all = append(all[:room-1], fmt.Sprintf("and %d more; --json has them all", len(all)-room+1))
	}
	return all
}

// wrap joins texts with commas over as many lines as they take, the first
// behind a label.
func wrap(label string, all []string) []string {
	var lines []string
	line := label
	for i, text := range all {
		if i < len(all)-1 {
			text += ","
		}
		if len(line) > len(label) && len(line)+len(text) >= screenWidth {
			lines = append(lines, line)
			line = strings.Repeat(" ", len(label))
		} else if len(line) > len(label) {
			line += " "
		}
		line += text
	}
	return append(lines, line)
}

// clip shortens a line to a number of characters.
func clip(line string, width int) string {
	if r := []rune(line); len(r) > width {
		return string(r[:width-3]) + "..."
	}
	return line
}
