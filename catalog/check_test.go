package catalog

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"tentwright/catalog/diag/diagtest"
)

const (
	smallShop = "../testdata/shops/small"
	badShops  = "../testdata/invalid/shop"
)

// smallWith is the small shop with one of its files replaced.
func smallWith(t *testing.T, name string, data []byte) fstest.MapFS {
	t.Helper()
	return diagtest.With(t, os.DirFS(smallShop), name, data)
}

// The small shop is without fault, so that each fixture has only its own.
func TestSmallShop(t *testing.T) {
	if _, list := Load("small", smallWith(t, "", nil)); len(list) > 0 {
		t.Fatal(list.Err())
	}
}

// Each fixture holds one kind of fault, named like the file.
func TestFaultsOfShops(t *testing.T) {
	diagtest.Each(t, os.DirFS(badShops), func(t *testing.T, code string, data []byte) {
		name := diagtest.Replaces(data)
		c, list := Load("shop", smallWith(t, name, data))
		if c != nil {
			t.Error("the shop was taken in spite of its fault")
		}
		diagtest.OfCode(t, list, code)
		diagtest.Compare(t, "shop/"+name, data, list)
	})
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
