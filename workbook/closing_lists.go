package workbook

import (
	"tentwright/catalog/money"
	"tentwright/workbook/sheet"
)

// mendingSheet tells the yard what to mend, to replace, to dry and to count.
func (l *layout) mendingSheet(c *Closing) {
	s := l.sheet(SheetMending, "What to do before these goods go out again, in the walking order of the yard.", sheet.TabYard, true)
	l.mending(s, c, "mend", "To mend", func(x *ClosingLine) int { return x.Damaged })
	l.mending(s, c, "replace", "To replace: did not come back", (*ClosingLine).Missing)
	l.mending(s, c, "dry", "To dry: not free again until dry", (*ClosingLine).Drying)
	l.mending(s, c, "open", "Not counted yet: neither missing nor back until somebody counts", (*ClosingLine).Open)
	s.FreezeRows = 2
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: mendingCols}
}

const mendingCols = 8

// mending is one group of the list; its charge is that of the final charges,
// whoever bears it.
func (l *layout) mending(s *sheet.Sheet, c *Closing, name, title string, pieces func(*ClosingLine) int) {
	band(s, title, mendingCols)
	if name == "mend" {
		n := len(s.Rows) + 1 // all groups have the same columns
		s.TitleRows = [2]int{n, n}
	}
	t := l.startTable(s, name, []column{
		{"done", "Done", 7, tick()},
		{"bin", "Bin", 10, body(sheet.Text)},
		{"item", "Item", 38, wrap()},
		{"tag", "Tag", 12, body(sheet.Text)},
		{"pieces", "Pieces", 9, sheet.Style{Role: sheet.Body, Format: sheet.Whole, Bold: true, Align: sheet.Centre}},
		{"charge", "Charge", 13, right(calc(sheet.Money))},
		{"note", "Note from the count", 34, sheet.Style{Role: sheet.Body, Wrap: true, Indent: 1}},
		{"remark", "What was done", 30, sheet.Style{Role: sheet.InputText}},
		{"key", "Key", 26, sheet.Style{Role: sheet.Key}},
	})
	for i := range c.Lines {
		x := &c.Lines[i]
		many := pieces(x)
		if many == 0 {
			continue
		}
		charge := sheet.Cell{Style: sheet.Style{Role: sheet.Body}}
		switch name {
		case "mend":
			charge = formula(find("final_amount", "final_key", quoted(x.Key+":damaged")), x.Charge(many, l.q.Price.Currency))
		case "replace":
			charge = formula(find("final_amount", "final_key", quoted(x.Key+":missing")), x.Charge(many, l.q.Price.Currency))
		}
		t.add(text(emptyBox), text(x.Part.Bin), text(x.Name), text(x.Tag), value(many), charge, text(mendingNote(name, x)), text(""), text(x.Key))
	}
	if t.next() == t.first {
		t.add(body0(), text(""), text("nothing"), text(""), value(nil), body0(), text(""), body0())
		t.end()
	} else {
		t.end()
		l.allowColumn(t, "done", ticks(), "a tick when it is done")
		l.allowColumn(t, "remark", words(200), "what was done, by whom, when")
	}
	t.widths()
}

// mendingNote is the note of who counted; where nobody did, what is known of it
// to be wet.
func mendingNote(name string, x *ClosingLine) string {
	if name == "open" && x.Wet {
		return joined("; ", "wet", x.Note)
	}
	return x.Note
}

// hoursSheet holds the hours as they were against the plan, by rule and window,
// and prices those beyond it.
func (l *layout) hoursSheet(c *Closing) {
	s := l.sheet(SheetHours, "Person-hours as they were, beside those of the quote. Compared is only what was noted on Crew Hours.", sheet.TabCrew, true)
	l.hoursWindows(s, c)
	l.hoursSkills(s, c)
	l.hoursTasks(s, c)
	s.FreezeRows = 2
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: hoursCols}
}

const hoursCols = 8

func (l *layout) hoursTasks(s *sheet.Sheet, c *Closing) {
	band(s, "By task and window", hoursCols)
	t := l.startTable(s, "worked", []column{
		{"name", "Task", 38, wrap()},
		{"window", "Window", 24, wrap()},
		{"skill", "Skill", 20, wrap()},
		{"planned", "Planned", 11, right(body(sheet.Hours))},
		{"noted", "Tasks noted", 12, sheet.Style{Role: sheet.Body, Align: sheet.Centre}},
		{"base", "Planned for these", 12, right(body(sheet.Hours))},
		{"actual", "Actual", 11, right(body(sheet.Hours))},
		{"beyond", "Difference", 12, right(sheet.Style{Role: sheet.Calc, Format: sheet.Hours, Bold: true})},
		{"window_id", "", 12, sheet.Style{Role: sheet.Key}},
		{"skill_id", "", 12, sheet.Style{Role: sheet.Key}},
		{"rule", "Rule", 18, sheet.Style{Role: sheet.Key}},
	})
	for i := range c.Tasks {
		x, n := &c.Tasks[i], t.line()
		for col, words := range map[string]string{"name": x.Name, "window": x.Window, "skill": x.Skill, "window_id": x.WindowID, "skill_id": x.SkillID, "rule": x.Rule} {
			n.set(col, text(words))
		}
		n.set("planned", value(x.Planned))
		n.set("noted", text(itoa(x.Noted)+" of "+itoa(x.Tasks)))
		n.set("beyond", formula("IF(LEN("+n.at("actual")+`)=0,"",ROUND(`+n.at("actual")+"-"+n.at("base")+",2))", ""))
		if x.Noted > 0 {
			n.set("base", value(x.PlannedNoted))
			n.set("actual", value(x.Actual))
			n.cells[t.col("beyond")-1].Value = x.Beyond()
		}
		n.add()
	}
	t.end()
	t.widths()
	s.TitleRows = [2]int{t.first - 1, t.first - 1}
	beyond := t.at("beyond", t.first)
	l.marked(s, t.column("beyond"), "AND(ISNUMBER("+beyond+"),"+beyond+">0)")
}

// hoursRow writes a sum of the noted tasks by a key.
func (l *layout) hoursRow(n *line, key string, planned, base, actual money.Number) {
	sum := func(col string) string {
		return "ROUND(SUMIFS(worked_" + col + ",worked_" + key + "," + n.at("id") + "),2)"
	}
	n.set("planned", formula(sum("planned"), planned))
	n.set("base", formula(sum("base"), base))
	n.set("actual", formula(sum("actual"), actual))
	n.set("beyond", formula("ROUND("+n.at("actual")+"-"+n.at("base")+",2)", actual.Sub(base)))
}

func (l *layout) hoursWindows(s *sheet.Sheet, c *Closing) {
	band(s, "By window of work", hoursCols)
	t := l.startTable(s, "by_window", hoursSumColumns("Window", "", ""))
	var ids []string
	sums := map[string]*ClosingTask{}
	for i := range c.Tasks {
		x := &c.Tasks[i]
		w := sums[x.WindowID]
		if w == nil {
			w = &ClosingTask{Window: x.Window}
			sums[x.WindowID], ids = w, append(ids, x.WindowID)
		}
		w.Planned, w.PlannedNoted, w.Actual = w.Planned.Add(x.Planned), w.PlannedNoted.Add(x.PlannedNoted), w.Actual.Add(x.Actual)
	}
	for _, id := range ids {
		n := t.line()
		n.set("name", text(sums[id].Window))
		n.set("id", text(id))
		l.hoursRow(n, "window_id", sums[id].Planned, sums[id].PlannedNoted, sums[id].Actual)
		n.add()
	}
	t.end()
}

// hoursSumColumns stand under those of the tasks.
func hoursSumColumns(name, rate, amount string) []column {
	list := []column{
		{"name", name, 0, wrap()},
		{"id", "Id", 0, sheet.Style{Role: sheet.Key}},
		{"", rate, 0, sheet.Style{Role: sheet.Body}},
		{"planned", "Planned", 0, right(calc(sheet.Hours))},
		{"", amount, 0, sheet.Style{Role: sheet.Body}},
		{"base", "Planned for these", 0, right(calc(sheet.Hours))},
		{"actual", "Actual", 0, right(calc(sheet.Hours))},
		{"beyond", "Difference", 0, right(sheet.Style{Role: sheet.Calc, Format: sheet.Hours, Bold: true})},
	}
	if rate != "" {
		list[2] = column{"rate", rate, 0, right(input(sheet.Money))}
		list[4] = column{"amount", amount, 0, right(calc(sheet.Money))}
	}
	return list
}

// hoursSkills prices the hours beyond the quote.
func (l *layout) hoursSkills(s *sheet.Sheet, c *Closing) {
	band(s, "Beyond the quote, by skill. Charged only if the office says so on Final Charges", hoursCols)
	t := l.startTable(s, "by_skill", hoursSumColumns("Skill", "Plain rate", "Price"))
	skills, hours, amount := c.Beyond(l.q)
	for i := range skills {
		x, n := &skills[i], t.line()
		planned := money.Zero
		for k := range c.Tasks {
			if c.Tasks[k].SkillID == x.ID {
				planned = planned.Add(c.Tasks[k].Planned)
			}
		}
		n.set("name", text(x.Name))
		n.set("id", text(x.ID))
		n.set("rate", value(x.Each))
		l.hoursRow(n, "skill_id", planned, x.Planned, x.Actual)
		n.set("amount", formula(l.rounded(n.at("beyond")+"*"+n.at("rate")), l.q.Price.Currency.Round(x.Hours().Mul(x.Each))))
		n.add()
	}
	t.end()
	l.allowColumn(t, "rate", amounts(), "what the customer pays for an hour beyond the quote")
	cells := fill(text("All hours beyond the quote; no price where less was worked"), sheet.Style{Role: sheet.Total}, hoursCols)
	cells[4] = in(formula(l.rounded("MAX(0,SUM(by_skill_amount))"), amount), sheet.Style{Role: sheet.Total, Format: sheet.Money})
	cells[hoursCols-1] = in(formula("ROUND(SUM(by_skill_beyond),2)", hours), sheet.Style{Role: sheet.Total, Format: sheet.Hours})
	s.Rows = append(s.Rows, sheet.Row{Cells: cells})
	l.cellName("closing_beyond_amount", s, 5)
	l.cellName("closing_beyond_hours", s, hoursCols)
}
