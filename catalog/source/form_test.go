package source

import (
	"strings"
	"testing"

	"tentwright/catalog/diag"
)

// What a fault of form leaves sound: the other fields of its struct, and every
// other struct.
func TestFormKnowsWhatIsSound(t *testing.T) {
	var y yard
	list := Decode("shop/yard.yaml", []byte(`name: x
parts:
  - {id: a, weight: 12, owned: 3}
  - {id: b, colour: red}
  - {id: c}
  - d
`), &y)
	form := NewForm(list)
	for _, tt := range []struct {
		what  string
		sound bool
		want  bool
	}{
		{"owned of a", form.Sound(y.Parts[0].Where, "owned"), true},
		{"weight of a", form.Sound(y.Parts[0].Where, "owned", "weight"), false},
		{"b, which has a field too many", form.Sound(y.Parts[1].Where), false},
		{"c", form.Sound(y.Parts[2].Where, "weight", "owned"), true},
		{"d, which is no part", form.Sound(y.Parts[3].Where), false},
		{"the name", form.Sound(y.Where, "name"), true},
		{"all parts", form.Sound(y.Where, "parts"), false},
		{"nothing at fault", NewForm(nil).Sound(Where{}, "name"), true},
	} {
		if tt.sound != tt.want {
			t.Errorf("%s: sound is %v, want %v", tt.what, tt.sound, tt.want)
		}
	}
	if !form.FieldsOnly() || !form.In("yard.yaml") || form.In("other.yaml") {
		t.Error("three faults of fields in yard.yaml were expected")
	}
}

// An id is unknown only if every id of the file is known.
func TestFormKnowsWhatIsComplete(t *testing.T) {
	fields := NewForm(diag.List{{Pos: diag.Pos{File: "s/parts.yaml", Line: 3}, Path: "parts[0].weight", Code: diag.BadValue}})
	twice := NewForm(diag.List{{Pos: diag.Pos{File: "s/parts.yaml", Line: 3}, Code: diag.RepeatedField}})
	for _, tt := range []struct {
		form *Form
		file string
		ids  []string
		want bool
	}{
		{fields, "parts.yaml", []string{"a"}, true}, {fields, "parts.yaml", []string{"a", ""}, false}, {fields, "parts.yaml", nil, false},
		{fields, "rates.yaml", nil, true}, {twice, "parts.yaml", []string{"a"}, false}, {NewForm(nil), "parts.yaml", nil, true},
	} {
		if got := tt.form.Complete(tt.file, tt.ids); got != tt.want {
			t.Errorf("%s with %q: complete is %v, want %v", tt.file, tt.ids, got, tt.want)
		}
	}
}

// What later checks find on a faulty line, or nowhere, follows from the fault.
func TestFormWithWhatWasFoundLater(t *testing.T) {
	at := func(line int) diag.Problem {
		return diag.Problem{Pos: diag.Pos{File: "a.yaml", Line: line, Column: 1}, Code: "later"}
	}
	form := diag.List{{Pos: diag.Pos{File: "a.yaml", Line: 2, Column: 9}, Code: diag.BadValue}}
	got := NewForm(form).With(diag.List{at(4), at(2), {Code: "nowhere"}, at(1)})
	if len(got) != 3 || got[0].Pos.Line != 1 || got[1].Code != diag.BadValue || got[2].Pos.Line != 4 {
		t.Errorf("got %v", got)
	}
	if got := NewForm(nil).With(diag.List{{Code: "nowhere"}}); len(got) != 1 {
		t.Errorf("without faults of form everything stays; got %v", got)
	}
}

// A file that was not read to its end says nothing of the rest.
func TestFormOfAWholeFile(t *testing.T) {
	for _, text := range []string{"", "name: [", "name: x\n---\nname: y\n", "name: &a x\n", "name: x\ndays:\n" + strings.Repeat("  - never\n", 250)} {
		var y yard
		if NewForm(Decode("yard.yaml", []byte(text), &y)).FieldsOnly() {
			t.Errorf("%.20q: only its fields are said to be at fault", text)
		}
	}
}

// Texts have a limit, counted in characters: their own, or 250.
func TestLongTexts(t *testing.T) {
	type note struct {
		Title string `yaml:"title" long:"5"`
		Text  string `yaml:"text"`
	}
	for text, want := range map[string]string{
		"title: äöüß!\n":                            "",
		"title: äöüß!!\n":                           "n.yaml:1:8: title: has 6 characters; at most 5 were expected [too-long-text]",
		"text: " + strings.Repeat("é", 250) + "\n":  "",
		"text: " + strings.Repeat("é", 251) + "\n":  "n.yaml:1:7: text: has 251 characters; at most 250 were expected [too-long-text]",
		"title: \"a\\tb\\nc\"\n":                    "",
		"title: \"a\\rb\"\ntext: \"\\u2066x\\x07\"": "n.yaml:1:8: title: holds the character U+000D",
	} {
		var n note
		list := Decode("n.yaml", []byte(text), &n)
		if want == "" && len(list) > 0 || want != "" && (len(list) == 0 || !strings.HasPrefix(list[0].String(), want)) {
			t.Errorf("%.30q: got %v, want %q", text, list, want)
		}
	}
}
