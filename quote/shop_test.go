package quote

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"tentwright/catalog"
)

// Every size of the demonstration shop stands at every height.
func TestCheckShopOfTheDemo(t *testing.T) {
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	if list := CheckShop(c); len(list) > 0 {
		t.Error(list.Err())
	}
}

// Each fixture is a file of the small shop that its own checks let pass, though
// its tents cannot stand; the faults are named like it.
func TestCheckShopFindsWhatCannotStand(t *testing.T) {
	files, err := filepath.Glob("../testdata/invalid/frame/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no fixtures found", err)
	}
	for _, path := range files {
		code := strings.TrimSuffix(filepath.Base(path), ".yaml")
		t.Run(code, func(t *testing.T) {
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			first, _, _ := strings.Cut(string(data), "\n")
			c, list := catalog.Load("shop", smallWith(t, strings.TrimPrefix(first, "# replaces: "), data))
			if c == nil {
				t.Fatal(list.Err())
			}
			found := map[int]string{}
			for _, p := range CheckShop(c) {
				if p.Code != code || p.Pos.Column == 0 {
					t.Errorf("unexpected problem %s", p)
				}
				found[p.Pos.Line] += p.Message + "\n"
			}
			for n, line := range strings.Split(string(data), "\n") {
				_, want, ok := strings.Cut(line, "# want: ")
				if ok != (found[n+1] != "") || !strings.Contains(found[n+1], want) {
					t.Errorf("line %d: want %q; found %q", n+1, want, found[n+1])
				}
			}
		})
	}
}

// smallWith is the small shop with one of its files replaced.
func smallWith(t *testing.T, name string, data []byte) fstest.MapFS {
	t.Helper()
	shop := fstest.MapFS{}
	for _, file := range catalog.Files() {
		content, err := os.ReadFile(filepath.Join("../testdata/shops/small", file))
		if err != nil {
			t.Fatal(err)
		}
		shop[file] = &fstest.MapFile{Data: content}
	}
	shop[name] = &fstest.MapFile{Data: data}
	return shop
}

func BenchmarkCheckShop(b *testing.B) {
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		b.Fatal(list.Err())
	}
	for b.Loop() {
		CheckShop(c)
	}
}
