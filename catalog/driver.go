package catalog

import (
	"slices"
	"strings"
)

// Driver is something that parts or hours follow from: a count on a tent's
// graph, or a fact of the whole job.
type Driver struct {
	ID   string
	Name string // as the count sheet prints it
	Tent bool   // counted per tent; otherwise once for the job
	Late bool   // known only once the vehicles are loaded; no part can follow from it
}

// TagDriver starts the name of a driver that counts the parts with a tag, as
// in "tag:chair".
const TagDriver = "tag:"

// drivers is the table of all drivers, tags apart.
var drivers = []Driver{
	{"tents", "tents", true, false},
	{"joints", "joints (fittings)", true, false},
	{"pole-ends", "pole ends", true, false},
	{"poles", "poles and beams", true, false},
	{"legs", "legs", true, false},
	{"corners", "corner legs", true, false},
	{"crowns", "crowns", true, false},
	{"centre-poles", "centre poles", true, false},
	{"quarter-poles", "quarter poles", true, false},
	{"side-poles", "side poles", true, false},
	{"guys", "guy ropes", true, false},
	{"arches", "arches", true, false},
	{"bays", "bays", true, false},
	{"base-plates", "base plates", true, false},
	{"gable-uprights", "gable uprights", true, false},
	{"braces", "brace cables", true, false},
	{"purlins", "purlins, eaves and ridge", true, false},
	{"splices", "beam splices", true, false},
	{"top-sections", "top sections", true, false},
	{"area", "floor area", true, false},
	{"roof-area", "roof area", true, false},
	{"perimeter", "perimeter", true, false},
	{"walled", "walled length", true, false},
	{"wall-panels", "wall panels", true, false},
	{"doors", "doors", true, false},
	{"gutter", "gutter length", true, false},
	{"stakes", "stakes", true, false},
	{"ballast", "ballast pieces", true, false},
	{"filled-ballast", "ballast pieces filled on site", true, false},
	{"solid-ballast", "solid ballast pieces", true, false},
	{"job", "the job", false, false},
	{"distance", "distance one way", false, false},
	{"trips", "vehicle trips out", false, true},
	{"truck-miles", "distance driven for the delivery, there and home", false, true},
	{"ride-miles", "distance ridden to install, by those who do not drive", false, true},
	{"back-ride-miles", "distance ridden to strike, by those who do not drive", false, true},
	{"back-trips", "vehicle trips back", false, true},
	{"back-truck-miles", "distance driven for the collection, there and home", false, true},
	{"weight-out", "weight out", false, true},
	{"weight-back", "weight back", false, true},
	{"days-out", "days out", false, false},
	{"guests", "guests", false, false},
	{"all-area", "floor area of all tents", false, false},
}

// Drivers is every driver that rules may name, tags apart.
func Drivers() []Driver { return slices.Clone(drivers) }

// FindDriver looks a driver up; a tag is a driver of the whole job.
func FindDriver(id string) (Driver, bool) {
	if tag, ok := strings.CutPrefix(id, TagDriver); ok && tag != "" {
		return Driver{ID: id, Name: "parts tagged " + tag, Late: true}, true
	}
	for _, d := range drivers {
		if d.ID == id {
			return d, true
		}
	}
	return Driver{}, false
}
