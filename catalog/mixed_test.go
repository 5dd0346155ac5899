package catalog

import (
	"bytes"
	"io/fs"
	"os"
	"regexp"
	"slices"
	"testing"
	"testing/fstest"

	"pgregory.net/rapid"

	"tentwright/catalog/diag"
	"tentwright/catalog/diag/diagtest"
)

const mixedShops = "../testdata/invalid/mixed-shop"

// Faults of form and of what the shop's files say of each other come together,
// and nothing that only follows from one is reported beside it.
func TestMixedFaultsOfShops(t *testing.T) {
	diagtest.Each(t, os.DirFS(mixedShops), func(t *testing.T, _ string, data []byte) {
		name := diagtest.Replaces(data)
		_, list := Load("shop", smallWith(t, name, data))
		diagtest.Compare(t, "shop/"+name, data, list)
	})
}

var (
	aKey   = regexp.MustCompile(`(?m)([{ ,-])([a-z_]+): `)
	aValue = regexp.MustCompile(`(?m)([a-z_]+: )([^"'{\[,}\n#]+)`)
)

// One field of the demonstration shop made unreadable gives faults of form and
// no other: whatever else was found would only follow from it.
func TestOneFaultIsNotReportedAsTwo(t *testing.T) {
	shop := demoCopy(t)
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(Files()).Draw(t, "file")
		data := withoutRemarks(shop[name].Data)
		pattern, text := aKey, "${1}x${2}: "
		if rapid.Bool().Draw(t, "value") {
			pattern, text = aValue, "${1}[{}]"
		}
		all := pattern.FindAllIndex(data, -1)
		at := all[rapid.IntRange(0, len(all)-1).Draw(t, "field")]
		broken := slices.Concat(data[:at[0]], pattern.ReplaceAll(data[at[0]:at[1]], []byte(text)), data[at[1]:])
		other := fstest.MapFS{}
		for file, content := range shop {
			other[file] = content
		}
		other[name] = &fstest.MapFile{Data: broken}
		for _, p := range second(Load("shop", other)) {
			if !ofForm(p.Code) {
				t.Fatalf("%s with %q: %s", name, broken[at[0]:min(len(broken), at[1]+10)], p)
			}
		}
	})
}

func second(_ *Catalog, list diag.List) diag.List { return list }

// ofForm tells the codes of the reader from those of the cross-checks.
func ofForm(code string) bool {
	return slices.Contains([]string{diag.UnknownField, diag.MissingField, diag.WrongKind, diag.BadValue, diag.Syntax, diag.RepeatedField, diag.EmptyValue}, code)
}

// withoutRemarks takes out what is no field.
func withoutRemarks(data []byte) []byte {
	var lines [][]byte
	for _, line := range bytes.Split(data, []byte("\n")) {
		if !bytes.HasPrefix(bytes.TrimSpace(line), []byte("#")) {
			lines = append(lines, line)
		}
	}
	return bytes.Join(lines, []byte("\n"))
}

// demoCopy is the demonstration shop with files that may be changed.
func demoCopy(t *testing.T) fstest.MapFS {
	t.Helper()
	shop := fstest.MapFS{}
	entries, err := fs.ReadDir(Demo(), ".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		data, err := fs.ReadFile(Demo(), e.Name())
		if err != nil {
			t.Fatal(err)
		}
		shop[e.Name()] = &fstest.MapFile{Data: data}
	}
	return shop
}
