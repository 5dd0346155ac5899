package cli

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// edges lists which packages of ours each may import; * at the end stands for
// every package below. The path of the data runs one way.
var edges = map[string][]string{
	"catalog/diag":           {},
	"catalog/diag/diagtest":  {"catalog/diag"}, // fixtures of faults
	"catalog/unit":           {},
	"catalog/money":          {},
	"catalog/source":         {"catalog/diag", "catalog/unit", "catalog/money"},
	"catalog":                {"catalog/diag", "catalog/unit", "catalog/money", "catalog/source"},
	"quote/job":              {"catalog", "catalog/*"},
	"quote/frame":            {"catalog", "catalog/*", "quote/job"},
	"quote/tent":             {"catalog", "catalog/*", "quote/job", "quote/frame"},
	"quote/anchor":           {"catalog", "catalog/*", "quote/job", "quote/frame", "quote/tent"},
	"quote/parts":            {"catalog", "catalog/*", "quote/job", "quote/tent"},
	"quote/power":            {"catalog", "catalog/*", "quote/job", "quote/frame", "quote/tent", "quote/parts"},
	"quote/egress":           {"catalog", "catalog/*", "quote/job", "quote/frame", "quote/tent", "quote/parts"},
	"quote/layout":           {"catalog", "catalog/*", "quote/job", "quote/frame", "quote/tent"},
	"quote/dates":            {"catalog", "catalog/*", "quote/job", "quote/tent", "quote/parts"},
	"quote/load":             {"catalog", "catalog/*", "quote/job", "quote/parts"},
	"quote/lift":             {"catalog", "catalog/*", "quote/frame", "quote/tent", "quote/parts"},
	"quote/labour":           {"catalog", "catalog/*", "quote/job", "quote/parts", "quote/load", "quote/lift"},
	"quote/crew/schedule":    {},
	"quote/crew/spread":      {"quote/crew/schedule"},
	"quote/crew/duty":        {"catalog", "catalog/unit"},
	"quote/crew":             {"catalog", "catalog/*", "quote/job", "quote/parts", "quote/load", "quote/labour", "quote/crew/*"},
	"quote/learn":            {"catalog", "catalog/*"},
	"quote/price":            {"catalog", "catalog/*", "quote/job", "quote/tent", "quote/parts", "quote/load", "quote/labour"},
	"quote":                  {"catalog", "catalog/*", "quote/*"},
	"quote/jobtest":          {"catalog", "catalog/*", "quote", "quote/*"}, // jobs for tests
	"workbook/sheet":         {"catalog/diag", "catalog/unit", "catalog/money"},
	"workbook/xlsx":          {"workbook/sheet", "catalog/unit", "catalog/money"},
	"workbook/record":        {"catalog"},
	"workbook/draw":          {"quote/layout", "catalog/unit"},
	"workbook":               {"catalog", "catalog/*", "quote", "quote/*", "workbook/sheet", "workbook/record", "workbook/draw"},
	"workbook/intake":        {"catalog", "catalog/*", "quote", "quote/*", "workbook/sheet"},
	"workbook/revise":        {"catalog", "catalog/*", "quote", "quote/*", "workbook", "workbook/sheet", "workbook/record"},
	"workbook/listing":       {"catalog", "catalog/*", "workbook/sheet"},
	"workbook/internal/calc": {"workbook/sheet", "workbook/xlsx"},
	"cmd/internal/cli":       {"catalog", "catalog/*", "quote", "quote/*", "workbook", "workbook/*"},
	"cmd/tentwright":         {"cmd/internal/cli"},
}

// homes lists who may import a library from outside; tests are free to.
var homes = map[string][]string{
	"gopkg.in/yaml.v3":         {"catalog/source"},
	"github.com/shopspring/":   {"catalog/money"},
	"github.com/xuri/excelize": {"workbook/xlsx", "workbook/internal/calc"},
	"github.com/spf13/":        {"cmd/internal/cli"},
	"github.com/schollz/":      {"cmd/internal/cli"}, // on a terminal only
	"gonum.org/v1/plot":        {"workbook/draw"},
	"codeberg.org/go-fonts/":   {"workbook/draw"}, // in drawings, and so the same on every system
	"golang.org/x/image/":      {"workbook/draw"},
	"pgregory.net/rapid":       {"quote/jobtest"},
}

// worldly is what ties a computation to the machine that it runs on.
var worldly = []string{"os", "os/exec", "net", "net/http", "log", "log/slog", "flag", "syscall", "math/rand"}

func TestImports(t *testing.T) {
	root := os.DirFS("../../..")
	seen := map[string]bool{}
	for file, imports := range goFiles(t, root) {
		dir := path.Dir(file)
		allowed, known := edges[dir]
		if !known {
			t.Errorf("%s: package %s is not in the table of edges", file, dir)
			continue
		}
		seen[dir] = true
		for _, imp := range imports {
			if why := forbidden(dir, imp, allowed); why != "" {
				t.Errorf("%s: imports %s: %s", file, imp, why)
			}
		}
	}
	for dir := range edges {
		if !seen[dir] {
			t.Errorf("package %s is in the table of edges but not in the tree", dir)
		}
	}
}

// goFiles is the imports of every Go file that is no test, by path.
func goFiles(t *testing.T, root fs.FS) map[string][]string {
	files := map[string][]string{}
	err := fs.WalkDir(root, ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && name != "." && strings.HasPrefix(path.Base(name), "."):
			return fs.SkipDir
		case d.IsDir() || path.Ext(name) != ".go" || strings.HasSuffix(name, "_test.go"):
			return nil
		}
		data, err := fs.ReadFile(root, name)
		if err != nil {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), name, data, parser.ImportsOnly)
		if err != nil {
			return err
		}
		files[name] = []string{}
		for _, spec := range parsed.Imports {
			imp, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			files[name] = append(files[name], imp)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// forbidden tells why a package must not import another; "" when it may.
func forbidden(dir, imp string, allowed []string) string {
	if own, ok := strings.CutPrefix(imp, "tentwright/"); ok {
		if slices.ContainsFunc(allowed, func(edge string) bool { return matches(edge, own) }) {
			return ""
		}
		return "not among the allowed edges of " + dir
	}
	if strings.Contains(strings.Split(imp, "/")[0], ".") {
		for library, at := range homes {
			if strings.HasPrefix(imp, library) {
				if slices.Contains(at, dir) {
					return ""
				}
				return "its home is " + strings.Join(at, ", ")
			}
		}
		return "a library without a home in the table"
	}
	if pure(dir) && slices.Contains(worldly, imp) {
		return "nothing under catalog, quote or workbook depends on the machine it runs on"
	}
	return ""
}

// pure tells whether a package must give the same for the same input.
func pure(dir string) bool {
	for _, top := range []string{"catalog", "quote", "workbook"} {
		if dir == top || strings.HasPrefix(dir, top+"/") {
			return !strings.Contains(dir, "/internal/")
		}
	}
	return false
}

// matches tells whether an edge of the table covers a package.
func matches(edge, own string) bool {
	if below, ok := strings.CutSuffix(edge, "*"); ok {
		return strings.HasPrefix(own, below)
	}
	return edge == own
}

// The clock is read in this package only: elsewhere the date is an input.
func TestClock(t *testing.T) {
	root := os.DirFS("../../..")
	for file := range goFiles(t, root) {
		data, err := fs.ReadFile(root, file)
		if err != nil {
			t.Fatal(err)
		}
		if path.Dir(file) != "cmd/internal/cli" && strings.Contains(string(data), "time.Now") {
			t.Errorf("%s: reads the clock", file)
		}
	}
}
