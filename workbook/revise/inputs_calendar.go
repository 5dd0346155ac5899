package revise

import "tentwright/catalog"

// calendar is how many days each date is from the day that it is counted from.
func (l *inputList) calendar() {
	if l.q.Dates == nil {
		return
	}
	for i := range l.c.Calendar.Dates {
		r := &l.c.Calendar.Dates[i]
		for _, end := range []struct {
			column string
			spec   *catalog.DayFrom
		}{{"days_first", r.Earliest}, {"days_last", r.Latest}, {"days_last", r.Day}} {
			if end.spec != nil {
				l.ofShop(address{table: "date", key: r.ID, column: end.column}, whole, end.spec.Where, "days")
			}
		}
	}
}
