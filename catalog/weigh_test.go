package catalog

import (
	"math"
	"testing"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
)

// Pounds per foot of standard pipe sizes in schedule 40. Aluminium at 0.098
// lb/cu in: the first three as printed in the pipe table at m4metals.com, the
// others from the Aluminum Association's table, from memory. Steel at 490
// lb/cu ft (Iowa DOT IM 452.02): worked out by the formula pi/4 (OD^2 - ID^2)
// x 12 x density.
func TestPipeWeights(t *testing.T) {
	const aluminium, steel = 2712.6, 7849.1 // kg per cubic metre
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
		{"2 steel", 2.375, .154, steel, 3.656, .005},
		{"4 steel", 4.500, .237, steel, 10.80, .01},
	} {
		p := Profile{Outside: inches(tc.outside), Wall: inches(tc.wall), Density: money.Float(tc.density)}
		perFoot := p.SectionArea() * tc.density * unit.Foot.Metres() / 0.45359237
		if math.Abs(perFoot-tc.want) > tc.tolerance {
			t.Errorf("%s weighs %.4f lb a foot, %.3f was expected", tc.pipe, perFoot, tc.want)
		}
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
