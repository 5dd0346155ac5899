package frame

import (
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// TestBadSizes: a size that cannot be framed gives no tent, one problem, and
// what was expected.
func TestBadSizes(t *testing.T) {
	hip, pole, span := hipFamily(0), poleFamily(), spanFamily()
	close := poleFamily()
	close.Poles.SideSpacing = unit.Inch
	purlins, gables := spanFamily(), spanFamily()
	purlins.Span.PurlinSpacing, gables.Span.GableSpacing = unit.Inch/2, unit.Inch/2
	tests := []struct {
		family *catalog.Family
		size   catalog.Size
		want   string
	}{
		{hip, hipSize(25, 40, 10, 5), "is 25 ft wide; an even number of bays of 10 ft, or a single bay both ways, was expected"},
		{hip, hipSize(30, 40, 10, 5), "is 30 ft wide; an even number of bays"},
		{hip, hipSize(10, 20, 10, 5), "is 10 ft wide; an even number of bays"},
		{hip, hipSize(20, 35, 10, 5), "is 35 ft long; a whole number of bays of 10 ft was expected"},
		{hip, hipSize(40, 30, 10, 5), "is 30 ft long; at least its width of 40 ft was expected"},
		{hip, hipSize(20, 2010, 10, 5), "has 201 bays; at most 200 were expected"},
		{hip, hipSize(0, 30, 10, 5), "has a width of 0 ft; above zero"},
		{hip, hipSize(20, 0, 10, 5), "has a length of 0 ft; above zero"},
		{hip, hipSize(20, 30, 0, 5), "has a bay of 0 ft; above zero"},
		{hip, hipSize(20, 30, 10, 0), "has a rise of 0 ft; above zero"},
		{hip, hipSize(20, 4000, 10, 5), "has a length of 4000 ft; above zero and at most 3280 ft 10 in was expected"},
		{pole, poleSize(40, 70, 20, 20, 9), "is 70 ft long; two ends of 20 ft and a whole number of middles of 20 ft were expected"},
		{pole, poleSize(40, 30, 20, 20, 9), "is 30 ft long; two ends"},
		{pole, poleSize(40, 60, 20, 0, 9), "has ends of 0 ft; above zero was expected"},
		{pole, poleSize(40, 3000, 1, 20, 9), "has 2960 middles; at most 200 were expected"},
		{close, poleSize(40, 60, 20, 20, 9), "has side poles every 1 in; at most 200 spaces"},
		{span, spanSize(40, 50, 15, 6), "is 50 ft long; a whole number of bays of 15 ft was expected"},
		{span, spanSize(40, 603, 3, 6), "has 201 bays; at most 200 were expected"},
		{purlins, spanSize(40, 60, 15, 6), "has a slope of 20 ft 10 1/2 in; at most 200 purlins"},
		{gables, spanSize(40, 60, 15, 6), "has gable uprights every 1/2 in; at most 200 spaces"},
	}
	for _, test := range tests {
		c := &catalog.Catalog{Company: catalog.Company{Units: unit.Imperial}}
		tent, list := Build(c, test.family, &test.size, feet(8, 0))
		if tent != nil || len(list) != 1 || list[0].Code != BadSize || !strings.Contains(list[0].Message, test.want) {
			t.Errorf("%s %s: got %q, want %q", test.family.ID, test.size.ID, list, test.want)
		}
	}
	s := hipSize(20, 30, 10, 5)
	if tent, list := Build(&catalog.Catalog{}, hip, &s, 0); tent != nil || len(list) != 1 || !strings.Contains(list[0].Message, "has a leg of 0 m") {
		t.Errorf("without a leg: got %q", list)
	}
}

// TestBadFamilies: a kind that is not known, or lacks what it needs.
func TestBadFamilies(t *testing.T) {
	pole, span, other, zero := poleFamily(), spanFamily(), hipFamily(0), spanFamily()
	pole.Poles, span.Span, other.Kind, zero.Span.BeamMax = nil, nil, "dome", 0
	for want, f := range map[string]*catalog.Family{
		`family "pole" is a pole tent without poles; side_spacing above zero was expected`: pole,
		`family "span" is a clear-span structure without span; spacings`:                   span,
		`family "span" is a clear-span structure without span; spacings, beam_max`:         zero,
		`family "hip" is of kind "dome"; hip-frame, pole or clear-span was expected`:       other,
	} {
		s := hipSize(20, 30, 10, 5)
		tent, list := Build(&catalog.Catalog{}, f, &s, feet(8, 0))
		if tent != nil || len(list) != 1 || list[0].Code != BadFamily || !strings.Contains(list[0].Message, want) {
			t.Errorf("got %q, want %q", list, want)
		}
	}
}
