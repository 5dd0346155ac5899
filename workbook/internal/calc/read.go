package calc

import (
	"archive/zip"
	"encoding/xml"
	"fmt"
	"io"
	"path"
	"regexp"
	"strconv"
	"strings"
)

// Kind is the type a cell's value has in the file.
type Kind int

// The kinds. Text is a string, Fault an error value such as "#REF!".
const (
	Empty Kind = iota
	Number
	Text
	Bool
	Fault
)

// Cell is one cell as a file holds it. Text is the value as written; Number is
// set for Number and Bool. HasValue is false for a formula without a stored
// result.
type Cell struct {
	Kind     Kind
	Text     string
	Number   float64
	Formula  string
	HasValue bool
}

// xmlText is a text of a cell: plain, or in runs of differing looks.
type xmlText struct {
	T []string `xml:"t"`
	R []struct {
		T []string `xml:"t"`
	} `xml:"r"`
}

// String is the text without its looks.
func (x *xmlText) String() string {
	var b strings.Builder
	b.WriteString(strings.Join(x.T, ""))
	for _, r := range x.R {
		b.WriteString(strings.Join(r.T, ""))
	}
	return b.String()
}

// The parts of the file as far as they are read. Pointers tell an element that
// is missing from one that is empty.
type xmlCell struct {
	Ref     string   `xml:"r,attr"`
	Type    string   `xml:"t,attr"`
	Formula *string  `xml:"f"`
	Value   *string  `xml:"v"`
	Inline  *xmlText `xml:"is"`
}

type xmlSheet struct {
	Rows []struct {
		Cells []xmlCell `xml:"c"`
	} `xml:"sheetData>row"`
}

type xmlBook struct {
	Sheets []struct {
		Name string `xml:"name,attr"`
		ID   string `xml:"http://schemas.openxmlformats.org/officeDocument/2006/relationships id,attr"`
	} `xml:"sheets>sheet"`
}

type xmlRels struct {
	Rels []struct {
		ID     string `xml:"Id,attr"`
		Target string `xml:"Target,attr"`
	} `xml:"Relationship"`
}

type xmlStrings struct {
	Items []xmlText `xml:"si"`
}

// ReadCells reads every cell that holds a value or a formula: sheet name, then
// cell reference such as "B7". It errs on a file that is no workbook.
func ReadCells(file string) (map[string]map[string]Cell, error) {
	z, err := zip.OpenReader(file)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	defer z.Close()
	places, err := sheetParts(&z.Reader)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	var shared xmlStrings
	if has(&z.Reader, sharedPart) {
		if err := decode(&z.Reader, sharedPart, &shared); err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
	}
	out := map[string]map[string]Cell{}
	for _, p := range places {
		var s xmlSheet
		if err := decode(&z.Reader, p.part, &s); err != nil {
			return nil, fmt.Errorf("%s: sheet %q: %w", file, p.sheet, err)
		}
		cells := map[string]Cell{}
		for _, r := range s.Rows {
			for _, c := range r.Cells {
				v, err := c.read(shared.Items)
				if err != nil {
					return nil, fmt.Errorf("%s: %s!%s: %w", file, p.sheet, c.Ref, err)
				}
				if v.HasValue || v.Formula != "" {
					cells[c.Ref] = v
				}
			}
		}
		out[p.sheet] = cells
	}
	return out, nil
}

// Where the list of sheets and the shared texts stand, in the files of all
// programs that tests meet.
const (
	bookPart   = "xl/workbook.xml"
	relsPart   = "xl/_rels/workbook.xml.rels"
	sharedPart = "xl/sharedStrings.xml"
)

// place is a sheet and the part of the file that holds it.
type place struct{ sheet, part string }

// sheetParts lists the sheets in the order of their tabs.
func sheetParts(z *zip.Reader) ([]place, error) {
	var book xmlBook
	var rels xmlRels
	if err := decode(z, bookPart, &book); err != nil {
		return nil, err
	}
	if err := decode(z, relsPart, &rels); err != nil {
		return nil, err
	}
	target := map[string]string{}
	for _, r := range rels.Rels {
		if strings.HasPrefix(r.Target, "/") {
			target[r.ID] = strings.TrimPrefix(r.Target, "/")
		} else {
			target[r.ID] = path.Join("xl", r.Target)
		}
	}
	var out []place
	for _, s := range book.Sheets {
		part, ok := target[s.ID]
		if !ok {
			return nil, fmt.Errorf("sheet %q has no part", s.Name)
		}
		out = append(out, place{s.Name, part})
	}
	return out, nil
}

// read turns the stored form of a cell into its value.
func (c *xmlCell) read(shared []xmlText) (Cell, error) {
	var out Cell
	if c.Formula != nil {
		out.Formula = *c.Formula
	}
	if c.Type == "inlineStr" && c.Inline != nil {
		out.Kind, out.HasValue, out.Text = Text, true, unescape(c.Inline.String())
		return out, nil
	}
	if c.Value == nil {
		return out, nil
	}
	out.HasValue, out.Text = true, *c.Value
	switch c.Type {
	case "s":
		i, err := strconv.Atoi(*c.Value)
		if err != nil || i < 0 || i >= len(shared) {
			return out, fmt.Errorf("shared text %q; expected 0 to %d", *c.Value, len(shared)-1)
		}
		out.Kind, out.Text = Text, unescape(shared[i].String())
		return out, nil
	case "str":
		out.Kind, out.Text = Text, unescape(*c.Value)
		return out, nil
	case "e":
		out.Kind = Fault
		return out, nil
	case "b":
		out.Kind = Bool
	default:
		out.Kind = Number
	}
	n, err := strconv.ParseFloat(*c.Value, 64)
	if err != nil {
		return out, fmt.Errorf("value %q; expected a number", *c.Value)
	}
	out.Number = n
	return out, nil
}

var escaped = regexp.MustCompile(`_x[0-9A-Fa-f]{4}_`)

// unescape turns the file's _xHHHH_ back into the character it stands for.
func unescape(s string) string {
	if !strings.Contains(s, "_x") {
		return s
	}
	return escaped.ReplaceAllStringFunc(s, func(m string) string {
		n, err := strconv.ParseUint(m[2:6], 16, 16)
		if err != nil {
			return m
		}
		return string(rune(n))
	})
}

// has reports whether the file has a part; not every program writes shared
// texts.
func has(z *zip.Reader, name string) bool {
	f, err := z.Open(name)
	if err != nil {
		return false
	}
	f.Close()
	return true
}

// decode reads one part into a value.
func decode(z *zip.Reader, name string, into any) error {
	f, err := z.Open(name)
	if err != nil {
		return err
	}
	defer f.Close()
	data, err := io.ReadAll(f)
	if err != nil {
		return err
	}
	if err := xml.Unmarshal(data, into); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}
