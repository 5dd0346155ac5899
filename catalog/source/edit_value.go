package source

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"
)

// olderReading is what other readers take for a truth or for a number in
// sixties, though the YAML reader here takes it for a text.
var olderReading = regexp.MustCompile(`^(?i:y|n|yes|no|on|off|[-+]?[0-9][0-9_]*(:[0-5]?[0-9])+(\.[0-9]*)?)$`)

// written is a value as it stands in a file and the node it is read as. inFlow
// says that it stands between brackets.
func written(value string, asText, inFlow bool) (string, *yaml.Node) {
	if n := bare(value, inFlow); n != nil && !(asText && (n.Tag != "!!str" || olderReading.MatchString(value))) {
		return value, n
	}
	return quoted(value), &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: value, Style: yaml.DoubleQuotedStyle}
}

// bare is the node of a value without quotes, or nil when it would be read as
// another value, or as nothing.
func bare(value string, inFlow bool) *yaml.Node {
	if value == "" || strings.ContainsFunc(value, needsEscape) {
		return nil
	}
	// Only the reader knows all rules; they differ between brackets.
	line := "x: " + value + "\n"
	if inFlow {
		line = "{x: " + value + "}\n"
	}
	root, second, err := read([]byte(line))
	if err != nil || second != nil || root == nil || root.Kind != yaml.MappingNode || len(root.Content) != 2 {
		return nil
	}
	n := root.Content[1]
	if n.Kind != yaml.ScalarNode || n.Style != 0 || n.Anchor != "" || n.Value != value || n.Tag == "!!null" || n.Tag == "!!merge" {
		return nil
	}
	return n
}

// needsEscape tells characters that cannot be seen, or seen apart.
func needsEscape(r rune) bool { return r != ' ' && !unicode.IsPrint(r) }

// quoted is a value in double quotes.
func quoted(value string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range value {
		switch {
		case r == '"' || r == '\\':
			b.WriteString(`\` + string(r))
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case !needsEscape(r):
			b.WriteRune(r)
		case r < 0x100:
			fmt.Fprintf(&b, `\x%02x`, r)
		case r < 0x10000:
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			fmt.Fprintf(&b, `\U%08x`, r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
