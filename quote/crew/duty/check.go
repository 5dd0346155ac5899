package duty

import (
	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// checker collects findings.
type checker struct {
	rule  *catalog.Duty
	days  []day
	found []Finding
}

// add reports a figure of a day, and from which minute on it is not allowed.
func (c *checker) add(rule string, d *day, found, limit unit.Span, at int) {
	midnight := d.date.Serial() * perDay
	f := Finding{Rule: rule, Date: d.date, Found: found, Limit: limit, At: unit.Clock(at - midnight)}
	for f.At > perDay {
		f.At, f.After = f.At-perDay, true
	}
	c.found = append(c.found, f)
}

// rest wants the time off before a day of driving.
func (c *checker) rest(n int) {
	d := &c.days[n]
	if n == 0 || c.rule.Off == 0 {
		return
	}
	if rest := unit.Span(d.on - c.days[n-1].off); rest < c.rule.Off {
		c.add(Off, d, max(0, rest), c.rule.Off, d.drives[0].from)
	}
}

// day wants no more driving than allowed, and none after the window.
func (c *checker) day(n int) {
	d := &c.days[n]
	drive, over := 0, 0
	for _, s := range d.drives {
		if most := int(c.rule.Drive); drive <= most && drive+s.to-s.from > most {
			over = s.from + most - drive
		}
		drive += s.to - s.from
	}
	if unit.Span(drive) > c.rule.Drive {
		c.add(Drive, d, unit.Span(drive), c.rule.Drive, over)
	}
	last := d.drives[len(d.drives)-1].to
	if window := unit.Span(last - d.on); window > c.rule.Window {
		c.add(Window, d, window, c.rule.Window, d.on+int(c.rule.Window))
	}
}

// breaks wants a pause from driving in time. Stretches add up until one that is
// long enough.
func (c *checker) breaks(n int) {
	d := &c.days[n]
	if c.rule.After == 0 {
		return
	}
	drive, until := 0, d.on
	for _, s := range d.drives {
		if unit.Span(s.from-until) >= c.rule.Break {
			drive = 0
		}
		before := drive
		drive, until = drive+s.to-s.from, s.to
		if after := int(c.rule.After); before <= after && drive > after {
			c.add(Break, d, unit.Span(c.stretch(d, s)), c.rule.After, s.from+after-before)
		}
	}
}

// stretch is all the driving without a break of which a drive is a part.
func (c *checker) stretch(d *day, part span) int {
	sum, until, inside := 0, d.on, false
	for _, s := range d.drives {
		if unit.Span(s.from-until) >= c.rule.Break {
			if inside {
				break
			}
			sum = 0
		}
		sum, until = sum+s.to-s.from, s.to
		inside = inside || s == part
	}
	return sum
}

// week wants no driving after so long on duty in so many days, this one with
// those before it, each from midnight. One finding tells a day's most.
func (c *checker) week(n int) {
	d := &c.days[n]
	if c.rule.Week == 0 || c.rule.Days == 0 {
		return
	}
	most, at := 0, 0
	for _, s := range d.drives {
		for from := s.from; from < s.to; {
			to := min(s.to, (from/perDay+1)*perDay)
			if duty := c.onDuty(n, (from/perDay-c.rule.Days+1)*perDay, to); duty > most {
				most = duty
			}
			if before := c.onDuty(n, (from/perDay-c.rule.Days+1)*perDay, from); at == 0 && before+to-from > int(c.rule.Week) {
				at = max(from, from+int(c.rule.Week)-before)
			}
			from = to
		}
	}
	if unit.Span(most) > c.rule.Week {
		c.add(Week, d, unit.Span(most), c.rule.Week, at)
	}
}

// onDuty is the minutes on duty between two minutes, up to a day.
func (c *checker) onDuty(last, from, to int) int {
	sum := 0
	for i := range c.days[:last+1] {
		sum += max(0, min(to, c.days[i].off)-max(from, c.days[i].on))
	}
	return sum
}
