package workbook_test

import (
	"archive/zip"
	"encoding/xml"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// figures is a workbook as a file holds it, reached by its defined names.
type figures struct {
	cells map[string]map[string]calc.Cell
	book  *sheet.Book // names only
}

// readFigures reads a file and fails for any cell with an error value.
func readFigures(t *testing.T, file string) figures {
	t.Helper()
	cells, err := calc.ReadCells(file)
	if err != nil {
		t.Fatal(err)
	}
	var bad []string
	for name, all := range cells {
		for ref, c := range all {
			if c.Kind == calc.Fault {
				bad = append(bad, fmt.Sprintf("%s!%s =%s gives %s", name, ref, c.Formula, c.Text))
			}
		}
	}
	if len(bad) > 0 {
		slices.Sort(bad)
		t.Errorf("%s: %d cells with error values:\n  %s", file, len(bad), strings.Join(bad[:min(len(bad), mostShown)], "\n  "))
	}
	return figures{cells, &sheet.Book{Names: readNames(t, file)}}
}

// readNames reads the defined names of a file.
func readNames(t *testing.T, file string) []sheet.Name {
	t.Helper()
	z, err := zip.OpenReader(file)
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	f, err := z.Open("xl/workbook.xml")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var x struct {
		Names []struct {
			Name   string `xml:"name,attr"`
			Refers string `xml:",chardata"`
		} `xml:"definedNames>definedName"`
	}
	if err := xml.NewDecoder(f).Decode(&x); err != nil {
		t.Fatal(err)
	}
	var names []sheet.Name
	for _, n := range x.Names {
		names = append(names, sheet.Name{Name: n.Name, Refers: n.Refers})
	}
	return names
}

// cellName is a cell such as "$AB$12".
var cellName = regexp.MustCompile(`^\$([A-Z]+)\$([0-9]+)$`)

// placeOf finds the sheet and the cells that a defined name stands for.
func placeOf(b *sheet.Book, name string) (sheetName string, at sheet.Range, err error) {
	for _, n := range b.Names {
		if n.Name != name {
			continue
		}
		cut := strings.LastIndex(n.Refers, "!")
		from, to, more := strings.Cut(n.Refers[cut+1:], ":")
		if !more {
			to = from
		}
		a, b := cellName.FindStringSubmatch(from), cellName.FindStringSubmatch(to)
		if cut < 0 || a == nil || b == nil {
			return "", at, fmt.Errorf("name %q refers to %q; cells of one sheet were expected", name, n.Refers)
		}
		at.C1, at.C2 = columnOf(a[1]), columnOf(b[1])
		at.R1, _ = strconv.Atoi(a[2])
		at.R2, _ = strconv.Atoi(b[2])
		return strings.ReplaceAll(strings.Trim(n.Refers[:cut], "'"), "''", "'"), at, nil
	}
	return "", at, fmt.Errorf("no name %q", name)
}

// columnOf is the number of a column by its letters.
func columnOf(letters string) int {
	n := 0
	for _, r := range letters {
		n = 26*n + int(r-'A') + 1
	}
	return n
}

// at is the number in a named cell; a missing name is a number that no figure
// equals.
func (f figures) at(name string) float64 {
	place, at, err := placeOf(f.book, name)
	if err != nil {
		return -1e300
	}
	return f.cells[place][sheet.Ref(at.R1, at.C1)].Number
}

// column pairs the texts of one named range with the numbers that stand
// beside them in another; numbers of one text are added up.
func (f figures) column(keys, values string) map[string]float64 {
	place, k, err := placeOf(f.book, keys)
	_, v, err2 := placeOf(f.book, values)
	if err != nil || err2 != nil {
		return nil
	}
	found := map[string]float64{}
	for row := k.R1; row <= k.R2; row++ {
		if key := f.cells[place][sheet.Ref(row, k.C1)]; key.Text != "" {
			found[key.Text] += f.cells[place][sheet.Ref(row, v.C1)].Number
		}
	}
	return found
}
