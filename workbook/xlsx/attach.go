package xlsx

import (
	"bytes"
	"fmt"
	"image"
	_ "image/jpeg" // pictures may be of this kind
	_ "image/png"  // and of this
	"strings"

	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
)

// author stands on notes and in the properties of the file.
const author = "tentwright"

// escapeXML is for the parts of a validation that go into the file unescaped.
var escapeXML = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;")

// kindNames are the names of the validation kinds in the file.
var kindNames = map[sheet.Kind]string{
	sheet.List: "list", sheet.WholeNumber: "whole", sheet.Decimal: "decimal",
	sheet.Date: "date", sheet.TextLen: "textLength", sheet.Custom: "custom",
}

// validations sets what may be typed where. The error style is always set: a
// rule without it lets everything pass.
func (x *writer) validations(s *sheet.Sheet) error {
	for _, v := range s.Validations {
		d := excelize.NewDataValidation(v.AllowBlank)
		d.Sqref = v.Range.String()
		d.Type = kindNames[v.Kind]
		switch v.Kind {
		case sheet.List:
			d.Formula1 = escapeXML.Replace(listSource(v.Source))
		case sheet.Custom:
			d.Formula1 = escapeXML.Replace(v.Source)
		default:
			bounds(d, v)
		}
		message := v.Error
		if message == "" {
			message = v.Prompt
		}
		d.SetError(excelize.DataValidationErrorStyleStop, sheet.Clean(v.Title), sheet.Clean(message))
		d.SetInput(sheet.Clean(v.Title), sheet.Clean(v.Prompt))
		if err := x.file.AddDataValidation(s.Name, d); err != nil {
			return fmt.Errorf("validation %s: %w", v.Range, err)
		}
	}
	return nil
}

// listSource is a defined name as it is, or the quoted words of an inline list.
func listSource(source string) string {
	if !strings.Contains(source, ",") {
		return source
	}
	return `"` + strings.ReplaceAll(source, `"`, `""`) + `"`
}

// bounds sets the limits of a number, date or length. A single limit takes the
// first place whichever it is.
func bounds(d *excelize.DataValidation, v sheet.Validation) {
	d.Formula1, d.Formula2 = escapeXML.Replace(v.Min), escapeXML.Replace(v.Max)
	switch {
	case v.Max == "":
		d.Operator = "greaterThanOrEqual"
	case v.Min == "":
		d.Operator = "lessThanOrEqual"
		d.Formula1, d.Formula2 = d.Formula2, ""
	default:
		d.Operator = "between"
	}
}

// highlights sets the conditional looks; of two on one cell the earlier wins.
func (x *writer) highlights(s *sheet.Sheet) error {
	for _, h := range s.Highlights {
		id, err := x.looks.conditional(h.Role)
		if err != nil {
			return err
		}
		rule := []excelize.ConditionalFormatOptions{{Type: "formula", Criteria: h.Formula, Format: &id}}
		if err := x.file.SetConditionalFormat(s.Name, h.Range.String(), rule); err != nil {
			return fmt.Errorf("highlight %s: %w", h.Range, err)
		}
	}
	return nil
}

// links makes cells jump within the book; their words are underlined.
func (x *writer) links(s *sheet.Sheet) error {
	for _, l := range s.Links {
		tip := sheet.Clean(l.Tip)
		var opts []excelize.HyperlinkOpts
		if tip != "" {
			opts = append(opts, excelize.HyperlinkOpts{Tooltip: &tip})
		}
		if err := x.file.SetCellHyperLink(s.Name, sheet.Ref(l.Row, l.Col), l.Target, "Location", opts...); err != nil {
			return fmt.Errorf("link %s: %w", sheet.Ref(l.Row, l.Col), err)
		}
	}
	return nil
}

// picture places the sheet's image. It moves with its cell but keeps its size
// when people change widths and heights.
func (x *writer) picture(s *sheet.Sheet) error {
	p := s.Picture
	if p == nil {
		return nil
	}
	c, _, err := image.DecodeConfig(bytes.NewReader(p.Data))
	if err != nil {
		return fmt.Errorf("picture: %w; expected a PNG or JPEG image", err)
	}
	scale := 1.0
	if p.MaxWidth > 0 {
		scale = min(scale, float64(p.MaxWidth)/float64(c.Width))
	}
	if p.MaxHeight > 0 {
		scale = min(scale, float64(p.MaxHeight)/float64(c.Height))
	}
	return x.file.AddPictureFromBytes(s.Name, sheet.Ref(p.Row, p.Col), &excelize.Picture{
		Extension: p.Ext, File: p.Data,
		Format: &excelize.GraphicOptions{
			AltText: sheet.Clean(p.Alt), ScaleX: scale, ScaleY: scale, Positioning: "oneCell", LockAspectRatio: true,
		},
	})
}
