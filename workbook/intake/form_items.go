package intake

import (
	"tentwright/catalog"
	"tentwright/workbook/sheet"
)

// Words by which the reader knows rows of the items that are none of an item.
const (
	moreLines  = "More lines"
	chooseItem = "choose the item at the left"
)

// items writes a row for everything that can be ordered, section by section.
func (f *form) items() {
	f.newPage()
	f.band("Accessories, kits and services", "A quantity puts the row on the quote. Optional: Yes offers it as an extra, Chosen is an extra that the customer has taken; empty: No.")
	f.itemHeads()
	first := len(f.s.Rows) + 1
	p := &pages{f: f, heads: f.itemHeads, left: pageLines - 2}
	section := ""
	for _, it := range ordered(f.c) {
		if it.Section != section {
			section = it.Section
			p.room(1 + itemLines(it))
			f.row(cell(colLabel, section, sheet.Style{Role: sheet.Label, Bold: true}))
		} else {
			p.room(itemLines(it))
		}
		f.itemRow(it)
	}
	p.room(1 + extraLines)
	f.row(cell(colLabel, moreLines, sheet.Style{Role: sheet.Label, Bold: true}), cell(colValue, "For an item that stands on the quote twice, e.g. with another note.", faint()))
	for range extraLines {
		f.extraRow()
	}
	f.nameColumns("item", first, map[string]int{"id": colKey, "name": colLabel, "quantity": colF, "optional": colG, "note": colH, "off": colI})
}

func (f *form) itemHeads() {
	f.heads(colLabel, "Item", "What it is", "Price", "Unit", "Quantity", "Optional", "Note", "% off")
}

// itemLines is how many lines of text the row of an item has.
func itemLines(it *catalog.Item) int {
	const wide, small = 30, 26 // characters of the columns of names and descriptions, on the safe side
	return max(1, (len(it.Name)+wide-1)/wide, (len(it.Describe)+small-1)/small)
}

// itemRow is one item of the shop with its price of one at the base rate.
func (f *form) itemRow(it *catalog.Item) {
	text := items(f.c).text(it.ID)
	f.row(cell(colLabel, text, wrapped()), cell(colValue, it.Describe, sheet.Style{Role: sheet.Key, Wrap: true}),
		cell(colD, f.c.ItemPrice(it), sheet.Style{Role: sheet.Body, Format: sheet.Money}), cell(colE, it.Unit, sheet.Style{Role: sheet.Body, Indent: 1}),
		input(colF, sheet.General), pick(colG), input(colH, sheet.Text), input(colI, sheet.General), cell(colKey, it.ID, key()))
	f.itemRules(it.CountsWhole(), "How many, by "+it.Unit+"; empty: none.")
}

// extraRow is a free line; its item is chosen by name.
func (f *form) extraRow() {
	f.row(pick(colLabel), cell(colValue, chooseItem, key()), cell(colD, nil, wrapped()), cell(colE, nil, wrapped()),
		input(colF, sheet.General), pick(colG), input(colH, sheet.Text), input(colI, sheet.General), cell(colKey, nil, key()))
	f.allowFrom(colLabel, "items", items(f.c), "An item of the list above.")
	f.itemRules(false, "How many, by the unit of the item; empty: none.")
}

// itemRules limits the inputs of a line.
func (f *form) itemRules(whole bool, prompt string) {
	rule := decimals(1000000)
	if whole {
		rule = wholes(0, 1000000)
	}
	f.allow(colF, rule, prompt)
	f.allow(colG, sheet.Validation{Kind: sheet.List, Source: "No,Yes,Chosen"}, "Yes: offered as an extra. Chosen: an extra that is taken. Empty: ordered.")
	f.allow(colH, words(250), "A note printed with this line.")
	f.allow(colI, decimals(100), "Percent off by hand; type 10 for ten percent.")
}
