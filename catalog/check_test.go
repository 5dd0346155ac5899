package catalog

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"tentwright/catalog/diag"
)

const (
	smallShop = "../testdata/shops/small"
	badShops  = "../testdata/invalid/shop"
)

// smallWith is the small shop with one of its files replaced.
func smallWith(t *testing.T, name string, data []byte) fstest.MapFS {
	t.Helper()
	shop := fstest.MapFS{}
	for _, file := range Files() {
		content, err := os.ReadFile(filepath.Join(smallShop, file))
		if err != nil {
			t.Fatal(err)
		}
		shop[file] = &fstest.MapFile{Data: content}
	}
	if name != "" {
		shop[name] = &fstest.MapFile{Data: data}
	}
	return shop
}

// The small shop is without fault, so that each fixture has only its own.
func TestSmallShop(t *testing.T) {
	if _, list := Load("small", smallWith(t, "", nil)); len(list) > 0 {
		t.Fatal(list.Err())
	}
}

// Each fixture holds one kind of fault, named like the file, and a comment
// "want:" on each line where a problem must be found.
func TestFaultsOfShops(t *testing.T) {
	files, err := filepath.Glob(badShops + "/*.yaml")
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
			name := strings.TrimPrefix(first, "# replaces: ")
			c, list := Load("shop", smallWith(t, name, data))
			if c != nil {
				t.Fatal("the shop was taken in spite of its fault")
			}
			for n, line := range strings.Split(string(data), "\n") {
				if _, want, ok := strings.Cut(line, "# want: "); ok {
					wantProblem(t, list, "shop/"+name, n+1, code, want)
				}
			}
		})
	}
}

func wantProblem(t *testing.T, list diag.List, file string, line int, code, message string) {
	t.Helper()
	for _, p := range list {
		if p.Pos.File == file && p.Pos.Line == line && p.Code == code && strings.Contains(p.Message, message) {
			if p.Pos.Column == 0 {
				t.Errorf("%s: no column", p)
			}
			return
		}
	}
	t.Errorf("no problem %s at %s:%d with %q; found:\n%v", code, file, line, message, list.Err())
}

// Every code has a fixture, so that none goes untested.
func TestEveryCodeHasAFixture(t *testing.T) {
	data, err := os.ReadFile("codes.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(string(data), "\n") {
		_, rest, ok := strings.Cut(line, `= "`)
		if !ok {
			continue
		}
		code, _, _ := strings.Cut(rest, `"`)
		if code == BadPicture || code == BadText { // need files of their own, see attach_test.go
			continue
		}
		if _, err := os.Stat(filepath.Join(badShops, code+".yaml")); err != nil {
			t.Errorf("code %q has no fixture in %s", code, badShops)
		}
	}
}

// A misspelt id brings the nearest one that exists.
func TestNearestNameIsOffered(t *testing.T) {
	data, err := os.ReadFile(filepath.Join(badShops, "unknown-id.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	_, list := Load("shop", smallWith(t, "parts.yaml", data))
	if len(list) == 0 || !strings.Contains(list[0].Advice, `"tube"`) {
		t.Errorf("the advice does not offer the nearest id: %v", list.Err())
	}
}
