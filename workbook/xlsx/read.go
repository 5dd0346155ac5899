package xlsx

import (
	"errors"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"tentwright/workbook/sheet"
)

// Read reads a workbook that some spreadsheet program saved. name is how errors
// call the file. Every error is a *Fault: no workbook, an old format, locked,
// damaged or too large.
func Read(name string, data []byte) (*sheet.Found, error) {
	found, err := read(data)
	if err == nil {
		return found, nil
	}
	var f *Fault
	if !errors.As(err, &f) {
		f = damaged("the file")
	}
	return nil, &Fault{File: name, What: f.What, Advice: f.Advice}
}

// reader is one file being read, with what its sheets refer to.
type reader struct {
	pack  *pack
	texts []string // shared by all sheets
	shows []shows  // by the number of a cell's style: how it shows numbers
	old   bool     // days count from 1904
	tabs  []tab    // of the sheets that hold cells
}

// tab is an entry in the list of sheets.
type tab struct {
	name, key string
	hidden    bool
	part      string
}

// read reads all parts, the sheets several at once.
func read(data []byte) (*sheet.Found, error) {
	p, err := openPack(data)
	if err != nil {
		return nil, err
	}
	x := &reader{pack: p}
	b, err := x.book()
	if err != nil {
		return nil, err
	}
	found := &sheet.Found{Macros: b.macros, Links: b.outside}
	if found.Sheets, err = x.sheets(); err != nil {
		return nil, err
	}
	found.Names, found.Lost = b.places(x.tabs)
	return found, nil
}

// sheets reads the sheets. Of several faults the one of the first sheet is
// told, so that the same file always gives the same.
func (x *reader) sheets() ([]*sheet.FoundSheet, error) {
	out := make([]*sheet.FoundSheet, len(x.tabs))
	faults := make([]error, len(x.tabs))
	var next atomic.Int64
	var failed atomic.Bool
	var all sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(out)) {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(out) && !failed.Load(); i = int(next.Add(1)) - 1 {
				if out[i], faults[i] = x.sheet(x.tabs[i]); faults[i] != nil {
					failed.Store(true)
				}
			}
		})
	}
	all.Wait()
	for _, err := range faults {
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// book is what the list of sheets tells besides the sheets.
type book struct {
	names   []definedName
	outside []string
	macros  bool
}

// definedName is a name of the whole book and what it stands for.
type definedName struct{ name, refers string }

// book reads the list of sheets and the parts that all sheets use.
func (x *reader) book() (*book, error) {
	const where = "the list of sheets"
	part, err := x.mainPart()
	if err != nil {
		return nil, err
	}
	links, err := x.pack.links(part, where)
	if err != nil {
		return nil, err
	}
	b := &book{macros: x.hasMacros(links)}
	var tabs []tab
	var outside []string
	m, err := x.pack.markup(part, where)
	if err != nil {
		return nil, err
	}
	if root := m.root(); m.err == nil && root != "workbook" {
		return nil, notWorkbook()
	}
	m.children(func() { tabs, outside = x.bookEntry(m, b, tabs, outside) })
	if err := m.finish(where); err != nil {
		return nil, err
	}
	if err := x.keepWorksheets(tabs, links); err != nil {
		return nil, err
	}
	if b.outside, err = x.outsideFiles(outside, links); err != nil {
		return nil, err
	}
	return b, x.common(links)
}

// bookEntry reads one of the lists that the list of sheets is made of: adds to
// the sheets, to the names and to the keys of linked files.
func (x *reader) bookEntry(m *markup, b *book, tabs []tab, outside []string) ([]tab, []string) {
	each := func(entry func()) {
		m.children(func() {
			m.stop(x.pack.left.list(1))
			entry()
		})
	}
	switch m.name {
	case "workbookPr":
		x.old = m.on("date1904")
	case "sheets":
		each(func() {
			state := m.attr("state")
			tabs = append(tabs, tab{name: unescape(m.attr("name")), key: m.attr("id"), hidden: state == "hidden" || state == "veryHidden"})
		})
	case "definedNames":
		each(func() { b.addName(m) })
	case "externalReferences":
		each(func() { outside = append(outside, m.attr("id")) })
	}
	return tabs, outside
}

// mainPart is the part with the list of sheets.
func (x *reader) mainPart() (string, error) {
	links, err := x.pack.links("", "the table of contents")
	if err != nil {
		return "", err
	}
	if main := ofKind(links, "officeDocument"); len(main) > 0 {
		return main[0], nil
	}
	const usual = "xl/workbook.xml"
	if x.pack.has(usual) {
		return usual, nil
	}
	return "", notWorkbook()
}

// hasMacros tells whether the file carries programs.
func (x *reader) hasMacros(links map[string]link) bool {
	for _, l := range links {
		if l.kind == "vbaProject" || strings.HasSuffix(strings.ToLower(l.kind), "macrosheet") {
			return true
		}
	}
	return x.pack.has("xl/vbaProject.bin")
}

// keepWorksheets notes the sheets that hold cells; charts and dialogues on
// sheets of their own are passed over.
func (x *reader) keepWorksheets(tabs []tab, links map[string]link) error {
	if len(tabs) > maxSheets {
		return fault("the file has more than 500 sheets", adviceSmaller)
	}
	for _, t := range tabs {
		l, ok := links[t.key]
		if !ok {
			return fault("the sheet "+quoted(t.name)+" is missing from the file", adviceRepair)
		}
		if l.kind == "worksheet" {
			t.part = l.target
			x.tabs = append(x.tabs, t)
		}
	}
	if len(x.tabs) == 0 {
		return fault("the file has no sheet with cells", adviceChoose)
	}
	return nil
}

// quoted is a name in marks, short enough for a message.
func quoted(name string) string {
	if r := []rune(name); len(r) > 40 {
		name = string(r[:40]) + "..."
	}
	return `"` + name + `"`
}

// outsideFiles are the other workbooks that formulas refer to, in the order of
// their numbers in formulas.
func (x *reader) outsideFiles(keys []string, links map[string]link) ([]string, error) {
	var out []string
	for _, key := range keys {
		own, err := x.pack.links(links[key].target, "the list of linked files")
		if err != nil {
			return nil, err
		}
		var targets []string
		for _, l := range own {
			if l.outside && !slices.Contains(out, fileName(l.target)) {
				targets = append(targets, fileName(l.target))
			}
		}
		slices.Sort(targets)
		out = append(out, slices.Compact(targets)...)
	}
	return out, nil
}

// common reads the shared texts and the styles. A file may lack either, even
// if it lists it.
func (x *reader) common(links map[string]link) (err error) {
	for _, part := range ofKind(links, "sharedStrings") {
		if x.pack.has(part) && err == nil {
			x.texts, err = x.sharedTexts(part)
		}
	}
	for _, part := range ofKind(links, "styles") {
		if x.pack.has(part) && err == nil {
			x.shows, err = x.numberStyles(part)
		}
	}
	return err
}
