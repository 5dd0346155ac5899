package source

import (
	"strings"
	"testing"
)

// Whatever the bytes, Decode returns, every problem has a place in the file,
// and a file without faults decodes the same again.
func FuzzDecode(f *testing.F) {
	f.Add([]byte(good))
	for _, text := range []string{
		"", "name: x", "a: &b c\nd: *b", "? [a]\n: b", "<<: {a: b}", "name: !!str x", "- - - a", "name: |\n  x\n y", "{a: [1, {b", "%YAML 1.2\n---\na",
		"name: x\n---\n", "name: '", "\ufeffname: x", "name: x # y\n# z", "a: b: c", "\tname: x", "name:\n  - x\n z: 1", "parts:\n-\n-", "name: \"\\x41\"",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var y, again yard
		list := Decode("f.yaml", data, &y)
		lines := strings.Count(string(data), "\n") + 1
		for _, p := range list {
			if p.Message == "" || p.Code == "" || p.Pos.File != "f.yaml" || p.Pos.Line > lines {
				t.Errorf("bad problem %#v", p)
			}
		}
		if second := Decode("f.yaml", data, &again); len(second) != len(list) || again.Name != y.Name || len(again.Parts) != len(y.Parts) {
			t.Errorf("another result the second time: %v, %v", list, second)
		}
		_ = y.Where.Of("parts[0].tags[1]")
	})
}
