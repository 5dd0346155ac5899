package cli

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/quote/price"
)

// Kinds of things that can be listed.
const (
	listTents = "tents"
	listItems = "items"
)

// newList is the command that shows the ids that jobs and flags name.
func newList(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "list [tents|items] [WORD]",
		Short: "List the ids and prices of tents and items",
		Long: `Prints the tents that the shop owns as FAMILY:SIZE and the items as their id, as
a job file or --tent and --item name them, each with its price of one at the base
rate. With a word only those are listed that have it in their id or name.`,
		Example: `  tentwright list
  tentwright list tents 20x
  tentwright list items "banquet table"`,
		RunE: func(_ *cobra.Command, args []string) error { return a.list(args) },
	}
}

// list prints the tents, the items or both.
func (a *app) list(args []string) error {
	what, word := "", ""
	if len(args) > 0 && (args[0] == listTents || args[0] == listItems) {
		what, args = args[0], args[1:]
	}
	if len(args) > 1 {
		return misuse("put words that belong together in quotes", "one word to look for was expected; then came %q", args[1])
	}
	if len(args) == 1 {
		word = args[0]
	}
	s, err := a.useShop(".")
	if err != nil {
		return err
	}
	tents, items := sizeRows(s.catalog, word), itemRows(s.catalog, word)
	if what != listItems {
		a.table([]string{"TENT", "NAME", "PRICE"}, tents)
	}
	if what == "" && len(tents) > 0 && len(items) > 0 {
		a.printf("\n")
	}
	if what != listTents {
		a.table([]string{"ITEM", "NAME", "SECTION", "UNIT", "PRICE"}, items)
	}
	if (what == listItems || len(tents) == 0) && (what == listTents || len(items) == 0) {
		a.note(fmt.Sprintf("nothing in the shop has %q in its id or name", word), nearWord(s.catalog, word))
	}
	return nil
}

// nearWord is advice for a word that nothing has: one of the shop's that is
// nearly so.
func nearWord(c *catalog.Catalog, word string) string {
	var words []string
	for i := range c.Items {
		words = append(words, strings.Fields(strings.ToLower(c.Items[i].Name))...)
	}
	for i := range c.Families {
		words = append(words, strings.Fields(strings.ToLower(c.Families[i].Name))...)
	}
	if near, ok := diag.Nearest(strings.ToLower(word), words); ok {
		return `did you mean "` + strings.Trim(near, ",;:()") + `"?`
	}
	return "try a shorter word, or none"
}

// sizeRows is every size that fits the word, as --tent names it.
func sizeRows(c *catalog.Catalog, word string) [][]string {
	var rows [][]string
	for i := range c.Families {
		f := &c.Families[i]
		for j := range f.Sizes {
			size := &f.Sizes[j]
			id, name := f.ID+":"+size.ID, f.Name+" "+size.ID
			if listed(word, id, name) {
				rows = append(rows, []string{id, name, c.Currency().Text(price.SizePrice(c, f, size))})
			}
		}
	}
	return rows
}

// itemRows is every item that fits the word; those that follow from a tent
// are not ordered by id.
func itemRows(c *catalog.Catalog, word string) [][]string {
	var rows [][]string
	for i := range c.Items {
		if it := &c.Items[i]; !it.Geometry && listed(word, it.ID, it.Name) {
			rows = append(rows, []string{it.ID, it.Name, it.Section, it.Unit, c.Currency().Text(c.ItemPrice(it))})
		}
	}
	return rows
}

// listed tells whether an id or name has the word in it, or all of several.
func listed(word, id, name string) bool {
	part := strings.Contains(strings.ToLower(id+"\n"+name), strings.ToLower(word))
	return part || diag.HasWords(word, id, name)
}

// table prints rows below a heading, the last column to the right; nothing
// for no rows.
func (a *app) table(heading []string, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	rows = append([][]string{heading}, rows...)
	width := make([]int, len(heading))
	for _, row := range rows {
		for i, cell := range row {
			width[i] = max(width[i], utf8.RuneCountInString(cell))
		}
	}
	last := len(heading) - 1
	for _, row := range rows {
		for i, cell := range row[:last] {
			a.printf("%-*s  ", width[i], cell)
		}
		a.printf("%*s\n", width[last], row[last])
	}
}
