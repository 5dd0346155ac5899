package frame

import (
	"strconv"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
)

// cut is a pole of a role at a length; many members share one.
type cut struct {
	role   string
	centre unit.Length
}

// stocker finds the stock part for each member and fitting of one tent.
type stocker struct {
	c    *catalog.Catalog
	f    *catalog.Family
	s    *catalog.Size
	list *diag.List
	said map[string]bool // problems reported, each once
	cuts map[cut]string  // parts found
}

// members sets the cut length and the stock part of each member. Legs, side
// poles and uprights have the eave height as their centre line, so without a
// take-up they are as long as it.
func (k *stocker) members(all []Member) {
	for i := range all {
		m := &all[i]
		spec := k.spec(m.Role)
		if spec == nil {
			k.report("profile "+m.Role, NoProfile, "family %q says nothing of a %s; an entry of that role in members was expected", k.f.ID, m.Role)
			continue
		}
		m.Cut = m.Centre - 2*spec.TakeUp
		if m.Role == "guy" && k.f.Guy != nil {
			m.Cut += k.f.Guy.Slack
		}
		key := cut{m.Role, m.Centre}
		part, done := k.cuts[key]
		if !done {
			part = k.pole(m, spec.Profile)
			k.cuts[key] = part
		}
		m.Part = part
	}
}

// spec is what the family makes a role from; nil if it does not say.
func (k *stocker) spec(role string) *catalog.MemberSpec {
	for i := range k.f.Members {
		if k.f.Members[i].Role == role {
			return &k.f.Members[i]
		}
	}
	return nil
}

// pole is the stock part for a member: the one nearest to its cut length
// within the tolerance, or the shortest rope or cable that reaches. "" and a
// problem when the yard owns none.
func (k *stocker) pole(m *Member, profile string) string {
	var fit, near *catalog.Part
	for i := range k.c.Parts {
		p := &k.c.Parts[i]
		if p.Pole == nil || p.Pole.Profile != profile {
			continue
		}
		// Strictly nearer, so that of equals the first in the catalog stays.
		if near == nil || off(p, m.Cut) < off(near, m.Cut) {
			near = p
		}
		if k.fits(p.Pole.Length, m) && (fit == nil || off(p, m.Cut) < off(fit, m.Cut)) {
			fit = p
		}
	}
	switch {
	case fit != nil:
		return fit.ID
	case near == nil:
		k.report("pole "+m.Role+profile, NoStockPole, "family %q, size %q: a %s of %s is needed; a part of profile %q was expected, none is owned",
			k.f.ID, k.s.ID, m.Role, m.Cut.In(k.c.Company.Units), profile)
	default:
		want, have := k.lengths(m.Cut, near.Pole.Length)
		k.report("pole "+m.Role+want, NoStockPole, "family %q, size %q: a %s of %s is needed; the nearest of profile %q is %q at %s",
			k.f.ID, k.s.ID, m.Role, want, profile, near.ID, have)
	}
	return ""
}

// fits tells whether a stock length does for a member. Ropes and cables adjust
// downwards only.
func (k *stocker) fits(length unit.Length, m *Member) bool {
	if rope(m.Role) {
		return length >= m.Cut
	}
	return max(length-m.Cut, m.Cut-length) <= k.f.Tolerance
}

// off is how far a pole is from a length, either way.
func off(p *catalog.Part, length unit.Length) unit.Length {
	return max(p.Pole.Length-length, length-p.Pole.Length)
}

// lengths is two different lengths for people; the half inch is too coarse
// where a tolerance is finer, and then both are in metres.
func (k *stocker) lengths(a, b unit.Length) (string, string) {
	units := k.c.Company.Units
	if a.In(units) == b.In(units) {
		units = unit.Metric
	}
	return a.In(units), b.In(units)
}

// fittings sets the stock part of each node.
func (k *stocker) fittings(all []Node) {
	for i := range all {
		n := &all[i]
		part, ok := k.fitting(n)
		if !ok {
			k.report("fitting "+n.Role+strconv.Itoa(n.Ways), NoFitting, "family %q, size %q: a %s of %d ways is needed; a fitting of that role, with these ways or any, was expected",
				k.f.ID, k.s.ID, n.Role, n.Ways)
		}
		n.Part = part
	}
}

// fitting prefers the one made for the number of ways. A stake follows from
// the anchorage, and a side pole stands on its own spike, so neither must
// have one.
func (k *stocker) fitting(n *Node) (part string, ok bool) {
	for i := range k.f.Fittings {
		switch spec := &k.f.Fittings[i]; {
		case spec.Role != n.Role:
		case spec.Ways == n.Ways:
			return spec.Part, true
		case spec.Ways == 0 && !ok:
			part, ok = spec.Part, true
		}
	}
	return part, ok || n.Role == "stake" || n.Role == "base" && k.f.Kind == catalog.KindPole
}

// report adds a problem at the size, once for each key: a tent has dozens of
// members alike.
func (k *stocker) report(key, code, format string, args ...any) {
	if !k.said[key] {
		k.said[key] = true
		k.list.Addf(k.s.Where.Pos(), code, format, args...)
	}
}
