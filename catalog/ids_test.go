package catalog

import (
	"strings"
	"testing"
)

// Spreadsheet look-ups ignore capitals and read some characters as patterns or
// comparisons, so that ids which differ in no other way are refused.
func TestIDsThatASpreadsheetConfuses(t *testing.T) {
	for _, id := range []string{"chair", "tent-1", "zelt-ä"} {
		if why := BadInSheet(id); why != "" {
			t.Errorf("%q is refused: it %s", id, why)
		}
	}
	for _, id := range []string{"c*", "a?", "x~y", "<a", ">b", "=c"} {
		if BadInSheet(id) == "" {
			t.Errorf("%q is taken, though a look-up reads it as a pattern", id)
		}
	}
	shop := smallWith(t, "", nil)
	items := strings.Replace(string(shop["accessories.yaml"].Data), "id: seat8", "id: CHAIR", 1)
	if c, list := Load("shop", smallWith(t, "accessories.yaml", []byte(items))); c != nil || !strings.Contains(list.Err().Error(), RepeatedID) {
		t.Errorf("items chair and CHAIR: %v", list.Err())
	}
}

// A list that must not be empty is refused when it is, not read as none.
func TestEmptyRequiredList(t *testing.T) {
	site := "factors:\n  - {id: surface, name: Surface, options: []}\n"
	c, list := Load("shop", smallWith(t, "site.yaml", []byte(site)))
	if c != nil || !strings.Contains(list.Err().Error(), "empty") {
		t.Errorf("no options: %v", list.Err())
	}
}
