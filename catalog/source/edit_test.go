package source

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// set and word are one edit each, of any value and of a text.
func set(path, value string) Edit  { return Edit{Path: path, Value: value} }
func word(path, value string) Edit { return Edit{Path: path, Value: value, Text: true} }

func TestApplySets(t *testing.T) {
	tests := []struct {
		name, data string
		edit       Edit
		want, at   string
	}{
		{"plain", "a: 1 # one\nb: 2\n", set("a", "12.5"), "a: 12.5 # one\nb: 2\n", "f:1:4"},
		{"plain of many lines", "a: x\n  y\n\n  z # c\nb: 2\n", set("a", "w"), "a: w # c\nb: 2\n", "f:1:4"},
		{"single quotes", "a: 'it''s' # c\n", word("a", "x"), "a: x # c\n", "f:1:4"},
		{"double quotes", `a: "x\"y\\" # c`, word("a", "x"), `a: x # c`, "f:1:4"},
		{"double quotes of many lines", "a: \"x\n  y\\\n  z\"   # c\nb: 1\n", word("a", "x"), "a: x   # c\nb: 1\n", "f:1:4"},
		{"same text keeps its quotes", `a: "x"`, word("a", "x"), `a: "x"`, "f:1:4"},
		{"number in quotes becomes one", `a: "7"`, set("a", "7"), `a: 7`, "f:1:4"},
		{"text that looks like a number", "a: 7", word("a", "7"), `a: "7"`, "f:1:4"},
		{"text that looks like a truth", "a: b", word("a", "no"), `a: "no"`, "f:1:4"},
		{"text that looks like a time", "a: b", word("a", "12:30"), `a: "12:30"`, "f:1:4"},
		{"date as a text", "a: b", word("a", "2026-05-01"), `a: "2026-05-01"`, "f:1:4"},
		{"date", "a: b", set("a", "2026-05-01"), `a: 2026-05-01`, "f:1:4"},
		{"yes", "a: no", set("a", "yes"), "a: yes", "f:1:4"},
		{"null is a text", "a: b", set("a", "null"), `a: "null"`, "f:1:4"},
		{"no characters", "a: b", set("a", ""), `a: ""`, "f:1:4"},
		{"length", "a: b", word("a", "8 ft 6 in"), "a: 8 ft 6 in", "f:1:4"},
		{"colon", "a: b", word("a", "x: y"), `a: "x: y"`, "f:1:4"},
		{"number sign", "a: b", word("a", "x # y"), `a: "x # y"`, "f:1:4"},
		{"spaces around", "a: b", word("a", " x "), `a: " x "`, "f:1:4"},
		{"line breaks and tabs", "a: b", word("a", "x\n\ty\r\u2028\U000e0001"), `a: "x\n\ty\x0d\u2028\U000e0001"`, "f:1:4"},
		{"quotes", "a: b", word("a", `"x" \ y`), `a: "\"x\" \\ y"`, "f:1:4"},
		{"quotes within", "a: b", word("a", `say "x" \ y`), `a: say "x" \ y`, "f:1:4"},
		{"comma in a block", "a: b", word("a", "x, y"), "a: x, y", "f:1:4"},
		{"comma between braces", "{a: b, c: d}", word("a", "x, y"), `{a: "x, y", c: d}`, "f:1:5"},
		{"literal", "a: | # c\n  x\n   y\n\n# d\nb: 1\n", word("a", "z"), "a: z # c\n\n# d\nb: 1\n", "f:1:4"},
		{"literal at the end", "a: |-\n  x\n  y", word("a", "z"), "a: z", "f:1:4"},
		{"literal that keeps its lines", "a: |+\n  x\n\n\nb: 1\n", word("a", "z"), "a: z\nb: 1\n", "f:1:4"},
		{"literal with its indentation", "l:\n  - a: |2\n       x\n      # y\n    # c\n    b: 1\n", word("l[0].a", "z"), "l:\n  - a: z\n    # c\n    b: 1\n", "f:2:8"},
		{"folded", "a: >\n  x\n  y\nb: 1\n", set("b", "2"), "a: >\n  x\n  y\nb: 2\n", "f:4:4"},
		{"nothing", "a:   # c\nb: 1\n", set("a", "2"), "a: 2   # c\nb: 1\n", "f:1:4"},
		{"nothing between braces", "{a, b: , c: }", set("a", "2"), "{a: 2, b: , c: }", "f:1:5"},
		{"nothing before a comma", "{a, b: , c: }", set("b", "2"), "{a, b: 2 , c: }", "f:1:8"},
		{"nothing before a brace", "{a, b: , c: }", set("c", "2"), "{a, b: , c: 2 }", "f:1:13"},
		{"null", "a: ~ # c\n", set("a", "2"), "a: 2 # c\n", "f:1:4"},
		{"entry", "a: [x, 'y', z] # c\n", word("a[1]", "w"), "a: [x, w, z] # c\n", "f:1:8"},
		{"entry of a block", "a:\n- x # c\n- y\n", word("a[0]", "w"), "a:\n- w # c\n- y\n", "f:2:3"},
		{"deep", "a:\n  - {b: [{c: 1}, {c: 2, d: 3}],\n     e: 4}\n", set("a[0].b[1].c", "5"), "a:\n  - {b: [{c: 1}, {c: 5, d: 3}],\n     e: 4}\n", "f:2:22"},
		{"pair of a list", "a: [b: 1, c]\n", set("a[0].b", "2"), "a: [b: 2, c]\n", "f:1:8"},
		{"as in JSON", `{"a":1,"b":[2,3]}`, set("b[1]", "4"), `{"a":1,"b":[2,4]}`, "f:1:15"},
		{"CRLF", "a: x\r\n  y # c\r\nb: 2\r\n", set("a", "1"), "a: 1 # c\r\nb: 2\r\n", "f:1:4"},
		{"literal with CRLF", "a: |\r\n  x\r\n  y\r\nb: 2\r\n", set("a", "1"), "a: 1\r\nb: 2\r\n", "f:1:4"},
		{"characters of many bytes", "{ä: \"ö—ü\", b: é} # ß\n", word("b", "ñ"), "{ä: \"ö—ü\", b: ñ} # ß\n", "f:1:15"},
		{"byte order mark", "\ufeffa: 1\nb: 2\n", set("a", "3"), "\ufeffa: 3\nb: 2\n", "f:1:4"},
		{"tab before a comment", "a: 1\t# x\ty\nb: 2", set("a", "3"), "a: 3\t# x\ty\nb: 2", "f:1:4"},
		{"repeated field", "a: 1\na: 2\n", set("a", "3"), "a: 3\na: 2\n", "f:1:4"},
		{"document marks", "%YAML 1.1\n---\na: 1\n...\n", set("a", "3"), "%YAML 1.1\n---\na: 3\n...\n", "f:3:4"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, at, list := Apply("f", []byte(tt.data), []Edit{tt.edit})
			if list != nil || string(got) != tt.want || at[0].String() != tt.at {
				t.Errorf("got %q at %v, want %q at %s\n%v", got, at, tt.want, tt.at, list.Err())
			}
		})
	}
}

func TestApplyAdds(t *testing.T) {
	tests := []struct {
		name, data string
		edits      []Edit
		want       string
	}{
		{"block", "a: 1 # one\n\n# two\n", []Edit{set("b", "2")}, "a: 1 # one\nb: 2\n\n# two\n"},
		{"before the comment of the next", "l:\n  - a: 1\n    b: 2 # b\n  # next\n  - a: 3\n", []Edit{set("l[0].c", "4")},
			"l:\n  - a: 1\n    b: 2 # b\n    c: 4\n  # next\n  - a: 3\n"},
		{"behind a list", "m:\n  a:\n  - x\n  - y\nn: 1\n", []Edit{set("m.b", "4")}, "m:\n  a:\n  - x\n  - y\n  b: 4\nn: 1\n"},
		{"behind a literal", "m:\n  a: |\n    x\n\nn: 1\n", []Edit{set("m.b", "4")}, "m:\n  a: |\n    x\n  b: 4\n\nn: 1\n"},
		{"behind a literal that keeps lines", "m:\n  a: |+\n    x\n\nn: 1\n", []Edit{set("m.b", "4")}, "m:\n  a: |+\n    x\n\n  b: 4\nn: 1\n"},
		{"behind braces of many lines", "a: {x: 1,\n  y: 2} # c\n", []Edit{set("b", "4")}, "a: {x: 1,\n  y: 2} # c\nb: 4\n"},
		{"behind nothing", "a:\n# c\n", []Edit{set("b", "4")}, "a:\nb: 4\n# c\n"},
		{"no last line break", "a: 1", []Edit{set("b", "2"), set("c", "3")}, "a: 1\nb: 2\nc: 3"},
		{"CRLF", "a: 1\r\nc: 2", []Edit{set("b", "2")}, "a: 1\r\nc: 2\r\nb: 2"},
		{"CRLF lines", "m:\r\n  a: 1 # c\r\nn: 1\r\n", []Edit{set("m.b", "2")}, "m:\r\n  a: 1 # c\r\n  b: 2\r\nn: 1\r\n"},
		{"braces", "m: {a: 1} # c\n", []Edit{word("m.b", "x, y"), set("m.c", "2")}, "m: {a: 1, b: \"x, y\", c: 2} # c\n"},
		{"braces with a last comma", "m: {a: 1, }\n", []Edit{set("m.b", "2")}, "m: {a: 1, b: 2, }\n"},
		{"braces with comments", "m: {a: 1, # one\n  b: [2] # two\n}\n", []Edit{set("m.c", "3")}, "m: {a: 1, # one\n  b: [2], c: 3 # two\n}\n"},
		{"empty braces", "m: {}\nn: { }\n", []Edit{set("m.a", "1"), set("n.a", "1")}, "m: {a: 1}\nn: {a: 1 }\n"},
		{"braces with a last nothing", "{a: 1, b}", []Edit{set("c", "2")}, "{a: 1, b, c: 2}"},
		{"mappings on the way", "a: 1\n", []Edit{set("b.c.d", "2"), set("b.e", "3"), set("f", "4")}, "a: 1\nb: {c: {d: 2}, e: 3}\nf: 4\n"},
		{"mapping for nothing", "a: # c\nb: null # d\nc: 1\n", []Edit{set("a.x", "1"), set("b.x.y", "2"), set("a.z", "3")},
			"a: {x: 1, z: 3} # c\nb: {x: {y: 2}} # d\nc: 1\n"},
		{"set and add at one place", "m:\n  a: x\n    y\nn: 1\n", []Edit{set("m.a", "1"), set("m.b", "2")}, "m:\n  a: 1\n  b: 2\nn: 1\n"},
		{"set and add between braces", "m: {a: 'x'}\n", []Edit{set("m.b", "2"), set("m.a", "1")}, "m: {a: 1, b: 2}\n"},
		{"odd name", "m: {a: 1}\n", []Edit{set("m.x: y", "2")}, "m: {a: 1, \"x: y\": 2}\n"},
		{"byte order mark", "\ufeffa: 1\n", []Edit{set("b", "2")}, "\ufeffa: 1\nb: 2\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, _, list := Apply("f", []byte(tt.data), tt.edits)
			if diff := cmp.Diff(tt.want, string(got)); diff != "" || list != nil {
				t.Errorf("%v (-want +got)\n%s", list.Err(), diff)
			}
		})
	}
}

func TestApplyDrops(t *testing.T) {
	tests := []struct {
		name, data, paths, want string
	}{
		{"line", "a: 1\nb: 2 # two\n# c\nc: 3\n", "b", "a: 1\n# c\nc: 3\n"},
		{"many lines", "a: 1\nb:\n  - x\n  - y # z\nc: |\n  x\n  y\nd: 1\n", "b c", "a: 1\nd: 1\n"},
		{"last without a line break", "a: 1\nb: 2", "b", "a: 1"},
		{"last without a line break, CRLF", "a: 1\r\nb: 2", "b", "a: 1"},
		{"last two without a line break", "a: 1\nb: 2\nc: 3", "b c", "a: 1\n"},
		{"first of an entry", "l:\n  - a: 1 # one\n    b: 2 # two\n", "l[0].a", "l:\n  - b: 2 # two\n"},
		{"first of an entry before a comment", "l:\n  - a: 1 # one\n    # about b\n    b: 2\n", "l[0].a", "l:\n  -\n    # about b\n    b: 2\n"},
		{"first two of an entry", "l:\r\n  - a: 1\r\n    b: 2\r\n    c: 3\r\n", "l[0].a l[0].b", "l:\r\n  -\r\n    c: 3\r\n"},
		{"first between braces", "m: {a: 1, b: 2, c: 3} # c\n", "m.a", "m: {b: 2, c: 3} # c\n"},
		{"middle between braces", "m: {a: 1, b: 2, c: 3}\n", "m.b", "m: {a: 1, c: 3}\n"},
		{"last between braces", "m: {a: 1, b: 2, c: 3}\n", "m.c", "m: {a: 1, b: 2}\n"},
		{"last two between braces", "m: {a: 1, b: 2, c: 3}\n", "m.c m.b", "m: {a: 1}\n"},
		{"first two between braces", "m: {a: 1, b: 2, c: 3}\n", "m.a m.b", "m: {c: 3}\n"},
		{"all between braces", "m: {a: 1, b: 2,} # c\n", "m.a m.b", "m: {} # c\n"},
		{"end of a line between braces", "m: {a: 1, b: 2,\n    c: 3}\n", "m.b", "m: {a: 1,\n    c: 3}\n"},
		{"start of a line between braces", "m: {a: 1,\n    b: 2, c: 3}\n", "m.b", "m: {a: 1,\n    c: 3}\n"},
		{"line between braces", "m: {a: 1, # one\n    b: 2, # two\n    c: 3 # three\n    }\n", "m.b", "m: {a: 1, # one\n    c: 3 # three\n    }\n"},
		{"last line between braces", "m: {a: 1, # one\n    b: 2, # two\n    c: 3 # three\n    }\n", "m.c", "m: {a: 1, # one\n    b: 2 # two\n    }\n"},
		{"last line between braces, no comment", "m: {a: 1,\n    b: 2}\n", "m.b", "m: {a: 1}\n"},
		{"nothing", "m: {a, b: 1}\nn:\no: 1\n", "m.a n", "m: {b: 1}\no: 1\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var edits []Edit
			for _, path := range strings.Fields(tt.paths) {
				edits = append(edits, Edit{Path: path, Drop: true})
			}
			got, at, list := Apply("f", []byte(tt.data), edits)
			if diff := cmp.Diff(tt.want, string(got)); diff != "" || list != nil || at[0].Line == 0 {
				t.Errorf("%v (-want +got)\n%s", list.Err(), diff)
			}
		})
	}
}

// Fields may go and come in one mapping at once.
func TestApplyDropsAndAdds(t *testing.T) {
	tests := []struct{ data, want string }{
		{"m: {a: 1, b: 2}\n", "m: {a: 1, n: 9}\n"},
		{"m: {b: 2,}\n", "m: {n: 9}\n"},
		{"m: {b: 2, c: 3 # three\n}\n", "m: {c: 3, n: 9 # three\n}\n"},
		{"m:\n  b: 2 # two\n", "m:\n  n: 9\n"},
		{"m:\n  b: 2", "m:\n  n: 9"},
		{"m:\n  b: 2\n  c: |\n    x\n", "m:\n  c: |\n    x\n  n: 9\n"},
	}
	for _, tt := range tests {
		got, _, list := Apply("f", []byte(tt.data), []Edit{set("m.n", "9"), {Path: "m.b", Drop: true}})
		if string(got) != tt.want || list != nil {
			t.Errorf("%q: got %q, want %q\n%v", tt.data, got, tt.want, list.Err())
		}
	}
}

func TestApplyFaults(t *testing.T) {
	const data = "a: 1\nl: [1, 2]\nm:\n  only: 1\ns: {x: 1}\np: [y: 1]\ne:\n  -\n  - 1\n"
	tests := []struct {
		edits []Edit
		want  string
	}{
		{[]Edit{set("l[2]", "1")}, "f:2:4: l[2]: the list has 2 entries; there is no [2] [out-of-range]"},
		{[]Edit{set("l[7].x", "1"), set("a.b", "2")}, "f:1:4: a.b: expected fields for b, found \"1\" [wrong-kind]\nf:2:4: l[7].x: the list has 2 entries; there is no [7] [out-of-range]"},
		{[]Edit{set("m[0]", "1")}, "f:4:3: m[0]: expected a list for [0], found fields [wrong-kind]"},
		{[]Edit{set("m", "1")}, "f:4:3: m: holds fields, not a single value [wrong-kind]"},
		{[]Edit{set("x.y[0]", "1")}, "f:1:1: x.y[0]: there is no list for [0] [out-of-range]"},
		{[]Edit{set("", "1")}, `f:1:1: "" is not the way to a value; expected one such as "zones[1].flat" [bad-value]`},
		{[]Edit{set("l[01]", "1")}, `f:1:1: "l[01]" is not the way to a value; expected one such as "zones[1].flat" [bad-value]`},
		{[]Edit{set("a", "1"), set("a", "2")}, "f:1:1: a: is changed twice in one go [repeated-field]"},
		{[]Edit{{Path: "s", Drop: true}, set("s.x", "2")}, `f:1:1: s.x: is changed, and so is "s", which holds it [repeated-field]`},
		{[]Edit{{Path: "m.only", Drop: true}}, "f:4:3: nothing would be left here; remove what holds these fields [cannot-edit]"},
		{[]Edit{{Path: "m.onyl", Drop: true}}, `f:4:3: m.onyl: there is no field "onyl" to remove [missing-field]`},
		{[]Edit{{Path: "l[0]", Drop: true}}, "f:1:1: l[0]: only a field can be removed, not an entry of a list [wrong-kind]"},
		{[]Edit{{Path: "p[0].y", Drop: true}}, "f:6:5: the only field of an entry cannot be removed [cannot-edit]"},
		{[]Edit{set("p[0].z", "1")}, "f:6:5: a single field of a list has no braces to add another within [cannot-edit]"},
		{[]Edit{set("e[0]", "1")}, "f:8:3: an entry is empty and has no place of its own [cannot-edit]"},
		{[]Edit{set("e[0].x", "1")}, "f:8:3: an entry is empty and has no place of its own [cannot-edit]"},
		{[]Edit{set("a", "\xff")}, `f:1:1: a: "\xff" is not UTF-8 text [bad-value]`},
	}
	for _, tt := range tests {
		got, at, list := Apply("f", []byte(data), tt.edits)
		if list.Err() == nil || list.Err().Error() != tt.want || string(got) != data || at != nil {
			t.Errorf("%v: got\n%v, want\n%s", tt.edits, list.Err(), tt.want)
		}
	}
	for _, data := range []string{"", "# c\n", "a: [", "a: &x 1\nb: *x\n", "a: 1\n---\nb: 2\n", "a: !!str 1\n", "a: \xff"} {
		got, _, list := Apply("f", []byte(data), []Edit{set("a", "2")})
		if list.Err() == nil || string(got) != data {
			t.Errorf("%q: got %q and no fault", data, got)
		}
	}
}

func TestAppend(t *testing.T) {
	entry := []Field{{Name: "id", Value: "x", Text: true}, {Name: "pack.size", Value: "1 ft, 2", Text: true}, {Name: "n", Value: "2"}, {Name: "pack.kind", Value: "no", Text: true}}
	const flow = `{id: x, pack: {size: "1 ft, 2", kind: "no"}, n: 2}`
	tests := []struct{ name, data, want string }{
		{"braces behind a dash", "u: 1\nl:\n  - {id: a,\n     n: 1} # a\n\n# end\nm: 1\n", "u: 1\nl:\n  - {id: a,\n     n: 1} # a\n  - " + flow + "\n\n# end\nm: 1\n"},
		{"fields on lines", "l:\r\n- id: a\r\n  n: 1\r\n", "l:\r\n- id: a\r\n  n: 1\r\n- id: x\r\n  pack: {size: \"1 ft, 2\", kind: \"no\"}\r\n  n: 2\r\n"},
		{"fields on lines, wide", "l:\n-   id: a", "l:\n-   id: a\n-   id: x\n    pack: {size: \"1 ft, 2\", kind: \"no\"}\n    n: 2"},
		{"brackets", "l: [{id: a}] # c\n", "l: [{id: a}, " + flow + "] # c\n"},
		{"empty brackets", "l: [] # c\n", "l: [" + flow + "] # c\n"},
		{"nothing", "l: # c\n", "l: [" + flow + "] # c\n"},
		{"no list", "u: 1\r\n# c\r\n", "u: 1\r\nl:\r\n  - " + flow + "\r\n# c\r\n"},
		{"no list between braces", "{u: 1}", "{u: 1, l: [" + flow + "]}"},
		{"scalars", "l:\n- 1", "l:\n- 1\n- " + flow},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, list := Append("f", []byte(tt.data), "l", entry)
			if diff := cmp.Diff(tt.want, string(got)); diff != "" || list != nil {
				t.Errorf("%v (-want +got)\n%s", list.Err(), diff)
			}
		})
	}
}

func TestAppendWraps(t *testing.T) {
	var entry []Field
	for _, name := range []string{"a", "b", "c", "d"} {
		entry = append(entry, Field{Name: name, Value: strings.Repeat("x", 50)})
	}
	x := ": " + strings.Repeat("x", 50)
	want := "l:\n  - {id: 1}\n  - {a" + x + ", b" + x + ",\n     c" + x + ", d" + x + "}\n"
	got, list := Append("f", []byte("l:\n  - {id: 1}\n"), "l", entry)
	if diff := cmp.Diff(want, string(got)); diff != "" || list != nil {
		t.Errorf("%v (-want +got)\n%s", list.Err(), diff)
	}
}

func TestAppendFaults(t *testing.T) {
	tests := []struct {
		list  string
		entry []Field
		want  string
	}{
		{"a", []Field{{Name: "id"}}, `f:1:4: a: expected a list, found "1" [wrong-kind]`},
		{"x.y", []Field{{Name: "id"}}, "f:1:1: x.y: there is no x to hold the list [missing-field]"},
		{"l", nil, "f:1:1: l: an entry has at least one field [bad-value]"},
		{"l", []Field{{Name: "t[0]"}}, `f:1:1: l: "t[0]" is not the name of a field [bad-value]`},
		{"l", []Field{{Name: "t"}, {Name: "t"}}, "f:1:1: t: is changed twice in one go [repeated-field]"},
		{"l[", []Field{{Name: "t"}}, `f:1:1: "l[" is not the way to a value; expected one such as "zones[1].flat" [bad-value]`},
	}
	for _, tt := range tests {
		const data = "a: 1\nl: [{id: 1}]\n"
		got, list := Append("f", []byte(data), tt.list, tt.entry)
		if list.Err() == nil || list.Err().Error() != tt.want || string(got) != data {
			t.Errorf("got\n%v, want\n%s", list.Err(), tt.want)
		}
	}
}
