package frame

import (
	"fmt"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// Limits of what is drawn; a size beyond them is a slip of the pen.
const (
	maxSide   = unit.Kilometre
	maxSpaces = 200 // bays of a side, poles of a side, purlins of a slope
)

// unmade says what the family lacks that its kind cannot do without.
func unmade(f *catalog.Family) string {
	switch {
	case f.Kind != catalog.KindHip && f.Kind != catalog.KindPole && f.Kind != catalog.KindSpan:
		return fmt.Sprintf("is of kind %q; hip-frame, pole or clear-span was expected", f.Kind)
	case f.Kind == catalog.KindPole && (f.Poles == nil || f.Poles.SideSpacing <= 0):
		return "is a pole tent without poles; side_spacing above zero was expected"
	case f.Kind == catalog.KindSpan && (f.Span == nil || f.Span.PurlinSpacing <= 0 || f.Span.GableSpacing <= 0 || f.Span.BeamMax <= 0 || f.Span.BraceEvery <= 0):
		return "is a clear-span structure without span; spacings, beam_max and brace_every above zero were expected"
	}
	return ""
}

// unfit says why a size cannot be framed; "" when it can. The generators rely
// on it: they divide by bays and spacings without a second look.
func unfit(f *catalog.Family, s *catalog.Size, leg unit.Length, units unit.System) string {
	for _, l := range []struct {
		name string
		is   unit.Length
	}{{"width", s.Width}, {"length", s.Length}, {"bay", s.Bay}, {"rise", s.Rise}, {"leg", leg}} {
		if l.is <= 0 || l.is > maxSide {
			return fmt.Sprintf("has a %s of %s; above zero and at most %s was expected", l.name, l.is.In(units), maxSide.In(units))
		}
	}
	switch f.Kind {
	case catalog.KindPole:
		return unfitPole(f.Poles, s, units)
	case catalog.KindSpan:
		return unfitSpan(f.Span, s, units)
	}
	return unfitHip(s, units)
}

// unfitHip wants whole bays: an even number across, so that the rafters of
// both sides meet on a ridge, and at least as many along.
func unfitHip(s *catalog.Size, units unit.System) string {
	if s.Width == s.Bay && s.Length == s.Bay {
		return ""
	}
	across, along := s.Width/s.Bay, s.Length/s.Bay
	switch bay := s.Bay.In(units); {
	case s.Width%s.Bay != 0 || across%2 != 0:
		return fmt.Sprintf("is %s wide; an even number of bays of %s, or a single bay both ways, was expected", s.Width.In(units), bay)
	case s.Length%s.Bay != 0:
		return fmt.Sprintf("is %s long; a whole number of bays of %s was expected", s.Length.In(units), bay)
	case along < across:
		return fmt.Sprintf("is %s long; at least its width of %s was expected", s.Length.In(units), s.Width.In(units))
	case along > maxSpaces:
		return fmt.Sprintf("has %d bays; at most %d were expected", along, maxSpaces)
	}
	return ""
}

// unfitPole wants whole middles between the ends. None will do: then one
// centre pole stands where the ends meet.
func unfitPole(p *catalog.PoleTentSpec, s *catalog.Size, units unit.System) string {
	middle := s.Length - 2*s.End
	switch {
	case s.End <= 0 || s.End > maxSide:
		return fmt.Sprintf("has ends of %s; above zero was expected", s.End.In(units))
	case middle < 0 || middle%s.Bay != 0:
		return fmt.Sprintf("is %s long; two ends of %s and a whole number of middles of %s were expected", s.Length.In(units), s.End.In(units), s.Bay.In(units))
	case middle/s.Bay > maxSpaces:
		return fmt.Sprintf("has %d middles; at most %d were expected", middle/s.Bay, maxSpaces)
	case spaces(max(s.Length, s.Width), p.SideSpacing) > maxSpaces:
		return fmt.Sprintf("has side poles every %s; at most %d spaces on a side were expected", p.SideSpacing.In(units), maxSpaces)
	}
	return ""
}

// unfitSpan wants an arch at both ends, and so whole bays between.
func unfitSpan(p *catalog.SpanSpec, s *catalog.Size, units unit.System) string {
	switch {
	case s.Length%s.Bay != 0:
		return fmt.Sprintf("is %s long; a whole number of bays of %s was expected", s.Length.In(units), s.Bay.In(units))
	case s.Length/s.Bay > maxSpaces:
		return fmt.Sprintf("has %d bays; at most %d were expected", s.Length/s.Bay, maxSpaces)
	case spaces(slope(s), min(p.PurlinSpacing, p.BeamMax)) > maxSpaces:
		return fmt.Sprintf("has a slope of %s; at most %d purlins and beams along it were expected", slope(s).In(units), maxSpaces)
	case spaces(s.Width, p.GableSpacing) > maxSpaces:
		return fmt.Sprintf("has gable uprights every %s; at most %d spaces were expected", p.GableSpacing.In(units), maxSpaces)
	}
	return ""
}

// spaces is the fewest equal spaces of at most the given width in a length;
// both are above zero.
func spaces(length, most unit.Length) int { return int((length-1)/most) + 1 }
