package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Fleet is the vehicles and what rides in them beside the load.
type Fleet struct {
	Where    source.Where
	Rider    unit.Mass     `yaml:"rider,required"` // one person with tools and bag
	Vehicles []Vehicle     `yaml:"vehicles,required"`
	Licences []LicenceFlag `yaml:"licences"`
}

// Vehicle is a van, truck or trailer.
type Vehicle struct {
	Where    source.Where
	ID       string       `yaml:"id,required" long:"60"`
	Name     string       `yaml:"name,required" long:"120"`
	Kind     string       `yaml:"kind,required" enum:"van|box truck|flatbed|trailer"`
	Count    int          `yaml:"count,required" min:"1" max:"100"`
	Empty    unit.Mass    `yaml:"empty,required"`
	Rating   unit.Mass    `yaml:"rating,required"` // gross weight rating on the plate
	Combined *unit.Mass   `yaml:"combined"`        // gross combination rating when it tows
	Fuel     unit.Mass    `yaml:"fuel"`
	Reserve  unit.Mass    `yaml:"reserve"` // of the payload, kept free for what arithmetic cannot weigh
	Seats    int          `yaml:"seats" min:"0" max:"20"`
	Open     bool         `yaml:"open"` // what rides on it is in the open or vented
	Deck     unit.Size    `yaml:"deck,required"`
	Longest  unit.Length  `yaml:"longest,required"`                // longest piece that can ride
	Fill     money.Number `yaml:"fill,required" min:"1" max:"100"` // percent of the deck's volume that loads in practice
	TowedBy  []string     `yaml:"towed_by"`                        // vehicles that can pull it; for trailers
	TripCost money.Number `yaml:"trip_cost" min:"0"`               // to the yard for one out and back, without distance
}

// LicenceFlag marks a vehicle that an ordinary licence does not cover. The
// words come from the shop, because the law differs by place.
type LicenceFlag struct {
	Where source.Where
	Over  unit.Mass `yaml:"over,required"` // gross rating above this
	Towed unit.Mass `yaml:"towed"`         // and, for a combination, towed rating above this
	Flag  string    `yaml:"flag,required"`
}
