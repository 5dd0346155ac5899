package source

import (
	"bytes"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
)

// large is a file of about 150 KB: some 470 parts, the size of a real yard.
func large() []byte {
	head, entry, _ := strings.Cut(good, "parts:\n")
	first, _, _ := strings.Cut(entry, "  - id: \"007\"")
	return []byte(head + "parts:\n" + strings.Repeat(first, 150<<10/len(first)))
}

func BenchmarkDecode(b *testing.B) {
	data := large()
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		var y yard
		if list := Decode("yard.yaml", data, &y); len(list) > 0 {
			b.Fatal(list.Err())
		}
	}
}

// BenchmarkLibrary is the part of BenchmarkDecode that the YAML library takes.
func BenchmarkLibrary(b *testing.B) {
	data := large()
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		var n yaml.Node
		if err := yaml.NewDecoder(bytes.NewReader(data)).Decode(&n); err != nil {
			b.Fatal(err)
		}
	}
}
