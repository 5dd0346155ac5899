package catalog

import (
	"math"
	"testing"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
)

// Pounds per foot of standard pipe. Aluminium at 0.098 lb/cu in, schedule 40:
// the first three as printed in the pipe table at m4metals.com, the others from
// the Aluminum Association's table, from memory. Steel at 490 lb/cu ft (Iowa DOT
// IM 452.02): plain-end weights of ASME B36.10M, from memory; the first three
// rows are worked out by pi/4 (OD^2 - ID^2) x 12 x density.
func TestPipeWeights(t *testing.T) {
	const aluminium, steel = 2712.6, 7849.1 // kg per cubic metre
	c := &Catalog{Company: Company{Units: unit.Imperial}}
	for _, tc := range []struct {
		pipe          string
		outside, wall float64 // inches
		density, want float64 // pounds per foot
		tolerance     float64
	}{
		{"1/2 aluminium", .840, .109, aluminium, .29, .005},
		{"3/4 aluminium", 1.050, .113, aluminium, .39, .005},
		{"1 aluminium", 1.315, .133, aluminium, .58, .005},
		{"1-1/4 aluminium", 1.660, .140, aluminium, .786, .001},
		{"1-1/2 aluminium", 1.900, .145, aluminium, .940, .001},
		{"2 aluminium", 2.375, .154, aluminium, 1.264, .001},
		{"2-1/2 aluminium", 2.875, .203, aluminium, 2.004, .001},
		{"3 aluminium", 3.500, .216, aluminium, 2.621, .001},
		{"4 aluminium", 4.500, .237, aluminium, 3.733, .001},
		{"1 steel, three places", 1.315, .133, steel, 1.681, .002},
		{"2 steel, three places", 2.375, .154, steel, 3.656, .002},
		{"3 steel, three places", 3.500, .216, steel, 7.583, .002},
		{"1/2 steel 40", .840, .109, steel, .85, .005},
		{"3/4 steel 40", 1.050, .113, steel, 1.13, .005},
		{"1 steel 40", 1.315, .133, steel, 1.68, .005},
		{"1-1/4 steel 40", 1.660, .140, steel, 2.27, .005},
		{"1-1/2 steel 40", 1.900, .145, steel, 2.72, .005},
		{"2 steel 40", 2.375, .154, steel, 3.66, .005},
		{"2-1/2 steel 40", 2.875, .203, steel, 5.80, .005},
		{"3 steel 40", 3.500, .216, steel, 7.58, .005},
		{"4 steel 40", 4.500, .237, steel, 10.80, .005},
		{"5 steel 40", 5.563, .258, steel, 14.63, .005},
		{"6 steel 40", 6.625, .280, steel, 18.99, .005},
		{"8 steel 40", 8.625, .322, steel, 28.58, .005},
		{"10 steel 40", 10.750, .365, steel, 40.52, .005},
		{"12 steel 40", 12.750, .406, steel, 53.57, .005},
		{"1/2 steel 80", .840, .147, steel, 1.09, .005},
		{"3/4 steel 80", 1.050, .154, steel, 1.48, .005},
		{"1 steel 80", 1.315, .179, steel, 2.17, .005},
		{"1-1/4 steel 80", 1.660, .191, steel, 3.00, .005},
		{"1-1/2 steel 80", 1.900, .200, steel, 3.63, .005},
		{"2 steel 80", 2.375, .218, steel, 5.03, .005},
		{"2-1/2 steel 80", 2.875, .276, steel, 7.67, .005},
		{"3 steel 80", 3.500, .300, steel, 10.26, .005},
		{"4 steel 80", 4.500, .337, steel, 15.00, .005},
	} {
		p := Profile{Outside: inches(tc.outside), Wall: inches(tc.wall), Density: money.Float(tc.density)}
		// A thousand feet, because a weight is to a hundredth of a pound.
		if perFoot := c.PoleMass(&p, 1000*unit.Foot).Pounds() / 1000; math.Abs(perFoot-tc.want) > tc.tolerance {
			t.Errorf("%s weighs %.4f lb a foot, %.3f was expected", tc.pipe, perFoot, tc.want)
		}
	}
}

// A solid weighs its volume times its density: a concrete block of 4 x 2 x 2 ft
// at 150 and 145 lb/cu ft (civilengineeringbible.com, article 65), water at
// 8.345 lb/gal (US Navy Ship Salvage Manual, appendix E). A gallon is 231 cubic
// inches, so 11 x 21 in of section hold one for each inch of length.
func TestSolidWeights(t *testing.T) {
	const perCubicFoot = 0.45359237 / 0.028316846592 // kg per cubic metre
	const perGallon = 0.45359237 / 0.003785411784
	c := &Catalog{Company: Company{Units: unit.Imperial}}
	block := Profile{Outside: 2 * unit.Foot, Across: 2 * unit.Foot}
	water := Profile{Outside: 11 * unit.Inch, Across: 21 * unit.Inch}
	for _, tc := range []struct {
		what    string
		p       Profile
		length  unit.Length
		density float64
		want    float64 // pounds
	}{
		{"concrete block, 150 lb/cu ft", block, 4 * unit.Foot, 150 * perCubicFoot, 2400},
		{"concrete block, 145 lb/cu ft", block, 4 * unit.Foot, 145 * perCubicFoot, 2320},
		{"55 gal of water", water, 55 * unit.Inch, 8.345 * perGallon, 459},
		{"275 gal of water", water, 275 * unit.Inch, 8.345 * perGallon, 2295},
		{"a cubic foot of water", Profile{Outside: unit.Foot, Across: unit.Foot}, unit.Foot, 8.345 * perGallon, 62.426},
	} {
		tc.p.Density = money.Float(tc.density)
		if got := c.PoleMass(&tc.p, tc.length).Pounds(); math.Abs(got-tc.want) > tc.want/5000 {
			t.Errorf("%s weighs %.2f lb, %v was expected", tc.what, got, tc.want)
		}
	}
	shop, list := Load("demo", Demo())
	if shop == nil {
		t.Fatal(list.Err())
	}
	barrel := shop.Part("water-barrel")
	if got := (*barrel.Full - *barrel.Weight).Pounds(); math.Abs(got-459) > 0.5 {
		t.Errorf("the water of a barrel of 55 gal weighs %.2f lb, 459 was expected", got)
	}
}

func inches(n float64) unit.Length { return unit.FromMetres(n * 0.0254) }

// A 10 ft pole of 2 in schedule 40 aluminium weighs 12.64 lb: the formula above
// at 0.098 lb/cu in (density from memory).
func TestPoleWeight(t *testing.T) {
	c := &Catalog{Company: Company{Units: unit.Imperial}}
	p := Profile{Outside: inches(2.375), Wall: inches(.154), Density: money.Float(2712.6)}
	if got := c.PoleMass(&p, 10*unit.Foot).Pounds(); math.Abs(got-12.64) > 0.05 {
		t.Errorf("the pole weighs %.2f lb, 12.64 was expected", got)
	}
}

// Cloth weighs its square feet times ounces a square yard over 144: 20 x 20 ft
// of 18 oz is 50.0 lb, 1,000 sq ft of 16 oz is 111.1 lb. Worked out by the rule.
func TestClothWeight(t *testing.T) {
	const gramsPerOunceYard = 28.349523125 / 0.83612736
	c := &Catalog{Company: Company{Units: unit.Imperial}}
	for _, tc := range []struct{ squareFeet, ounces, want float64 }{{400, 18, 50.0}, {1000, 16, 111.1}, {447.2, 18, 55.9}} {
		f := Fabric{Grams: money.Float(tc.ounces * gramsPerOunceYard)}
		area := unit.Area(tc.squareFeet * unit.Foot.Metres() * unit.Foot.Metres())
		if got := c.ClothMass(&f, area, 1).Pounds(); math.Abs(got-tc.want) > 0.05 {
			t.Errorf("%v sq ft of %v oz weigh %.2f lb, %.1f was expected", tc.squareFeet, tc.ounces, got, tc.want)
		}
	}
}

// A box is its outside less its inside; a rod or rope is solid.
func TestSectionArea(t *testing.T) {
	mm := unit.Millimetre
	for _, tc := range []struct {
		what string
		p    Profile
		want float64 // square millimetres
	}{
		{"box 100 x 50 x 3", Profile{Outside: 100 * mm, Across: 50 * mm, Wall: 3 * mm}, 100*50 - 94*44},
		{"solid bar 40 x 20", Profile{Outside: 40 * mm, Across: 20 * mm}, 800},
		{"rod of 10", Profile{Outside: 10 * mm}, math.Pi * 25},
	} {
		if got := tc.p.SectionArea() * 1e6; math.Abs(got-tc.want) > 1e-6 {
			t.Errorf("%s has a section of %.3f sq mm, %.3f was expected", tc.what, got, tc.want)
		}
	}
}
