// Package source reads strict YAML into structs and keeps every position. All
// faults of a file are found in one run, each with file, line and column, and
// nothing is guessed: an unknown or repeated field, a number with a thousands
// comma, an anchor or a second document is a fault, not a surprise later.
//
// [Decode] fills fields by their tags:
//
//	yaml:"name"            the field's name in the file
//	yaml:"name,required"   it must be there and not be empty
//	want:"a count, e.g. 2" what a fault says was expected
//	min:"0" max:"100"      bounds of an int or a money.Number, ends included
//	enum:"each|pair|set"   the words that a string may be
//	long:"40"              most characters of a string; 250 without this tag
//
// A field without a yaml tag is left alone, except that a [Where] receives the
// positions and an embedded struct counts as part of its owner. Kinds are
// string, bool, int, money.Number, types whose pointer has ParseText(string)
// error, structs, and pointers, slices and string-keyed maps of these. Limits:
// 4 MiB, 64 levels, 200 problems. No other package imports the YAML library.
package source

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"reflect"
	"unicode/utf8"

	"tentwright/catalog/diag"

	"gopkg.in/yaml.v3"
)

// Limits of what is read; real files stay far below them.
const (
	maxBytes    = 4 << 20
	maxDepth    = 64
	maxProblems = 200
	maxText     = 250 // characters of a string whose field says nothing
)

// Decode reads data, the contents of file, into the struct that into points
// to, and returns every fault found. Values that could not be read are left
// zero, so into is complete only when the list is empty.
func Decode(file string, data []byte, into any) diag.List {
	d := &decoder{file: file, tables: map[reflect.Type]*table{}}
	v := reflect.ValueOf(into)
	if v.Kind() != reflect.Pointer || v.IsNil() || v.Elem().Kind() != reflect.Struct {
		d.report(diag.Problem{Code: diag.BadTarget, Message: fmt.Sprintf("cannot decode into %T; a pointer to a struct was expected", into)})
		return d.list
	}
	root := d.parse(data)
	if root == nil || !d.allowed(root, 0) {
		return d.finish()
	}
	d.value(root, v.Elem(), &field{}, ref{})
	return d.finish()
}

// decoder is the state of one run over one file.
type decoder struct {
	file    string
	tables  map[reflect.Type]*table
	places  []place // not yet used ones; see newPlace
	list    diag.List
	dropped int // problems above the limit
}

// report adds a problem; above the limit it is only counted.
func (d *decoder) report(p diag.Problem) {
	if len(d.list) >= maxProblems {
		d.dropped++
		return
	}
	d.list.Add(p)
}

// fault reports a problem at a node of the file.
func (d *decoder) fault(n *yaml.Node, at ref, code, advice, format string, args ...any) {
	d.report(diag.Problem{
		Pos: d.pos(n), Path: at.path(), Code: code,
		Message: fmt.Sprintf(format, args...), Advice: advice,
	})
}

func (d *decoder) pos(n *yaml.Node) diag.Pos {
	return diag.Pos{File: d.file, Line: n.Line, Column: n.Column}
}

// finish is the list in the order of the file, with a last word on what was
// left out.
func (d *decoder) finish() diag.List {
	list := d.list.Sorted()
	if d.dropped > 0 {
		list.Addf(diag.Pos{File: d.file}, diag.TooMany, "and %d more problems; mend these first", d.dropped)
	}
	return list
}

// parse turns data into the one node of its one document; nil after a fault.
func (d *decoder) parse(data []byte) *yaml.Node {
	if !d.readable(data) {
		return nil
	}
	first, second, err := read(data)
	switch {
	case err != nil:
		d.syntax(data, err)
	case second != nil:
		d.fault(second, ref{}, diag.Feature, "", "a second document begins here; a file holds one")
	case first == nil || isNull(first):
		d.report(diag.Problem{Pos: diag.Pos{File: d.file, Line: 1, Column: 1}, Code: diag.EmptyFile, Message: "the file is empty"})
	default:
		return first
	}
	return nil
}

// read is the nodes of the first two documents in data, nil for those that
// are not there, and the error of the YAML reader.
func read(data []byte) (first, second *yaml.Node, err error) {
	var nodes [2]*yaml.Node
	reader := yaml.NewDecoder(bytes.NewReader(data))
	for i := range nodes {
		var document yaml.Node
		if err := reader.Decode(&document); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, nil, err
		}
		nodes[i] = document.Content[0]
		if isNull(nodes[i]) {
			// An empty document has a place of its own, nothing has not.
			nodes[i].Line, nodes[i].Column = document.Line, document.Column
		}
	}
	return nodes[0], nodes[1], nil
}

// readable checks size and characters before the YAML reader sees them, since
// that one gives no position for either.
func (d *decoder) readable(data []byte) bool {
	at := diag.Pos{File: d.file, Line: 1, Column: 1}
	if len(data) > maxBytes {
		d.report(diag.Problem{Pos: diag.Pos{File: d.file}, Code: diag.TooLarge,
			Message: fmt.Sprintf("the file has %d bytes; at most %d are read", len(data), maxBytes)})
		return false
	}
	for rest := data; len(rest) > 0; {
		r, size := utf8.DecodeRune(rest)
		if why := unfit(r, size, rest); why != "" {
			d.report(diag.Problem{Pos: at, Code: diag.Syntax, Message: why})
			return false
		}
		at.Column++
		if r == '\n' {
			at.Line, at.Column = at.Line+1, 1
		}
		rest = rest[size:]
	}
	return true
}

// unfit says why the first character of rest, r of size bytes, cannot stand in
// a file; "" when it can.
func unfit(r rune, size int, rest []byte) string {
	switch {
	case r == utf8.RuneError && size == 1:
		return "this is not UTF-8 text; save the file as UTF-8"
	case r == '\r' && bytes.HasPrefix(rest, []byte("\r\n")):
		return ""
	case r == '\r' || r == '\u0085' || r == '\u2028' || r == '\u2029':
		// YAML would count these as line ends and editors would not.
		return fmt.Sprintf("the line break %U cannot be used; end lines with a newline", r)
	case r < ' ' && r != '\t' && r != '\n' || r == 0x7f:
		return fmt.Sprintf("the control character %U cannot be used", r)
	}
	return ""
}
