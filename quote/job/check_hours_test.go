package job

import (
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/source"
)

// What holds on a site alone is refused in the yard, where the shop says which
// windows of work are there; a shop that does not say takes it.
func TestHoursInTheYard(t *testing.T) {
	c := *smallShop(t)
	j := &Job{Labour: Labour{Windows: []WindowCrew{{Window: "out", From: 540, Until: 900, Inspect: 880, Stay: true, Crews: 2, Ready: 800}}}}
	faults := func() diag.List {
		k := &checker{j: j, c: &c, form: source.NewForm(nil)}
		k.hours()
		return k.list
	}
	if list := faults(); len(list) > 0 {
		t.Errorf("without a crew file: %v", list.Err())
	}
	c.Crew = &catalog.Crew{Days: []catalog.CrewDay{{Window: "out"}, {Window: "in", Site: true}}}
	list := faults()
	for _, field := range []string{"from", "until", "inspect", "stay"} {
		if !slices.ContainsFunc(list, func(p diag.Problem) bool {
			return p.Code == BadHours && strings.Contains(p.Message, "so "+field+" changes nothing")
		}) {
			t.Errorf("%s of a window in the yard was taken: %v", field, list.Err())
		}
	}
	if len(list) != 4 {
		t.Errorf("%v; crews and the hour by which all is ready hold in the yard too", list.Err())
	}
	j.Labour.Windows[0].Window = "in"
	if list := faults(); len(list) > 0 {
		t.Errorf("on the site: %v", list.Err())
	}
}

// A humidity alone says nothing of heat.
func TestWeatherWantsBoth(t *testing.T) {
	j := &Job{Labour: Labour{Weather: &Weather{Humidity: money.Int(60)}}}
	k := &checker{j: j, c: smallShop(t), form: source.NewForm(nil)}
	if k.hours(); len(k.list) != 1 || k.list[0].Code != BadHours {
		t.Errorf("%v; one fault was expected", k.list.Err())
	}
}
