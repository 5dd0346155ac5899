package job

import (
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// sameJob compares jobs by what they ask for: not by place in a file, nor by
// how many zeros stand behind a number's point.
func sameJob() cmp.Options {
	return cmp.Options{
		cmpopts.IgnoreTypes(source.Where{}), cmpopts.IgnoreFields(Job{}, "Source"), cmpopts.EquateEmpty(),
		cmp.Comparer(func(a, b money.Number) bool { return a.Equal(b) }),
	}
}

// What is written must be read back as the same job, whatever texts it holds.
func TestWriteReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := anyJob(t)
		data := Write(want)
		got, list := Read("job.yaml", data)
		if err := list.Err(); err != nil {
			t.Fatalf("not readable: %v\n%s", err, data)
		}
		if diff := cmp.Diff(want, got, sameJob()); diff != "" {
			t.Fatalf("-want +got\n%s\n%s", diff, data)
		}
		if again := Write(got); string(again) != string(data) {
			t.Fatalf("written twice it differs:\n%s\n%s", data, again)
		}
	})
}

// Texts that YAML reads as something else, or not at all, unless they are
// quoted (YAML 1.2.2, sections 5.7, 6.9, 7.3.3; 1.1 for the words of yes and no).
func TestWriteAwkwardTexts(t *testing.T) {
	for _, text := range []string{
		"null", "~", "yes", "Off", "12", "1.50", "2026-07-04", "- a", "a: b", "a # b", "#", "'", `"`, `\`, "{x}", "[y]",
		"&a", "*a", "!t", "%d", "@", "`", "? x", "--- ", "...", " leading", "trailing ", "two\nlines", "two\n  indented",
		"two\n\tindented", "ends\n", "\n", "\n\n", "a\n\n\nb", "tab\there", "\u00a0", "\ufeff", "\u2028", "é", "日本", "🎪", `\n`,
	} {
		want := &Job{Number: "1", Customer: Customer{Name: "a"}, Event: Event{Name: "b", Address: []string{text, text}},
			Dates: sampleDates(), Notes: text, Tents: []Tent{{ID: "t", Family: "f", Size: "s", Name: text}}}
		got, list := Read("job.yaml", Write(want))
		if err := list.Err(); err != nil {
			t.Errorf("%q: %v\n%s", text, err, Write(want))
			continue
		}
		if diff := cmp.Diff(want, got, sameJob()); diff != "" {
			t.Errorf("%q: -want +got\n%s", text, diff)
		}
	}
}

// What no file may hold is not read back.
func TestWriteHiddenTexts(t *testing.T) {
	for _, text := range []string{"a\r\nb", "\u0085", "\x01", "a\u202eb", strings.Repeat("a", 4001)} {
		j := &Job{Number: "1", Customer: Customer{Name: "a"}, Event: Event{Name: "b"}, Dates: sampleDates(), Notes: text}
		if got, list := Read("job.yaml", Write(j)); got != nil || len(list) != 1 {
			t.Errorf("%.10q: got %v", text, list)
		}
	}
}

// A small job as it looks in the file.
func TestWriteLooks(t *testing.T) {
	j := &Job{Number: "2026-014", Customer: Customer{Name: "Larkmere Choral Society", Class: "civic"},
		Event: Event{Name: "Summer concert", Guests: 90}, Dates: sampleDates(),
		Tents: []Tent{{ID: "hall", Family: "hip", Size: "20x40", Leg: 7 * unit.Foot,
			Sides: []TentSide{{Side: "back", Wall: "solid"}, {Side: "left", Doors: []string{"zip"}, NoStakes: true}}}},
		Items:    []Line{{Item: "chair-folding", Quantity: money.Int(90)}},
		Delivery: Delivery{Distance: 12 * unit.Mile},
		Notes:    "Gate code by phone.\nKeep off the beds."}
	want := writeHead + `number: "2026-014"
customer:
  name: "Larkmere Choral Society"
  class: civic
event:
  name: "Summer concert"
  guests: 90
dates:
  quoted: 2026-07-04
  deliver: 2026-07-04
  event_from: 2026-07-04
  event_to: 2026-07-04
  strike: 2026-07-04
  collect: 2026-07-04
tents:
  - id: hall
    family: hip
    size: "20x40"
    leg: 7 ft
    sides:
      - side: back
        wall: solid
      - side: left
        doors: [zip]
        no_stakes: yes
items:
  - item: chair-folding
    quantity: 90
delivery:
  distance: 12 mi
notes: "Gate code by phone.\n\
  Keep off the beds."
`
	if diff := cmp.Diff(want, string(Write(j))); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
}

func sampleDates() Dates {
	d := unit.Date{Year: 2026, Month: 7, Day: 4}
	return Dates{Quoted: d, Deliver: d, From: d, To: d, Strike: d, Collect: d}
}

// anyJob draws a job that Read could have returned.
func anyJob(t *rapid.T) *Job {
	return &Job{
		Number: anyName(t), Revision: rapid.IntRange(0, 999).Draw(t, "revision"),
		Customer: Customer{Name: anyName(t), Contact: anyText(t), Address: anyTexts(t), Phone: anyText(t), Email: anyText(t),
			Class: anyText(t), Exempt: anyBool(t)},
		Event: Event{Name: anyName(t), Guests: rapid.IntRange(0, 100000).Draw(t, "guests"), Use: anyText(t), Address: anyTexts(t), Place: anyText(t), Contact: anyText(t), Access: anyText(t), Parking: anyText(t)},
		Dates: Dates{Quoted: anyDate(t), Deliver: anyDate(t), From: anyDate(t), To: anyDate(t), Strike: anyDate(t), Collect: anyDate(t),
			Charged: rapid.IntRange(0, 400).Draw(t, "charged"), Signed: maybe(t, anyDate)},
		Tents: several(t, anyTent), Items: several(t, anyLine),
		Site:     several(t, func(t *rapid.T) SiteChoice { return SiteChoice{Factor: anyName(t), Option: anyName(t)} }),
		Delivery: Delivery{Zone: anyText(t), Distance: anyLength(t), Loadings: anyTexts(t), Free: anyBool(t)},
		Labour: Labour{Charge: rapid.SampledFrom([]string{"", "charged", "included"}).Draw(t, "charge"),
			Windows: several(t, anyWindow), Tries: rapid.IntRange(0, 1000).Draw(t, "tries"),
			Weather: anyGroup(t, func(t *rapid.T) Weather { return Weather{Temperature: anyDegrees(t), Humidity: anyNumber(t, 100)} })},
		Wind: Wind{Gust: unit.Speed(rapid.Int64Range(0, 1e8).Draw(t, "gust")), Terrain: anyText(t)},
		Heat: anyGroup(t, anyHeat), Power: anyGroup(t, anyPower), Plot: anyGroup(t, anyPlot),
		Discount: Discount{Percent: anyNumber(t, 100), Reason: anyText(t)},
		Show:     rapid.SampledFrom([]string{"", "line", "section", "total"}).Draw(t, "show"),
		Payments: several(t, func(t *rapid.T) Payment {
			return Payment{Date: anyDate(t), Amount: anyNumber(t, 1e6), Note: anyText(t)}
		}),
		Notes: anyText(t), Internal: anyText(t),
	}
}

func anyTent(t *rapid.T) Tent {
	side := rapid.SampledFrom([]string{"front", "right", "back", "left"})
	return Tent{ID: anyName(t), Family: anyName(t), Size: anyName(t), Count: rapid.IntRange(0, 500).Draw(t, "count"), Leg: anyLength(t),
		Sides: several(t, func(t *rapid.T) TentSide {
			return TentSide{Side: side.Draw(t, "side"), Wall: anyText(t), Doors: anyTexts(t), NoStakes: anyBool(t), Ground: anyText(t)}
		}),
		Ground: anyText(t), Joins: anyText(t), JoinAt: rapid.SampledFrom([]string{"", "front", "left"}).Draw(t, "join"),
		Discount: anyNumber(t, 100), Name: anyText(t),
		Uses: several(t, func(t *rapid.T) FloorUse {
			return FloorUse{Use: anyName(t), Area: unit.Area(rapid.Float64Range(0, 1e9).Draw(t, "area"))}
		}),
		Place: anyGroup(t, func(t *rapid.T) Place {
			return Place{X: anyLength(t), Y: anyLength(t), Turn: rapid.SampledFrom([]string{"", "0", "90", "180", "270"}).Draw(t, "turn")}
		})}
}

func anyWindow(t *rapid.T) WindowCrew {
	return WindowCrew{Window: anyName(t), Crew: rapid.IntRange(0, 200).Draw(t, "crew"), Days: rapid.IntRange(0, 60).Draw(t, "days"), Worked: anyNumber(t, 168),
		Crews: rapid.IntRange(0, 20).Draw(t, "crews"), From: maybe(t, anyClock), Until: maybe(t, anyClock), Ready: maybe(t, anyClock), Inspect: maybe(t, anyClock), Stay: anyBool(t)}
}

func anyClock(t *rapid.T) unit.Clock { return unit.Clock(rapid.IntRange(1, 24*60).Draw(t, "clock")) }

func anyHeat(t *rapid.T) Heat {
	return Heat{Inside: anyDegrees(t), Outside: anyDegrees(t), Hours: anyNumber(t, 2000), Tents: anyTexts(t)}
}

func anyDegrees(t *rapid.T) *unit.Temperature {
	degrees := unit.Temperature(rapid.Int64Range(-9000, 9000).Draw(t, "degrees"))
	return &degrees
}

func anyPower(t *rapid.T) Power {
	return Power{Source: rapid.SampledFrom([]string{"generator", "site"}).Draw(t, "source"), Distance: anyLength(t), Hours: anyNumber(t, 2000)}
}

func anyPlot(t *rapid.T) Plot {
	return Plot{Width: anyLength(t), Depth: anyLength(t), North: anyNumber(t, 360), Obstacles: several(t, func(t *rapid.T) Obstacle {
		return Obstacle{Name: anyName(t), Kind: rapid.SampledFrom([]string{"", "building", "tree", "vehicle", "line", "other"}).Draw(t, "kind"), X: anyLength(t), Y: anyLength(t), Width: anyLength(t), Depth: anyLength(t), Radius: anyLength(t)}
	})}
}

// anyGroup draws a group of fields, or none.
func anyGroup[T any](t *rapid.T, one func(*rapid.T) T) *T {
	if !anyBool(t) {
		return nil
	}
	group := one(t)
	return &group
}

// maybe draws a value, or the one that stands for none.
func maybe[T any](t *rapid.T, one func(*rapid.T) T) (value T) {
	if anyBool(t) {
		value = one(t)
	}
	return value
}

func anyLine(t *rapid.T) Line {
	return Line{Item: anyName(t), Quantity: anyNumber(t, 1e6), Optional: anyBool(t), Chosen: anyBool(t), Discount: anyNumber(t, 100), Note: anyText(t)}
}

func several[T any](t *rapid.T, one func(*rapid.T) T) []T {
	return rapid.SliceOfN(rapid.Custom(one), 0, 3).Draw(t, "several")
}

func anyBool(t *rapid.T) bool { return rapid.Bool().Draw(t, "bool") }

func anyText(t *rapid.T) string { return fileText().Draw(t, "text") }

// fileText is any text that a file may hold: no hidden characters, no more
// than the shortest limit.
func fileText() *rapid.Generator[string] {
	return rapid.StringOfN(rapid.Rune().Filter(func(r rune) bool {
		return !unicode.Is(unicode.Cc, r) && !unicode.Is(unicode.Bidi_Control, r) || r == '\n' || r == '\t'
	}), 0, 40, -1)
}

// anyName is a text that may stand where one is required: not only blanks.
func anyName(t *rapid.T) string {
	return fileText().Filter(func(s string) bool { return strings.TrimSpace(s) != "" }).Draw(t, "name")
}

func anyTexts(t *rapid.T) []string { return rapid.SliceOfN(fileText(), 0, 3).Draw(t, "texts") }

func anyDate(t *rapid.T) unit.Date {
	return unit.Date{Year: 2000, Month: 1, Day: 1}.AddDays(rapid.IntRange(0, 40000).Draw(t, "day"))
}

func anyLength(t *rapid.T) unit.Length {
	return rapid.OneOf(
		rapid.Map(rapid.IntRange(0, 400), func(n int) unit.Length { return unit.Length(n) * unit.Mile / 2 }),
		rapid.Map(rapid.IntRange(0, 4000), func(n int) unit.Length { return unit.Length(n) * unit.Kilometre / 10 }),
		rapid.Map(rapid.IntRange(0, 400), func(n int) unit.Length { return unit.Length(n) * unit.Inch / 2 }),
		rapid.Map(rapid.Int64Range(0, 1e12), func(n int64) unit.Length { return unit.Length(n) }),
	).Draw(t, "length")
}

func anyNumber(t *rapid.T, most int) money.Number {
	cents := rapid.IntRange(0, most*100).Draw(t, "hundredths")
	return money.Percent(money.Int(cents))
}

// Whatever Read accepts must be written as a file that reads the same.
func FuzzWrite(f *testing.F) {
	f.Add(Write(&Job{Number: "1", Customer: Customer{Name: "a"}, Event: Event{Name: "b"}, Dates: sampleDates(), Notes: "two\n lines"}))
	f.Fuzz(func(t *testing.T, data []byte) {
		want, list := Read("job.yaml", data)
		if list.Err() != nil {
			return
		}
		got, list := Read("job.yaml", Write(want))
		if err := list.Err(); err != nil {
			t.Fatalf("not readable: %v", err)
		}
		if diff := cmp.Diff(want, got, sameJob()); diff != "" {
			t.Fatalf("-want +got\n%s", diff)
		}
	})
}
