package xlsx

import (
	"archive/zip"
	"bytes"
	"io"
	"path"
	"slices"
	"strings"
	"sync/atomic"
	"unicode/utf8"
)

// Limits of what is read, so that a file made to harm cannot fill the memory.
// A quote for a large fair has 20,000 cells and unpacks to 2 MB.
const (
	maxPacked   = 150 << 20 // bytes of the file
	maxUnpacked = 300 << 20 // bytes of all parts that are read, and of formulas copied to other cells
	maxParts    = 10_000
	maxCells    = 2_000_000 // places up to the last used cell of each row
	maxEntries  = 4_000_000 // texts, names, notes and the like
	maxSheets   = 500
	maxCellText = 1 << 20 // bytes in one cell
)

// allowance is what is left of the limits; sheets read at once share it.
type allowance struct{ bytes, cells, entries atomic.Int64 }

// take uses up bytes.
func (a *allowance) take(n int) error {
	if a.bytes.Add(-int64(n)) < 0 {
		return tooLarge()
	}
	return nil
}

func tooLarge() *Fault { return fault("the file unpacks to more than 300 MB", adviceSmaller) }

// fill uses up cells.
func (a *allowance) fill(n int) error {
	if a.cells.Add(-int64(n)) < 0 {
		return fault("the file has more than 2 million cells", adviceSmaller)
	}
	return nil
}

// list uses up entries.
func (a *allowance) list(n int) error {
	if a.entries.Add(-int64(n)) < 0 {
		return fault("the file has more than 4 million texts, names, notes and formulas", adviceSmaller)
	}
	return nil
}

// pack is the file opened: its parts by their names in lower case, for
// programs differ in that.
type pack struct {
	parts map[string]*zip.File
	left  allowance
}

// openPack opens the container. Files that are none, or of another kind, get
// their fault here.
func openPack(data []byte) (*pack, error) {
	if f := notZip(data); f != nil {
		return nil, f
	}
	if len(data) > maxPacked {
		return nil, fault("the file is larger than 150 MB", adviceSmaller)
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, fault("the file is damaged or was not copied to its end", adviceCopy)
	}
	if len(z.File) > maxParts {
		return nil, fault("the file is not a workbook: it holds thousands of files", adviceChoose)
	}
	p := &pack{parts: make(map[string]*zip.File, len(z.File))}
	p.left.bytes.Store(maxUnpacked)
	p.left.cells.Store(maxCells)
	p.left.entries.Store(maxEntries)
	locked, stated := false, uint64(0)
	for _, f := range z.File {
		key := partKey(f.Name)
		if strings.HasSuffix(key, ".xml") {
			stated += min(f.UncompressedSize64, maxUnpacked+1)
		}
		if _, twice := p.parts[key]; !twice {
			p.parts[key] = f
		}
		locked = locked || f.Flags&1 != 0
	}
	if err := p.otherKind(locked); err != nil {
		return nil, err
	}
	// What the directory states may be a lie, but a file that is open about its
	// size need not be unpacked to be refused.
	if stated > maxUnpacked {
		return nil, tooLarge()
	}
	return p, nil
}

// partKey is the name that a part is found by.
func partKey(name string) string {
	name = strings.ReplaceAll(name, `\`, "/")
	return strings.ToLower(strings.TrimPrefix(path.Clean("/"+name), "/"))
}

// has tells whether the file holds a part.
func (p *pack) has(name string) bool {
	_, ok := p.parts[partKey(name)]
	return ok
}

// otherKind tells zip files that are no workbook of this format.
func (p *pack) otherKind(locked bool) error {
	has := p.has
	switch {
	case has("mimetype"):
		kind, err := p.text("mimetype", "the file")
		if strings.Contains(kind, "opendocument.spreadsheet") || has("meta-inf/manifest.xml") && (locked || err != nil) {
			return fault("this is an OpenDocument workbook (.ods)", adviceSaveAs)
		}
	case locked:
		return fault("the file is packed with a password", "unpack it first, or save the workbook as .xlsx without a password")
	case has("xl/workbook.bin"):
		return fault("this is a workbook in the binary format .xlsb", adviceSaveAs)
	case has("[content_types].xml"), has("_rels/.rels"), has("xl/workbook.xml"):
		return nil
	case has("index/document.iwa"), has("index.zip"):
		return fault("this is a workbook in another program's own format", adviceSaveAs)
	}
	return notWorkbook()
}

func notWorkbook() *Fault {
	return fault("this is a zip file or a document of another kind, not a workbook", adviceChoose)
}

// text unpacks a part. where is what it holds, as a fault calls it.
func (p *pack) text(name, where string) (string, error) {
	f, ok := p.parts[partKey(name)]
	if !ok {
		return "", fault(where+" is missing from the file", adviceRepair)
	}
	r, err := f.Open()
	if err != nil {
		return "", damaged(where)
	}
	defer r.Close()
	var b strings.Builder
	// The size in the file's directory may be a lie; a part seldom packs to
	// less than a fiftieth.
	b.Grow(int(min(f.UncompressedSize64, 50*f.CompressedSize64, maxUnpacked)))
	var room [32 << 10]byte
	for {
		n, err := r.Read(room[:])
		if over := p.left.take(n); over != nil {
			return "", over
		}
		b.Write(room[:n])
		if err == io.EOF {
			return b.String(), nil
		}
		if err != nil {
			return "", damaged(where)
		}
	}
}

// markup unpacks a part for reading as XML.
func (p *pack) markup(name, where string) (*markup, error) {
	text, err := p.text(name, where)
	if err != nil {
		return nil, err
	}
	if wide, ok := wideText([]byte(text[:min(len(text), 2)])); ok && wide == "" {
		text, _ = wideText([]byte(text))
	} else if !utf8.ValidString(text) {
		text = strings.ToValidUTF8(text, "\uFFFD")
	}
	text = strings.TrimPrefix(text, "\uFEFF")
	if !knownCharset(text) {
		return nil, fault(where+" is written in a character set that is not in use any more", adviceSaveAs)
	}
	return &markup{doc: text}, nil
}

// knownCharset tells whether a part says that it is written in Unicode, as all
// programs do, or says nothing.
func knownCharset(text string) bool {
	head, _, _ := strings.Cut(text[:min(len(text), 200)], "?>")
	_, set, said := strings.Cut(strings.ToLower(head), "encoding=")
	if !said || !strings.HasPrefix(head, "<?xml") {
		return true
	}
	set = strings.TrimLeft(set, `"'`)
	return strings.HasPrefix(set, "utf-") || strings.HasPrefix(set, "us-ascii")
}

// each reads a part: it calls visit for every element directly inside the
// outermost one, which must be called root.
func (p *pack) each(name, where, root string, visit func(m *markup)) error {
	m, err := p.markup(name, where)
	if err != nil {
		return err
	}
	if m.root() == root {
		m.children(func() { visit(m) })
	} else {
		m.fail()
	}
	return m.finish(where)
}

// link is a reference from one part to another, or to another file.
type link struct {
	kind, target string // the kind without its namespace: "worksheet"
	outside      bool
}

// links are the references of a part by their keys; none if it has no list.
// The list of the whole file belongs to the part "".
func (p *pack) links(part, where string) (map[string]link, error) {
	dir, base := path.Split(part)
	list := dir + "_rels/" + base + ".rels"
	if !p.has(list) {
		return nil, nil
	}
	out := map[string]link{}
	err := p.each(list, where, "Relationships", func(m *markup) {
		if m.name != "Relationship" {
			return
		}
		m.stop(p.left.list(1))
		kind := m.attr("Type")
		l := link{kind: kind[strings.LastIndexByte(kind, '/')+1:], target: m.attr("Target"), outside: m.attr("TargetMode") == "External"}
		if !l.outside {
			if target := strings.ReplaceAll(l.target, `\`, "/"); strings.HasPrefix(target, "/") {
				l.target = path.Clean(target)[1:]
			} else {
				l.target = strings.TrimPrefix(path.Join("/", dir, target), "/")
			}
		}
		out[m.attr("Id")] = l
	})
	return out, err
}

// ofKind are the parts that links of one kind lead to, in a fixed order.
func ofKind(links map[string]link, kind string) []string {
	var out []string
	for _, l := range links {
		if l.kind == kind && !l.outside {
			out = append(out, l.target)
		}
	}
	slices.Sort(out)
	return out
}
