package cli

import (
	"tentwright/quote"
	"tentwright/quote/dates"
)

// calendarHelp is what --calendar does.
const calendarHelp = "write the dates of the job, for a calendar program, to `FILE.ics`"

// calendarNamed wants the name of a calendar file where one is given.
func calendarNamed(name string) error {
	if name != "" && !endsIn(name, ".ics") {
		return misuse("name a file ending in .ics", "--calendar %q is not the name of a calendar file", name)
	}
	return nil
}

// withCalendar adds the calendar file of a quote, if one is wanted.
func withCalendar(files []output, name string, q *quote.Quote) ([]output, error) {
	switch {
	case name == "":
		return files, nil
	case q.Dates == nil:
		return nil, misuse(`copy calendar.yaml from a folder that "tentwright new DIR" makes, and put the yard's own dates in`,
			"--calendar: the shop has no calendar.yaml, which says what follows from the days of a job")
	}
	return append(files, output{name, dates.ICal(q.Catalog, q.Job, q.Dates)}), nil
}
