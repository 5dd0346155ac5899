package frame

import (
	"math"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// Shapes of a top, by the fields of its spec that are given.
const (
	topEmpty = iota
	topOnePiece
	topEnds
	topBays
	topMixed
)

// topShape tells which kind of top a spec describes.
func topShape(t *catalog.TopSpec) int {
	whole, ends, bays := t.OnePiece != "", t.End != "" || t.Middle != "", t.Bay != "" || t.Gable != ""
	switch {
	case whole && !ends && !bays:
		return topOnePiece
	case ends && !whole && !bays:
		return topEnds
	case bays && !whole && !ends:
		return topBays
	case whole || ends || bays:
		return topMixed
	}
	return topEmpty
}

// cutTop is the sections that a size's top is made of, each with the fabric it
// takes before seams. why is what is wrong with the top's spec, or "".
func cutTop(f *catalog.Family, s *catalog.Size) (sections []Section, why string) {
	shape := topShape(&s.Top)
	switch {
	case shape == topEmpty:
		return nil, "has no top; one_piece, end and middle, or bay and gable was expected"
	case shape == topMixed:
		return nil, "has a top of more than one kind; one_piece, end and middle, or bay and gable was expected"
	case f.Kind == catalog.KindSpan && shape != topBays:
		return nil, "is a clear-span structure; a top of bay and gable was expected"
	case f.Kind == catalog.KindSpan:
		return cutSpan(s)
	case shape == topBays:
		return nil, "is no clear-span structure; a top of one_piece, or of end and middle, was expected"
	}
	return cutHip(f, s, shape)
}

// cutHip cuts a roof with eaves all round: in one piece, or in two ends with
// middles between them. The ends of a hip frame reach to the end of its ridge.
func cutHip(f *catalog.Family, s *catalog.Size, shape int) ([]Section, string) {
	end := s.End
	if f.Kind == catalog.KindHip {
		end = s.Width / 2
	}
	middles := int((s.Length - 2*end) / s.Bay)
	sideSlope := math.Hypot(s.Width.Metres()/2, s.Rise.Metres())
	endSlope := math.Hypot(end.Metres(), s.Rise.Metres())
	// Areas follow from the section's own lengths alone, so that one stock
	// section has one area in every length of tent. An end is a triangle over the
	// end side and half a triangle, as long as the end, at each of the long sides.
	one := unit.Area(s.Width.Metres()/2*endSlope + end.Metres()*sideSlope)
	middle := unit.Area(2 * s.Bay.Metres() * sideSlope)
	if shape == topOnePiece {
		whole := 2*one + unit.Area(middles)*middle
		return []Section{{Kind: "one piece", Part: s.Top.OnePiece, Count: 1, Area: whole}}, ""
	}
	switch {
	case s.Top.End == "":
		return nil, "has a top of middles without an end; end was expected"
	case middles == 0:
		return []Section{{Kind: "end", Part: s.Top.End, Count: 2, Area: one}}, ""
	case s.Top.Middle == "":
		return nil, "has a top of two ends that do not meet; middle was expected"
	}
	return []Section{
		{Kind: "end", Part: s.Top.End, Count: 2, Area: one},
		{Kind: "middle", Part: s.Top.Middle, Count: middles, Area: middle},
	}, ""
}

// cutSpan cuts a panel for each bay, over both slopes, and a triangle for each
// gable.
func cutSpan(s *catalog.Size) ([]Section, string) {
	if s.Top.Bay == "" || s.Top.Gable == "" {
		return nil, "has half a top; bay and gable were expected"
	}
	side := math.Hypot(s.Width.Metres()/2, s.Rise.Metres())
	return []Section{
		{Kind: "bay", Part: s.Top.Bay, Count: int(s.Length / s.Bay), Area: unit.Area(2 * side * s.Bay.Metres())},
		{Kind: "gable", Part: s.Top.Gable, Count: 2, Area: unit.Area(s.Width.Metres() * s.Rise.Metres() / 2)},
	}, ""
}
