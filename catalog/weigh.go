package catalog

import (
	"math"

	"tentwright/catalog/diag"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Mass is the weight of one of a part, to 0.01 of the shop's unit. It is
// false for the sections of a top, which weigh what their tent makes them.
func (c *Catalog) Mass(id string) (unit.Mass, bool) {
	m, ok := c.masses[id]
	return m, ok
}

// ClothMass is the weight of an area of a fabric with seams and hems.
func (c *Catalog) ClothMass(f *Fabric, area unit.Area, seam float64) unit.Mass {
	grams := f.Grams.InexactFloat64() * float64(area) * seam
	return unit.MassOf(grams / 1000).RoundTo(c.Company.Units)
}

// PoleMass is the weight of a length of a profile: section area times length
// times density.
func (c *Catalog) PoleMass(p *Profile, length unit.Length) unit.Mass {
	kilograms := p.SectionArea() * length.Metres() * p.Density.InexactFloat64()
	return unit.MassOf(kilograms).RoundTo(c.Company.Units)
}

// SectionArea is the area of material in a cut through the profile, in square
// metres: a tube, a box, or solid where no wall is given.
func (p *Profile) SectionArea() float64 {
	outside, across, wall := p.Outside.Metres(), p.Across.Metres(), p.Wall.Metres()
	if across == 0 {
		inside := outside - 2*wall
		if wall == 0 {
			inside = 0
		}
		return math.Pi / 4 * (outside*outside - inside*inside)
	}
	if wall == 0 {
		return outside * across
	}
	return outside*across - (outside-2*wall)*(across-2*wall)
}

// weigh works out the weight of every part that does not depend on a tent.
func (c *Catalog) weigh(form *source.Form, list *diag.List) {
	c.masses = make(map[string]unit.Mass, len(c.Parts))
	for i := range c.Parts {
		p := &c.Parts[i]
		switch {
		case p.Weight != nil:
			c.masses[p.ID] = p.Weight.RoundTo(c.Company.Units)
		case p.Pole != nil:
			if profile := c.Profile(p.Pole.Profile); profile != nil {
				c.masses[p.ID] = c.PoleMass(profile, p.Pole.Length)
			}
		case p.Cloth != nil && p.Cloth.Width > 0:
			if fabric := c.Fabric(p.Cloth.Fabric); fabric != nil {
				area := unit.Area(p.Cloth.Width.Metres() * p.Cloth.Height.Metres())
				c.masses[p.ID] = c.ClothMass(fabric, area, fabric.SeamFactor())
			}
		}
		if m, ok := c.masses[p.ID]; ok && m <= 0 && !form.In("parts.yaml") {
			list.Addf(p.Where.Pos(), NoWeight, "part %q weighs nothing; a weight above 0.00 %s was expected", p.ID, c.Company.Units.MassUnit())
		}
	}
}

// SeamFactor is the fabric's own seam allowance; 1 when it gives none.
func (f *Fabric) SeamFactor() float64 {
	if f.Seam.IsZero() {
		return 1
	}
	return f.Seam.InexactFloat64()
}
