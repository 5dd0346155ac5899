package draw

import (
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	vgfont "gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"
)

// raster is a picture in which letters are filled as outlines: sharper, and in
// half the time of the library's own way by a small picture of each letter.
type raster struct {
	*vgimg.Canvas
	buf *sfnt.Buffer // of the font's reader
}

// FillString draws words from a point on their base line.
func (r raster) FillString(f vgfont.Face, at vg.Point, text string) {
	var (
		buf   = r.buf
		out   = make(vg.Path, 0, 24*len(text)) // about as many lines as letters have
		last  sfnt.GlyphIndex
		em    = fixed.Int26_6(f.Face.UnitsPerEm()) // outlines in the font's own units
		scale = f.Font.Size / vg.Length(em)
	)
	for i, letter := range []rune(text) {
		glyph, err := f.Face.GlyphIndex(buf, letter)
		if err != nil {
			continue
		}
		if kern, err := f.Face.Kern(buf, last, glyph, em, font.HintingNone); err == nil && i > 0 {
			at.X += vg.Length(kern) * scale
		}
		if lines, err := f.Face.LoadGlyph(buf, glyph, em, nil); err == nil {
			outline(&out, lines, at, scale)
		}
		if wide, err := f.Face.GlyphAdvance(buf, glyph, em, font.HintingNone); err == nil {
			at.X += vg.Length(wide) * scale
		}
		last = glyph
	}
	r.Fill(out)
}

// outline adds the lines of a letter to a path; those of a font count downward.
func outline(out *vg.Path, lines sfnt.Segments, at vg.Point, scale vg.Length) {
	place := func(p fixed.Point26_6) vg.Point {
		return vg.Point{X: at.X + vg.Length(p.X)*scale, Y: at.Y - vg.Length(p.Y)*scale}
	}
	for i, s := range lines {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				out.Close()
			}
			out.Move(place(s.Args[0]))
		case sfnt.SegmentOpLineTo:
			out.Line(place(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			out.QuadTo(place(s.Args[0]), place(s.Args[1]))
		case sfnt.SegmentOpCubeTo:
			out.CubeTo(place(s.Args[0]), place(s.Args[1]), place(s.Args[2]))
		}
	}
	if len(lines) > 0 {
		out.Close()
	}
}
