package cli

import (
	"encoding/json"
	"fmt"
	"path/filepath"

	"tentwright/quote/learn"
)

// lessonTable prints a line for each rule that any job tells of.
func (a *app) lessonTable(l *lesson) {
	const row = "%-17s%-25s%8s%8s%8s%6s  %s\n"
	a.printf(row, "Rule", "Task", "old", "new", "change", "jobs", "how sure")
	for i := range l.all {
		p := &l.all[i]
		fresh, change := "", ""
		if p.State == learn.Change {
			fresh, change = p.New.String(), percentChange(p)
		}
		a.printf(row, clip(p.Rule.ID, 16), clip(p.Rule.Name, 24), p.Rule.Minutes, fresh, change, fmt.Sprint(p.Jobs), howSure(p))
		if p.State == learn.ByHand {
			a.printf("  %s\n", p.Why)
		}
		if p.Fit != nil {
			a.printf("  %s\n", fitWords(p.Fit))
		}
	}
}

// percentChange is by how much minutes change; those that were 0 have no share.
func percentChange(p *learn.Proposal) string {
	if p.Rule.Minutes.IsZero() {
		return ""
	}
	n := p.Percent()
	return signed(n.String(), n.IsPositive()) + "%"
}

// howSure is what stands behind a proposal, or that there is none.
func howSure(p *learn.Proposal) string {
	between := fmt.Sprintf("%s to %s at %s%%", learn.Digits(p.Low, 3), learn.Digits(p.High, 3), p.Confidence)
	switch p.State {
	case learn.Change:
		return string(p.Sure) + ", " + between
	case learn.TooFew:
		return string(p.State)
	}
	return string(p.State) + ", " + between
}

// fitWords hint at fixed minutes.
func fitWords(f *learn.Fit) string {
	switch {
	case f.Minutes.IsZero():
		return fmt.Sprintf("its fixed minutes by these jobs: %s", f.Fixed)
	case f.SmallSlow:
		return fmt.Sprintf("small tasks take longer for each than large ones; by size: minutes %s, fixed %s", f.Minutes, f.Fixed)
	}
	return fmt.Sprintf("large tasks take longer for each than small ones; by size: minutes %s, fixed %s", f.Minutes, f.Fixed)
}

// lessonEnd says what was written, or how to.
func (a *app) lessonEnd(l *lesson) {
	if l.written {
		for i := range l.all {
			if p := &l.all[i]; p.State == learn.Change {
				a.printf("%s  %s: minutes %s -> %s  written\n", filepath.Base(p.Rule.Where.Pos().File), p.Rule.ID, p.Rule.Minutes, p.New)
			}
		}
		return
	}
	switch {
	case l.changes == 0:
		a.printf("nothing to write: no minutes change\n")
	case l.shop.dir == builtIn:
		a.printf("nothing was written, since the built-in shop cannot be changed; \"tentwright new DIR\" makes one of your own\n")
	default:
		a.printf("nothing was written; --write writes the new minutes of %s into the shop %s\n", countOf(l.changes, "rule"), l.shop.dir)
	}
}

// The lesson as JSON.
type (
	lessonReport struct {
		Shop    string           `json:"shop"`
		Books   int              `json:"books"`
		Written bool             `json:"written"`
		Left    []leftReport     `json:"books_left_out"`
		Tasks   []leftTaskReport `json:"tasks_left_out"`
		Rules   []ruleReport     `json:"rules"`
	}
	leftReport struct {
		File string `json:"file"`
		Why  string `json:"why"`
	}
	leftTaskReport struct {
		Rule  string `json:"rule"`
		Tasks int    `json:"tasks"`
		Why   string `json:"why"`
	}
	ruleReport struct {
		Rule       string      `json:"rule"`
		Name       string      `json:"name"`
		State      string      `json:"state"` // change, no change, too few or by hand
		Why        string      `json:"why"`
		Jobs       int         `json:"jobs"`
		Old        json.Number `json:"old"`
		New        json.Number `json:"new"`
		Fixed      json.Number `json:"fixed"`
		Median     json.Number `json:"median"`
		Low        json.Number `json:"low"`
		High       json.Number `json:"high"`
		Confidence json.Number `json:"confidence"` // percent
		Sure       string      `json:"sure"`
		Fit        *fitReport  `json:"by_size"`
		Far        []farReport `json:"far_off"`
	}
	fitReport struct {
		Minutes json.Number `json:"minutes"`
		Fixed   json.Number `json:"fixed"`
	}
	farReport struct {
		At       string      `json:"at"`
		Hours    json.Number `json:"hours"`
		Expected json.Number `json:"expected"`
	}
)

// report is a lesson as plain data.
func (l *lesson) report() lessonReport {
	r := lessonReport{Shop: l.shop.dir, Books: l.books, Written: l.written, Left: []leftReport{}, Tasks: []leftTaskReport{}, Rules: []ruleReport{}}
	for _, x := range l.leftBooks {
		r.Left = append(r.Left, leftReport(x))
	}
	for _, x := range l.left {
		r.Tasks = append(r.Tasks, leftTaskReport{x.Rule, x.Tasks, x.Why})
	}
	for i := range l.all {
		p := &l.all[i]
		rule := ruleReport{Rule: p.Rule.ID, Name: p.Rule.Name, State: string(p.State), Why: p.Why, Jobs: p.Jobs, Old: figure(p.Rule.Minutes), New: figure(p.New),
			Fixed: figure(p.Rule.Fixed), Median: figure(p.Median), Low: figure(p.Low), High: figure(p.High), Confidence: figure(p.Confidence), Sure: string(p.Sure), Far: []farReport{}}
		if p.Fit != nil {
			rule.Fit = &fitReport{figure(p.Fit.Minutes), figure(p.Fit.Fixed)}
		}
		for _, x := range p.Far {
			rule.Far = append(rule.Far, farReport{x.Pos.String(), figure(x.Hours), figure(x.Expected)})
		}
		r.Rules = append(r.Rules, rule)
	}
	return r
}
