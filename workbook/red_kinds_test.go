package workbook_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// fixedPair is a kind of check whose two sides nothing in the workbook
// changes: the job that has it red, and the same job put right.
type fixedPair struct {
	bad  string
	shop func(t *testing.T) *catalog.Catalog
	red  string // body of the job
	good string
	then func(t *testing.T) *catalog.Catalog
}

// apartTops is a shop whose tops must not ride shut in; its van is closed.
func apartTops(t *testing.T) *catalog.Catalog {
	return smallShop(t, "wets: true}\n  - {id: wall_10", "wets: true, apart: true}\n  - {id: wall_10")
}

// plainShop is the smallest one, without demonstration prices.
func plainShop(t *testing.T) *catalog.Catalog { return smallShop(t) }

func demoShop(t *testing.T) *catalog.Catalog { return demoCatalog(t) }

// ownAnchors is a shop that took the demonstration's files over for its own, in
// which what is marked as the demonstration's counts no more.
func ownAnchors(t *testing.T) *catalog.Catalog {
	c := demoCatalog(t)
	c.Demo = false
	return c
}

// fixedHead is a job's head with another day of the quote.
func fixedHead(day string) string { return strings.Replace(usualHead, "2027-01-10", day, 1) }

// fixed is what a job file changes and the workbook does not.
var fixed = map[string]fixedPair{
	"overlap":              {bad: stop, shop: plainShop, red: twoTents("25 ft", "20 ft") + largePlot, good: twoTents("60 ft", "20 ft") + largePlot},
	"footprint":            {bad: stop, shop: plainShop, red: twoTents("32 ft", "20 ft") + largePlot, good: twoTents("60 ft", "20 ft") + largePlot},
	"obstacle":             {bad: stop, shop: plainShop, red: twoTents("58 ft", "58 ft") + largePlot, good: twoTents("60 ft", "20 ft") + largePlot},
	"edge":                 {bad: stop, shop: plainShop, red: redJob + smallPlot, good: twoTents("60 ft", "20 ft") + largePlot},
	"clear":                {bad: look, shop: demoShop, red: nearTents("10 ft", "45 ft") + hutPlot, good: nearTents("30 ft", "80 ft") + hutPlot},
	"quote before balance": {bad: look, shop: plainShop, red: fixedHead("2027-06-05") + redJob, good: redJob},
	"past":                 {bad: stop, shop: plainShop, red: fixedHead("2027-06-12") + redJob, good: redJob},
	"tax place":            {bad: look, shop: demoShop, red: heaterJob + "}]", good: strings.Replace(usualHead, "guests: 40", "guests: 40, tax_place: county-larkmere", 1) + heaterJob + "}]"},
	"fuel":                 {bad: stop, shop: apartTops, red: redJob, then: plainShop, good: redJob},
	"licence":              {bad: look, shop: demoShop, red: "tents: [{id: a, family: hip, size: 40x80, count: 3}]", good: heaterJob + "}]"},
	"anchor missing":       {bad: stop, shop: ownAnchors, red: walledJob, then: demoShop, good: walledJob},
	"anchor refused":       {bad: stop, shop: demoShop, red: "site: [{factor: slope, option: steep}]\n" + stakedJob, good: stakedJob},
	"anchors":              {bad: stop, shop: plainShop, red: redJob, good: "items: [{item: chair, quantity: 50}]"},
	"power data":           {bad: stop, shop: plainShop, red: redJob + "power: {source: site, distance: 80 ft}\n", good: redJob},
	"site supply":          {bad: look, shop: demoShop, red: warmTent + "power: {source: site, distance: 80 ft}\n", good: warmJob},
	"light data":           {bad: look, shop: ownAnchors, red: walledJob, then: demoShop, good: walledJob},
	"open side":            {bad: stop, shop: demoShop, red: "tents: [{id: a, family: hip, size: 20x20, sides: [{side: front, wall: solid}]}]\nheat: {inside: 68 F, outside: 36 F, hours: 8}\n", good: warmJob},
	"ready":                {bad: stop, shop: demoShop, red: stakedJob + hurried, good: stakedJob},
	"sure":                 {bad: look, shop: demoShop, red: stakedJob + hurried, good: stakedJob},
	"crew stops":           {bad: stop, shop: demoShop, red: stakedJob + hurried, good: stakedJob},
	"crew cautions":        {bad: look, shop: demoShop, red: stakedJob + "\nlabour: {windows: [{window: install, crew: 30}]}", good: stakedJob},
	"demo":                 {bad: stop, shop: demoShop, red: heaterJob + "}]", then: plainShop, good: redJob},
}

// Plots that are too small for the tents, and that have a tree in the way.
const (
	smallPlot = "\nplot: {width: 25 ft, depth: 25 ft}"
	largePlot = "\nplot: {width: 100 ft, depth: 100 ft, obstacles: [{name: Elm, x: 60 ft, y: 60 ft, radius: 3 ft}]}"
)

// hurried asks for a tent that stands an hour after the crew is called.
const hurried = "\nlabour: {windows: [{window: install, crew: 4, ready: \"08:30\"}]}"

// hutPlot is a plot with a building and a vehicle; tents at 30 and 80 ft are
// clear of both and of the edges.
const hutPlot = "\nplot: {width: 160 ft, depth: 120 ft, obstacles: [{name: Hut, kind: building, x: 20 ft, y: 90 ft, width: 9 ft, depth: 9 ft}, {name: Lorry, kind: vehicle, x: 125 ft, y: 90 ft, radius: 3 ft}]}"

// nearTents is a job with two tents, each so far from the left edge.
func nearTents(a, b string) string {
	return "tents: [{id: a, family: hip, size: 20x20, place: {x: " + a + ", y: 30 ft}}, {id: b, family: hip, size: 20x20, place: {x: " + b + ", y: 30 ft}}]"
}

// Each kind of distance is held against the code: each one alone is red where
// one thing of its kind is too near, and says which two they are.
func TestClearancesByKind(t *testing.T) {
	for kind, x := range map[string]struct{ red, names string }{
		"edge":     {nearTents("10 ft", "80 ft") + hutPlot, "a is 6 ft from left edge"},
		"building": {nearTents("30 ft", "80 ft") + strings.Replace(hutPlot, "x: 20 ft, y: 90 ft, width", "x: 35 ft, y: 64 ft, width", 1), "a is 10 ft from Hut"},
		"vehicle":  {nearTents("30 ft", "80 ft") + strings.Replace(hutPlot, "x: 125 ft, y: 90 ft", "x: 112 ft, y: 40 ft", 1), "b is 5 ft from Lorry"},
		"tent":     {nearTents("30 ft", "63 ft") + hutPlot, "a is 5 ft from b"},
	} {
		q, _ := laidOut(t, demoShop(t), x.red)
		for _, c := range q.Checks {
			of, is := strings.CutPrefix(c.Key, "clear:")
			if !is {
				continue
			}
			if c.Holds() == (of == kind) {
				t.Errorf("%s too near: %s is %s of %s", kind, c.Key, c.Value, c.Limit)
			} else if of == kind && (!strings.Contains(c.Advice, x.names) || !strings.Contains(c.Advice, "20 ft") || !strings.Contains(c.Advice, "authority")) {
				t.Errorf("%s: the advice is %q; want %q, 20 ft and the authority in it", kind, c.Advice, x.names)
			}
		}
	}
}

// twoTents is a job with one tent at 20 ft and one at another place.
func twoTents(x, y string) string {
	return "tents: [{id: a, family: hip, size: 10x10, place: {x: 20 ft, y: 20 ft}}, {id: b, family: hip, size: 10x10, place: {x: " + x + ", y: " + y + "}}]"
}

// stateOf is the state that a workbook is made with, of the first check of a
// kind that is red, or else of any; none if it lists no check of the kind.
func stateOf(t *testing.T, b *sheet.Book, kind string) (state, place string) {
	t.Helper()
	keys, s, first := cellsOf(t, b, "check_key")
	states, _, _ := cellsOf(t, b, "check_state")
	for i, c := range keys {
		key, _ := c.Value.(string)
		if got, _, _ := strings.Cut(key, ":"); got == kind && (state == "" || state == good) {
			state, _ = states[i].Value.(string)
			place = s.Name + ", row " + strconv.Itoa(first+i)
		}
	}
	return state, place
}

// Checks that only a job file changes are red for one job and not for the
// same job put right.
func TestFixedChecksFollowTheJob(t *testing.T) {
	for _, kind := range slices.Sorted(maps.Keys(fixed)) {
		x := fixed[kind]
		_, book := laidOut(t, x.shop(t), x.red)
		if state, place := stateOf(t, book, kind); state != x.bad {
			t.Errorf("%s: %s: wanted %s, got %q", kind, place, x.bad, state)
		}
		shop := x.shop
		if x.then != nil {
			shop = x.then
		}
		_, book = laidOut(t, shop(t), x.good)
		if state, place := stateOf(t, book, kind); state != good {
			t.Errorf("%s, put right: %s: wanted %s, got %q", kind, place, good, state)
		}
	}
}

// Each kind of check that the code can make has a test: one with a formula is
// turned by what is typed, any other by the job file.
func TestEveryKindOfCheckIsTurned(t *testing.T) {
	turned := map[string]bool{}
	live := map[string]string{} // kind with a formula, and where it stands
	seen := map[string]bool{}
	for i := range turns {
		kind, _, _ := strings.Cut(turns[i].check, ":")
		turned[kind] = true
		liveKinds(t, turns[i].book(t), live, seen)
	}
	for _, x := range fixed {
		_, book := laidOut(t, x.shop(t), x.red)
		liveKinds(t, book, live, seen)
	}
	for _, q := range demoQuotes(t, demoCatalog(t)) {
		liveKinds(t, workbook.Layout(q), live, seen)
	}
	kinds := kindsInCode(t, "../quote", ".")
	for kind := range seen {
		if !slices.Contains(kinds, kind) {
			t.Errorf("%s lists kind %q, which was not found in the code; wanted a key written as a literal", workbook.SheetChecks, kind)
		}
	}
	for _, kind := range kinds {
		_, still := fixed[kind]
		switch place, formula := live[kind]; {
		case !seen[kind]:
			t.Errorf("kind %q: no workbook of these tests lists it; wanted one", kind)
		case formula && !turned[kind]:
			t.Errorf("kind %q: %s follows inputs; wanted a turn for it, got none", kind, place)
		case !formula && turned[kind]:
			t.Errorf("kind %q: wanted a formula, got values on every sheet", kind)
		case formula == still:
			t.Errorf("kind %q: formulas %t, listed as fixed %t; wanted one of them", kind, formula, still)
		}
	}
	t.Logf("%d kinds: %d turned by what is typed, %d by the job file", len(kinds), len(turned), len(fixed))
}

// liveKinds notes the kinds of a book's checks, and which have a formula in a
// side.
func liveKinds(t *testing.T, b *sheet.Book, live map[string]string, seen map[string]bool) {
	t.Helper()
	keys, s, first := cellsOf(t, b, "check_key")
	values, _, _ := cellsOf(t, b, "check_value")
	limits, _, _ := cellsOf(t, b, "check_limit")
	for i, c := range keys {
		key, _ := c.Value.(string)
		kind, _, _ := strings.Cut(key, ":")
		if key == "" {
			continue
		}
		seen[kind] = true
		if values[i].Formula != "" || limits[i].Formula != "" {
			live[kind] = s.Name + ", row " + strconv.Itoa(first+i)
		}
	}
}

// kindsInCode reads the kinds of check from the source: the text that each
// key begins with, where a quote.Check is made or none is called.
func kindsInCode(t *testing.T, folders ...string) []string {
	t.Helper()
	found := map[string]bool{}
	for _, folder := range folders {
		for _, file := range parsed(t, folder) {
			ast.Inspect(file, func(n ast.Node) bool {
				if key := checkKey(n); key != nil {
					if kind := firstText(key); kind != "" {
						found[kind] = true
					}
				}
				return true
			})
		}
	}
	return slices.Sorted(maps.Keys(found))
}

// parsed is the source of a folder without its tests.
func parsed(t *testing.T, folder string) []*ast.File {
	t.Helper()
	names, err := fs.Glob(os.DirFS(folder), "*.go")
	if err != nil || len(names) == 0 {
		t.Fatalf("%s: no source, %v", folder, err)
	}
	var files []*ast.File
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), folder+"/"+name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	return files
}

// checkKey is the key of a check that a piece of source makes, or nil.
func checkKey(n ast.Node) ast.Expr {
	switch x := n.(type) {
	case *ast.CallExpr:
		if f, ok := x.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "none" && len(x.Args) > 0 {
			return x.Args[0]
		}
	case *ast.CompositeLit:
		fields := map[string]ast.Expr{}
		for _, e := range x.Elts {
			if pair, ok := e.(*ast.KeyValueExpr); ok {
				if name, ok := pair.Key.(*ast.Ident); ok {
					fields[name.Name] = pair.Value
				}
			}
		}
		if fields["Advice"] != nil {
			return fields["Key"]
		}
	}
	return nil
}

// firstText is the kind that a key begins with; none where the key is that of
// another check.
func firstText(e ast.Expr) string {
	switch x := e.(type) {
	case *ast.BinaryExpr:
		return firstText(x.X)
	case *ast.BasicLit:
		text, err := strconv.Unquote(x.Value)
		if err != nil {
			return ""
		}
		kind, _, _ := strings.Cut(text, ":")
		return kind
	}
	return ""
}
