package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/quote"
)

// checking gathers what is found on the way.
type checking struct {
	app   *app
	list  diag.List
	srcs  []func(string) []byte
	fine  []string
	shops []*shop // looked at already
}

// path checks a shop folder, a file of a shop, or a job.
func (k *checking) path(path string) error {
	info, err := os.Stat(path)
	switch {
	case err == nil && info.IsDir():
		own := *k.app
		own.shop = path
		_, err := k.load(&own)
		return err
	case err == nil && catalog.IsFile(filepath.Base(path)):
		return k.path(filepath.Dir(path))
	case errors.Is(err, fs.ErrNotExist) && !endsIn(path, jobEndings()...):
		return fileError("name a shop folder, or a job file ending in .yaml", "%q does not exist", path)
	}
	return k.job(path)
}

func (k *checking) shopOf(folders ...string) error {
	_, err := k.load(k.app, folders...)
	return err
}

// load reads a shop once and notes what it finds; nil where it has faults.
func (k *checking) load(a *app, folders ...string) (*shop, error) {
	s, err := a.findShop(folders...)
	if err != nil {
		return nil, err
	}
	for _, known := range k.shops {
		if known.dir == s.dir {
			return known, nil
		}
	}
	k.shops = append(k.shops, s)
	c, list := catalog.Load(s.dir, s.files)
	k.list.Join(list)
	k.srcs = append(k.srcs, s.source)
	s.catalog = c
	if c != nil {
		k.list.Join(quote.CheckShop(c))
		a.warn(s)
		k.fine = append(k.fine, fmt.Sprintf("shop %s (%d tent families, %d parts, %d items, %d labour rules, %d vehicles)",
			s.dir, len(c.Families), len(c.Parts), len(c.Items), len(c.Labour), len(c.Fleet.Vehicles)))
	}
	return s, nil
}

// job checks a job; where its shop has faults, only the job's form.
func (k *checking) job(path string) error {
	f, err := readJob(path)
	if err != nil {
		return err
	}
	s, err := k.load(k.app, filepath.Dir(path), ".")
	if err != nil {
		return err
	}
	k.srcs = append(k.srcs, f.source)
	j, list := f.read(s.catalog)
	if j != nil && s.catalog != nil {
		_, more := quote.Build(s.catalog, j)
		list.Join(more)
	}
	k.list.Join(list)
	if j != nil {
		k.fine = append(k.fine, fmt.Sprintf("job %s (lines of tents: %d, of items: %d)", path, len(j.Tents), len(j.Items)))
	}
	return nil
}
