package revise_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/quote/labour"
	"tentwright/quote/learn"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// actualsOf reads the hours of a workbook that came back.
func actualsOf(t *testing.T, f *sheet.Found) *revise.Actuals {
	t.Helper()
	b, list := revise.Open("book.xlsx", f)
	if b == nil {
		t.Fatal(list)
	}
	a, list := b.Actuals()
	if a == nil {
		t.Fatal(list)
	}
	return a
}

// taskCell is where the task of a key stands: its cell for the actual hours.
func taskCell(t *testing.T, f *sheet.Found, key string) sheet.Place {
	t.Helper()
	keys, p := f.Names["task_key"], f.Names["task_actual"]
	for row := keys.R1; row <= keys.R2; row++ {
		if f.Sheet(keys.Sheet).At(row, keys.C1).Text == key {
			p.R1, p.R2 = row, row
			return p
		}
	}
	t.Fatalf("no task %q", key)
	return p
}

// Hours are found by the keys of their tasks, on a sheet that was renamed, sorted
// the other way round and moved down by an inserted row; amounts, factors and
// plans are those of the tasks.
func TestActualsAreFound(t *testing.T) {
	q := demoQuote(t, "fairground")
	f := workbook.Layout(q).Found()
	keys := f.Names["task_key"]
	s := f.Sheet(keys.Sheet)
	for i := range q.Labour.Tasks {
		p := taskCell(t, f, q.Labour.Tasks[i].Key)
		s.Rows[p.R1-1][p.C1-1] = num(float64(i) + 0.25)
	}
	slices.Reverse(s.Rows[keys.R1-1 : keys.R2])
	s.Rows = slices.Insert(s.Rows, keys.R1-1, []sheet.FoundCell{})
	for name, p := range f.Names {
		if p.Sheet == s.Name {
			if p.R1 >= keys.R1 {
				p.R1, p.R2 = p.R1+1, p.R2+1
			}
			p.Sheet = "What it took"
			f.Names[name] = p
		}
	}
	s.Name = "What it took"

	a := actualsOf(t, f)
	if len(a.Tasks) != len(q.Labour.Tasks) || a.Number != q.Job.Number || a.Units != "imperial" {
		t.Fatalf("%d tasks of %s, %s; %d of %s were expected", len(a.Tasks), a.Number, a.Units, len(q.Labour.Tasks), q.Job.Number)
	}
	for i, got := range a.Tasks {
		task := &q.Labour.Tasks[i]
		if got.Rule != task.Rule.ID || got.Driver != task.Rule.Driver || got.Job != a.Number || !got.Amount.Equal(task.Amount) || !got.Factor.Equal(task.Factor) ||
			!got.Plan.Equal(task.Hours) || !got.Hours.Equal(money.Float(float64(i)+0.25)) || got.Pos.Sheet != "What it took" {
			t.Errorf("%s: %+v", task.Key, got)
		}
	}
}

// A quantity that the office changed in the workbook is what the crew worked on.
func TestActualsOfEditedJob(t *testing.T) {
	q := demoQuote(t, "dinner")
	task := slices.IndexFunc(q.Labour.Tasks, func(x labour.Task) bool { return x.Rule.ID == "set-chairs" && x.Hours.IsPositive() })
	if task < 0 {
		t.Fatal("nobody sets chairs")
	}
	f := workbook.Layout(q).Found()
	typeInto(t, f, typed{"qty_l.1", 0, num(25)}) // kits of eight chairs and a table
	p := taskCell(t, f, q.Labour.Tasks[task].Key)
	f.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1] = num(3)
	a := actualsOf(t, f)
	if len(a.Tasks) != 1 || !a.Tasks[0].Amount.Equal(money.Int(200)) {
		t.Errorf("%+v; 200 were expected instead of the quoted %s", a.Tasks, q.Labour.Tasks[task].Amount)
	}
}

// Hours that cannot be are told with their cells, all at once.
func TestActualsFaults(t *testing.T) {
	q := demoQuote(t, "garden")
	cells := []sheet.FoundCell{num(-1), txt("2 h"), num(10001), {Kind: sheet.FoundError, Text: "#REF!"}, {Kind: sheet.FoundNumber, Number: 46180, Day: true},
		{Kind: sheet.FoundNumber, Number: 0.5, Percent: true}, {Formula: "1+1"}, {Kind: sheet.FoundBool, Number: 1}}
	f := workbook.Layout(q).Found()
	want := map[string]bool{}
	for i, c := range cells {
		p := taskCell(t, f, q.Labour.Tasks[i].Key)
		f.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1] = c
		want[sheet.Ref(p.R1, p.C1)] = true
	}
	b, list := revise.Open("garden.xlsx", f)
	if b == nil {
		t.Fatal(list)
	}
	a, list := b.Actuals()
	if a != nil || len(list) != len(cells) {
		t.Fatalf("%+v, %v; %d faults were expected", a, list, len(cells))
	}
	for _, x := range list {
		if x.Code != revise.Unreadable || x.Pos.Sheet != workbook.SheetCrew || !want[x.Pos.Cell] {
			t.Error(x)
		}
	}
	// Numbers as texts, formulas with their results and empty cells are no fault.
	for i, c := range []sheet.FoundCell{txt("2.5"), {Kind: sheet.FoundNumber, Number: 3, Formula: "1+2"}, {Kind: sheet.FoundText, Formula: `IF(A1="","",A1)`}, {}, num(0), {}, {}, {}} {
		p := taskCell(t, f, q.Labour.Tasks[i].Key)
		f.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1] = c
	}
	if a := actualsOf(t, f); len(a.Tasks) != 3 || a.Tasks[0].Hours.String() != "2.5" || a.Tasks[1].Hours.String() != "3" || !a.Tasks[2].Hours.IsZero() {
		t.Errorf("%+v", a.Tasks)
	}
}

// Each job counts once.
func TestLatest(t *testing.T) {
	of := func(file, number string, revision int, hours ...int) *revise.Actuals {
		a := &revise.Actuals{File: file, Number: number, Revision: revision}
		for _, h := range hours {
			a.Tasks = append(a.Tasks, learn.Task{Job: number, Rule: "legs", Hours: money.Int(h), Pos: diag.Pos{File: file}})
		}
		return a
	}
	for _, x := range []struct {
		name  string
		all   []*revise.Actuals
		from  string // files whose hours are taken
		left  string
		wrong string
	}{
		{"two jobs", []*revise.Actuals{of("a", "1", 0, 4), of("b", "2", 0, 5)}, "a b", "", ""},
		{"later first", []*revise.Actuals{of("a2", "1", 2, 4), of("a1", "1", 1, 4), of("a0", "1", 0, 3)}, "a2", "a1 a0", ""},
		{"later has none", []*revise.Actuals{of("a0", "1", 0, 4), of("a1", "1", 1)}, "a0", "a1", ""},
		{"a copy", []*revise.Actuals{of("a", "1", 0, 4), of("copy", "1", 0, 4)}, "a", "copy", ""},
		{"two that differ", []*revise.Actuals{of("a", "1", 0, 4), of("b", "1", 0, 4, 5)}, "a", "", "b"},
		{"two old that differ", []*revise.Actuals{of("a", "1", 0, 4), of("b", "1", 0, 5), of("c", "1", 1, 5)}, "c", "a b", ""},
		{"none", []*revise.Actuals{of("a", "1", 0), of("b", "1", 0)}, "", "a b", ""},
	} {
		tasks, left, list := revise.Latest(x.all)
		var from, out, wrong []string
		for _, task := range tasks {
			from = append(from, task.Pos.File)
		}
		for _, l := range left {
			out = append(out, l.File)
		}
		for _, p := range list {
			wrong = append(wrong, p.Pos.File)
		}
		if strings.Join(from, " ") != x.from || strings.Join(out, " ") != x.left || strings.Join(wrong, " ") != x.wrong {
			t.Errorf("%s: taken %v, left out %v, wrong %v", x.name, from, out, wrong)
		}
	}
}

// Whatever was done to a workbook, its hours are read or something is told.
func TestActualsOfAnyMess(t *testing.T) {
	q := demoQuote(t, "garden")
	read := 0
	for seed := range uint64(40) {
		f := workbook.Layout(q).Found()
		mess(rand.New(rand.NewPCG(seed, 11)), f)
		b, list := revise.Open("mess.xlsx", f)
		if b == nil {
			continue
		}
		a, list := b.Actuals()
		if a == nil && list.Err() == nil {
			t.Errorf("seed %d: nothing was read and nothing said", seed)
		}
		if a != nil {
			read++
		}
	}
	if read == 0 {
		t.Error("none was read")
	}
}
