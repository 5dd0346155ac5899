package source

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
	"pgregory.net/rapid"
)

// leaf is a single value of a file.
type leaf struct {
	path string
	node *yaml.Node
}

// leaves is the single values below a node, in the order of the file.
func leaves(n *yaml.Node, at ref) []leaf {
	var all []leaf
	here := &place{ref: at, node: n}
	switch n.Kind {
	case yaml.ScalarNode:
		return []leaf{{at.path(), n}}
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			all = append(all, leaves(n.Content[i+1], ref{up: here, name: n.Content[i].Value})...)
		}
	case yaml.SequenceNode:
		for i, c := range n.Content {
			all = append(all, leaves(c, ref{up: here, index: i})...)
		}
	}
	return all
}

// parsed is the top node of a text that must be YAML.
func parsed(t interface{ Fatal(...any) }, data []byte) *yaml.Node {
	var n yaml.Node
	if err := yaml.Unmarshal(data, &n); err != nil {
		t.Fatal(err)
	}
	return n.Content[0]
}

// commentLines is the lines that hold nothing but a comment.
func commentLines(data []byte) []string {
	var all []string
	for line := range strings.Lines(string(data)) {
		if line = strings.TrimSpace(line); strings.HasPrefix(line, "#") {
			all = append(all, line)
		}
	}
	return all
}

// demoFile is a file of the demonstration's shop, which shows every way that
// such files are written in.
type demoFile struct {
	name   string
	data   []byte
	leaves []leaf
}

func demoFiles(t testing.TB) []demoFile {
	names, err := filepath.Glob("../demo/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no files: %v", err)
	}
	var files []demoFile
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, demoFile{name, data, leaves(parsed(t, data), ref{})})
	}
	return files
}

// values are what a person may type, and what a reader may take wrongly.
func values() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "12", "1.50", "-3", "0x1f", "yes", "null", "~", "8 ft 6 in", "a, b", "x: y", "- x", "# x", "x #y", "{", "it's", `"q"`,
			"<<", "*a", "&a b", "!t x", "| x", "2026-05-01", "12:30", ".5", "1e3", "?", "-", "---", "@x", "%x", "\t", "é—ü", "a\nb", " x ", "trailing:", "[x]", "50%"}),
		rapid.StringN(0, 20, -1),
	)
}

// Values of the demonstration's files change and change back, and nothing else
// does.
func TestApplyToDemo(t *testing.T) {
	files := demoFiles(t)
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(files).Draw(t, "file")
		picked := rapid.SliceOfNDistinct(rapid.IntRange(0, len(f.leaves)-1), 1, 4, rapid.ID[int]).Draw(t, "leaves")
		var there, back []Edit
		lines := map[int]bool{}
		plain := true
		for _, i := range picked {
			l := f.leaves[i]
			there = append(there, Edit{Path: l.path, Value: values().Draw(t, "value"), Text: rapid.Bool().Draw(t, "text")})
			back = append(back, Edit{Path: l.path, Value: l.node.Value})
			lines[l.node.Line] = true
			plain = plain && l.node.Style == 0
		}
		got, at, list := Apply(f.name, f.data, there)
		if list != nil {
			t.Fatalf("%v: %v", there, list.Err())
		}
		changed := leaves(parsed(t, got), ref{})
		if len(changed) != len(f.leaves) {
			t.Fatalf("%d values became %d", len(f.leaves), len(changed))
		}
		for i, l := range changed {
			k := slices.Index(picked, i)
			switch {
			case k < 0 && (l.path != f.leaves[i].path || l.node.Value != f.leaves[i].node.Value || l.node.Tag != f.leaves[i].node.Tag):
				t.Errorf("%s became %s %q", f.leaves[i].path, l.path, l.node.Value)
			case k >= 0 && (l.node.Value != there[k].Value || there[k].Text && l.node.Tag != "!!str" || isNull(l.node)):
				t.Errorf("%+v gave %s %q", there[k], l.node.Tag, l.node.Value)
			case k >= 0 && (at[k].Line != l.node.Line || at[k].Column != l.node.Column):
				t.Errorf("%+v is at %d:%d, not %v", there[k], l.node.Line, l.node.Column, at[k])
			}
		}
		sameLines(t, f.data, got, lines)
		if plain {
			again, _, list := Apply(f.name, got, back)
			if list != nil || string(again) != string(f.data) {
				t.Errorf("%v: changed back it is not the same; %v", there, list.Err())
			}
		}
	})
}

// sameLines checks that only the lines given differ, apart from their breaks.
func sameLines(t *rapid.T, before, after []byte, changed map[int]bool) {
	old, now := strings.SplitAfter(string(before), "\n"), strings.SplitAfter(string(after), "\n")
	if len(old) != len(now) {
		t.Fatalf("%d lines became %d", len(old), len(now))
	}
	for i := range old {
		if old[i] != now[i] && !changed[i+1] {
			t.Errorf("line %d changed to %q", i+1, now[i])
		}
	}
	if a, b := commentLines(before), commentLines(after); !slices.Equal(a, b) {
		t.Errorf("comments changed to %q", b)
	}
}

// Fields come and go again: each mapping of the demonstration's files takes a
// new field, and without it the file is as before.
func TestAddAndDropInDemo(t *testing.T) {
	files := demoFiles(t)
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(files).Draw(t, "file")
		path := rapid.SampledFrom(f.leaves).Draw(t, "beside").path
		dot := strings.LastIndexByte(path, '.')
		added := path[:dot+1] + rapid.SampledFrom([]string{"zz", "zz.yy"}).Draw(t, "name")
		if strings.HasSuffix(path, "]") {
			return // an entry of a list has no fields
		}
		got, _, list := Apply(f.name, f.data, []Edit{{Path: added, Value: values().Draw(t, "value")}})
		if list != nil {
			t.Fatalf("%s: %v", added, list.Err())
		}
		if a, b := commentLines(f.data), commentLines(got); !slices.Equal(a, b) {
			t.Errorf("comments changed to %q", b)
		}
		again, _, list := Apply(f.name, got, []Edit{{Path: path[:dot+1] + "zz", Drop: true}})
		if list != nil || string(again) != string(f.data) {
			t.Errorf("%s: without it the file is not the same; %v", added, list.Err())
		}
	})
}

// Each field of the demonstration's files can be removed, and only it is gone.
func TestDropInDemo(t *testing.T) {
	files := demoFiles(t)
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(files).Draw(t, "file")
		var edits []Edit
		gone := map[string]bool{}
		for _, i := range rapid.SliceOfNDistinct(rapid.IntRange(0, len(f.leaves)-1), 1, 4, rapid.ID[int]).Draw(t, "leaves") {
			path := f.leaves[i].path
			if !strings.HasSuffix(path, "]") {
				edits, gone[path] = append(edits, Edit{Path: path, Drop: true}), true
			}
		}
		got, _, list := Apply(f.name, f.data, edits)
		if list != nil {
			if !strings.Contains(list.Err().Error(), "nothing would be left") {
				t.Fatal(list.Err())
			}
			return
		}
		left := leaves(parsed(t, got), ref{})
		for _, l := range f.leaves {
			if gone[l.path] {
				continue
			}
			if len(left) == 0 || left[0].path != l.path || left[0].node.Value != l.node.Value {
				t.Fatalf("%v: %s is gone as well", edits, l.path)
			}
			left = left[1:]
		}
		if a, b := commentLines(f.data), commentLines(got); !slices.Equal(a, b) {
			t.Errorf("comments changed to %q", b)
		}
	})
}

// Whatever the file and the edit, Apply returns; after a fault the file is as
// it was, and else the value is there and every comment still is.
func FuzzApply(f *testing.F) {
	for _, data := range []string{
		good, "a: 1 # c\nb:\n  - {c: 1, d: 'x'} # e\n  # f\n  - c: |\n      x\n    d: >-\n      y\n", "{a: [b: 1, c], d}", "a: 'x\n  y' # z\r\nb: \"\\\n c\"\r\n",
		"\ufeffa:\n- b\n-\n", "a:\n# c\nb: ~", "? a\n: b\n", "- a: 1\n- [2, {a: 3,}]\n", "a: |+2\n    x\n\n\nb: 1", "--- # c\na: {}\n...\n",
	} {
		for _, path := range []string{"a", "b[0].c", "name", "parts[0].x.y", "[1][1].a", "d"} {
			f.Add([]byte(data), path, "v", false, false)
			f.Add([]byte(data), path, "12", true, true)
		}
	}
	f.Fuzz(func(t *testing.T, data []byte, path, value string, asText, dropped bool) {
		got, at, list := Apply("f", data, []Edit{{Path: path, Value: value, Text: asText, Drop: dropped}})
		if list != nil {
			if string(got) != string(data) || at != nil {
				t.Error("changed after a fault")
			}
			return
		}
		if again := new(decoder); again.parse(got) == nil {
			t.Fatalf("%q became %q", data, got)
		}
		n := parsed(t, got)
		for rest := path; rest != "" && n != nil; {
			var step string
			step, rest = nextStep(rest)
			n = child(n, step)
		}
		if !dropped && (n == nil || n.Value != value || asText && n.Tag != "!!str") {
			t.Errorf("%q: %q became %q", path, data, got)
		}
		appended, list := Append("f", got, path, []Field{{Name: "n", Value: value, Text: asText}})
		if list != nil && string(appended) != string(got) {
			t.Error("changed after a fault")
		}
	})
}

func BenchmarkApply(b *testing.B) {
	for _, f := range demoFiles(b) {
		if filepath.Base(f.name) != "parts.yaml" {
			continue
		}
		for name, step := range map[string]int{"one": len(f.leaves), "hundred": len(f.leaves) / 100} {
			var edits []Edit
			for i := len(f.leaves) - 1; i >= 0; i -= step {
				edits = append(edits, Edit{Path: f.leaves[i].path, Value: "new", Text: true})
			}
			b.Run(name, func(b *testing.B) {
				b.SetBytes(int64(len(f.data)))
				b.ReportAllocs()
				for b.Loop() {
					if _, _, list := Apply(f.name, f.data, edits); list != nil {
						b.Fatal(list.Err())
					}
				}
			})
		}
	}
}
