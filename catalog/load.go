package catalog

import (
	"embed"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"tentwright/catalog/diag"
	"tentwright/catalog/source"
)

//go:embed demo
var demo embed.FS

// Demo is the embedded demonstration shop: an invented yard whose prices are
// not for customers.
func Demo() fs.FS {
	sub, err := fs.Sub(demo, "demo")
	if err != nil {
		return demo
	}
	return sub
}

// Load reads the shop in fsys, cross-checks it and reports every fault in one
// list; what cannot be told beside a fault of form is not guessed at. dir is
// put before the file names in positions. The catalog is nil when there are
// faults.
func Load(dir string, fsys fs.FS) (*Catalog, diag.List) {
	var f files
	list := f.read(dir, fsys)
	form := source.NewForm(list)
	if !form.FieldsOnly() {
		return nil, list
	}
	c := f.catalog()
	c.Source = f.source
	var found diag.List
	c.attach(fsys, &found)
	c.index()
	c.check(&f, form, &found)
	if list = form.With(found); list.Err() != nil {
		return nil, list
	}
	c.Demo = sameCompany(&c.Company)
	return c, list
}

// catalog is what the files hold; nothing is looked up yet.
func (f *files) catalog() *Catalog {
	return &Catalog{
		Company: f.company.Company, Families: f.tents.Families,
		Profiles: f.parts.Profiles, Fabrics: f.parts.Fabrics, Parts: f.parts.Parts, Rules: f.parts.Rules,
		Items: f.items.Items, Labour: f.labour.Rules, Rates: f.rates.Rates,
		Fleet: f.trucks.Fleet, Site: f.site.Factors,
		Anchors: f.anchors.Anchors, Occupancy: f.occupancy.Occupancy, Power: f.power.Power, Calendar: f.calendar.Calendar, Crew: f.crew.Crew,
	}
}

// read decodes all files at once: a caller is waiting on the phone.
func (f *files) read(dir string, fsys fs.FS) diag.List {
	var (
		list diag.List
		mu   sync.Mutex
		all  sync.WaitGroup
	)
	f.source = Shop{}
	for name, into := range f.byName() {
		if _, err := fs.Stat(fsys, name); err != nil && slices.Contains(MoreFiles(), name) {
			continue
		}
		all.Go(func() {
			data, found := readFile(dir, fsys, name, into)
			mu.Lock()
			defer mu.Unlock()
			f.source[name] = data
			list.Join(found)
		})
	}
	all.Wait()
	return list.Sorted()
}

// byName pairs each file of a shop with the value it is decoded into.
func (f *files) byName() map[string]any {
	return map[string]any{
		"company.yaml": &f.company, "tents.yaml": &f.tents, "parts.yaml": &f.parts,
		"accessories.yaml": &f.items, "labour.yaml": &f.labour, "rates.yaml": &f.rates,
		"trucks.yaml": &f.trucks, "site.yaml": &f.site,
		"anchors.yaml": &f.anchors, "occupancy.yaml": &f.occupancy, "power.yaml": &f.power, "calendar.yaml": &f.calendar, "crew.yaml": &f.crew,
	}
}

// readFile decodes a file of a shop and gives its bytes.
func readFile(dir string, fsys fs.FS, name string, into any) ([]byte, diag.List) {
	data, why := readRegular(fsys, name, maxFile)
	if why != "" {
		var list diag.List
		list.Addf(diag.Pos{File: path.Join(dir, name)}, FileMissing, "%s; a shop folder holds %s", why, strings.Join(Files(), ", "))
		return nil, list
	}
	return data, source.Decode(path.Join(dir, name), data, into)
}

// unread is why a file that is not there, or not to be opened, is not read.
const unread = "cannot be read"

// maxFile bounds what is read into memory; what files may hold is less.
const maxFile = 16 << 20

// readRegular reads a file of at most so many bytes, or says why it cannot be
// read. What is no file, such as a pipe, would be waited for without end.
func readRegular(fsys fs.FS, name string, most int64) (data []byte, why string) {
	info, err := fs.Stat(fsys, name)
	switch {
	case err != nil:
		return nil, unread
	case !info.Mode().IsRegular():
		return nil, "is no ordinary file"
	case info.Size() > most:
		return nil, fmt.Sprintf("has %d bytes, more than %d", info.Size(), most)
	}
	if data, err = fs.ReadFile(fsys, name); err != nil {
		return nil, unread
	}
	return data, ""
}

// sameCompany tells whether the letterhead is still the demonstration's.
func sameCompany(have *Company) bool {
	var f files
	if _, list := readFile("", Demo(), "company.yaml", &f.company); list.Err() != nil {
		return false
	}
	want := &f.company.Company
	return have.Name == want.Name && slices.Equal(have.Address, want.Address) && have.Phone == want.Phone && have.Email == want.Email
}
