package workbook

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog/unit"
)

func at(t testing.TB, words string) unit.Clock {
	t.Helper()
	c, err := unit.ParseClock(words)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// The finest axis on which a day fits is taken; it begins at a time that its
// heading says.
func TestAxis(t *testing.T) {
	for _, x := range []struct {
		begin, end, from string
		slot             unit.Clock
		slots            int
	}{
		{"07:30", "09:35", "07:30", 5, 25},
		{"07:44", "09:35", "07:30", 5, 25},
		{"11:22", "14:38", "11:00", 10, 22},
		{"06:00", "13:00", "06:00", 15, 28},
		{"07:00", "16:00", "07:00", 20, 27},
		{"06:00", "20:00", "06:00", 30, 28},
		{"06:00", "20:01", "06:00", 60, 15},
		{"00:01", "24:00", "24:00", 60, 24}, // from is midnight, the zero clock
		{"08:00", "07:00", "08:00", 5, 1},
	} {
		a := axisOf(at(t, x.begin), at(t, x.end))
		if from := at(t, x.from) % (24 * 60); a.from != from || a.slot != x.slot || a.slots != x.slots {
			t.Errorf("%s to %s: %d columns of %d minutes from %s; want %d of %d from %s", x.begin, x.end, a.slots, a.slot, a.from, x.slots, x.slot, x.from)
		}
	}
}

// A bar fills the columns of which it takes half or more, and never none.
func TestFilledColumns(t *testing.T) {
	a := axisOf(at(t, "06:00"), at(t, "20:00")) // half hours
	for _, x := range []struct {
		from, to string
		want     []int
	}{
		{"07:00", "08:00", []int{2, 3}},
		{"07:10", "08:10", []int{2, 3}},
		{"07:16", "08:16", []int{3, 4}},
		{"07:15", "07:45", []int{2, 3}},
		{"07:01", "07:04", []int{2}},
		{"07:25", "07:35", []int{2}},
		{"19:50", "20:00", []int{27}},
	} {
		var got []int
		for slot, on := range a.filled([][2]unit.Clock{{at(t, x.from), at(t, x.to)}}) {
			if on {
				got = append(got, slot)
			}
		}
		if !slices.Equal(got, x.want) {
			t.Errorf("%s to %s fills %v; want %v", x.from, x.to, got, x.want)
		}
	}
}

// A bar is never off by more than half a column at either end, save that it has
// one column at least.
func TestBarsStandWhereTheWorkIs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		begin := unit.Clock(rapid.IntRange(0, 1400).Draw(t, "begin"))
		end := unit.Clock(rapid.IntRange(int(begin)+1, 1440).Draw(t, "end"))
		a := axisOf(begin, end)
		if a.slots > planSlots || a.from > begin || a.from+unit.Clock(a.slots)*a.slot < end {
			t.Fatalf("%s to %s: %+v does not hold the day in %d columns", begin, end, a, planSlots)
		}
		from := unit.Clock(rapid.IntRange(int(begin), int(end)-1).Draw(t, "from"))
		to := unit.Clock(rapid.IntRange(int(from)+1, int(end)).Draw(t, "to"))
		on := a.filled([][2]unit.Clock{{from, to}})
		first := slices.Index(on, true)
		if first < 0 {
			t.Fatalf("%s to %s has no bar", from, to)
		}
		count := 0
		for _, filled := range on {
			if filled {
				count++
			}
		}
		if long := unit.Clock(count) * a.slot; count > 1 && (long > to-from+a.slot || long < to-from-a.slot) {
			t.Fatalf("%s to %s on columns of %d minutes: %d of them", from, to, a.slot, count)
		}
		if start := a.from + unit.Clock(first)*a.slot; start > from+a.slot/2 || start+a.slot <= from {
			t.Fatalf("%s to %s: the bar begins at %s, columns of %d minutes", from, to, start, a.slot)
		}
	})
}

func TestNumbersInFewWords(t *testing.T) {
	for _, x := range []struct {
		list []int
		want string
	}{{nil, ""}, {[]int{4}, "4"}, {[]int{1, 2}, "1-2"}, {[]int{1, 2, 3, 4, 7}, "1-4, 7"}, {[]int{2, 4, 6}, "2, 4, 6"}} {
		if got := numbers(x.list); got != x.want {
			t.Errorf("%v is %q; want %q", x.list, got, x.want)
		}
	}
}

// Rows are cut so that each page holds what it has room for, and none is lost.
func TestChunks(t *testing.T) {
	for _, x := range []struct {
		heights     []float64
		first, room float64
		want        []int
	}{
		{nil, 30, 30, nil},
		{[]float64{10, 10, 10}, 30, 30, []int{3}},
		{[]float64{10, 10, 10, 10}, 30, 30, []int{3, 1}},
		{[]float64{10, 10, 10}, 10, 30, []int{1, 2}},
		{[]float64{50, 10}, 30, 30, []int{1, 1}}, // higher than any page
	} {
		if got := chunks(x.heights, x.first, x.room); !slices.Equal(got, x.want) {
			t.Errorf("%v on %g and %g: %v; want %v", x.heights, x.first, x.room, got, x.want)
		}
	}
}
