package draw_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/layout"
	"tentwright/quote/tent"
	"tentwright/workbook/draw"
)

func demoCatalog(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return c
}

// planOf places the tents of a job of the demo shop.
func planOf(t testing.TB, c *catalog.Catalog, data []byte) *layout.Plan {
	t.Helper()
	j, list := job.ReadFor(c, "job.yaml", data)
	if j == nil {
		t.Fatal(list.Err())
	}
	tents, list := tent.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return layout.Build(c, j, tents)
}

func demoPlan(t testing.TB, name string) *layout.Plan {
	t.Helper()
	data, err := os.ReadFile("../../testdata/jobs/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return planOf(t, demoCatalog(t), data)
}

// crowded is a job in which everything is in the way, and whose words are of the
// kind that breaks files.
const crowded = `number: C-1
customer: {name: Test Customer}
event: {name: "Crowded <field> & \"more\" style=\"font-family:Liberation Sans\" </text>", guests: 40}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
tents:
  - {id: a, name: "Main & <b>", family: pole, size: 40x60, place: {x: 10 ft, y: 10 ft}}
  - {id: b, name: Bar, family: hip, size: 20x40, place: {x: 60 ft, y: 45 ft, turn: 90}, sides: [{side: front, wall: solid, doors: [single], no_stakes: yes}]}
  - {id: c, name: "a tent with a name that goes on and on until nothing can hold it, not even the list beside the drawing", family: hip, size: 10x10, count: 3, place: {x: 30 ft, y: 90 ft}}
  - {id: d, name: Traders, family: span, size: 40x60}
plot: {width: 110 ft, depth: 100 ft, north: 90, obstacles: [{name: "Oak & \"elm\"", x: 40 ft, y: 62 ft, radius: 6 ft}, {name: Well, x: 95 ft, y: 20 ft, width: 4 ft, depth: 4 ft}]}
delivery: {distance: 8 mi}
`

// plans is the demo jobs and a crowded one.
func plans(t testing.TB) map[string]*layout.Plan {
	all := map[string]*layout.Plan{"crowded": planOf(t, demoCatalog(t), []byte(crowded))}
	for _, name := range []string{"garden", "dinner", "fairground"} {
		all[name] = demoPlan(t, name)
	}
	return all
}

// A drawing is XML as its standard has it, the same each time, and holds the
// words of the job as they are.
func TestSVG(t *testing.T) {
	for name, p := range plans(t) {
		svg, err := draw.SVG(p)
		if err != nil {
			t.Fatal(err)
		}
		if again, _ := draw.SVG(p); !bytes.Equal(svg, again) {
			t.Errorf("%s: two drawings of one plan differ", name)
		}
		words := texts(t, svg)
		for _, want := range []string{p.Title(), "SITE PLAN", p.Reference} {
			if !slices.Contains(words, want) {
				t.Errorf("%s: %q is not on the drawing: %q", name, want, words)
			}
		}
		for _, f := range p.Faults {
			if !strings.Contains(strings.Join(words, " "), f.Words()[:10]) {
				t.Errorf("%s: fault %q is not on the drawing", name, f.Words())
			}
		}
		if bytes.Contains(svg, []byte("<!--")) || !bytes.Contains(svg, []byte("Arial,Helvetica,sans-serif")) {
			t.Errorf("%s: a remark of the library is left, or no font that every system has is named", name)
		}
	}
}

// texts reads a drawing and gives all its words.
func texts(t *testing.T, svg []byte) []string {
	t.Helper()
	var out []string
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		if words, ok := token.(xml.CharData); ok {
			if s := strings.TrimSpace(string(words)); s != "" {
				out = append(out, s)
			}
		}
	}
}

// The drawing is to scale: the scale bar, four equal boxes 4 points high, is as
// long as it says, and roof and plot are as large beside it as in the plan.
func TestToScale(t *testing.T) {
	for name, p := range plans(t) {
		svg, err := draw.SVG(p)
		if err != nil {
			t.Fatal(err)
		}
		var bar float64
		shapes := map[[2]int]bool{} // width and height in hundredths of a point
		for _, m := range regexp.MustCompile(`d="([^"]*)Z"`).FindAllStringSubmatch(string(svg), -1) {
			if w, h, ok := rectangle(m[1]); ok {
				shapes[[2]int{int(math.Round(w * 10)), int(math.Round(h * 10))}] = true
				if math.Abs(h-4) < 0.01 && w > 20 {
					bar = 4 * w
				}
			}
		}
		var feet float64
		for _, s := range texts(t, svg) {
			var per float64
			if n, _ := fmt.Sscanf(s, "Scale 1 in = %g ft", &per); n == 1 {
				feet = per
			}
		}
		if feet == 0 || math.Abs(bar-144) > 0.1 {
			t.Errorf("%s: bar of %v points, want two inches of %v ft each", name, bar, feet)
		}
		perMetre := 72 / (feet * 0.3048)
		want := map[string][2]float64{}
		if p.Given {
			want["plot"] = [2]float64{p.High.X - p.Low.X, p.High.Y - p.Low.Y}
		}
		for i := range p.Tents {
			low, high := p.Tents[i].Outline.Box()
			want[p.Tents[i].Label()] = [2]float64{high.X - low.X, high.Y - low.Y}
		}
		for what, size := range want {
			if !near(shapes, size[0]*perMetre*10, size[1]*perMetre*10) {
				t.Errorf("%s: no rectangle of %v by %v m at the scale is drawn for %s", name, size[0], size[1], what)
			}
		}
	}
}

func near(shapes map[[2]int]bool, w, h float64) bool {
	for s := range shapes {
		if math.Abs(float64(s[0])-w) < 1 && math.Abs(float64(s[1])-h) < 1 {
			return true
		}
	}
	return false
}

// rectangle is the size of a path of four corners.
func rectangle(path string) (w, h float64, ok bool) {
	var x, y []float64
	for _, p := range strings.FieldsFunc(path, func(r rune) bool { return r == 'M' || r == 'L' }) {
		var a, b float64
		if n, _ := fmt.Sscanf(p, "%g,%g", &a, &b); n != 2 {
			return 0, 0, false
		}
		x, y = append(x, a), append(y, b)
	}
	if len(x) != 4 {
		return 0, 0, false
	}
	return slices.Max(x) - slices.Min(x), slices.Max(y) - slices.Min(y), true
}

// The picture can be read, is as large as the drawing, small as a file, and the
// same each time.
func TestPNG(t *testing.T) {
	for name, p := range plans(t) {
		data, err := draw.PNG(p)
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		if size := img.Bounds().Size(); size != image.Pt(10*draw.Dots, 65*draw.Dots/10) {
			t.Errorf("%s: %v dots, want 10 by 6.5 in", name, size)
		}
		if len(data) > 60_000 {
			t.Errorf("%s: %d bytes, want at most 60 kB in each workbook", name, len(data))
		}
		dark, reddish := 0, 0
		for y := range img.Bounds().Dy() {
			for x := range img.Bounds().Dx() {
				r, g, b, _ := img.At(x, y).RGBA()
				if r < 0x4000 && g < 0x4000 && b < 0x4000 {
					dark++
				} else if r > b+0x2000 {
					reddish++
				}
			}
		}
		if dark < 5000 || dark > 200_000 || (reddish > 0) != (len(p.Faults) > 0) {
			t.Errorf("%s: %d dark dots and %d red ones, of %d faults", name, dark, reddish, len(p.Faults))
		}
		if again, _ := draw.PNG(p); !bytes.Equal(data, again) {
			t.Errorf("%s: two pictures of one plan differ", name)
		}
	}
}

// A plan of any size is drawn, at some round scale.
func TestAnySize(t *testing.T) {
	for _, sys := range []unit.System{unit.Imperial, unit.Metric} {
		for _, size := range []float64{0.5, 3, 80, 1e3, 1e5, 1e7} {
			p := demoPlan(t, "garden")
			p.Units, p.High = sys, layout.Point{X: p.Low.X + size, Y: p.Low.Y + size}
			svg, err := draw.SVG(p)
			if err != nil || !strings.Contains(string(svg), "Scale 1") || strings.Contains(string(svg), "NaN") {
				t.Errorf("%v m, %v: error %v, or no scale", size, sys, err)
			}
		}
	}
}

func BenchmarkPNG(b *testing.B) {
	p := demoPlan(b, "fairground")
	var size int
	for b.Loop() {
		data, err := draw.PNG(p)
		if err != nil {
			b.Fatal(err)
		}
		size = len(data)
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N), "ms/drawing")
	b.ReportMetric(float64(size)/1000, "kB")
}

func BenchmarkSVG(b *testing.B) {
	p := demoPlan(b, "fairground")
	var size int
	for b.Loop() {
		data, err := draw.SVG(p)
		if err != nil {
			b.Fatal(err)
		}
		size = len(data)
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N), "ms/drawing")
	b.ReportMetric(float64(size)/1000, "kB")
}
