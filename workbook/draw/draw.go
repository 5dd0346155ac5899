// Package draw draws a site plan to scale, as PNG and as SVG from one drawing.
//
// Everything is told by shape and words, so that a grey print says as much as
// the screen; red only helps.
package draw

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"regexp"
	"strings"

	"golang.org/x/image/font/sfnt"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"

	"tentwright/quote/layout"
)

// Size of the drawing, which prints at its scale on landscape letter and A4
// alike.
const (
	Width  = 10 * vg.Inch
	Height = 6.5 * vg.Inch
)

// Dots is the resolution of the picture in dots per inch: small letters can be
// read on paper, and the picture stays small.
const Dots = 116

// SVG is the plan as a scalable drawing.
func SVG(p *layout.Plan) ([]byte, error) {
	c := vgsvg.New(Width, Height)
	drawPlan(c, p)
	var out bytes.Buffer
	if _, err := c.WriteTo(&out); err != nil {
		return nil, err
	}
	return finishSVG(out.Bytes(), p), nil
}

// generator is the remark by which the drawing library names itself; the
// drawing's own name takes its place.
var generator = regexp.MustCompile(`(?s)<!--.*?-->\n`)

// finishSVG takes the library's remark out, says what the drawing is, makes its
// ground white, and names fonts that every system has one of. User's words hold
// no quotation mark here, so that a style is never found in them.
func finishSVG(svg []byte, p *layout.Plan) []byte {
	text := generator.ReplaceAllString(string(svg), "")
	head, rest, _ := strings.Cut(text, "<g")
	rest = strings.ReplaceAll(rest, `style="font-family:Liberation Sans;font-variant:normal;`, `style="font-family:'Liberation Sans',Arial,Helvetica,sans-serif;`)
	title := "<title>" + escape(clean(p.Title())) + "</title>\n<desc>" + escape(clean(p.Words())) + "</desc>\n<rect width=\"100%\" height=\"100%\" fill=\"#FFFFFF\"/>\n"
	return []byte(head + title + "<g" + rest)
}

// escape makes words fit between the marks of XML.
func escape(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;").Replace(s)
}

// PNG is the plan as a picture of few colours.
func PNG(p *layout.Plan) ([]byte, error) {
	c := vgimg.NewWith(vgimg.UseWH(Width, Height), vgimg.UseDPI(Dots))
	drawPlan(raster{c, new(sfnt.Buffer)}, p)
	var out bytes.Buffer
	enc := png.Encoder{CompressionLevel: png.BestSpeed}
	err := enc.Encode(&out, fewColours(c.Image().(*image.RGBA)))
	return out.Bytes(), err
}

// Colours of the picture: greys from black to white, then reds. More than 16, so
// that one dot is one byte, which is written three times as fast.
const (
	greys = 16
	reds  = 8
)

// palette is the colours of the picture.
var palette = func() color.Palette {
	var p color.Palette
	for i := range greys {
		p = append(p, color.Gray{uint8(i * 255 / (greys - 1))})
	}
	for i := range reds {
		y := i * 255 / reds
		p = append(p, color.RGBA{uint8(192 + y/4), uint8(y), uint8(y), 255})
	}
	return p
}()

// fewColours takes each dot to the nearest colour of the palette. All is drawn
// in greys and one red on white, so that the blue part says how dark a dot is.
func fewColours(img *image.RGBA) *image.Paletted {
	var grey, red [256]uint8
	for i := range 256 {
		grey[i] = uint8((i*(greys-1) + 127) / 255)
		red[i] = uint8(greys + min(reds-1, (i*reds+127)/255))
	}
	out := image.NewPaletted(img.Rect, palette)
	from := img.Pix[:4*len(out.Pix)]
	for i := range out.Pix {
		r, b := from[4*i], from[4*i+2]
		if int(r)-int(b) > 24 {
			out.Pix[i] = red[b]
		} else {
			out.Pix[i] = grey[b]
		}
	}
	return out
}
