package workbook

import (
	"strings"
	"testing"

	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/workbook/sheet"
)

// settled is a close-out in which every third line is missing a piece, damaged
// or not counted.
func settled(q *quote.Quote) *Closing {
	c := &Closing{}
	for i, line := range CheckIn(q) {
		x := ClosingLine{Key: line.Key, Part: line.Part, Name: line.Name, Out: 5, Counted: i%3 != 2, Back: 5, Each: money.Float(1.25), Note: "=HYPERLINK(1)", Wet: i%2 == 0}
		if i%3 == 0 {
			x.Back = 3
		}
		if i%3 == 1 {
			x.Damaged = 2
		}
		c.Lines = append(c.Lines, x)
	}
	for i := range q.Labour.Tasks {
		t := &q.Labour.Tasks[i]
		c.Tasks = append(c.Tasks, ClosingTask{Rule: t.Rule.ID, Name: t.Rule.Name, WindowID: t.Window, Window: t.Window, SkillID: t.Rule.Skill, Skill: t.Rule.Skill,
			Tasks: 2, Noted: 1, Planned: t.Hours, PlannedNoted: t.Hours, Actual: t.Hours.Add(money.One)})
	}
	return c
}

// The books beside a quote hold no fault, no formula that reaches itself, no
// words of people as a formula, and nothing of the yard's cost or margin.
func TestBooksBesideAQuote(t *testing.T) {
	for name, q := range demoQuotes(t) {
		side := &SideBySide{Old: "=old", New: "new", Basis: "the plan", Loads: []LoadChange{}}
		for _, p := range PickLines(q) {
			side.Loads = append(side.Loads, LoadChange{Part: p.Part, On: 3, Want: 1 + len(side.Loads)%5})
		}
		for kind, b := range map[string]*sheet.Book{"closing": LayoutClosing(q, settled(q)), "nothing to settle": LayoutClosing(q, &Closing{}),
			"compare": LayoutSideBySide(q, side), "nothing compared": LayoutSideBySide(q, &SideBySide{})} {
			if err := b.Check(); err != nil {
				t.Errorf("%s, %s: %v", name, kind, err)
			}
			if cycle := newDependencies(b).cycle(); cycle != nil {
				t.Errorf("%s, %s: a formula depends on itself: %s", name, kind, strings.Join(cycle, " <- "))
			}
		}
		for _, s := range LayoutClosing(q, settled(q)).Sheets {
			for _, row := range s.Rows {
				for _, c := range row.Cells {
					words, _ := c.Value.(string)
					for _, inner := range []string{"cost", "margin"} {
						if strings.Contains(strings.ToLower(words), inner) {
							t.Errorf("%s: %s says %q", name, s.Name, words)
						}
					}
				}
			}
		}
	}
}
