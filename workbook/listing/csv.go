package listing

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"

	"tentwright/catalog/diag"
	"tentwright/workbook/sheet"
)

// separators of a line by their names.
var separators = map[string]rune{"comma": ',', "semicolon": ';', "tab": '\t'}

// utf8Mark stands at the head of many a file in UTF-8.
var utf8Mark = []byte("\xef\xbb\xbf")

// CSV reads a list as text in the dialect of the mapping (RFC 4180, with any of
// the three separators). The table is nil after a fault, which has its line and
// column.
func CSV(file string, data []byte, m *Mapping) (*Table, diag.List) {
	var list diag.List
	if m.CSV == nil {
		list.Addf(m.Where.Pos(), BadMapping, "a list as text needs its dialect: csv: {separator: comma, semicolon or tab, encoding: utf-8 or windows-1252} was expected")
		return nil, list
	}
	text, fault := decoded(file, data, m.CSV.Encoding)
	if fault != nil {
		return nil, diag.List{*fault}
	}
	t := &Table{file: file, data: text}
	if fault := t.read(separators[m.CSV.Separator]); fault != nil {
		return nil, diag.List{*fault}
	}
	return t, nil
}

// read splits the text into rows.
func (t *Table) read(separator rune) *diag.Problem {
	r := csv.NewReader(bytes.NewReader(t.data))
	r.Comma, r.FieldsPerRecord = separator, -1
	lines := bytes.SplitAfter(t.data, []byte("\n"))
	place := func(line, column int) diag.Pos {
		pos := diag.Pos{File: t.file, Line: line, Column: 1}
		if line <= len(lines) {
			pos.Column += utf8.RuneCount(lines[line-1][:min(column-1, len(lines[line-1]))])
		}
		return pos
	}
	for {
		fields, err := r.Read()
		var bad *csv.ParseError
		switch {
		case errors.Is(err, io.EOF):
			return nil
		case errors.As(err, &bad):
			return badQuotes(bad, place)
		case err != nil:
			return &diag.Problem{Pos: diag.Pos{File: t.file}, Code: BadCSV, Message: err.Error()}
		}
		first, _ := r.FieldPos(0)
		row := tableRow{number: first}
		for i, text := range fields {
			c := cell{pos: place(r.FieldPos(i))}
			if text != "" {
				c.FoundCell = sheet.FoundCell{Kind: sheet.FoundText, Text: text}
			}
			row.cells = append(row.cells, c)
		}
		t.rows = append(t.rows, row)
	}
}

// badQuotes says in our words what is wrong with the quotes of a line.
func badQuotes(bad *csv.ParseError, place func(line, column int) diag.Pos) *diag.Problem {
	p := &diag.Problem{Pos: place(bad.Line, bad.Column), Code: BadCSV,
		Message: `a quote stands within a cell that is not in quotes; "the cell in quotes, with "" for each quote in it" was expected`}
	if errors.Is(bad.Err, csv.ErrQuote) {
		p.Message = "a cell in quotes does not end where it should; a quote, then a separator or the end of the line, was expected"
		if start := place(bad.StartLine, 1); bad.StartLine != bad.Line {
			p.Related = []diag.Pos{start}
		}
	}
	return p
}

// decoded is the text in UTF-8, without a mark at its head, or why it is none.
func decoded(file string, data []byte, encoding string) ([]byte, *diag.Problem) {
	fault := func(line, column int, advice, format string, args ...any) *diag.Problem {
		return &diag.Problem{Pos: diag.Pos{File: file, Line: line, Column: column}, Code: BadCSV, Message: fmt.Sprintf(format, args...), Advice: advice}
	}
	marked := bytes.HasPrefix(data, utf8Mark)
	switch {
	case bytes.HasPrefix(data, []byte("PK\x03\x04")):
		return nil, fault(0, 0, "let its name end in .xlsx", "this is a workbook, not a text")
	case bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")):
		return nil, fault(0, 0, "save it as CSV in UTF-8", "this is text in UTF-16; %s was expected", encoding)
	case marked && encoding != "utf-8":
		return nil, fault(1, 1, "write encoding: utf-8 into the mapping", "the file says that it is UTF-8; the mapping says %s", encoding)
	case bytes.ContainsRune(data, '\r') && !bytes.ContainsRune(data, '\n'):
		return nil, fault(1, 1, "save it again with the line ends of today", "the lines end in a bare return; a newline at the end of each was expected")
	}
	data = bytes.TrimPrefix(data, utf8Mark)
	line, column := 1, 1
	var text bytes.Buffer
	for len(data) > 0 {
		r, size := utf8.DecodeRune(data)
		if encoding != "utf-8" {
			r, size = windows1252(data[0]), 1
		}
		switch {
		case r == utf8.RuneError && size == 1 && encoding == "utf-8":
			return nil, fault(line, column, "if it was saved for Western European Windows, write encoding: windows-1252 into the mapping", "the byte %#x is no UTF-8", data[0])
		case r == utf8.RuneError && size == 1:
			return nil, fault(line, column, "", "the byte %#x stands for no character in windows-1252", data[0])
		case r < ' ' && r != '\t' && r != '\r' && r != '\n':
			return nil, fault(line, column, "", "the control character %U cannot be used; a table as text was expected", r)
		}
		text.WriteRune(r)
		data = data[size:]
		if column++; r == '\n' {
			line, column = line+1, 1
		}
	}
	return text.Bytes(), nil
}

// from80to9f is the characters of windows-1252 from 0x80 on, as the Unicode
// consortium's table CP1252.TXT has them; zero where there is none.
var from80to9f = [32]rune{
	'€', 0, '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', 0, 'Ž', 0,
	0, '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', 0, 'ž', 'Ÿ',
}

// windows1252 is the character of a byte; the replacement mark for none. Other
// bytes are their own code points, as in Latin-1.
func windows1252(b byte) rune {
	if b < 0x80 || b > 0x9f {
		return rune(b)
	}
	if r := from80to9f[b-0x80]; r != 0 {
		return r
	}
	return utf8.RuneError
}
