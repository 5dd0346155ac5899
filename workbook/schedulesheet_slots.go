package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog/unit"
	"tentwright/quote/crew"
	"tentwright/workbook/sheet"
)

// planSlots is how many columns a chart has for its time.
const planSlots = 28

// slotSteps are the lengths that a column of a chart may have, and after how many
// minutes the heading says the time again.
var slotSteps = []struct{ slot, label unit.Clock }{{5, 30}, {10, 60}, {15, 60}, {20, 60}, {30, 60}, {60, 120}}

// axis is the time of a day's chart: so many columns from a time on.
type axis struct {
	from        unit.Clock
	slot, label unit.Clock // minutes of a column, and between two times of the heading
	slots       int
	begin, end  unit.Clock // of the day, within the columns
}

// axisOf is the finest axis on which a day fits.
func axisOf(begin, end unit.Clock) axis {
	var a axis
	for _, step := range slotSteps {
		a = axis{from: begin / step.label * step.label, slot: step.slot, label: step.label, begin: begin, end: end}
		a.slots = max(1, int((end-a.from+a.slot-1)/a.slot))
		if a.slots <= planSlots {
			break
		}
	}
	return a
}

// share is how many minutes of a column lie between two times.
func (a axis) share(slot int, from, to unit.Clock) unit.Clock {
	at := a.from + unit.Clock(slot)*a.slot
	return max(0, min(to, at+a.slot)-max(from, at))
}

// filled tells which columns a stretch of time fills: those of which it takes at
// least half. One too short for any has the column in which it begins.
func (a axis) filled(spells [][2]unit.Clock) []bool {
	on, any := make([]bool, a.slots), false
	for slot := range on {
		took := unit.Clock(0)
		for _, s := range spells {
			took += a.share(slot, s[0], s[1])
		}
		on[slot] = 2*took >= a.slot
		any = any || on[slot]
	}
	if !any && len(spells) > 0 {
		on[a.column(spells[0][0])] = true
	}
	return on
}

// column is the column in which a time lies.
func (a axis) column(at unit.Clock) int {
	return min(max(0, int((at-a.from)/a.slot)), a.slots-1)
}

// within tells whether any of the day lies in a column.
func (a axis) within(slot int) bool { return a.share(slot, a.begin, a.end) > 0 }

// dayTask is what of a task is done on one day.
type dayTask struct {
	*crew.Task
	spells      [][2]unit.Clock
	who         []int // numbers of its people
	begun, open bool  // it began on a day before, and goes on after this day
}

// tasksOf lists the tasks of a day by their starts on it.
func tasksOf(w *crew.Window, day int) (list []dayTask) {
	for i := range w.Tasks {
		d := dayTask{Task: &w.Tasks[i], begun: w.Tasks[i].Start.Day < day, open: w.Tasks[i].Finish.Day > day}
		for _, s := range d.Spells {
			if s.Day == day {
				d.spells = append(d.spells, [2]unit.Clock{s.From, s.To})
			}
		}
		for _, i := range d.People {
			d.who = append(d.who, w.People[i].Number)
		}
		if slices.Sort(d.who); len(d.spells) > 0 {
			list = append(list, d)
		}
	}
	slices.SortStableFunc(list, func(a, b dayTask) int { return int(a.spells[0][0] - b.spells[0][0]) })
	return list
}

// words is the task's name with what must be known of it on this day.
func (d *dayTask) words() string {
	words := d.Name
	if d.Critical {
		words = "* " + words
	}
	if d.begun {
		words += ", continued"
	}
	if d.open {
		words += ", goes on"
	}
	return words
}

// numbers is a list of numbers in rising order, in few words: "1-4, 7".
func numbers(list []int) string {
	var words []string
	for i := 0; i < len(list); {
		end := i
		for end+1 < len(list) && list[end+1] == list[end]+1 {
			end++
		}
		word := itoa(list[i])
		if end > i {
			word += "-" + itoa(list[end])
		}
		words = append(words, word)
		i = end + 1
	}
	return strings.Join(words, ", ")
}

// clock is a cell of a time of day.
func clock(at unit.Clock) sheet.Cell { return value(sheet.TimeOfDay(at)) }

// chunks cuts rows of some heights into pages: so much is left on the first, and
// every other has the same room. Each page takes at least one row; the numbers
// are those of the rows on each page.
func chunks(heights []float64, first, room float64) (counts []int) {
	left, count := first, 0
	for _, h := range heights {
		if count > 0 && h > left {
			counts = append(counts, count)
			left, count = room, 0
		}
		left -= h
		count++
	}
	if count > 0 {
		counts = append(counts, count)
	}
	return counts
}
