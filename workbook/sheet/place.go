package sheet

import (
	"strconv"
	"strings"
)

// Limits of a sheet in the file format, ISO/IEC 29500: the last row and column
// are 1048576 and XFD.
const (
	MaxRows = 1048576
	MaxCols = 16384
)

// Range is a block of cells by its corners, counted from 1, both included.
type Range struct{ R1, C1, R2, C2 int }

// ColName is the letter of a column counted from 1: 1 is "A", 28 is "AB". It
// is empty for a column below 1.
func ColName(col int) string {
	var b [8]byte
	i := len(b)
	for col > 0 && i > 0 {
		i--
		col--
		b[i] = byte('A' + col%26)
		col /= 26
	}
	return string(b[i:])
}

// Ref is the name of a cell, row and column counted from 1: Ref(7, 2) is "B7".
func Ref(row, col int) string { return ColName(col) + strconv.Itoa(row) }

// AbsRef is the name of a cell that stays when a formula is copied: "$B$7".
func AbsRef(row, col int) string { return "$" + ColName(col) + "$" + strconv.Itoa(row) }

// Quote is a sheet's name as formulas write it: "'Pick list'".
func Quote(sheet string) string { return "'" + strings.ReplaceAll(sheet, "'", "''") + "'" }

// String is the range as "A1:C9", or "A1" for one cell.
func (r Range) String() string {
	if r.One() {
		return Ref(r.R1, r.C1)
	}
	return Ref(r.R1, r.C1) + ":" + Ref(r.R2, r.C2)
}

// Abs is the range with its sheet and fixed ends, as a defined name needs it:
// "'Pick list'!$A$1:$C$9".
func (r Range) Abs(sheet string) string {
	s := Quote(sheet) + "!" + AbsRef(r.R1, r.C1)
	if r.One() {
		return s
	}
	return s + ":" + AbsRef(r.R2, r.C2)
}

// One reports whether the range is a single cell.
func (r Range) One() bool { return r.R1 == r.R2 && r.C1 == r.C2 }

// Overlaps reports whether the two ranges share a cell.
func (r Range) Overlaps(o Range) bool {
	return r.R1 <= o.R2 && o.R1 <= r.R2 && r.C1 <= o.C2 && o.C1 <= r.C2
}

// Valid reports whether the corners are in order and on the sheet.
func (r Range) Valid() bool {
	return r.R1 >= 1 && r.C1 >= 1 && r.R1 <= r.R2 && r.C1 <= r.C2 && r.R2 <= MaxRows && r.C2 <= MaxCols
}
