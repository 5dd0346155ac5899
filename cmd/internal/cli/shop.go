package cli

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"tentwright/catalog"
	"tentwright/workbook"
)

// builtIn is how positions name the shop inside the program.
const builtIn = "(built-in shop)"

// company is the file that makes a folder a shop.
const company = "company.yaml"

// shop is a place with the files of a shop.
type shop struct {
	dir     string // as shown; builtIn for the one inside the program
	files   fs.FS
	catalog *catalog.Catalog
}

// findShop is the shop of --shop, else the nearest one above any of the given
// folders, else the one inside the program.
func (a *app) findShop(folders ...string) (*shop, error) {
	if a.shop != "" {
		info, err := os.Stat(a.shop)
		switch {
		case err != nil:
			return nil, fileError(`make one with "tentwright new DIR"`, "shop folder %q cannot be read: %s", a.shop, cause(err))
		case !info.IsDir():
			return nil, fileError("", "shop %q is a file; a folder with %s was expected", a.shop, company)
		}
		return &shop{dir: a.shop, files: os.DirFS(a.shop)}, nil
	}
	for _, folder := range folders {
		if dir, ok := shopAbove(folder); ok {
			return &shop{dir: dir, files: os.DirFS(dir)}, nil
		}
	}
	return &shop{dir: builtIn, files: catalog.Demo()}, nil
}

// useShop finds and reads the shop that findShop finds, and warns of
// demonstration prices.
func (a *app) useShop(folders ...string) (*shop, error) {
	s, err := a.findShop(folders...)
	if err != nil {
		return nil, err
	}
	if err := s.load(); err != nil {
		return nil, err
	}
	a.warn(s)
	return s, nil
}

// shopAbove is the nearest folder from dir upwards that holds a company file,
// as seen from the working folder.
func shopAbove(dir string) (string, bool) {
	full, err := filepath.Abs(dir)
	if err != nil {
		return "", false
	}
	for {
		if info, err := os.Stat(filepath.Join(full, company)); err == nil && info.Mode().IsRegular() {
			return nearPath(full), true
		}
		above := filepath.Dir(full)
		if above == full {
			return "", false
		}
		full = above
	}
}

// nearPath is a path as seen from the working folder, where that is shorter.
func nearPath(full string) string {
	here, err := os.Getwd()
	if err != nil {
		return full
	}
	if near, err := filepath.Rel(here, full); err == nil && len(near) < len(full) {
		return near
	}
	return full
}

// load reads the shop, or fails with all its faults.
func (s *shop) load() error {
	c, list := catalog.Load(s.dir, s.files)
	if c == nil {
		return faults("shop "+s.dir, list, s.source)
	}
	s.catalog = c
	return nil
}

// source is the bytes of a file of the shop; nil for any other.
func (s *shop) source(file string) []byte {
	name := filepath.Base(file)
	if !s.holds(file) {
		return nil
	}
	data, err := fs.ReadFile(s.files, name)
	if err != nil {
		return nil
	}
	return data
}

// holds tells whether a path of a position lies in the shop.
func (s *shop) holds(file string) bool {
	return filepath.Clean(filepath.Dir(file)) == filepath.Clean(s.dir)
}

// paths is every file of the shop on disk; none for the built-in one.
func (s *shop) paths() []string {
	if s.dir == builtIn {
		return nil
	}
	var all []string
	for _, name := range append(catalog.Files(), catalog.MoreFiles()...) {
		all = append(all, filepath.Join(s.dir, name))
	}
	return all
}

// warn says that the prices are not the yard's own.
func (a *app) warn(s *shop) {
	if s.catalog == nil || !s.catalog.Demo {
		return
	}
	advice := "set up your own: put your name and prices into " + filepath.Join(s.dir, company) + " and the files beside it"
	if s.dir == builtIn {
		advice = `no shop folder was found; make your own with "tentwright new DIR"`
	}
	a.note(workbook.DemoNotice, advice)
}

// cause is the reason of a file error without the path, which is named before.
func cause(err error) string {
	for inner := errors.Unwrap(err); inner != nil; inner = errors.Unwrap(err) {
		err = inner
	}
	return err.Error()
}

// joined is a source that asks each of several.
func joined(all ...func(string) []byte) func(string) []byte {
	return func(file string) []byte {
		for _, src := range all {
			if data := src(file); data != nil {
				return data
			}
		}
		return nil
	}
}
