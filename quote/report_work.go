package quote

import (
	"tentwright/quote/labour"
	"tentwright/quote/price"
)

func (r reporter) task(t *labour.Task) ReportTask {
	return ReportTask{Key: t.Key, Name: t.Rule.Name, Phase: t.Rule.Phase, Window: t.Window, Skill: t.Rule.Skill, Count: t.Count,
		Amount: exact(t.Amount), Minutes: exact(t.Rule.Minutes), Fixed: exact(t.Rule.Fixed), Sites: list(t.Sites),
		Factor: exact(t.Factor), Hours: exact(t.Hours)}
}

func (r reporter) window(w *labour.Window) ReportWindow {
	return ReportWindow{Window: w.Spec.ID, Name: w.Spec.Name, Crew: w.Crew, Smallest: w.Smallest, Days: w.Days, Worked: exact(w.Worked), Before: exact(w.Before),
		Hours: exact(w.Hours), Person: exact(w.Person), Day: exact(w.Day), DayOver: exact(w.DayOver), WeekOver: exact(w.WeekOver)}
}

func (r reporter) skill(s *labour.SkillHours) ReportSkill {
	return ReportSkill{Window: s.Window, Skill: s.Skill.ID, Hours: exact(s.Hours), Over: exact(s.Over), Cost: exact(s.Cost), Bill: exact(s.Bill)}
}

func (r reporter) line(l *price.Line) ReportLine {
	return ReportLine{Key: l.Key, Section: l.Section, Kind: l.Kind, Name: l.Name, Quantity: exact(l.Quantity), Ordered: exact(l.Ordered),
		Unit: l.Unit, Base: exact(l.Base), Period: l.Period, Factor: exact(l.Factor), Break: exact(l.Break), Class: exact(l.Class),
		Hand: exact(l.Hand), Job: exact(l.Job), Offer: exact(l.Offer), Amount: exact(l.Amount),
		CostEach: exact(l.CostEach), Cost: exact(l.Cost), Tax: l.Tax}
}

func (r reporter) tax(t *price.TaxLine) ReportTax {
	return ReportTax{Tax: t.Tax.ID, Name: t.Tax.Name, Rate: exact(t.Tax.Rate), Taxable: exact(t.Taxable), Amount: exact(t.Amount)}
}
