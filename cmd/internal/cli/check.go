package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/quote"
	"tentwright/quote/job"
)

// newCheck is the command that looks for faults and makes nothing.
func newCheck(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "check [SHOP or JOB.yaml]...",
		Short: "Look for faults in a shop or in job files",
		Long: `Reads shop folders and job files and lists every fault in them, each with file,
line and column and the line itself. Nothing is made. Without a name the nearest
shop is checked. A job is checked against the shop that a quote would use.`,
		Example: `  tentwright check my-yard
  tentwright check jobs/dinner.yaml jobs/garden.yaml`,
		RunE: func(_ *cobra.Command, args []string) error { return a.check(args) },
	}
}

// check checks every path and fails with the faults of all.
func (a *app) check(paths []string) error {
	k := &checking{app: a}
	if len(paths) == 0 {
		if err := k.shopOf("."); err != nil {
			return err
		}
	}
	for _, path := range paths {
		if err := k.path(path); err != nil {
			return err
		}
	}
	if n := len(k.list.Faults()); n > 0 {
		f := faults("what was checked", k.list, joined(k.srcs...))
		f.problem = strings.TrimSuffix(f.problem, "; nothing was written")
		return f
	}
	if len(k.list) > 0 {
		diag.Write(a.errs, k.list, joined(k.srcs...))
	}
	for _, line := range k.fine {
		a.printf("no faults: %s\n", line)
	}
	return nil
}

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
	case err == nil && slices.Contains(catalog.Files(), filepath.Base(path)):
		return k.path(filepath.Dir(path))
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
	j, list := job.Read(f.path, f.data)
	if j != nil && s.catalog != nil {
		_, more := quote.Build(s.catalog, j)
		list.Join(more)
	}
	k.list.Join(list)
	if j != nil {
		k.fine = append(k.fine, fmt.Sprintf("job %s (%d lines of tents, %d of items)", path, len(j.Tents), len(j.Items)))
	}
	return nil
}
