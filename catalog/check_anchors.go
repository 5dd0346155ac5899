package catalog

import (
	"fmt"
	"slices"

	"tentwright/catalog/diag"
	"tentwright/catalog/source"
)

// anchorFile is the file that these checks are of.
const anchorFile = "anchors.yaml"

// checkAnchors checks the file, which the shop has.
func (k *checker) checkAnchors() {
	a := k.c.Anchors
	stakes, ballast := newKnown("stake"), newKnown("ballast")
	addAll(k, stakes, anchorFile, a.Stakes, func(x *Stake) (string, source.Where) { return x.ID, x.Where })
	addAll(k, ballast, anchorFile, a.Ballast, func(x *BallastPiece) (string, source.Where) { return x.ID, x.Where })
	addAll(k, newKnown("terrain"), anchorFile, a.Terrains, func(x *Terrain) (string, source.Where) { return x.ID, x.Where })
	surfaces := k.surfaces()
	for i := range a.Stakes {
		s := &a.Stakes[i]
		k.checkAnchor(s.Part, s.Families, s.With, s.Where)
	}
	for i := range a.Ballast {
		p := &a.Ballast[i]
		k.checkAnchor(p.Part, p.Families, p.With, p.Where)
	}
	for i := range a.Tests {
		t := &a.Tests[i]
		stakes.want(k.list, t.Stake, t.Where.Of("stake"))
		surfaces.want(k.list, t.Surface, t.Where.Of("surface"))
	}
	for i := range a.Friction {
		f := &a.Friction[i]
		ballast.want(k.list, f.Ballast, f.Where.Of("ballast"))
		surfaces.want(k.list, f.Surface, f.Where.Of("surface"))
	}
	if a.Holdfast != nil {
		for i := range a.Holdfast.Soils {
			surfaces.want(k.list, a.Holdfast.Soils[i].Surface, a.Holdfast.Soils[i].Where.Of("surface"))
		}
	}
	k.checkSizesOfAnchors(a)
	k.checkWindTables(a)
	k.checkTwice(a)
}

// checkSizesOfAnchors wants lengths, pulls and speeds that divide something, or
// hold it, to be above zero.
func (k *checker) checkSizesOfAnchors(a *Anchors) {
	units := k.c.Company.Units
	bad := func(pos diag.Pos, format string, args ...any) { k.list.Addf(pos, BadAnchor, format, args...) }
	if k.form.Sound(a.Where, "gust") && a.Gust <= 0 {
		bad(a.Where.Of("gust"), "a gust of %s is planned for; above zero was expected", a.Gust.Text(units))
	}
	for i := range a.Stakes {
		if s := &a.Stakes[i]; k.form.Sound(s.Where, "driven", "diameter") && (s.Driven <= 0 || s.Diameter <= 0) {
			bad(s.Where.Pos(), "stake %q is driven %s deep and %s thick; both above zero were expected", s.ID, s.Driven.In(units), s.Diameter.In(units))
		}
	}
	for i := range a.Tests {
		if t := &a.Tests[i]; k.form.Sound(t.Where, "pull") && t.Pull <= 0 {
			bad(t.Where.Of("pull"), "a pull of nothing cannot be planned with; what the stake held was expected")
		}
	}
	if h := a.Holdfast; h != nil && k.form.Sound(h.Where, "driven", "diameter", "pull") && (h.Driven <= 0 || h.Diameter <= 0 || h.Pull <= 0) {
		bad(h.Where.Pos(), "a holdfast driven %s deep, %s thick, holds %s; all above zero were expected", h.Driven.In(units), h.Diameter.In(units), h.Pull.Text(units))
	}
}

// checkAnchor checks what a kind of anchor names.
func (k *checker) checkAnchor(part string, families []string, with []Along, at source.Where) {
	k.parts.want(k.list, part, at.Of("part"))
	k.wantAll(k.families, families, func(n int) diag.Pos { return at.Of(fmt.Sprintf("families[%d]", n)) })
	for i := range with {
		k.parts.want(k.list, with[i].Part, with[i].Where.Of("part"))
	}
}

// surfaces is the degrees of the ground that the shop tells apart.
func (k *checker) surfaces() *known {
	all := newKnown("surface")
	all.part = k.form.In("site.yaml")
	if f := k.c.SiteFactor(Surface); f != nil {
		for i := range f.Options {
			all.ids[f.Options[i].ID] = f.Options[i].Where.Pos()
		}
	}
	return all
}

// checkWindTables wants the rows of every table to rise, since what lies between
// two rows is interpolated.
func (k *checker) checkWindTables(a *Anchors) {
	rise := func(table string, n int, row func(int) (float64, diag.Pos)) {
		for i := 1; i < n; i++ {
			before, _ := row(i - 1)
			if is, pos := row(i); is <= before {
				k.list.Addf(pos, BadSteps, "a row of %s for %g comes after one for %g; rising rows were expected", table, is, before)
			}
		}
	}
	for i := range a.Terrains {
		t := &a.Terrains[i]
		rise("terrain factors", len(t.Factors), func(n int) (float64, diag.Pos) {
			return t.Factors[n].Height.Metres(), t.Factors[n].Where.Of("height")
		})
	}
	rise("stakes in a group", len(a.Groups), func(n int) (float64, diag.Pos) {
		return float64(a.Groups[n].Stakes), a.Groups[n].Where.Of("stakes")
	})
	if e := a.European; e != nil {
		rise("roof slopes", len(e.Roofs), func(n int) (float64, diag.Pos) {
			return e.Roofs[n].Angle.InexactFloat64(), e.Roofs[n].Where.Of("angle")
		})
	}
	if a.American == nil {
		return
	}
	for _, letter := range []string{"A", "B"} {
		k.checkCase(a.American, letter)
		var rows []*NetRow
		for i := range a.American.Net {
			if a.American.Net[i].Case == letter {
				rows = append(rows, &a.American.Net[i])
			}
		}
		rise("case "+letter, len(rows), func(n int) (float64, diag.Pos) {
			return rows[n].Angle.InexactFloat64(), rows[n].Where.Of("angle")
		})
	}
}

// checkCase wants net coefficients to have both load cases: either may govern.
func (k *checker) checkCase(w *AmericanWind, letter string) {
	has := slices.ContainsFunc(w.Net, func(r NetRow) bool { return r.Case == letter })
	if len(w.Net) > 0 && !has && k.form.Sound(w.Where, "net") {
		k.list.Addf(w.Where.Of("net"), BadAnchor, "the net coefficients have no row of case %s; rows of both cases, A and B, were expected", letter)
	}
}

// anchorDrivers are the counts of what holds a tent.
var anchorDrivers = []string{"stakes", "ballast", "filled-ballast", "solid-ballast"}

// checkTwice reports an anchor, or what goes with one, that a part rule takes by
// the count of anchors as well.
func (k *checker) checkTwice(a *Anchors) {
	rules := map[string]*PartRule{}
	for i := range k.c.Rules {
		if r := &k.c.Rules[i]; slices.Contains(anchorDrivers, r.Driver) && r.Part != "" {
			rules[r.Part] = r
		}
	}
	want := func(part string, at source.Where) {
		if r := rules[part]; r != nil {
			k.list.Add(diag.Problem{Pos: at.Of("part"), Code: AnchorTwice, Related: []diag.Pos{r.Where.Of("part")},
				Message: fmt.Sprintf("part %q is taken by part rule %q already and would come twice; only one of the two was expected", part, r.ID)})
		}
	}
	kind := func(part string, with []Along, at source.Where) {
		want(part, at)
		for i := range with {
			want(with[i].Part, with[i].Where)
		}
	}
	for i := range a.Stakes {
		kind(a.Stakes[i].Part, a.Stakes[i].With, a.Stakes[i].Where)
	}
	for i := range a.Ballast {
		kind(a.Ballast[i].Part, a.Ballast[i].With, a.Ballast[i].Where)
	}
}
