package cli

import (
	"strconv"
	"time"

	"tentwright/catalog/source"
	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/quote/job"
)

// secondsHelp is the help of the flag that gives the crew plan more time.
const secondsHelp = "look for a shorter crew plan for up to so many `SECONDS`"

// longestThought is the most seconds that a plan is looked for: someone waits.
const longestThought = 3600

// mostTries bounds the schedules of one plan, as a job file does.
const mostTries = 1_000_000

// growth is how many times as many schedules each round makes as the one
// before: the last round then takes most of the time.
const growth = 3

// secondsFit tells whether the time asked for makes sense.
func secondsFit(seconds int) error {
	if seconds < 0 || seconds > longestThought {
		return misuse("", "--seconds %d: from 1 to %d were expected", seconds, longestThought)
	}
	return nil
}

// think looks for a shorter crew plan until the time is over. The fewest
// schedules that gave the best plan stand in the job, so that the same plan comes
// of it on any machine and whenever its workbook is read again.
func (a *app) think(q *quote.Quote, limit time.Duration) (*quote.Quote, error) {
	if limit <= 0 || q.Crew == nil {
		return q, nil
	}
	j := *q.Job
	j.Labour.Tries = max(1, q.Catalog.Crew.Tries, q.Job.Labour.Tries)
	best, tries := q.Crew.Minutes(), 0
	end := a.now().Add(limit)
	for plan := q.Crew; !plan.Proven() && j.Labour.Tries <= mostTries/growth; {
		began := a.now()
		j.Labour.Tries *= growth
		plan = crew.Build(q.Catalog, &j, q.Parts, q.Load, q.Labour)
		if minutes := plan.Minutes(); minutes < best {
			best, tries = minutes, j.Labour.Tries
		}
		// The best round is made once more at the end, with the whole quote.
		if took := a.now().Sub(began); a.now().Add((growth + growth) * took).After(end) {
			break
		}
	}
	if tries == 0 {
		return q, nil
	}
	return withTries(q, tries)
}

// withTries is the quote of the same job with so many schedules made.
func withTries(q *quote.Quote, tries int) (*quote.Quote, error) {
	data := q.Job.Source
	if data == nil {
		data = job.Write(q.Job)
	}
	file := q.Job.Where.Pos().File
	data, _, list := source.Apply(file, data, []source.Edit{{Path: "labour.tries", Value: strconv.Itoa(tries)}})
	if list.Err() == nil {
		j, found := job.ReadFor(q.Catalog, file, data)
		if list.Join(found); j != nil {
			next, found := quote.Build(q.Catalog, j)
			if list.Join(found); next != nil {
				return next, nil
			}
		}
	}
	return nil, faults("the job with more time for its crew plan", list, nil)
}
