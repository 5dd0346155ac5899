package crew

import (
	"fmt"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/quote/labour"
)

// Of each kind of caution the first stand, and the last of them says how many
// more there are.
func TestCutSays(t *testing.T) {
	b := &winder{w: &labour.Window{Spec: &catalog.Window{ID: "out"}}}
	b.say("late", true, "late")
	for n := range 700 {
		b.say(fmt.Sprintf("long.%d", n+1), true, "day %d", n+1)
	}
	for n := range mostSaid {
		b.say(fmt.Sprintf("turn.V%d", n+1), false, "turn %d", n+1)
	}
	b.cutSays()
	if len(b.says) != 1+2*mostSaid {
		t.Fatalf("%d cautions stand", len(b.says))
	}
	if got := b.says[mostSaid].Text; got != "day 8; and 692 more likewise" {
		t.Errorf("the last of the days says %q", got)
	}
	for _, c := range append(b.says[:mostSaid:mostSaid], b.says[mostSaid+1:]...) {
		if strings.Contains(c.Text, "more") {
			t.Errorf("%s says %q", c.Key, c.Text)
		}
	}
}

// An axis whose days leave no time to work for ever does not go on without end,
// and every minute of it has its place.
func TestAxisWithoutTime(t *testing.T) {
	ax := &axis{more: func(n int) []span {
		if n == 2 {
			return []span{{day: 2, from: 420, to: 480}}
		}
		return nil
	}}
	if m := ax.moment(60); m != (Moment{2, 480}) || ax.lost() {
		t.Errorf("the first hour ends at %v", m)
	}
	if m := ax.moment(61); m.Day != 2+mostIdle+1 || !ax.lost() {
		t.Errorf("the next minute ends at %v", m)
	}
	if e := ax.edges(5000); e[len(e)-1] < 5000 {
		t.Errorf("the days end at %v", e)
	}
}
