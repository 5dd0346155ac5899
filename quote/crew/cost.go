package crew

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
)

// pay is what a crew is paid.
type pay struct {
	paid, over int // person-minutes
	wages      money.Number
}

// wages adds up what the people of a draft are paid: from call to end less
// unpaid breaks, at what the yard pays for a lead, a driver or a hand, and the
// overtime of each. Somebody with a skill of another rate is paid that rate for
// the tasks that ask for it.
func (d *draft) wages() pay {
	var p pay
	rates := &d.b.c.Rates
	sum := money.Zero
	for i := range d.t.people {
		person := &d.t.people[i]
		minutes := make([]int, len(person.Days))
		for n := range person.Days {
			minutes[n] = person.Days[n].Paid
			p.paid += minutes[n]
		}
		plain, over := overtime(&rates.Overtime, minutes, d.b.w.Before)
		p.over += over
		hours := money.Int(plain).Add(money.Int(over).Mul(rates.Overtime.CostFactor))
		sum = sum.Add(hours.Mul(d.b.rate(person)))
	}
	sum = sum.Add(d.extras())
	p.wages = d.b.c.Currency().Round(money.DivRound(sum, money.Sixty, 8))
	return p
}

// rate is what an hour of a person costs the yard.
func (b *winder) rate(p *Person) money.Number {
	cost := b.c.Hand().Cost
	for i := range b.c.Rates.Skills {
		s := &b.c.Rates.Skills[i]
		if s.ID == catalog.LeadSkill && p.Lead || s.ID == catalog.DriverSkill && p.Driver {
			cost = larger(cost, s.Cost)
		}
	}
	return cost
}

// extras is what the skills of other rates cost beyond a hand's, in money times
// minutes.
func (d *draft) extras() money.Number {
	sum, hand := money.Zero, d.b.c.Hand().Cost
	for _, part := range d.parts {
		for i := range part.n.works {
			w := &part.n.works[i]
			if w.skill == "" || w.skill == catalog.LeadSkill || w.skill == catalog.DriverSkill {
				continue
			}
			for k := range d.b.c.Rates.Skills {
				if s := &d.b.c.Rates.Skills[k]; s.ID == w.skill {
					sum = sum.Add(larger(money.Zero, s.Cost.Sub(hand)).Mul(money.Int(part.a.minutes(i))))
				}
			}
		}
	}
	return sum
}

// larger is the larger of two numbers.
func larger(a, b money.Number) money.Number {
	if a.LessThan(b) {
		return b
	}
	return a
}

// overtime splits a person's minutes of days one after another into plain and
// overtime ones: what is beyond the hours of a day, and of the rest what is
// beyond the hours of a week of seven days. before is the hours that the
// person has worked in the first week already.
func overtime(o *catalog.Overtime, days []int, before money.Number) (plain, over int) {
	daily, weekly := minutesOf(o.Daily), minutesOf(o.Weekly)
	week := minutesOf(before)
	for n, m := range days {
		if n > 0 && n%7 == 0 {
			week = 0
		}
		beyond := max(0, m-daily)
		rest := m - beyond
		fits := max(0, min(rest, weekly-week))
		week += rest
		over += beyond + rest - fits
		plain += fits
	}
	return plain, over
}

// minutesOf is hours in whole minutes.
func minutesOf(hours money.Number) int { return int(hours.Mul(money.Sixty).Round(0).IntPart()) }
