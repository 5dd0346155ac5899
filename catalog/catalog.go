// Package catalog holds what a yard owns, charges and assumes, read from the
// files of one shop folder.
//
//	company.yaml      Company: letterhead, currency, units, quote terms
//	tents.yaml        Family and Size: how tents are framed and priced
//	parts.yaml        Profile, Fabric, Part and PartRule: what has a bin
//	accessories.yaml  Item: what a customer can order beside tents
//	labour.yaml       LabourRule: minutes per task
//	rates.yaml        Rates: skills, overtime, periods, taxes, delivery
//	trucks.yaml       Fleet: vehicles and licence flags
//	site.yaml         SiteFactor: what slows the work
//
// and, where the shop has them,
//
//	anchors.yaml      Anchors: wind, soil, stakes, ballast
//	occupancy.yaml    Occupancy: how many people, which exits, by local code
//	power.yaml        Power: heat, light and current
//	calendar.yaml     Calendar: holidays, and which date follows from which
//	crew.yaml         Crew: days of crews, breaks, lifting, driving, spread of times
//
// Everything a shop may want to change is data in these files; the code knows
// only how the kinds relate.
package catalog

import (
	"slices"

	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Catalog is one shop, cross-checked and ready to look things up in.
type Catalog struct {
	Company  Company
	Families []Family
	Profiles []Profile
	Fabrics  []Fabric
	Parts    []Part
	Rules    []PartRule
	Items    []Item
	Labour   []LabourRule
	Rates    Rates
	Fleet    Fleet
	Site     []SiteFactor

	Anchors   *Anchors   // nil: the shop has no such file
	Occupancy *Occupancy // likewise
	Power     *Power
	Calendar  *Calendar
	Crew      *Crew

	Demo    bool   // the demonstration prices are in force
	Logo    []byte // of the letterhead; none if the shop has none
	Terms   string
	Payment string

	// Source is every file that the catalog was read from, by name and as it was,
	// so that whoever keeps them can load the same catalog again.
	Source Shop

	parts    map[string]*Part
	items    map[string]*Item
	families map[string]*Family
	fabrics  map[string]*Fabric
	profiles map[string]*Profile
	masses   map[string]unit.Mass // of every part that is not cut to a tent
}

// Part looks a part up by id; nil if the shop has none.
func (c *Catalog) Part(id string) *Part { return c.parts[id] }

// Item looks an item up by id; nil if the shop has none.
func (c *Catalog) Item(id string) *Item { return c.items[id] }

// Family looks a tent family up by id; nil if the shop has none.
func (c *Catalog) Family(id string) *Family { return c.families[id] }

// Fabric looks a cloth up by id; nil if the shop has none.
func (c *Catalog) Fabric(id string) *Fabric { return c.fabrics[id] }

// Profile looks a pole profile up by id; nil if the shop has none.
func (c *Catalog) Profile(id string) *Profile { return c.profiles[id] }

// Size looks a size of the family up by id; nil if it has none.
func (f *Family) Size(id string) *Size {
	for i := range f.Sizes {
		if f.Sizes[i].ID == id {
			return &f.Sizes[i]
		}
	}
	return nil
}

// basis says for which units the bare numbers of a file are: prices per area
// and length, minutes per weight and distance. They mean something else in a
// shop of other units, so each file says it for itself.
type basis struct {
	Where source.Where
	Units unit.System `yaml:"units,required" enum:"imperial|metric" want:"imperial or metric, for which the numbers of this file are"`
}

// files of a shop folder, in the order in which they are read.
type files struct {
	source  Shop
	company struct {
		Company Company `yaml:"company,required"`
	}
	tents struct {
		basis
		Families []Family `yaml:"families,required"`
	}
	parts struct {
		basis
		Profiles []Profile  `yaml:"profiles,required"`
		Fabrics  []Fabric   `yaml:"fabrics,required"`
		Parts    []Part     `yaml:"parts,required"`
		Rules    []PartRule `yaml:"rules"`
	}
	items struct {
		basis
		Items []Item `yaml:"items,required"`
	}
	labour struct {
		basis
		Rules []LabourRule `yaml:"rules,required"`
	}
	rates struct {
		basis
		Rates Rates `yaml:"rates,required"`
	}
	trucks struct {
		Fleet Fleet `yaml:"fleet,required"`
	}
	site struct {
		Factors []SiteFactor `yaml:"factors,required"`
	}
	anchors struct {
		Anchors *Anchors `yaml:"anchors,required"`
	}
	occupancy struct {
		Occupancy *Occupancy `yaml:"occupancy,required"`
	}
	power struct {
		basis
		Power *Power `yaml:"power,required"`
	}
	calendar struct {
		Calendar *Calendar `yaml:"calendar,required"`
	}
	crew struct {
		Crew *Crew `yaml:"crew,required"`
	}
}

// Files lists the names that a shop folder must hold.
func Files() []string {
	return []string{"company.yaml", "tents.yaml", "parts.yaml", "accessories.yaml",
		"labour.yaml", "rates.yaml", "trucks.yaml", "site.yaml"}
}

// MoreFiles lists the names that a shop folder may hold beside those it must.
// What follows from such a file is left out, and said so, where it is missing.
func MoreFiles() []string {
	return []string{"anchors.yaml", "occupancy.yaml", "power.yaml", "calendar.yaml", "crew.yaml"}
}

// IsFile tells whether a name is that of a file which a shop folder holds.
func IsFile(name string) bool {
	return slices.Contains(Files(), name) || slices.Contains(MoreFiles(), name)
}
