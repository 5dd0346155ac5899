package calc

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"os"
	"regexp"
	"slices"
	"strconv"
)

// Edit is what a person types into a plain cell: a string, int, float64 or
// bool, or nil to clear it.
type Edit struct {
	Sheet string
	Ref   string
	Value any
}

// EditCells copies the workbook src to dst with the edits made in the sheets'
// XML. Cells keep their style and all other bytes of the sheets stay. A cell
// that the file does not have, or that holds a formula, is an error.
func EditCells(src, dst string, edits []Edit) error {
	data, err := os.ReadFile(src)
	if err != nil {
		return err
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return fmt.Errorf("%s: %w", src, err)
	}
	places, err := sheetParts(z)
	if err != nil {
		return fmt.Errorf("%s: %w", src, err)
	}
	byPart := map[string][]Edit{}
	for _, e := range edits {
		i := slices.IndexFunc(places, func(p place) bool { return p.sheet == e.Sheet })
		if i < 0 {
			return fmt.Errorf("%s: no sheet %q", src, e.Sheet)
		}
		byPart[places[i].part] = append(byPart[places[i].part], e)
	}
	var out bytes.Buffer
	if err := copyParts(&out, z, byPart); err != nil {
		return fmt.Errorf("%s: %w", src, err)
	}
	return os.WriteFile(dst, out.Bytes(), 0o644)
}

// copyParts writes all parts of the file, those of byPart with their edits;
// the others are copied as they are packed.
func copyParts(to io.Writer, z *zip.Reader, byPart map[string][]Edit) error {
	w := zip.NewWriter(to)
	for _, f := range z.File {
		edits := byPart[f.Name]
		if len(edits) == 0 {
			if err := w.Copy(f); err != nil {
				return err
			}
			continue
		}
		r, err := f.Open()
		if err != nil {
			return err
		}
		text, err := io.ReadAll(r)
		r.Close()
		if err != nil {
			return err
		}
		for _, e := range edits {
			if text, err = e.apply(text); err != nil {
				return err
			}
		}
		p, err := w.Create(f.Name)
		if err != nil {
			return err
		}
		if _, err := p.Write(text); err != nil {
			return err
		}
	}
	return w.Close()
}

// styleAttr is the cell's look, the one attribute that an edit keeps.
var styleAttr = regexp.MustCompile(`\ss="(\d+)"`)

// apply replaces the one cell in the text of a sheet.
func (e Edit) apply(text []byte) ([]byte, error) {
	cell := regexp.MustCompile(`(?s)<c(\s[^>]*?)?\sr="` + regexp.QuoteMeta(e.Ref) + `"([^>]*?)(/>|>(.*?)</c>)`)
	at := cell.FindSubmatchIndex(text)
	if at == nil {
		return nil, fmt.Errorf("%s!%s: the file has no such cell", e.Sheet, e.Ref)
	}
	if bytes.Contains(text[at[0]:at[1]], []byte("<f")) {
		return nil, fmt.Errorf("%s!%s: the cell holds a formula; expected one that people type into", e.Sheet, e.Ref)
	}
	style := ""
	head := text[at[0]:at[1]]
	head = head[:bytes.IndexByte(head, '>')]
	if m := styleAttr.FindSubmatch(head); m != nil {
		style = ` s="` + string(m[1]) + `"`
	}
	body, err := e.body()
	if err != nil {
		return nil, err
	}
	return slices.Concat(text[:at[0]], []byte(`<c r="`+e.Ref+`"`+style+body), text[at[1]:]), nil
}

// body is the type attribute and content of the edited cell.
func (e Edit) body() (string, error) {
	switch v := e.Value.(type) {
	case nil:
		return `/>`, nil
	case int:
		return `><v>` + strconv.Itoa(v) + `</v></c>`, nil
	case float64:
		return `><v>` + strconv.FormatFloat(v, 'g', -1, 64) + `</v></c>`, nil
	case bool:
		if v {
			return ` t="b"><v>1</v></c>`, nil
		}
		return ` t="b"><v>0</v></c>`, nil
	case string:
		var b bytes.Buffer
		if err := xml.EscapeText(&b, []byte(v)); err != nil {
			return "", err
		}
		return ` t="inlineStr"><is><t xml:space="preserve">` + b.String() + `</t></is></c>`, nil
	}
	return "", fmt.Errorf("%s!%s: value of type %T; expected a string, int, float64, bool or nil", e.Sheet, e.Ref, e.Value)
}
