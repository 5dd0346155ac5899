package workbook

import (
	"strings"

	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// workRows are labour and delivery: a table of its own, since hours follow
// from the lines above.
func (l *layout) workRows(lines *table) {
	band(lines.s, "Labour and delivery", buildPrinted)
	t := lines.after(workLines)
	for i := range l.q.Price.Lines {
		switch line := &l.q.Price.Lines[i]; line.Kind {
		case price.Labour:
			l.labourRow(t, line)
		case price.Delivery:
			l.deliveryRow(t, line)
		}
	}
	t.end()
}

// labourRow charges the hours of a skill; its cost is the wages of all of them.
func (l *layout) labourRow(t *table, p *price.Line) {
	over := strings.HasPrefix(p.Key, "O:")
	skill := strings.TrimPrefix(strings.TrimPrefix(p.Key, "O:"), "H:")
	hours, bill, cost := "skill_plain", "rate_"+ident(skill)+"_bill", "SUMIFS(skill_cost,skill_skill,"+quoted(skill)+")"
	if over {
		hours, bill, cost = "skill_over", l.rounded("rate_"+ident(skill)+"_bill*overtime_bill"), "0"
	}
	n := t.line()
	n.set("quantity", in(formula("ROUND(SUMIFS("+hours+",skill_skill,"+quoted(skill)+"),2)", p.Quantity), calc(sheet.Num2)))
	n.set("price", formula(`IF(job_labour_charged="Yes",`+bill+`,0)`, p.Base))
	l.workRow(n, p, l.rounded(n.at("ordered")+"*"+n.at("price")), cost)
}

// deliveryRow charges the trips; how many there are was decided by the load.
func (l *layout) deliveryRow(t *table, p *price.Line) {
	n := t.line()
	charge := l.rounded(n.at("ordered") + "*" + n.at("price"))
	charge = `IF(AND(job_delivery_charged="Yes",` + n.at("ordered") + ">0),MAX(" + charge + "," + l.rounded("zone_minimum") + "),0)"
	n.set("quantity", in(formula("job_trips_out", p.Quantity), calc(sheet.Num2)))
	n.set("price", formula(`IF(job_delivery_charged="Yes",`+l.rounded("zone_flat+zone_each*job_distance")+`,0)`, p.Base))
	l.workRow(n, p, charge, l.rounded("job_trip_costs+2*(job_trips_out+job_trips_back)*job_distance*rate_mileage"))
}

// workRow finishes a line whose quantity follows from hours or trips.
func (l *layout) workRow(n *line, p *price.Line, amount, cost string) {
	n.words(p, "")
	if p.Kind == price.Delivery {
		n.set("name", formula(quoted(strings.TrimSuffix(p.Name, l.q.Job.Zone(l.q.Catalog).Name))+"&zone_name", p.Name))
	}
	n.set("ordered", formula(n.at("quantity"), p.Ordered))
	n.set("hand", in(text(""), body(sheet.Text)))
	n.set("offer", formula(amount, p.Offer))
	n.set("amount", formula(n.at("offer"), p.Amount))
	n.set("cost", formula(cost, p.Cost))
	n.margin(p.Amount, p.Cost)
	n.add()
}
