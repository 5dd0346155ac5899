package xlsx

import (
	"math"
	"strconv"
	"testing"

	"tentwright/workbook/sheet"
)

// luminance is the relative luminance of a colour, WCAG 2.2.
func luminance(t *testing.T, rgb string) float64 {
	t.Helper()
	n, err := strconv.ParseUint(rgb, 16, 32)
	if err != nil || len(rgb) != 6 {
		t.Fatalf("colour %q; expected six hex digits", rgb)
	}
	part := func(v uint64) float64 {
		c := float64(v&0xff) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*part(n>>16) + 0.7152*part(n>>8) + 0.0722*part(n)
}

// Every role has a look whose words stand out by 7:1 (WCAG 2.2, 1.4.6
// enhanced contrast) from its fill and, when it has none, from paper.
func TestRolesReadWell(t *testing.T) {
	for r := sheet.Plain; r <= sheet.Key; r++ {
		k, ok := lookOf[r]
		if !ok || k.size < 8 {
			t.Errorf("role %d: size %g; expected a look of 8 points or more", r, k.size)
			continue
		}
		words, ground := ink, white
		if k.ink != "" {
			words = k.ink
		}
		if k.fill != "" {
			ground = k.fill
		}
		a, b := luminance(t, words), luminance(t, ground)
		if ratio := (max(a, b) + 0.05) / (min(a, b) + 0.05); ratio < 7 {
			t.Errorf("role %d: contrast %.1f of %s on %s; expected 7 or more", r, ratio, words, ground)
		}
	}
}

// A colour is never the only sign: what warns is bold, what may be typed into
// has a border.
func TestRolesHaveASecondSign(t *testing.T) {
	if !lookOf[sheet.Warn].bold {
		t.Error("a warning is not bold")
	}
	for r := sheet.Plain; r <= sheet.Key; r++ {
		if !r.Locked() && lookOf[r].box == 0 {
			t.Errorf("role %d may be typed into but has no border", r)
		}
	}
}

func TestEveryFormatHasACode(t *testing.T) {
	l := &looks{money: "#,##0.00"}
	for f := sheet.Text; f <= sheet.Factor; f++ {
		if l.code(f) == "" {
			t.Errorf("format %d has no code", f)
		}
	}
}

// The end of a day is a whole one, which must show as 24:00 and not as 00:00.
func TestClockCountsBeyondADay(t *testing.T) {
	if got := (&looks{}).code(sheet.Clock); got != "[hh]:mm" {
		t.Errorf("times are shown by %q; want [hh]:mm", got)
	}
}

func TestMoneyCode(t *testing.T) {
	// Minor digits: ISO 4217 (USD 2, JPY 0, TND 3).
	for _, c := range []struct {
		currency sheet.Currency
		want     string
	}{
		{sheet.Currency{Symbol: "$", Minor: 2}, `"$"#,##0.00;-"$"#,##0.00`},
		{sheet.Currency{Symbol: "¥", Minor: 0}, `"¥"#,##0;-"¥"#,##0`},
		{sheet.Currency{Symbol: "TND", Minor: 3}, `"TND "#,##0.000;-"TND "#,##0.000`},
		{sheet.Currency{Symbol: `a"b`, Minor: 1}, `"ab "#,##0.0;-"ab "#,##0.0`},
		{sheet.Currency{Minor: 2}, "#,##0.00"},
	} {
		if got := moneyCode(c.currency); got != c.want {
			t.Errorf("%+v: got %s, want %s", c.currency, got, c.want)
		}
	}
}

func TestRowHeight(t *testing.T) {
	long := "Frame tent 20 x 40 ft, white, with four window walls and a double door"
	wrap := sheet.Style{Role: sheet.Body, Wrap: true}
	s := &sheet.Sheet{Columns: []sheet.Column{{Width: 20}, {Width: 60}}, Merges: []sheet.Range{{R1: 5, C1: 1, R2: 5, C2: 2}}}
	for i, c := range []struct {
		row  sheet.Row
		want float64
	}{
		{sheet.Row{Cells: []sheet.Cell{{Value: "short", Style: wrap}}}, 0},
		{sheet.Row{Cells: []sheet.Cell{{Value: long, Style: wrap}}}, 39}, // three lines of 12, and 3
		{sheet.Row{Cells: []sheet.Cell{{Value: long}}}, 0},               // runs over the next cell
		{sheet.Row{Height: 20, Cells: []sheet.Cell{{Value: long, Style: wrap}}}, 20},
		{sheet.Row{Cells: []sheet.Cell{{Value: long, Style: wrap}}}, 0}, // merged: 80 characters wide
		{sheet.Row{Cells: []sheet.Cell{{Value: "x", Style: sheet.Style{Role: sheet.Title}}}}, 23},
	} {
		if got := height(s, newSpans(s), i+1, c.row); got != c.want {
			t.Errorf("row %d: %g points, want %g", i+1, got, c.want)
		}
	}
}

func TestBandKeepsWords(t *testing.T) {
	got := band("Fernhollow & Sons", "Page &P of &N")
	if want := `&L&8&"Arial,Regular"Fernhollow && Sons&R&8&"Arial,Regular"Page &P of &N`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got := band("", ""); got != "" {
		t.Errorf("empty band: got %s", got)
	}
}
