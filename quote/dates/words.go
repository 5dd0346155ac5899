package dates

import (
	"strconv"

	"tentwright/catalog"
)

// Words is a rule in words, such as "not before 10 business days before
// delivery; by 3 business days before delivery".
func (d *Date) Words() string {
	switch {
	case d.Exact:
		return d.Last.Words(On)
	case d.First == nil:
		return d.Last.Words(By)
	case d.Last == nil:
		return d.First.Words(NotBefore)
	}
	return d.First.Words(NotBefore) + "; " + d.Last.Words(By)
}

// Words that stand before an end: its date is not before it, by it, or on it.
const (
	NotBefore = "not before "
	By        = "by "
	On        = ""
)

// Words is one end in words, behind one of NotBefore, By and On.
func (e *End) Words(before string) string {
	w := e.Phrases(before)
	n := e.Spec.Days
	switch {
	case n == 0:
		return w.Same + w.Tail
	case n == 1 || n == -1:
		return before + "1" + w.One + w.side(n) + w.Tail
	}
	return before + strconv.Itoa(max(n, -n)) + w.Many + w.side(n) + w.Tail
}

// Phrases are the pieces that the words of an end are put together from, for
// whoever puts them together again by another number of days.
type Phrases struct {
	Same          string // for no days at all: "by the day of delivery"
	One, Many     string // " business day", " business days"
	Before, After string // " before delivery", " after delivery"
	Tail          string // what is said of rolling, and of a job that is not signed
}

func (w *Phrases) side(days int) string {
	if days < 0 {
		return w.Before
	}
	return w.After
}

// Phrases gives the pieces of an end's words behind one of NotBefore, By and On.
func (e *End) Phrases(before string) Phrases {
	of, the := anchorWords(e.Spec.From)
	day := " " + countWords(e.Spec.Count)
	w := Phrases{Same: before + the, One: day, Many: day + "s", Before: " before " + of, After: " after " + of}
	if before == On {
		w.Same = "on " + the
	}
	if e.Spec.Roll != "" {
		w.Tail = " (or the " + countWords(e.Spec.RollsTo()) + " " + e.Spec.Roll + ", where it is none)"
	}
	if e.Spec.Unsigned != "" {
		of, _ := anchorWords(e.Spec.Unsigned)
		w.Tail += " (while not signed: counted from " + of + ")"
	}
	return w
}

// countWords names one of the days that are counted.
func countWords(count string) string {
	if everyDay(count) {
		return "day"
	}
	return count + " day"
}

// anchorWords names a day of the job, as one counts from it and as the day
// itself.
func anchorWords(from string) (of, the string) {
	switch from {
	case catalog.FromQuoted:
		return "the quote", "the day of the quote"
	case catalog.FromSigned:
		return "signing", "the day of signing"
	case catalog.FromDeliver:
		return "delivery", "the day of delivery"
	case catalog.FromEvent:
		return "the event", "the first day of the event"
	case catalog.FromEnd:
		return "the end of the event", "the last day of the event"
	case catalog.FromStrike:
		return "the strike", "the day of the strike"
	}
	return "collection", "the day of collection"
}
