package catalog

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"pgregory.net/rapid"

	"tentwright/catalog/diag"
)

const mixedShops = "../testdata/invalid/mixed-shop"

// Faults of form and of what the shop's files say of each other come together,
// and nothing that only follows from one is reported beside it.
func TestMixedFaultsOfShops(t *testing.T) {
	files, err := filepath.Glob(mixedShops + "/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no fixtures found", err)
	}
	for _, path := range files {
		t.Run(filepath.Base(path), func(t *testing.T) {
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			first, _, _ := strings.Cut(string(data), "\n")
			name := strings.TrimPrefix(first, "# replaces: ")
			_, list := Load("shop", smallWith(t, name, data))
			compareWants(t, string(data), "shop/"+name, list)
		})
	}
}

// compareWants pairs the problems of a file with its want comments, one to one.
func compareWants(t *testing.T, data, file string, list diag.List) {
	t.Helper()
	wants := map[int][]string{}
	for n, line := range strings.Split(data, "\n") {
		if _, after, ok := strings.Cut(line, "# want: "); ok {
			wants[n+1] = strings.Split(after, "  # want: ")
		}
	}
	for _, p := range list {
		at := slices.IndexFunc(wants[p.Pos.Line], func(want string) bool { return strings.Contains(p.String(), want) })
		if at < 0 || p.Pos.File != file {
			t.Errorf("not wanted: %s", p)
			continue
		}
		wants[p.Pos.Line] = slices.Delete(wants[p.Pos.Line], at, at+1)
	}
	for line, left := range wants {
		for _, want := range left {
			t.Errorf("line %d: nothing says %q", line, want)
		}
	}
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
