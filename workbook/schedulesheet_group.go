package workbook

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/unit"
	"tentwright/quote/crew"
	"tentwright/workbook/sheet"
)

// grouping says which tasks of a day share a row of its chart.
type grouping int

// From the finest to the coarsest; a day takes the first with which its chart
// and its call times stand on one page. Drives and inspections have rows of their
// own in all but the last.
const (
	byTask  grouping = iota
	byBoth           // tent and phase of work; tasks of the whole job by phase
	byTent           // tasks of the whole job by phase
	byPhase          // of all tents and of the whole job
	byKind           // likewise; all drives are one row, and so are all inspections
)

// words says on the sheet what a row stands for.
func (g grouping) words() string {
	switch g {
	case byTask:
		return ""
	case byBoth:
		return " Rows: tent and phase; the tasks follow."
	case byTent:
		return " Rows: a tent each; the tasks follow."
	}
	return " Rows: a phase each; the tasks follow."
}

// key is the same for tasks that share a row.
func (g grouping) key(t *dayTask) string {
	switch {
	case t.Labour == nil && g == byKind:
		return "kind " + t.Kind
	case t.Labour == nil || g == byTask:
		return "task " + t.Key
	case g == byTent && t.Tent != "":
		return "tent " + t.Tent
	case g == byBoth && t.Tent != "":
		return "both " + t.Tent + "/" + t.Labour.Rule.Phase
	}
	return "phase " + t.Labour.Rule.Phase
}

// chartRow is a row of a day's chart: a task, or several as one.
type chartRow struct {
	words, tent   string
	hands         int // most at once
	start, finish unit.Clock
	crews         []int // that do it
	who           []int // numbers of its people
	tasks         []dayTask
}

// rowsOf puts the tasks of a day into rows, in the order of the first start.
func (p *scheduleSheet) rowsOf(tasks []dayTask, by grouping) []chartRow {
	var rows []chartRow
	at := map[string]int{}
	for _, t := range tasks {
		key := by.key(&t)
		i, ok := at[key]
		if !ok {
			i = len(rows)
			at[key] = i
			rows = append(rows, chartRow{})
		}
		rows[i].tasks = append(rows[i].tasks, t)
	}
	for i := range rows {
		p.sum(&rows[i], by)
	}
	return rows
}

// sum fills a row in from its tasks.
func (p *scheduleSheet) sum(r *chartRow, by grouping) {
	r.start, r.finish = r.tasks[0].spells[0][0], 0
	for i := range r.tasks {
		t := &r.tasks[i]
		r.finish = max(r.finish, t.spells[len(t.spells)-1][1])
		r.who = append(r.who, t.who...)
		if t.Crew > 0 {
			r.crews = append(r.crews, t.Crew)
		}
	}
	for _, list := range []*[]int{&r.who, &r.crews} {
		slices.Sort(*list)
		*list = slices.Compact(*list)
	}
	r.hands = mostHands(r.tasks, r.start, r.finish)
	r.words, r.tent = r.tasks[0].words(), r.tasks[0].Tent
	if len(r.tasks) > 1 {
		r.words, r.tent = p.groupWords(r.tasks, by), groupTent(r.tasks)
	}
}

// groupWords names a row of several tasks.
func (p *scheduleSheet) groupWords(tasks []dayTask, by grouping) string {
	t := &tasks[0]
	words := ""
	switch {
	case t.Labour == nil && t.Kind == crew.Inspect:
		words = "Inspections"
	case t.Labour == nil:
		words = "Drives"
	case by == byTent && t.Tent != "":
		words = p.tentName(t.Tent)
	case by == byBoth && t.Tent != "":
		words = p.tentName(t.Tent) + ": " + t.Labour.Rule.Phase
	case by < byPhase:
		words = "Whole job: " + t.Labour.Rule.Phase
	default:
		words = strings.ToUpper(t.Labour.Rule.Phase[:1]) + t.Labour.Rule.Phase[1:]
	}
	if slices.ContainsFunc(tasks, func(t dayTask) bool { return t.Critical }) {
		words = "* " + words
	}
	return words + fmt.Sprintf(" (%d tasks)", len(tasks))
}

// groupTent is the tent of all tasks, or how many there are.
func groupTent(tasks []dayTask) string {
	var tents []string
	for i := range tasks {
		if id := tasks[i].Tent; id != "" && !slices.Contains(tents, id) {
			tents = append(tents, id)
		}
	}
	if len(tents) > 1 {
		return itoa(len(tents)) + " tents"
	}
	return strings.Join(tents, "")
}

// mostHands is the most hands that tasks have at work at any time from one to
// another. Hands change only where a spell begins.
func mostHands(tasks []dayTask, from, to unit.Clock) int {
	most := 0
	at := func(m unit.Clock) {
		sum := 0
		for i := range tasks {
			if slices.ContainsFunc(tasks[i].spells, func(s [2]unit.Clock) bool { return s[0] <= m && m < s[1] }) {
				sum += tasks[i].Hands
			}
		}
		most = max(most, sum)
	}
	at(from)
	for i := range tasks {
		for _, s := range tasks[i].spells {
			if from <= s[0] && s[0] < to {
				at(s[0])
			}
		}
	}
	return most
}

// mark is what a row has in one column of time.
type mark struct {
	on, critical bool
	hands        int
}

// marks is the bar of a row: where any of its tasks has a bar, with the most hands
// of these at once. Tasks one after the other in a column are the same hands, so
// they are not added up.
func (r *chartRow) marks(a axis) []mark {
	marks, running := make([]mark, a.slots), make([][]dayTask, a.slots)
	for _, t := range r.tasks {
		for slot, on := range a.filled(t.spells) {
			if on {
				marks[slot].on = true
				marks[slot].critical = marks[slot].critical || t.Critical
				running[slot] = append(running[slot], t)
			}
		}
	}
	for slot := range marks {
		begin := a.from + unit.Clock(slot)*a.slot
		marks[slot].hands = mostHands(running[slot], begin, begin+a.slot)
	}
	return marks
}

// cell is the hands, as far as there is room for them.
func (m mark) cell() sheet.Cell {
	switch {
	case m.hands == 0:
		return text("x")
	case m.hands > 99:
		return text("+")
	}
	return value(m.hands)
}

func (m mark) role() sheet.Role {
	if m.critical {
		return sheet.Chain
	}
	return sheet.Bar
}

// crew is who does it, by the numbers of the crews.
func (r *chartRow) crew() sheet.Cell {
	switch len(r.crews) {
	case 0:
		return in(value(nil), centred(sheet.Whole))
	case 1:
		return in(value(r.crews[0]), centred(sheet.Whole))
	}
	return in(text(numbers(r.crews)), centred(sheet.Text))
}

// people are the numbers of who does it.
func (r *chartRow) people() sheet.Cell {
	if len(r.who) == 1 {
		return in(value(r.who[0]), sheet.Style{Role: sheet.Body, Format: sheet.Whole, Align: sheet.Left})
	}
	return in(text(r.peopleWords()), wrap())
}

// peopleWords are the numbers, or for a row of several tasks how many they are
// where the list is long.
func (r *chartRow) peopleWords() string {
	const fits = 22 // two lines of its column
	words := numbers(r.who)
	if len(r.tasks) > 1 && len(words) > fits {
		return itoa(len(r.who)) + " people"
	}
	return words
}

// rowHeights is how high rows of a chart are, in points.
func (p *scheduleSheet) rowHeights(rows []chartRow) []float64 {
	heights := make([]float64, len(rows))
	for i := range rows {
		heights[i] = rowLeast
		for col, words := range map[int]string{0: rows[i].words, 1: rows[i].tent, 6: rows[i].peopleWords()} {
			heights[i] = max(heights[i], sheet.TextHeight(words, 10, false, true, 0, planWidths[col]*sheet.ColumnPoints))
		}
	}
	return heights
}

// dayFit is how a day stands on its page.
type dayFit struct {
	by    grouping
	rows  []chartRow
	brief bool // call times in a few lines; the list of them follows
}

// fit finds the finest rows with which a day's chart and its call times fit one
// page. Only with too many people for any do the call times give way.
func (p *scheduleSheet) fit(tasks []dayTask, shifts []called) (f dayFit) {
	for _, brief := range []bool{false, true} {
		left := p.room() - chartHead - p.callHeight(shifts, brief)
		for by := byTask; by <= byKind; by++ {
			f = dayFit{by, p.rowsOf(tasks, by), brief}
			high := 0.0
			for _, h := range p.rowHeights(f.rows) {
				high += h
			}
			if high <= left {
				return f
			}
		}
	}
	return f
}
