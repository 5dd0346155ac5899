package source

import (
	"path"
	"slices"
	"strings"

	"tentwright/catalog/diag"
)

// Form is the faults of form that [Decode] found in one or more files. Later
// checks ask it what they may build on, so that one fault is never reported as
// two, and what was read well is checked in the same run.
type Form struct{ list diag.List }

// NewForm takes what Decode returned, of all files together.
func NewForm(list diag.List) *Form { return &Form{list.Faults()} }

// FieldsOnly tells whether every fault is one of a single field, so that
// everything else was read. It is true when there are none.
func (f *Form) FieldsOnly() bool {
	ofField := []string{diag.UnknownField, diag.RepeatedField, diag.MissingField, diag.EmptyValue, diag.WrongKind,
		diag.BadValue, diag.OutOfRange, diag.NotOneOf, diag.TooLongText}
	return !slices.ContainsFunc(f.list, func(p diag.Problem) bool { return !slices.Contains(ofField, p.Code) })
}

// Sound tells whether a struct and the fields named, with all below them, were
// read without fault. A struct that was never read is not sound.
func (f *Form) Sound(w Where, fields ...string) bool {
	switch {
	case len(f.list) == 0:
		return true
	case w.at == nil:
		return false
	}
	own := w.Path()
	return !slices.ContainsFunc(f.list, func(p diag.Problem) bool {
		below, under := p.Path, own == ""
		if !under {
			below, under = strings.CutPrefix(p.Path, own+".")
		}
		field, _ := nextStep(below)
		return p.Pos.File == w.at.file && (p.Path == own || under && slices.Contains(fields, field))
	})
}

// Complete tells whether a list of a file holds everything that stands in the
// file: ids has the id of each entry, none of them missing. Only then is an id
// that is not among them unknown.
func (f *Form) Complete(file string, ids []string) bool {
	if !f.In(file) {
		return true
	}
	repeated := slices.ContainsFunc(f.list, func(p diag.Problem) bool {
		return p.Code == diag.RepeatedField && path.Base(p.Pos.File) == file
	})
	return len(ids) > 0 && !slices.Contains(ids, "") && !repeated
}

// In tells whether a file of that name has a fault of form.
func (f *Form) In(file string) bool {
	return slices.ContainsFunc(f.list, func(p diag.Problem) bool { return path.Base(p.Pos.File) == file })
}

// With is the faults of form together with those that later checks found, in
// the order of the files. Left out is what was found on a line with a fault of
// form, or on something that was never read.
func (f *Form) With(found diag.List) diag.List {
	if len(f.list) == 0 {
		return found.Sorted()
	}
	type line struct {
		file string
		line int
	}
	faulty := map[line]bool{}
	for _, p := range f.list {
		faulty[line{p.Pos.File, p.Pos.Line}] = true
	}
	all := slices.Clone(f.list)
	for _, p := range found {
		if p.Pos.Line > 0 && !faulty[line{p.Pos.File, p.Pos.Line}] {
			all.Add(p)
		}
	}
	return all.Sorted()
}
