package listing

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tentwright/catalog/diag"
)

// headingRows is how far down the heading is looked for.
const headingRows = 100

// columns is where the mapped columns of a table are, from 0.
type columns struct {
	heading int // row of the headings
	key     int
	size    int // -1: the key has it
	fields  []int
}

// wanted is all headings of the mapping: the key, its size if any, the fields.
func (m *Mapping) wanted() []string {
	all := []string{m.Key}
	if m.KeySize != "" {
		all = append(all, m.KeySize)
	}
	for i := range m.Fields {
		all = append(all, m.Fields[i].Heading)
	}
	return all
}

// locate finds the first row that holds every heading of the mapping.
func (t *Table) locate(m *Mapping) (columns, *diag.Problem) {
	want := m.wanted()
	best, most := 0, -1
	for i := range t.rows[:min(len(t.rows), headingRows)] {
		have := t.headings(i)
		found := 0
		for _, h := range want {
			if slices.Contains(have, folded(h)) {
				found++
			}
		}
		if found > most {
			best, most = i, found
		}
		if found == len(want) {
			return t.columns(m, i, have)
		}
	}
	return columns{}, t.noHeading(want, best, most)
}

// headings is the texts of a row, folded.
func (t *Table) headings(row int) []string {
	texts := make([]string, len(t.rows[row].cells))
	for i, c := range t.rows[row].cells {
		texts[i] = folded(c.Text)
	}
	return texts
}

// columns is the places of the headings in their row; a fault when one stands
// there twice.
func (t *Table) columns(m *Mapping, row int, have []string) (columns, *diag.Problem) {
	var places []int
	for _, h := range m.wanted() {
		at := slices.Index(have, folded(h))
		if next := slices.Index(have[at+1:], folded(h)); next >= 0 {
			return columns{}, &diag.Problem{Pos: t.at(row, at+1+next).pos, Code: TwoHeadings, Related: []diag.Pos{t.at(row, at).pos},
				Message: fmt.Sprintf("heading %q stands here a second time; one column of that heading was expected", h)}
		}
		places = append(places, at)
	}
	c := columns{heading: row, key: places[0], size: -1, fields: places[1:]}
	if m.KeySize != "" {
		c.size, c.fields = places[1], places[2:]
	}
	return c, nil
}

// noHeading says which headings were not found in the row that has the most.
func (t *Table) noHeading(want []string, row, most int) *diag.Problem {
	p := &diag.Problem{Pos: diag.Pos{File: t.file, Sheet: t.sheet}, Code: NoHeading}
	if most <= 0 {
		p.Message = "no row holds the headings " + quotedAll(want) + "; a row with all of them was expected"
		if t.sheet == "" {
			p.Advice = "if all of a line is read as one cell, look at csv: separator in the mapping"
		}
		return p
	}
	var missing, shown []string
	for _, c := range t.rows[row].cells {
		if !c.blank() {
			shown = append(shown, tidy(c.Text))
		}
	}
	have := t.headings(row)
	for _, h := range want {
		if !slices.Contains(have, folded(h)) {
			missing = append(missing, h)
		}
	}
	p.Pos = t.at(row, 0).pos
	p.Message = fmt.Sprintf("heading %s is missing in this row; %s were expected", quotedAll(missing), quotedAll(want))
	p.Advice = diag.DidYouMean(missing[0], shown)
	return p
}

// quotedAll lists headings as messages name them.
func quotedAll(words []string) string {
	all := make([]string, len(words))
	for i, w := range words {
		all[i] = strconv.Quote(w)
	}
	return strings.Join(all, ", ")
}
