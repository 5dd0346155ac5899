package revise_test

import (
	"bytes"
	"image"
	"image/png"
	"testing"

	"github.com/xuri/excelize/v2"

	"tentwright/workbook"
	"tentwright/workbook/xlsx"
)

// A sheet of the office's own comes along with values, formulas, looks, widths,
// merged cells, remarks and pictures, through two revisions.
func TestAddedSheetComesAlong(t *testing.T) {
	data := officeSheet(t)
	s := opened(t, data)
	s.says(t)
	for n := 1; n <= 2; n++ {
		_, next := s.next(t)
		next.says(t)
		checkPhotos(t, next.data)
		typeInto(t, next.found, typed{"job_guests", 0, num(float64(20 + n))})
		next = reopened(t, next)
		s = next
	}
}

// officeSheet is a workbook with one edit and a sheet of the office's own.
func officeSheet(t *testing.T) []byte {
	t.Helper()
	var out, picture bytes.Buffer
	if err := xlsx.Write(&out, workbook.Layout(demoQuote(t, "garden"))); err != nil {
		t.Fatal(err)
	}
	if err := png.Encode(&picture, image.NewGray(image.Rect(0, 0, 40, 30))); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&out)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	bold, _ := f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}, NumFmt: 10})
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	_, err = f.NewSheet("Photos")
	must(err)
	must(f.SetCellValue("Photos", "A1", "=not a formula"))
	must(f.SetCellValue("Photos", "A2", 0.25))
	must(f.SetCellStyle("Photos", "A2", "A2", bold))
	must(f.SetCellFormula("Photos", "A3", "A2*4"))
	must(f.SetCellFormula("Photos", "A4", "rate_waiver*2"))
	must(f.SetCellBool("Photos", "A5", true))
	must(f.SetColWidth("Photos", "A", "A", 33))
	must(f.MergeCell("Photos", "B1", "C2"))
	must(f.AddComment("Photos", excelize.Comment{Cell: "A2", Author: "office", Text: "a quarter"}))
	must(f.AddPictureFromBytes("Photos", "D4", &excelize.Picture{Extension: ".png", File: picture.Bytes(), Format: &excelize.GraphicOptions{AltText: "the gate"}}))
	must(f.SetCellValue("Rates", "C8", 3))
	saved, err := f.WriteToBuffer()
	must(err)
	return saved.Bytes()
}

// checkPhotos looks at the office's sheet in a later revision.
func checkPhotos(t *testing.T, data []byte) {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	text, _ := f.GetCellValue("Photos", "A1")
	quarter, _ := f.GetCellValue("Photos", "A2")
	sum, _ := f.GetCellFormula("Photos", "A3")
	waiver, _ := f.GetCellFormula("Photos", "A4")
	width, _ := f.GetColWidth("Photos", "A")
	merges, _ := f.GetMergeCells("Photos")
	remarks, _ := f.GetComments("Photos")
	pictures, _ := f.GetPictures("Photos", "D4")
	id, _ := f.GetCellStyle("Photos", "A2")
	style, _ := f.GetStyle(id)
	if text != "=not a formula" || quarter != "25.00%" || sum != "A2*4" || waiver != "rate_waiver*2" || width != 33 || len(merges) != 1 || len(remarks) != 1 {
		t.Errorf("the sheet holds %q, %q, %q, %q, a width of %v, %d merged cells, %d remarks", text, quarter, sum, waiver, width, len(merges), len(remarks))
	}
	if len(pictures) != 1 || pictures[0].Format == nil || pictures[0].Format.AltText != "the gate" {
		t.Errorf("pictures %+v", pictures)
	}
	if style == nil || style.Font == nil || !style.Font.Bold {
		t.Errorf("the look is %+v", style)
	}
}
