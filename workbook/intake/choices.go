package intake

import (
	"strings"

	"tentwright/catalog"
	"tentwright/workbook/sheet"
)

// choice is one entry of a drop-down: what people see and the id it stands for.
type choice struct{ id, text string }

// choices is a drop-down. No two entries read alike, whatever their capitals.
type choices []choice

// choose makes a drop-down of a catalog's entries, shown by name. Where a name
// is shared, or reads as another entry's id, the id stands behind it.
func choose[T any](all []T, of func(*T) (id, name string)) choices {
	count := map[string]int{}
	list := make(choices, len(all))
	for i := range all {
		id, name := of(&all[i])
		list[i] = choice{id, strings.Join(strings.Fields(sheet.Clean(name)), " ")}
		if list[i].text == "" {
			list[i].text = id
		}
		count[strings.ToLower(list[i].text)]++
		if !strings.EqualFold(id, list[i].text) {
			count[strings.ToLower(id)]++
		}
	}
	for i := range list {
		if count[strings.ToLower(list[i].text)] > 1 && list[i].text != list[i].id {
			list[i].text += " (" + list[i].id + ")"
		}
	}
	return list
}

// id finds the entry that a person wrote: by its text, else by its id, in any
// capitals.
func (cs choices) id(word string) (string, bool) {
	word = strings.Join(strings.Fields(word), " ")
	for _, same := range []func(choice) bool{
		func(c choice) bool { return c.text == word },
		func(c choice) bool { return strings.EqualFold(c.text, word) },
		func(c choice) bool { return strings.EqualFold(c.id, word) },
	} {
		for _, c := range cs {
			if same(c) {
				return c.id, true
			}
		}
	}
	return "", false
}

// text is what people see of an id; "" if it is none of the list.
func (cs choices) text(id string) string {
	for _, c := range cs {
		if c.id == id {
			return c.text
		}
	}
	return ""
}

// texts lists what people see.
func (cs choices) texts() []string {
	out := make([]string, len(cs))
	for i, c := range cs {
		out[i] = c.text
	}
	return out
}

// The drop-downs of a catalog.

func families(c *catalog.Catalog) choices {
	return choose(c.Families, func(f *catalog.Family) (string, string) { return f.ID, f.Name })
}

func sizes(f *catalog.Family) choices {
	return choose(f.Sizes, func(s *catalog.Size) (string, string) { return s.ID, s.ID })
}

// walls are called as the shop's files call their kinds; "open" is always one.
func walls(f *catalog.Family) choices {
	list := choices{{"open", "open"}}
	for i := range f.Walls {
		if f.Walls[i].Kind != "open" {
			list = append(list, choice{f.Walls[i].Kind, f.Walls[i].Kind})
		}
	}
	return list
}

func doors(f *catalog.Family) choices {
	return choose(f.Doors, func(d *catalog.DoorSpec) (string, string) { return d.Kind, d.Kind })
}

func degrees(f *catalog.SiteFactor) choices {
	return choose(f.Options, func(o *catalog.SiteOption) (string, string) { return o.ID, o.Name })
}

// grounds are the degrees of the surface, of which a tent may have its own.
func grounds(c *catalog.Catalog) choices {
	if f := c.SiteFactor("surface"); f != nil {
		return degrees(f)
	}
	return nil
}

func classes(c *catalog.Catalog) choices {
	return choose(c.Rates.Classes, func(k *catalog.CustomerClass) (string, string) { return k.ID, k.Name })
}

func zones(c *catalog.Catalog) choices {
	return choose(c.Rates.Zones, func(z *catalog.Zone) (string, string) { return z.ID, z.Name })
}

// places lists where some tax is due, each once.
func places(c *catalog.Catalog) choices {
	var list choices
	seen := map[string]bool{}
	for _, tax := range c.Rates.Taxes {
		for _, place := range tax.Places {
			if !seen[place] {
				seen[place] = true
				list = append(list, choice{place, place})
			}
		}
	}
	return list
}

// ordered lists the items that people order by hand, section by section in the
// order in which the sections first come.
func ordered(c *catalog.Catalog) []*catalog.Item {
	var sections []string
	of := map[string][]*catalog.Item{}
	for i := range c.Items {
		it := &c.Items[i]
		if it.Geometry {
			continue
		}
		if of[it.Section] == nil {
			sections = append(sections, it.Section)
		}
		of[it.Section] = append(of[it.Section], it)
	}
	var all []*catalog.Item
	for _, name := range sections {
		all = append(all, of[name]...)
	}
	return all
}

func items(c *catalog.Catalog) choices {
	return choose(ordered(c), func(it **catalog.Item) (string, string) { return (*it).ID, (*it).Name })
}

// The drop-downs that are the same in every shop.

func shows(*catalog.Catalog) choices {
	return choices{{"line", "Every line"}, {"section", "Sections only"}, {"total", "Total only"}}
}

func charges(*catalog.Catalog) choices {
	return choices{{"charged", "Charged"}, {"included", "Within the price of the tents"}}
}

func yesNo() choices { return choices{{"yes", "Yes"}, {"no", "No"}} }

// Degrees of an extra.
const (
	extraNo      = "no"
	extraOffered = "yes"
	extraChosen  = "chosen"
)

// extras say whether a line is part of the order, offered, or offered and taken.
func extras() choices {
	return choices{{extraNo, "No"}, {extraOffered, "Yes"}, {extraChosen, "Chosen"}}
}

// sides of a tent in the order of the form.
func sides() choices {
	return choices{{"front", "Front"}, {"right", "Right"}, {"back", "Back"}, {"left", "Left"}}
}

// legs are the eave heights of a family as the drop-down shows them.
func legs(c *catalog.Catalog, f *catalog.Family) []string {
	out := make([]string, len(f.Legs))
	for i, leg := range f.Legs {
		out[i] = leg.In(c.Company.Units)
	}
	return out
}
