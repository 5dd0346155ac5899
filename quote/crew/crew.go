// Package crew turns the hours of a job into a plan: which task begins when,
// who does it, when the crew is called, and whether all is ready in time.
//
//	Result   the plan of each window of work, and what the manager must look at
//	Window   days, tasks in order, people, the critical chain, crew sizes
//	Task     one labour task or drive with its start, finish and people
//	Person   one of the crew: skills, hours of each day, vehicle that they drive
//
// Within a window the time axis is that of working time: breaks and nights are
// cut out, so that a task that begins before a break goes on after it. Work that
// does not fit the days of its window runs over into days beyond them, and the
// plan says so; it is never cut off.
//
// Each window has a crew of its own: who of one window is who of another is not
// known. Drivers' hours are therefore held against their rule window by window,
// and whoever gives one driver several windows adds up what they drive, work and
// rest from the days shown.
package crew

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/labour"
)

// Result is the crew plan of a job.
type Result struct {
	Windows  []Window // in the order of the rates
	Cautions []Caution
}

// Window is the plan of one window of work. One without any task has no days.
type Window struct {
	Labour   *labour.Window
	Setting  *catalog.CrewDay
	Crews    int      // into which the people are split
	Leads    int      // among the people
	Asked    int      // days that the job gives it
	Days     []Day    // that the plan takes; more than Asked if it does not fit
	Tasks    []Task   // by start, then by key
	People   []Person // drivers first, then by number
	Finish   Moment   // of the last task on the site, or in the yard for a window there
	Ready    Moment   // by which all must be ready; the end of the last day asked for if the job says no time
	Inspect  Moment   // when the authority comes; zero: never
	Work     int      // person-minutes of tasks, drives included
	Paid     int      // person-minutes paid: from call to end, without unpaid breaks, or for the shortest call that is paid
	Idle     int      // Paid less Work
	Chain    []int    // indices of Tasks: the critical chain, each held up by the one before
	Shortest int      // working minutes that no schedule can beat
	Minutes  int      // working minutes of this one, on the site or for a window in the yard there
	Tried    int      // schedules made in search of it
	Sizes    []Size
	Spread   Spread
}

// Day is one day of a window. One on which nobody works has no times.
type Day struct {
	Number int // from 1
	Date   unit.Date
	Call   unit.Clock // the crew is in the yard
	Arrive unit.Clock // on the site; Call for a window in the yard
	Leave  unit.Clock // the site; End for a window in the yard
	End    unit.Clock // back in the yard, or at the bed of that night
	Breaks []Pause
}

// Pause is a break of a day.
type Pause struct {
	Spec     *catalog.Break
	From, To unit.Clock
}

// Moment is a time of a day of the window; day 0 is none.
type Moment struct {
	Day int
	At  unit.Clock
}

// Kinds of tasks.
const (
	Labour  = "labour"  // a task of the labour rules
	Drive   = "drive"   // to the site or home, and the papers of the drivers
	Fetch   = "fetch"   // a driver fetches the next load of a vehicle, or takes one home and comes back
	Inspect = "inspect" // the authority inspects
)

// Task is one thing to do, with its time and people.
type Task struct {
	Key      string
	Kind     string
	Labour   *labour.Task // of the labour rules; nil for a drive or an inspection
	Name     string
	Tent     string // id; none for the whole job
	Crew     int    // which crew does it, from 1; with more hands than it has all help; 0: a drive
	Hands    int    // people
	Minutes  int    // working minutes
	Start    Moment
	Finish   Moment
	Spells   []Spell // between breaks and nights, in order
	People   []int   // indices of the window's People
	Critical bool
	After    []int // indices of the tasks that it waits for
}

// Spell is a stretch of a task without a pause.
type Spell struct {
	Day      int
	From, To unit.Clock
}

// Person is one of a window's crew.
type Person struct {
	Number  int // from 1
	Crew    int // from 1
	Lead    bool
	Driver  bool
	Vehicle string   // key of the trip that they drive; none
	Rides   string   // key of the trip that they ride in; none: no seat
	Skills  []string // ids of the rates, those besides lead and driver too
	Days    []Shift  // in the order of the window's days
}

// Shift is one person's day.
type Shift struct {
	Call, End unit.Clock
	Work      int // minutes of tasks
	Paid      int // minutes from call to end, without unpaid breaks, or those that a call is paid for at least
}

// Size is what one number of people would take and cost. A row is no later than
// one of fewer people: who is not needed stands by. Exceptions are crews so
// small that people fill two roles each, and several crews, where one more
// person may send a driver or a lead to another.
type Size struct {
	People   int
	Days     int    // that they need
	Nights   int    // away
	Finish   Moment // of all work
	Meets    bool   // in time, within the days asked for and the longest day
	Paid     int    // person-minutes
	Overtime int    // of these
	Wages    money.Number
	Beds     money.Number
	Cost     money.Number
	Asked    bool // the job asks for this one
	Cheapest bool // of those that meet the window
}

// Spread is how sure the finish is: by simulation with a fixed seed, beside the
// plan's own.
type Spread struct {
	Runs   int
	Half   Moment  // half of the runs are finished by then
	Ninety Moment  // nine of ten
	Mean   float64 // working minutes
	Dev    float64 // standard deviation, in minutes
	InTime float64 // share of the runs that are ready in time
}

// Caution is something of the plan that a person must look at.
type Caution struct {
	Key    string
	Window string
	Text   string
	Source string
	Severe bool // the job should not go ahead as it is planned
}
