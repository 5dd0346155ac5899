package draw_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgsvg"

	"tentwright/quote/layout"
	"tentwright/workbook/draw"
)

// recorder notes where words are drawn, by the canvas's own moves.
type recorder struct {
	vg.Canvas
	at    vg.Point
	turn  float64
	stack []recorder
	words *[]written
}

// written is a text and the corners of the page that it takes.
type written struct {
	text      string
	low, high vg.Point
}

func (r *recorder) turned(p vg.Point) vg.Point {
	sin, cos := math.Sincos(r.turn)
	return vg.Point{X: p.X*vg.Length(cos) - p.Y*vg.Length(sin), Y: p.X*vg.Length(sin) + p.Y*vg.Length(cos)}
}

func (r *recorder) Push() {
	r.Canvas.Push()
	r.stack = append(r.stack, recorder{at: r.at, turn: r.turn})
}

func (r *recorder) Pop() {
	r.Canvas.Pop()
	last := r.stack[len(r.stack)-1]
	r.stack, r.at, r.turn = r.stack[:len(r.stack)-1], last.at, last.turn
}

func (r *recorder) Translate(p vg.Point) {
	r.Canvas.Translate(p)
	r.at = r.at.Add(r.turned(p))
}

func (r *recorder) Rotate(rad float64) {
	r.Canvas.Rotate(rad)
	r.turn += rad
}

func (r *recorder) FillString(f font.Face, p vg.Point, text string) {
	r.Canvas.FillString(f, p, text)
	a := r.at.Add(r.turned(p))
	b := r.at.Add(r.turned(p.Add(vg.Point{X: f.Width(text), Y: f.Font.Size * 0.7})))
	*r.words = append(*r.words, written{text, vg.Point{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, vg.Point{X: max(a.X, b.X), Y: max(a.Y, b.Y)}})
}

// wordsOf is all words of a drawing with their places.
func wordsOf(p *layout.Plan) []written {
	var words []written
	draw.Onto(&recorder{Canvas: vgsvg.New(draw.Width, draw.Height), words: &words}, p)
	return words
}

var legNumber = regexp.MustCompile(`^[0-9]+·[0-9+]+B?$`)

// No number of a leg stands on other words, on any of the drawings, nor beyond
// the page.
func TestLegNumbersAreClear(t *testing.T) {
	for name, p := range plans(t) {
		words, legs := wordsOf(p), 0
		for i, a := range words {
			if !legNumber.MatchString(a.text) {
				continue
			}
			legs++
			if a.low.X < 0 || a.low.Y < 0 || a.high.X > draw.Width || a.high.Y > draw.Height {
				t.Errorf("%s: %q lies beyond the page", name, a.text)
			}
			for k, b := range words {
				if k != i && a.low.X < b.high.X && b.low.X < a.high.X && a.low.Y < b.high.Y && b.low.Y < a.high.Y {
					t.Errorf("%s: %q stands on %q", name, a.text, b.text)
				}
			}
		}
		if legs < 4 {
			t.Errorf("%s: %d numbers of legs", name, legs)
		}
	}
}

// Where the scale has room, each leg has its number and its anchors; where it
// has not, the drawing says so, and no leg between corners has a number.
func TestLegNumbers(t *testing.T) {
	p := demoPlan(t, "dinner")
	var want []string
	for i := range p.Tents {
		for k := range p.Tents[i].Legs {
			want = append(want, draw.LegText(&p.Tents[i].Legs[k]))
		}
	}
	numbers := func(p *layout.Plan) (got []string, all string) {
		for _, w := range wordsOf(p) {
			all += " " + w.text
			if legNumber.MatchString(w.text) && w.high.X < draw.Width-180 {
				got = append(got, w.text)
			}
		}
		slices.Sort(got)
		return got, all
	}
	got, all := numbers(p)
	slices.Sort(want)
	if !slices.Equal(got, want) || strings.Contains(all, "no number here") {
		t.Errorf("got %q, want %q", got, want)
	}
	p.High = layout.Point{X: 400, Y: 300}
	if got, all := numbers(p); len(got) > 8 || !strings.Contains(all, "no number here") {
		t.Errorf("on a plot of 400 m: numbers %q, and it says %q", got, all)
	}
}

// What a leg's number says of its anchors.
func TestLegText(t *testing.T) {
	for want, leg := range map[string]layout.Leg{
		"3·4": {Number: 3, Stakes: 4}, "5·2B": {Number: 5, Ballast: 2}, "7·1+2B": {Number: 7, Stakes: 1, Ballast: 2}, "9": {Number: 9},
	} {
		if got := draw.LegText(&leg); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// Each side is named, and one without a wall is marked as a way out; what the
// signs mean is said beside the drawing.
func TestSidesAreNamed(t *testing.T) {
	words := fmt.Sprint(wordsOf(demoPlan(t, "fairground")))
	for _, want := range []string{"FRONT", "RIGHT", "BACK", "LEFT", "FRONT, open: EXIT", "open side of a roof: also a way out", "leg 3 of the walk*, 4 stakes"} {
		if !strings.Contains(words, want) {
			t.Errorf("%q is not on the drawing", want)
		}
	}
}

// A plan whose fault has no area is still drawn.
func TestFaultWithoutArea(t *testing.T) {
	p := demoPlan(t, "garden")
	p.Faults = append(p.Faults, layout.Fault{Kind: layout.Blocked, First: "a", Second: "b", Missing: 1})
	if _, err := draw.PNG(p); err != nil {
		t.Error(err)
	}
}
