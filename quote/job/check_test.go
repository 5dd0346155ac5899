package job

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag/diagtest"
)

const badJobs = "../../testdata/invalid/job"

func smallShop(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("small", os.DirFS("../../testdata/shops/small"))
	if c == nil {
		t.Fatal(list.Err())
	}
	return c
}

// Each fixture has faults of one kind, named like the file.
func TestFaultsOfJobs(t *testing.T) {
	c := smallShop(t)
	diagtest.Each(t, os.DirFS(badJobs), func(t *testing.T, code string, data []byte) {
		j, list := Read("job.yaml", data)
		if j == nil {
			t.Fatal(list.Err())
		}
		list = j.Check(c)
		diagtest.OfCode(t, list, code)
		diagtest.Compare(t, "job.yaml", data, list)
	})
}

// Every code of a job's faults has a fixture.
func TestEveryCodeHasAFixture(t *testing.T) {
	for _, code := range []string{UnknownID, RepeatedID, DateOrder, Quantity, LegHeight, NothingToDo, GeometryItem, BadJoin, NoZone, NotOptional, BadPlot, UseTooLarge, BadHours} {
		if _, err := os.Stat(filepath.Join(badJobs, code+".yaml")); err != nil {
			t.Errorf("code %q has no fixture in %s", code, badJobs)
		}
	}
}

// An item is offered by its id or, where that is not near, by its name.
func TestItemsAreOfferedByName(t *testing.T) {
	c := smallShop(t)
	for asked, want := range map[string]string{
		"chiar": `did you mean "chair"?`, "round table": `did you mean "seat8" (Round table with eight chairs)?`,
		"site": `did you mean "visit" (Site visit)?`, "solid sidewall": "known: wall, chair, seat8, visit", "lantern": "known: wall, chair, seat8, visit",
	} {
		if got := (&checker{c: c}).itemAdvice(asked); got != want {
			t.Errorf("%q: got %s, want %s", asked, got, want)
		}
	}
}

// The days that are charged are those of the event, both ends counted, unless
// the job says otherwise; the days out run from delivery to collection.
func TestDays(t *testing.T) {
	var j Job
	for field, text := range map[interface{ ParseText(string) error }]string{
		&j.Dates.Deliver: "2027-06-10", &j.Dates.From: "2027-06-12", &j.Dates.To: "2027-06-14", &j.Dates.Collect: "2027-06-16"} {
		if err := field.ParseText(text); err != nil {
			t.Fatal(err)
		}
	}
	if got := j.ChargedDays(); got != 3 {
		t.Errorf("%d days are charged, 3 were expected", got)
	}
	if got := j.DaysOut(); got != 7 {
		t.Errorf("%d days out, 7 were expected", got)
	}
	j.Dates.Charged = 1
	if got := j.ChargedDays(); got != 1 {
		t.Errorf("%d days are charged, the job says 1", got)
	}
}

// A gutter is at one side of each of the two tents that share it.
func TestSharedSides(t *testing.T) {
	j := Job{Tents: []Tent{{ID: "a"}, {ID: "b", Joins: "a", JoinAt: "left"}, {ID: "c"}}}
	for i, want := range []string{"right", "left", ""} {
		if got := strings.Join(j.SharedSides(&j.Tents[i]), " "); got != want {
			t.Errorf("tent %s shares %q, %q was expected", j.Tents[i].ID, got, want)
		}
	}
}
