package catalog

import (
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Calendar is the days on which offices and the yard work, and which date
// follows from which.
type Calendar struct {
	Where    source.Where
	Week     []string    `yaml:"week,required" enum:"monday|tuesday|wednesday|thursday|friday|saturday|sunday"` // days on which offices work
	Holidays []Holiday   `yaml:"holidays"`
	Closed   []ClosedDay `yaml:"closed"` // of the yard alone
	Dates    []DateRule  `yaml:"dates,required"`
}

// Holiday is a day off of each year: a day of a month, a weekday of a month by
// its number, so many days after Easter, or a single date.
type Holiday struct {
	Where    source.Where
	Name     string    `yaml:"name,required" long:"120"`
	Month    string    `yaml:"month" enum:"january|february|march|april|may|june|july|august|september|october|november|december"`
	Day      int       `yaml:"day" min:"1" max:"31"`
	Nth      string    `yaml:"nth" enum:"first|second|third|fourth|last"`
	Weekday  string    `yaml:"weekday" enum:"monday|tuesday|wednesday|thursday|friday|saturday|sunday"`
	Easter   *int      `yaml:"easter" min:"-100" max:"100"` // days after Easter Sunday of the Gregorian calendar
	Date     unit.Date `yaml:"date"`
	Observed string    `yaml:"observed" enum:"nearest|monday"` // where it falls on a weekend; none: it stays there
	Since    int       `yaml:"since" min:"1900" max:"9999"`    // first year; none: always
	Source   string    `yaml:"source"`
}

// Ways to observe a holiday that falls on a weekend: on the Friday before a
// Saturday and the Monday after a Sunday, or on the Monday after both.
const (
	ObservedNearest = "nearest"
	ObservedMonday  = "monday"
)

// ClosedDay is a day, or the first to the last of several, on which the yard is
// shut though offices work.
type ClosedDay struct {
	Where source.Where
	From  unit.Date `yaml:"from,required"`
	To    unit.Date `yaml:"to"` // not given: one day
	Why   string    `yaml:"why,required" long:"120"`
}

// Last is the last day on which the yard is shut.
func (c *ClosedDay) Last() unit.Date {
	if c.To.IsZero() {
		return c.From
	}
	return c.To
}

// DateRule is something that must be done, and its days: no earlier than one,
// no later than another, or on one.
type DateRule struct {
	Where    source.Where
	ID       string   `yaml:"id,required" long:"60"`
	Name     string   `yaml:"name,required" long:"120"`
	Who      string   `yaml:"who" long:"60"`
	Earliest *DayFrom `yaml:"earliest"`
	Latest   *DayFrom `yaml:"latest"`
	Day      *DayFrom `yaml:"day"`
	Term     string   `yaml:"term" enum:"valid|deposit|balance"` // a day that the terms of company.yaml set instead
	Needs    string   `yaml:"needs" enum:"stakes|tents"`         // only where the job has any
	Item     string   `yaml:"item"`                              // only where it is ordered
	Stop     bool     `yaml:"stop"`                              // the job must not go ahead once it is too late
	Note     string   `yaml:"note" long:"250"`
	Source   string   `yaml:"source" long:"250"`
}

// Terms of company.yaml that set a day.
const (
	TermValid   = "valid"
	TermDeposit = "deposit"
	TermBalance = "balance"
)

// What a date can need of a job.
const (
	NeedsStakes = "stakes"
	NeedsTents  = "tents"
)

// DayFrom is a day counted from one of the job's. Days below zero are before
// it; the day itself is not counted.
type DayFrom struct {
	Where    source.Where
	From     string `yaml:"from,required" enum:"quoted|signed|deliver|event_from|event_to|strike|collect"`
	Unsigned string `yaml:"unsigned" enum:"quoted|deliver|event_from|event_to|strike|collect"` // counted from while the job is not signed
	Days     int    `yaml:"days,required" min:"-400" max:"400"`
	Count    string `yaml:"count" enum:"calendar|business|yard"` // which days; none: every one
	Roll     string `yaml:"roll" enum:"before|after"`            // to a day of work, where it falls on none
	On       string `yaml:"on" enum:"business|yard"`             // which day of work; none: the kind that is counted
}

// Days of a job that others are counted from.
const (
	FromQuoted  = "quoted"
	FromSigned  = "signed"
	FromDeliver = "deliver"
	FromEvent   = "event_from"
	FromEnd     = "event_to"
	FromStrike  = "strike"
	FromCollect = "collect"
)

// Days that are counted: every one, those on which offices work, or those of
// them on which the yard is open too.
const (
	CountCalendar = "calendar"
	CountBusiness = "business"
	CountYard     = "yard"
)

// Ways to move a day that falls on none of work.
const (
	RollBefore = "before"
	RollAfter  = "after"
)

// RollsTo is to which kind of day of work the day is moved.
func (d *DayFrom) RollsTo() string {
	switch {
	case d.On != "":
		return d.On
	case d.Count == CountYard:
		return CountYard
	}
	return CountBusiness
}

// Counted is which days are counted, in a word.
func (d *DayFrom) Counted() string {
	if d.Count == "" {
		return CountCalendar
	}
	return d.Count
}
