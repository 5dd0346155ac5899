package intake

import (
	"fmt"
	"strconv"

	"tentwright/workbook/sheet"
)

// setList writes a cell of the sheet Lists.
func (f *form) setList(row, col int, c sheet.Cell) {
	for len(f.lists.Rows) < row {
		f.lists.Rows = append(f.lists.Rows, sheet.Row{})
	}
	r := &f.lists.Rows[row-1]
	for len(r.Cells) < col {
		r.Cells = append(r.Cells, sheet.Cell{})
	}
	r.Cells[col-1] = c
}

// column begins a column of the sheet Lists under a heading.
func (f *form) column(heading string) int {
	col := 1
	if len(f.lists.Rows) > 0 {
		col = len(f.lists.Rows[0].Cells) + 1
	}
	f.setList(1, col, sheet.Cell{Value: heading, Style: sheet.Style{Role: sheet.Heading}})
	f.lists.Columns = append(f.lists.Columns, sheet.Column{Width: 24})
	return col
}

// listName names a block of the sheet Lists.
func (f *form) listName(name string, r sheet.Range) {
	f.book.Names = append(f.book.Names, sheet.Name{Name: name, Refers: r.Abs(f.lists.Name)})
}

// list is the defined name of a drop-down; the first who asks writes it.
func (f *form) list(id string, texts []string) string {
	name := "intake_list_" + id
	if f.named[name] {
		return name
	}
	f.named[name] = true
	col := f.column(id)
	for i, t := range texts {
		f.setList(i+2, col, sheet.Cell{Value: t, Style: sheet.Style{Format: sheet.Text}})
	}
	f.listName(name, sheet.Range{R1: 2, C1: col, R2: len(texts) + 1, C2: col})
	return name
}

// table writes lists beside each other under the names of the families, all to
// the length of the longest, and gives their number of rows.
func (f *form) table(id string, of [][]string) int {
	most := 1
	for _, texts := range of {
		most = max(most, len(texts))
	}
	from := 0
	for i := range of {
		col := f.column(id + ", " + families(f.c)[i].text)
		if from == 0 {
			from = col
		}
		for n := range most {
			text := ""
			if n < len(of[i]) {
				text = of[i][n]
			}
			f.setList(n+2, col, sheet.Cell{Value: text, Style: sheet.Style{Format: sheet.Text}})
		}
	}
	f.listName("intake_all_"+id, sheet.Range{R1: 2, C1: from, R2: most + 1, C2: from + len(of) - 1})
	return most
}

// dependent makes the drop-downs of one tent that follow its family: a column
// of formulas, since a rule on a cell can name a block but compute none that
// every program understands.
func (f *form) dependent(id string, tent, rows int) string {
	name := "intake_" + id + "_" + strconv.Itoa(tent)
	col := f.column(fmt.Sprintf("%s, tent %d", id, tent))
	for n := 1; n <= rows; n++ {
		look := fmt.Sprintf(`IFERROR(INDEX(intake_all_%s,%d,MATCH(intake_tent_%d_family,intake_list_families,0))&"","")`, id, n, tent)
		f.setList(n+1, col, sheet.Cell{Value: "", Formula: look})
	}
	f.listName(name, sheet.Range{R1: 2, C1: col, R2: rows + 1, C2: col})
	return name
}

// tentIDs makes the list of tents that another can join.
func (f *form) tentIDs() {
	col := f.column("tents")
	for n := 1; n <= Tents; n++ {
		look := fmt.Sprintf(`IF(LEN(intake_tent_%d_family)=0,"",IF(LEN(intake_tent_%d_id)=0,"tent-%d",intake_tent_%d_id))`, n, n, n, n)
		f.setList(n+1, col, sheet.Cell{Value: "", Formula: look})
	}
	f.listName("intake_list_tents", sheet.Range{R1: 2, C1: col, R2: Tents + 1, C2: col})
}
