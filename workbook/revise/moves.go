package revise

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// moves give the keys of rows that the next revision no longer has the keys
// there that stand for them, by table: parts ride on other vehicles there.
type moves map[string]map[string]string

// moves are those of the pick list and of the check-in.
func (b *Book) moves() moves {
	if b.next == nil {
		return moves{}
	}
	var picks, nextPicks, backs, nextBacks []string
	for _, line := range workbook.PickLines(b.Quote) {
		picks = append(picks, line.Key)
	}
	for _, line := range workbook.PickLines(b.next) {
		nextPicks = append(nextPicks, line.Key)
	}
	for _, line := range workbook.CheckIn(b.Quote) {
		backs = append(backs, line.Key)
	}
	for _, line := range workbook.CheckIn(b.next) {
		nextBacks = append(nextBacks, line.Key)
	}
	return moves{"pick": oneToOne(picks, nextPicks), "return": oneToOne(backs, nextBacks)}
}

// of is where an address stands in the next revision.
func (m moves) of(a address) address {
	if to, ok := m[a.table][a.key]; ok {
		a.key = to
	}
	return a
}

// oneToOne pairs the keys that are gone with those that are new, part by part in
// their order: where there are as many of each, and tagged pieces as far as they
// go. Nothing is guessed of a part that is shared out otherwise.
func oneToOne(was, next []string) map[string]string {
	fresh := map[string][]string{}
	for _, key := range next {
		if part, _ := rowOfPart(key); !slices.Contains(was, key) {
			fresh[part] = append(fresh[part], key)
		}
	}
	gone := map[string][]string{}
	for _, key := range was {
		if part, _ := rowOfPart(key); !slices.Contains(next, key) {
			gone[part] = append(gone[part], key)
		}
	}
	pairs := map[string]string{}
	for part, keys := range gone {
		if len(keys) != len(fresh[part]) && !strings.Contains(keys[0], "#") {
			continue
		}
		for i, key := range keys[:min(len(keys), len(fresh[part]))] {
			pairs[key] = fresh[part][i]
		}
	}
	return pairs
}

// rowOfPart reads the part and the trip from the key of a row, which has an @
// or a bar between.
func rowOfPart(key string) (part, trip string) {
	end := strings.IndexAny(key, "@|")
	if end < 0 {
		return key, ""
	}
	trip, _, _ = strings.Cut(key[end+1:], "#")
	return key[:end], trip
}

// ofParts tells the tables whose rows are of one part on one trip.
func ofParts(table string) bool {
	return slices.Contains([]string{"pick", "return", "out", "home"}, table)
}

// keysInOrder are the keys of a table from top to bottom.
func (v *view) keysInOrder(table string) []string {
	var keys []string
	for key := range v.rows[table] {
		keys = append(keys, key)
	}
	slices.SortFunc(keys, func(a, b string) int { return cmp.Compare(v.rows[table][a][0], v.rows[table][b][0]) })
	return keys
}

// stray is a cell of a row of a part that has no row of its own any more.
type stray struct {
	at   address
	was  sheet.Place
	now  sheet.Place
	cell sheet.FoundCell
}

// strays brings the notes of such rows to another row of their part, and tells
// of ticks, counts and tags in one line for each part.
func (k *keeper) strays(list []stray) {
	byPart := map[string][]stray{}
	var parts []string
	for _, x := range list {
		part, _ := rowOfPart(x.at.key)
		rows := k.rowsOfPart(x.at.table, part)
		switch {
		case shown(x.cell) == "" || shown(x.cell) == shown(k.b.was.cell(x.was)):
		case x.at.column == "note" && len(rows) > 0:
			k.join(address{table: x.at.table, column: "note", key: rows[0]}, x)
		case x.at.column == "note":
			k.lose(x.now, x.cell)
		default:
			if byPart[part] == nil {
				parts = append(parts, part)
			}
			byPart[part] = append(byPart[part], x)
		}
	}
	for _, part := range parts {
		k.notCarried(part, byPart[part])
	}
}

// rowsOfPart are the keys of a part's rows in the next workbook, from top to
// bottom, those first that the workbook which came back did not have.
func (k *keeper) rowsOfPart(table, part string) []string {
	var fresh, known []string
	for _, key := range k.then.keysInOrder(table) {
		if of, _ := rowOfPart(key); of != part {
			continue
		}
		if len(k.b.was.rows[table][key]) > 0 {
			known = append(known, key)
		} else {
			fresh = append(fresh, key)
		}
	}
	return append(fresh, known...)
}

// join puts a note into a cell of the next workbook, after what stands there.
func (k *keeper) join(a address, x stray) {
	then, ok := k.then.find(a)
	s := k.tab(then.Sheet)
	if ok != here || s == nil || then.R1 > len(s.Rows) || then.C1 > len(s.Rows[then.R1-1].Cells) {
		k.lose(x.now, x.cell)
		return
	}
	words, _ := s.Rows[then.R1-1].Cells[then.C1-1].Value.(string)
	if text := shown(x.cell); words == "" {
		k.put(then, x.cell)
	} else if !strings.Contains(words, text) {
		k.put(then, sheet.FoundCell{Kind: sheet.FoundText, Text: words + "; " + text})
	}
}

// notCarried tells what of a part's rows finds no row, and what it rides on now.
func (k *keeper) notCarried(part string, list []stray) {
	ticks := 0
	var words, trips []string
	for _, x := range list {
		_, trip := rowOfPart(x.at.key)
		if trip != "" {
			trip = " on " + trip
		}
		switch x.at.column {
		case "pulled", "ticked", "returned", "tick":
			ticks++
		case "loaded":
			words = append(words, "the count "+shown(x.cell)+trip)
		case "tag":
			words = append(words, "the tag "+shown(x.cell))
		default:
			words = append(words, x.at.column+" "+shown(x.cell))
		}
	}
	switch {
	case ticks == 1:
		words = append([]string{"1 tick"}, words...)
	case ticks > 1:
		words = append([]string{fmt.Sprint(ticks, " ticks")}, words...)
	}
	for _, key := range k.rowsOfPart("pick", part) {
		if _, trip := rowOfPart(key); trip != "" && !slices.Contains(trips, trip) {
			trips = append(trips, trip)
		}
	}
	slices.Sort(trips)
	c := workbook.Change{Place: k.placeText(list[0].now), What: part, New: strings.Join(words, ", "), Note: lostNote}
	if p := k.b.Quote.Catalog.Part(part); p != nil {
		c.What = p.Name
	}
	if len(trips) > 0 {
		c.Note = "not carried: the part now rides on " + strings.Join(trips, ", ")
	}
	k.lost = append(k.lost, c)
}

// placeText is a cell as changes tell it.
func (k *keeper) placeText(p sheet.Place) string { return p.Sheet + "!" + sheet.Ref(p.R1, p.C1) }
