package intake

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// needDay reads a day that the rest of its row asks for.
func (r *reader) needDay(s spot) unit.Date {
	if r.blank(s) {
		r.fault(s, HalfFilled, "fill it in, or clear the row", "the cell is empty although the row is filled in; a day such as 2026-07-04 was expected")
		return unit.Date{}
	}
	return r.day(s)
}

// tents reads the tents row by row and then their sides.
func (r *reader) tents() {
	inputs := []string{"name", "family", "size", "count", "eave", "id", "ground", "joins", "at", "off"}
	t := r.table("tent", "tents", append([]string{"no"}, inputs...)...)
	if t == nil {
		return
	}
	index := map[string]int{} // of the job's tents, by the number of their row
	t.keyed("no", "tent", inputs, func(row int, no string) {
		index[no] = len(r.j.Tents)
		r.j.Tents = append(r.j.Tents, r.tent(t, row, no, len(r.j.Tents)))
	})
	r.sides(index)
	r.places(index)
}

// tent reads one row. A size is held against its family only when that is
// known.
func (r *reader) tent(t *table, row int, no string, n int) job.Tent {
	path := fmt.Sprintf("tents[%d]", n)
	at := func(id, field, label string) spot {
		return t.at(row, id, path+"."+field, "tent "+no+", "+label)
	}
	r.cells[path], r.labels[path] = r.pos(t.sheet.Name, row, t.cols["family"]), "tent "+no
	tent := job.Tent{ID: "tent-" + no}
	if id := r.words(at("id", "id", "short name")); id != "" {
		tent.ID = id
	}
	tent.Name = r.words(at("name", "name", "name"))
	family := at("family", "family", "family")
	if r.blank(family) {
		r.fault(family, HalfFilled, "choose it from the list, or clear the row", "the cell is empty although the row is filled in; a family of tents was expected")
	} else {
		tent.Family = r.choice(family, families(r.c), "a family of tents")
	}
	f := r.c.Family(tent.Family)
	tent.Size = r.size(at("size", "size", "size"), f)
	tent.Count = r.whole(at("count", "count", "count"), 1)
	tent.Leg = r.eave(at("eave", "leg", "eave"), f)
	tent.Ground = r.choice(at("ground", "ground", "ground"), grounds(r.c), "a kind of ground")
	tent.Joins = r.words(at("joins", "joins", "joins"))
	side := at("at", "join_side", "at side")
	tent.JoinAt = r.choice(side, sides(), "Front, Right, Back or Left")
	if tent.Joins == "" && tent.JoinAt != "" {
		r.fault(side, HalfFilled, "name the other tent, or clear the side", "a side is given but no tent that it joins; both or neither were expected")
	}
	tent.Discount = r.percent(at("off", "discount", "% off"))
	return tent
}

// size reads a size of a family, and says of which family it is otherwise.
func (r *reader) size(s spot, f *catalog.Family) string {
	if r.blank(s) {
		r.fault(s, HalfFilled, "choose it from the list, or clear the row", "the cell is empty although the row is filled in; a size was expected")
		return ""
	}
	c, ok := r.take(s)
	if !ok {
		return ""
	}
	text := shown(c)
	if f == nil {
		return text
	}
	if id, ok := sizes(f).id(text); ok {
		return id
	}
	advice := diag.DidYouMean(text, sizes(f).texts())
	var others []string
	for i := range r.c.Families {
		if other := &r.c.Families[i]; sizes(other).has(text) {
			others = append(others, families(r.c).text(other.ID))
		}
	}
	if len(others) > 0 {
		advice = "it is a size of " + strings.Join(others, ", ")
	}
	r.fault(s, diag.NotOneOf, advice, "%q is no size of %s; one of its sizes was expected", sheet.Short(text, 60), f.Name)
	return ""
}

// has tells whether a word is one of the list.
func (cs choices) has(word string) bool {
	_, ok := cs.id(word)
	return ok
}

// eave reads one of the family's heights by the words of the drop-down, or any
// length; whether the family has it is the job's to check.
func (r *reader) eave(s spot, f *catalog.Family) unit.Length {
	if c := r.at(s); f != nil && c.Kind == sheet.FoundText {
		if i := slices.Index(legs(r.c, f), shown(c)); i >= 0 {
			r.cells[s.path] = r.pos(s.sheet.Name, s.row, s.col)
			if !r.merged(s) {
				return f.Legs[i]
			}
		}
	}
	return measure(r, s, "length", r.c.Company.Units.LengthUnit(), unit.ParseLength)
}

// sides reads the sides of the tents whose rows are filled in.
func (r *reader) sides(index map[string]int) {
	inputs := []string{"wall", "door", "doors", "other", "others", "stakes"}
	if r.has("side", "ground") {
		inputs = append(inputs, "ground")
	}
	t := r.table("side", "tents", append([]string{"tent", "side"}, inputs...)...)
	if t == nil {
		return
	}
	for row := t.first; row <= t.last; row++ {
		filled := t.filled(row, inputs...)
		if filled == "" || t.word(row, "side") == headsMark {
			continue
		}
		no, side := t.word(row, "tent"), t.word(row, "side")
		n, known := index[no]
		s := t.at(row, filled, "", fmt.Sprintf("row %d", row))
		switch {
		case no == "" || !sides().has(side):
			r.fault(s, NoRow, "fill in one of the rows that the form has", "the row says %q but not for which side of a tent; a row of the form was expected", t.word(row, filled))
		case !known:
			s.label = "tent " + no + ", " + side
			r.fault(s, HalfFilled, "fill in the tent above, or clear the side", "the side says %q but the row of its tent is empty; a tent with family and size was expected", t.word(row, filled))
		default:
			r.side(t, row, n, "tent "+no+", "+side, side)
		}
	}
}

// side reads one row into its tent.
func (r *reader) side(t *table, row, n int, label, side string) {
	tent := &r.j.Tents[n]
	path := fmt.Sprintf("tents[%d].sides[%d]", n, len(tent.Sides))
	f := r.c.Family(tent.Family)
	var wallKinds, doorKinds choices
	if f != nil {
		wallKinds, doorKinds = walls(f), doors(f)
	}
	at := func(id, field, what string) spot { return t.at(row, id, path+"."+field, label+", "+what) }
	s := job.TentSide{Side: side}
	r.cells[path], r.labels[path] = r.pos(t.sheet.Name, row, t.cols["wall"]), label
	s.Wall = r.choice(at("wall", "wall", "wall"), wallKinds, "a wall of the family")
	s.NoStakes = r.choice(at("stakes", "no_stakes", "no stakes"), yesNo(), "Yes or No") == "yes"
	if t.cols["ground"] > 0 {
		s.Ground = r.choice(at("ground", "ground", "ground"), grounds(r.c), "a kind of ground")
	}
	s.Doors = r.doors(at("other", "doors", "other door"), at("others", "doors", "how many of the other door"), doorKinds)
	s.Doors = append(r.doors(at("door", "doors", "door"), at("doors", "doors", "how many"), doorKinds), s.Doors...)
	if f != nil && s.Wall == "" && len(s.Doors) == 0 && !s.NoStakes && s.Ground == "" {
		return // a plain No
	}
	tent.Sides = append(tent.Sides, s)
}

// doors reads a kind of door as often as its number says.
func (r *reader) doors(kind, many spot, kinds choices) []string {
	if r.blank(kind) {
		if !r.blank(many) {
			r.fault(many, HalfFilled, "choose the door, or clear the number", "a number of doors is given but no kind; both or neither were expected")
		}
		return nil
	}
	n := 1
	if !r.blank(many) {
		n = r.whole(many, 1)
	}
	door := r.choice(kind, kinds, "a door of the family")
	const most = 50
	if n > most {
		r.fault(many, diag.OutOfRange, "", "%d doors are more than a side takes; at most %d were expected", n, most)
		n = 1
	}
	return slices.Repeat([]string{door}, n)
}
