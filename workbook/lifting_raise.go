package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/quote/lift"
	"tentwright/workbook/sheet"
)

// raiseTable has one row for each tent of which a side is lifted at once.
func (l *layout) raiseTable(s *sheet.Sheet) {
	band(s, "Raising a side", crewPrinted)
	t := l.startTable(s, "raise", append(append([]column{
		{"name", "Tent", 0, wrap()},
		{"side", "Longest side", 0, body(sheet.Text)},
		{"legs", "Legs along it", 0, body(sheet.Whole)},
		{"jacks", "Jacks along", 0, calc(sheet.Whole)},
		{"people", "People", 0, sheet.Style{Role: sheet.Calc, Format: sheet.Whole, Bold: true}},
		{"crew", "Crew there", 0, calc(sheet.Whole)},
		{"how", "How", 0, sheet.Style{Role: sheet.Calc, Indent: 1}},
		{"hands", "At a leg by hand", 0, body(sheet.Num2)},
		{"jacked", "At a leg with a jack", 0, body(sheet.Num2)},
	}, fillers(4)...),
		column{"state", "Note", 0, sheet.Style{Role: sheet.Calc, Wrap: true, Indent: 1}},
		column{"key", "Key", 0, sheet.Style{Role: sheet.Key}}))
	for i := range l.q.Lift.Raises {
		l.raiseRow(t, &l.q.Lift.Raises[i])
	}
	t.end()
	l.peopleMarks(t)
}

// raiseRow writes the people for one side: by hand at each leg, or with jacks
// where one goes along for each of them.
func (l *layout) raiseRow(t *table, x *lift.Raise) {
	const jacked, byHand = "a jack at each leg", "by hand"
	n, how := t.line(), byHand
	n.set("key", text(x.Key))
	n.set("name", text(l.tentName(x.Tent)))
	n.set("side", text(x.Side))
	n.set("legs", value(x.Legs))
	n.set("hands", value(float(x.Spec.Hands)))
	each := n.at("hands")
	if x.Spec.Jack == "" {
		n.set("how", text(byHand))
	} else {
		if x.Jacked {
			how = jacked
		}
		enough := n.at("jacks") + ">=" + n.at("legs")
		n.set("jacks", formula("SUMIFS(pick_quantity,pick_part,"+quoted(x.Spec.Jack)+")", x.Jacks))
		n.set("jacked", value(float(x.Spec.WithJack)))
		n.set("how", formula("IF("+enough+","+quoted(jacked)+","+quoted(byHand)+")", how))
		each = "IF(" + enough + "," + n.at("jacked") + "," + n.at("hands") + ")"
	}
	n.set("people", formula("MAX(0,ROUNDUP("+n.at("legs")+"*"+each+"-0.000001,0))", x.People))
	var windows []string
	for i := range l.q.Labour.Tasks {
		if task := &l.q.Labour.Tasks[i]; task.Tent == x.Tent && slices.Contains(x.Spec.Rules, task.Rule.ID) && !slices.Contains(windows, task.Window) {
			windows = append(windows, task.Window)
		}
	}
	if crew := l.smallestOf(windows); crew > 0 {
		state := ""
		if x.People > crew {
			state = liftCrew
		}
		n.set("crew", formula(crewFormula(windows), crew))
		n.set("state", formula("IF("+n.at("people")+">"+n.at("crew")+","+quoted(liftCrew)+`,"")`, state))
	}
	n.add()
}

// smallestFormula is the fewest people of a task: those of its rule, or more
// because of what it lifts or raises.
func (l *layout) smallestFormula(rule *catalog.LabourRule, tent string) string {
	least := "smallest_" + ident(rule.ID)
	if tag, carries := l.q.Lift.Carries(rule); carries {
		if tag == "" {
			least += ",MAX(lift_people)"
		} else {
			least += ",SUMPRODUCT(MAX(ISNUMBER(FIND(" + quoted("|"+tag+"|") + ",lift_tags))*lift_people))"
		}
	}
	if raise := l.q.Lift.RaiseOf(rule, tent); raise != nil {
		least += "," + find("raise_people", "raise_key", quoted(raise.Key))
	}
	if strings.Contains(least, ",") {
		return "MAX(" + least + ")"
	}
	return least
}
