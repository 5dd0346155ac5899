package catalog

import (
	"bytes"
	"embed"
	"io/fs"
	"path"
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
// list. dir is put before the file names in positions. The catalog is nil
// when there are faults.
func Load(dir string, fsys fs.FS) (*Catalog, diag.List) {
	c, list := read(dir, fsys)
	if list.Err() != nil {
		return nil, list.Sorted()
	}
	c.index()
	c.check(&list)
	c.weigh(&list)
	if list.Err() != nil {
		return nil, list.Sorted()
	}
	return c, list.Sorted()
}

// read decodes the files; nothing is looked up yet.
func read(dir string, fsys fs.FS) (*Catalog, diag.List) {
	var f files
	list := f.read(dir, fsys)
	c := &Catalog{
		Company: f.company.Company, Families: f.tents.Families,
		Profiles: f.parts.Profiles, Fabrics: f.parts.Fabrics, Parts: f.parts.Parts, Rules: f.parts.Rules,
		Items: f.items.Items, Labour: f.labour.Rules, Rates: f.rates.Rates,
		Fleet: f.trucks.Fleet, Site: f.site.Factors,
	}
	if list.Err() == nil {
		c.attach(fsys, &list)
	}
	c.Demo = sameCompany(fsys)
	return c, list
}

// read decodes all files at once: a caller is waiting on the phone.
func (f *files) read(dir string, fsys fs.FS) diag.List {
	var (
		list diag.List
		mu   sync.Mutex
		all  sync.WaitGroup
	)
	for name, into := range f.byName() {
		all.Go(func() {
			found := readFile(dir, fsys, name, into)
			mu.Lock()
			defer mu.Unlock()
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
	}
}

func readFile(dir string, fsys fs.FS, name string, into any) diag.List {
	data, err := fs.ReadFile(fsys, name)
	if err != nil {
		var list diag.List
		list.Addf(diag.Pos{File: path.Join(dir, name)}, FileMissing, "cannot be read; a shop folder holds %v", Files())
		return list
	}
	return source.Decode(path.Join(dir, name), data, into)
}

// attach reads the letterhead's picture and texts that company.yaml names.
func (c *Catalog) attach(fsys fs.FS, list *diag.List) {
	get := func(field, name string) []byte {
		if name == "" {
			return nil
		}
		data, err := fs.ReadFile(fsys, name)
		if err != nil {
			list.Addf(c.Company.Where.Of(field), FileMissing, "file %q is not in the shop folder", name)
		}
		return data
	}
	c.Logo = get("logo", c.Company.Logo)
	c.Terms = string(get("terms", c.Company.Terms))
	c.Payment = string(get("payment", c.Company.Payment))
	if c.Logo != nil && c.LogoType() == "" {
		list.Addf(c.Company.Where.Of("logo"), BadPicture, "%q is neither a PNG nor a JPEG picture", c.Company.Logo)
	}
}

// LogoType is ".png" or ".jpg" by the picture's own first bytes, or empty.
func (c *Catalog) LogoType() string {
	switch {
	case bytes.HasPrefix(c.Logo, []byte("\x89PNG\r\n\x1a\n")):
		return ".png"
	case bytes.HasPrefix(c.Logo, []byte("\xff\xd8\xff")):
		return ".jpg"
	}
	return ""
}

// sameCompany tells whether the company file is still the demonstration's.
func sameCompany(fsys fs.FS) bool {
	have, err1 := fs.ReadFile(fsys, "company.yaml")
	want, err2 := fs.ReadFile(Demo(), "company.yaml")
	return err1 == nil && err2 == nil && bytes.Equal(have, want)
}
