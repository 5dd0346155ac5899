package draw

import (
	"image/color"
	"math"
	"slices"
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"

	"tentwright/quote/layout"
)

// Colours: greys, and one red that only stresses what words and shapes say.
var (
	black = color.Gray{0}
	grey  = color.Gray{113}
	pale  = color.Gray{198}
	white = color.Gray{255}
	red   = color.RGBA{192, 0, 0, 255}
)

// faces are the two fonts, parsed once: the same on every system, so that words
// are as wide as they are measured.
var faces = sync.OnceValue(func() (both [2]*opentype.Font) {
	for i, data := range [][]byte{liberationsansregular.TTF, liberationsansbold.TTF} {
		both[i], _ = opentype.Parse(data) // part of the program; a test reads both
	}
	return both
})

// pen draws on a canvas in points, from the lower left corner; things on the
// plot are drawn at the scale, with plot at their own place on the canvas.
type pen struct {
	vg.Canvas
	perMetre float64  // points
	zero     vg.Point // where the plot's origin lies
	taken    []rect   // of the page, by words
}

// to is where a point of the plot lies on the canvas.
func (p *pen) to(at layout.Point) vg.Point {
	return vg.Point{X: p.zero.X + vg.Length(at.X*p.perMetre), Y: p.zero.Y + vg.Length(at.Y*p.perMetre)}
}

// all is where points of the plot lie on the canvas.
func (p *pen) all(points []layout.Point) []vg.Point {
	out := make([]vg.Point, len(points))
	for i, at := range points {
		out[i] = p.to(at)
	}
	return out
}

// style sets how lines look from here on.
func (p *pen) style(width vg.Length, c color.Color, dashes ...vg.Length) {
	p.SetLineWidth(width)
	p.SetColor(c)
	p.SetLineDash(dashes, 0)
}

// path is a line through points; a closed one ends where it began.
func path(points []vg.Point, closed bool) vg.Path {
	var out vg.Path
	for i, at := range points {
		if i == 0 {
			out.Move(at)
		} else {
			out.Line(at)
		}
	}
	if closed {
		out.Close()
	}
	return out
}

func (p *pen) line(points ...vg.Point) { p.Stroke(path(points, false)) }

func (p *pen) ring(points []vg.Point) { p.Stroke(path(points, true)) }

func (p *pen) area(points []vg.Point) { p.Fill(path(points, true)) }

// box is the corners of an upright rectangle.
func box(x, y, wide, high vg.Length) []vg.Point {
	return []vg.Point{{X: x, Y: y}, {X: x + wide, Y: y}, {X: x + wide, Y: y + high}, {X: x, Y: y + high}}
}

// circle is the line of a circle.
func circle(at vg.Point, r vg.Length) vg.Path {
	var out vg.Path
	out.Move(vg.Point{X: at.X + r, Y: at.Y})
	out.Arc(at, r, 0, 2*math.Pi)
	out.Close()
	return out
}

// hatch fills an area with slanting lines, so far apart.
func (p *pen) hatch(points []vg.Point, apart vg.Length) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, q := range points {
		low, high = min(low, float64(q.X-q.Y)), max(high, float64(q.X-q.Y))
	}
	for c := math.Ceil(low/float64(apart)) * float64(apart); c < high; c += float64(apart) {
		var cross []vg.Point
		for i, a := range points {
			b := points[(i+1)%len(points)]
			from, to := float64(a.X-a.Y)-c, float64(b.X-b.Y)-c
			if from <= 0 == (to <= 0) {
				continue
			}
			t := vg.Length(from / (from - to))
			cross = append(cross, vg.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)})
		}
		if len(cross) == 2 {
			p.line(cross...)
		}
	}
}

// words are one line of text.
type words struct {
	text  string
	size  vg.Length
	bold  bool
	turn  float64   // against the clock, in quarters of a circle
	align float64   // share of the width that lies before the place: 0 left, 0.5 middle
	halo  vg.Length // white ground around the words, so wide; 0 is none
	color color.Color
}

// face is the font of a size.
func face(size vg.Length, bold bool) font.Face {
	f := font.Font{Typeface: "Liberation", Variant: "Sans", Size: size, Weight: xfont.WeightNormal}
	at := 0
	if bold {
		f.Weight, at = xfont.WeightBold, 1
	}
	return font.Face{Font: f, Face: faces()[at]}
}

// width is how wide words run.
func width(text string, size vg.Length, bold bool) vg.Length {
	f := face(size, bold)
	return f.Width(clean(text))
}

// capitals is the height of a capital letter, as a share of the size.
const capitals = 0.7

// write draws words about a place that lies half way up their capitals.
func (p *pen) write(at vg.Point, w words) {
	text := clean(w.text)
	f := face(w.size, w.bold)
	wide, high := f.Width(text), w.size*capitals
	p.taken = append(p.taken, w.over(at, wide))
	p.Push()
	defer p.Pop()
	p.Translate(at)
	if w.turn != 0 {
		p.Rotate(w.turn * math.Pi / 2)
	}
	x, y := -wide*vg.Length(w.align), -high/2
	if w.halo > 0 {
		p.SetColor(white)
		p.area(box(x-w.halo, y-w.halo, wide+2*w.halo, high+2*w.halo))
	}
	p.SetColor(black)
	if w.color != nil {
		p.SetColor(w.color)
	}
	p.FillString(f, vg.Point{X: x, Y: y}, text)
}

// clean takes out of words what a drawing cannot hold: signs that move the
// place of writing, and what is no text at all.
func clean(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == unicode.ReplacementChar || r >= 0xFFFE && r <= 0xFFFF {
			return -1
		}
		return r
	}, s)
}

// fit shortens words to a width.
func fit(text string, size vg.Length, bold bool, most vg.Length) string {
	text = clean(text)
	if width(text, size, bold) <= most {
		return text
	}
	runes := []rune(text)
	for len(runes) > 1 && width(string(runes)+"...", size, bold) > most {
		runes = runes[:len(runes)-1]
	}
	return strings.TrimSpace(string(runes)) + "..."
}

// wrapped breaks words into lines of a width, at most so many; the last is
// shortened.
func wrapped(text string, size vg.Length, bold bool, wide vg.Length, most int) []string {
	var lines []string
	for word := range strings.FieldsSeq(clean(text)) {
		if n := len(lines); n > 0 && width(lines[n-1]+" "+word, size, bold) <= wide {
			lines[n-1] += " " + word
		} else {
			lines = append(lines, word)
		}
	}
	if len(lines) > most {
		lines[most-1] = strings.Join(lines[most-1:], " ")
		lines = slices.Clip(lines[:most])
	}
	for i := range lines {
		lines[i] = fit(lines[i], size, bold, wide)
	}
	return lines
}
