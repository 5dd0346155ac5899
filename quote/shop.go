package quote

import (
	"fmt"
	"math"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
	"tentwright/quote/frame"
	"tentwright/quote/parts"
)

// CheckShop frames every size of every family at every eave height and lists
// what its stock lacks, and each section of a top that two sizes would cut to
// different areas. A quote makes the same checks for its own tents only.
func CheckShop(c *catalog.Catalog) diag.List {
	k := shopChecker{c: c, cuts: map[string]topCut{}}
	for i := range c.Families {
		f := &c.Families[i]
		for j := range f.Sizes {
			k.size(f, &f.Sizes[j])
		}
	}
	return k.list.Sorted()
}

// topCut is a stock section of a top and the first size that it is cut for.
type topCut struct {
	area unit.Area
	what string
	pos  diag.Pos
}

type shopChecker struct {
	c    *catalog.Catalog
	cuts map[string]topCut // by part
	list diag.List
}

func (k *shopChecker) size(f *catalog.Family, s *catalog.Size) {
	var first *frame.Tent
	for _, leg := range f.Legs {
		t, problems := frame.Build(k.c, f, s, leg)
		k.list.Join(problems)
		if first == nil {
			first = t
		}
	}
	// A top is the same at every height.
	if first != nil {
		for _, section := range first.Sections {
			k.section(f, s, section)
		}
	}
}

// section wants a part to have one area in all sizes that it is a section of;
// else it is most likely the top of another width.
func (k *shopChecker) section(f *catalog.Family, s *catalog.Size, section frame.Section) {
	what := fmt.Sprintf("size %q of %q", s.ID, f.ID)
	pos := s.Top.Where.Pos()
	had, known := k.cuts[section.Part]
	if !known {
		k.cuts[section.Part] = topCut{section.Area, what, pos}
		return
	}
	const slack = 1e-6 // of the area: less than a stitch
	if math.Abs(float64(had.area-section.Area)) <= slack*float64(had.area) {
		return
	}
	units := k.c.Company.Units
	k.list.Add(diag.Problem{Pos: pos, Code: parts.WeightDiffer, Related: []diag.Pos{had.pos},
		Message: fmt.Sprintf("top section %q would be %s in %s but is %s in %s; one section for each shape was expected",
			section.Part, section.Area.Text(units), what, had.area.Text(units), had.what),
		Advice: "is this the top of another width?"})
}
