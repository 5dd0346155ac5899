package diag

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	known := []string{"chair_white", "chair_black", "table_round_60", "stake_42", "tent", "leg", "hip-frame"}
	tests := []struct{ word, want string }{
		{"chair_wihte", "chair_white"},       // neighbours swapped
		{"chair_whit", "chair_white"},        // a letter short
		{"Chair White", "chair_white"},       // case and joining marks
		{"hipframe", "hip-frame"},            //
		{"table_round_66", "table_round_60"}, // a letter wrong
		{"tents", "tent"},
		{"lgg", "leg"},
		{"lamp", ""}, // nothing like it
		{"x", ""},    // a short word changed altogether
		{"", ""},
		{"-_ ", ""},
	}
	for _, tt := range tests {
		got, ok := Nearest(tt.word, known)
		if got != tt.want || ok != (tt.want != "") {
			t.Errorf("%q: got %q, %v, want %q", tt.word, got, ok, tt.want)
		}
	}
}

// The order of the known names, which may come out of a map, must not show.
func TestNearestIsTheFirstInTheAlphabet(t *testing.T) {
	for _, known := range [][]string{{"cart", "card", "care"}, {"care", "card", "cart"}} {
		if got, _ := Nearest("carx", known); got != "card" {
			t.Errorf("%v: got %q, want card", known, got)
		}
	}
}

func TestDidYouMean(t *testing.T) {
	few := []string{"each", "pair", "set"}
	many := strings.Split("a b c d e f g h i", " ")
	tests := []struct {
		word  string
		known []string
		want  string
	}{
		{"pairs", few, `did you mean "pair"?`},
		{"bucket", few, "known: each, pair, set"},
		{"bucket", many, ""},
		{"bucket", nil, ""},
	}
	for _, tt := range tests {
		if got := DidYouMean(tt.word, tt.known); got != tt.want {
			t.Errorf("%q: got %q, want %q", tt.word, got, tt.want)
		}
	}
}

func TestHasWords(t *testing.T) {
	tests := []struct {
		asked string
		want  bool
	}{
		{"banquet table", true}, {"Table Banquet", true}, {"table 8", true}, {"banq", true}, {"table-banquet", true},
		{"banquet bar", false}, {"quet", false}, {"", false}, {" - ", false},
	}
	for _, tt := range tests {
		if got := HasWords(tt.asked, "table-banquet-8", "Banquet table, 8 ft"); got != tt.want {
			t.Errorf("%q: got %v", tt.asked, got)
		}
	}
}

// Values from memory: the textbook pairs of edit distance, and "ca"/"abc"
// which tells the restricted form (3) from the unrestricted one (2).
func TestDistance(t *testing.T) {
	tests := []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "abc", 3}, {"kitten", "sitting", 3}, {"saturday", "sunday", 3},
		{"ab", "ba", 1}, {"abcd", "acbd", 1}, {"ca", "abc", 3}, {"höhe", "hohe", 1},
	}
	for _, tt := range tests {
		if got := distance([]rune(tt.a), []rune(tt.b)); got != tt.want {
			t.Errorf("%q, %q: got %d, want %d", tt.a, tt.b, got, tt.want)
		}
	}
}

func TestDistanceProperties(t *testing.T) {
	word := rapid.SliceOfN(rapid.RuneFrom([]rune("abc")), 0, 8)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		n := distance(a, b)
		if n != distance(b, a) {
			t.Fatal("differs by direction")
		}
		if n > max(len(a), len(b)) || n < max(len(a)-len(b), len(b)-len(a)) {
			t.Fatalf("%d is out of bounds", n)
		}
		if (n == 0) != (string(a) == string(b)) {
			t.Fatalf("%d, but equal is %v", n, string(a) == string(b))
		}
	})
}
