package workbook_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"tentwright/quote/jobtest"
	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// No formula follows from itself, even where every cell of a range that it
// names counts as used: programs differ in whether they look at the one cell
// that INDEX or SUMIFS picks or at the whole range (from memory).
func TestNoFormulaFollowsFromItself(t *testing.T) {
	c := demoCatalog(t)
	books := map[string]*sheet.Book{}
	for name, q := range demoQuotes(t, c) {
		books[name], books[name+"-customer"] = workbook.Layout(q), workbook.Customer(q)
	}
	first := firstSeed(t)
	for seed := first; seed < first+20; seed++ {
		books[fmt.Sprintf("seed-%d", seed)] = workbook.Layout(mustQuote(t, c, jobtest.Random(c, seed)))
	}
	for name, b := range books {
		if round := newUses(b).round(); round != nil {
			t.Errorf("%s: each follows from the next:\n  %s", name, strings.Join(round, "\n  "))
		}
	}
}

// spot is one cell of a book.
type spot struct {
	sheet    string
	row, col int
}

// uses is which formula uses which.
type uses struct {
	book     *sheet.Book
	formulas map[spot]string
	state    map[spot]int // 1: on the way, 2: done
	way      []spot
}

func newUses(b *sheet.Book) *uses {
	u := &uses{book: b, formulas: map[spot]string{}, state: map[spot]int{}}
	for _, s := range b.Sheets {
		for r := range s.Rows {
			for c := range s.Rows[r].Cells {
				if f := s.Rows[r].Cells[c].Formula; f != "" {
					u.formulas[spot{s.Name, r + 1, c + 1}] = f
				}
			}
		}
	}
	return u
}

// round finds formulas that go round in a circle; nil if there are none.
func (u *uses) round() []string {
	for at := range u.formulas {
		if from := u.walk(at); from >= 0 {
			var list []string
			for _, x := range u.way[from:] {
				list = append(list, fmt.Sprintf("%s!%s =%s", x.sheet, sheet.Ref(x.row, x.col), u.formulas[x]))
			}
			return list
		}
	}
	return nil
}

// walk follows a formula to all that it uses. It gives the place on the way
// where a circle begins, or -1.
func (u *uses) walk(at spot) int {
	switch u.state[at] {
	case 2:
		return -1
	case 1:
		for i := range u.way {
			if u.way[i] == at {
				return i
			}
		}
	}
	u.state[at] = 1
	u.way = append(u.way, at)
	for _, next := range u.used(at) {
		if from := u.walk(next); from >= 0 {
			return from
		}
	}
	u.way = u.way[:len(u.way)-1]
	u.state[at] = 2
	return -1
}

var (
	quotedText = regexp.MustCompile(`"(?:[^"]|"")*"`)
	reference  = regexp.MustCompile(`\$?[A-Z]{1,3}\$?[0-9]+(?::\$?[A-Z]{1,3}\$?[0-9]+)?|[A-Za-z_][A-Za-z0-9_.]*\(?`)
	cellParts  = regexp.MustCompile(`\$?([A-Z]+)\$?([0-9]+)`)
)

// used lists the formulas that one formula names, alone or in ranges.
func (u *uses) used(at spot) []spot {
	var found []spot
	for _, word := range reference.FindAllString(quotedText.ReplaceAllString(u.formulas[at], ""), -1) {
		place, block := at.sheet, sheet.Range{}
		if cells := cellParts.FindAllStringSubmatch(word, -1); cells != nil && strings.ToUpper(word) == word {
			first, last := cells[0], cells[len(cells)-1]
			block = sheet.Range{R1: number(first[2]), C1: columnOf(first[1]), R2: number(last[2]), C2: columnOf(last[1])}
		} else if named, cells, err := placeOf(u.book, word); err == nil {
			place, block = named, cells
		} else {
			continue
		}
		for row := block.R1; row <= block.R2; row++ {
			for col := block.C1; col <= block.C2; col++ {
				next := spot{place, row, col}
				if _, formula := u.formulas[next]; formula {
					found = append(found, next)
				}
			}
		}
	}
	return found
}

func number(digits string) int {
	n := 0
	for _, d := range digits {
		n = 10*n + int(d-'0')
	}
	return n
}
