package workbook

import (
	"tentwright/catalog/money"
)

// backLine is a line of the check-in with what was counted on it and what
// follows.
type backLine struct {
	portion
	out              int
	counted, damaged int
	known            bool // somebody counted
	missing          int
	each, charge     money.Number
	state            string
}

// backLines reckons the lines of the check-in.
func (l *layout) backLines() []backLine {
	rows := returned(l.q)
	list := make([]backLine, len(rows))
	for i := range rows {
		list[i] = l.backLine(rows[i])
	}
	return list
}

// backLine reckons one line. What was not counted is neither missing nor
// charged, and no more is damaged than came back.
func (l *layout) backLine(p portion) backLine {
	b := backLine{portion: p, each: money.Zero, charge: money.Zero}
	if p.part.Replacement != nil {
		b.each = *p.part.Replacement
	}
	if each, ok := l.kept.Each[p.key]; ok {
		b.each = each
	}
	if b.out = l.carried.parts[p.part.ID]; p.part.Tracked {
		b.out = l.carried.rows[p.key]
	}
	b.counted, b.known = l.kept.Counted[p.key]
	b.damaged = l.kept.Damaged[p.key]
	if b.known {
		b.missing = max(0, b.out-b.counted)
		b.charge = money.Round(money.Int(b.missing+min(b.damaged, b.counted)).Mul(b.each), l.q.Price.Currency.Minor)
	}
	b.state = l.backState(&b)
	return b
}

// backState is returnState of the numbers.
func (l *layout) backState(b *backLine) string {
	_, torn := l.kept.Damaged[b.key]
	wet := l.kept.Wet[b.key]
	switch {
	case !b.known && (torn || wet != ""):
		return stateCount
	case !b.known && b.out == 0:
		return stateNoneOut
	case !b.known:
		return ""
	case b.damaged > b.counted:
		return stateBeyond
	case b.counted < b.out:
		return "missing " + itoa(b.out-b.counted)
	case b.counted > b.out:
		return "too many, " + itoa(b.counted-b.out)
	case b.damaged > 0:
		return "to mending"
	case isWet(wet):
		return "dry first"
	}
	return "complete"
}

// missingCell is the missing of a line as its cell shows it.
func (b *backLine) missingCell() any {
	if !b.known {
		return ""
	}
	return b.missing
}

// sentTag is the tag that went out with a piece, as the check-in repeats it.
func (l *layout) sentTag(key string) any { return keptCell(l.kept.Tag, key, any("")) }

// backSums are the sums above the check-in.
type backSums struct {
	out, counted, missing, damaged int
	charge                         money.Number
}

// sumBacks adds the lines of the check-in up.
func sumBacks(list []backLine) backSums {
	sums := backSums{charge: money.Zero}
	for i := range list {
		b := &list[i]
		if b.out > 0 {
			sums.out++
		}
		if b.known {
			sums.counted++
		}
		sums.missing += b.missing
		sums.damaged += b.damaged
		sums.charge = sums.charge.Add(b.charge)
	}
	return sums
}
