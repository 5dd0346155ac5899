package record_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/workbook/record"
)

func TestRecordComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := &record.Record{Job: []byte(rapid.String().Draw(t, "job")), Shop: catalog.Shop{}}
		for _, name := range rapid.SliceOfDistinct(rapid.StringMatching(`[a-z]{1,8}\.yaml`), rapid.ID).Draw(t, "names") {
			r.Shop[name] = rapid.SliceOfN(rapid.Byte(), 0, 5000).Draw(t, "data")
		}
		texts, err := record.Pack(r)
		if err != nil {
			t.Fatal(err)
		}
		again, err := record.Pack(r)
		if err != nil || !slices.Equal(texts, again) {
			t.Fatal("the same record gave other texts")
		}
		back, err := record.Unpack(texts)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(r, back, cmp.Transformer("text", func(b []byte) string { return string(b) })); diff != "" {
			t.Fatal(diff)
		}
	})
}

// Damage is told, never read as something else.
func TestDamagedRecord(t *testing.T) {
	r := &record.Record{Job: []byte("number: 7\n"), Shop: catalog.Shop{"rates.yaml": []byte(strings.Repeat("rates: words\n", 40)), "logo.png": []byte{0x89, 'P', 0, 1}}}
	whole, err := record.Pack(r)
	if err != nil {
		t.Fatal(err)
	}
	sum, text := whole[0], whole[1]
	middle := len(text) / 2
	for name, pieces := range map[string][]string{
		"nothing":       nil,
		"cut":           {sum, text[:middle]},
		"sum missing":   {text},
		"begin missing": {sum, text[middle:]},
		"other letters": {sum, "not base64 !"},
		"swapped":       {sum, text[middle:], text[:middle]},
		"changed":       {sum, text[:40] + "AAAA" + text[44:]},
	} {
		if got, err := record.Unpack(pieces); err == nil {
			t.Errorf("%s: read as %q", name, got.Job)
		}
	}
}
