package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
)

// LabourRule is the time that one task takes, and what drives it.
type LabourRule struct {
	Where    source.Where
	ID       string       `yaml:"id,required" long:"60"`
	Name     string       `yaml:"name,required" long:"120"`
	Phase    string       `yaml:"phase,required" enum:"load|travel|unload|lay out|assemble|raise|anchor|sidewalls|floor|furnish|strike|reload|return|wash and dry|put away"`
	Driver   string       `yaml:"driver"` // required; its absence is a named fault
	Families []string     `yaml:"families"`
	Minutes  money.Number `yaml:"minutes,required" min:"0"` // hand-minutes per one of the driver
	Fixed    money.Number `yaml:"fixed" min:"0"`            // hand-minutes once, when there is anything to do
	Crew     int          `yaml:"crew,required" min:"1" max:"50"`
	Skill    string       `yaml:"skill,required"`
	Factors  []string     `yaml:"factors"` // kinds of site factor that slow it
	After    []string     `yaml:"after"`

	Most        int           `yaml:"most" min:"1" max:"50"` // people who can share the task without standing in each other's way; not given: twice the crew
	Gear        []string      `yaml:"gear"`                  // parts of which one is in use while the task runs
	Whole       bool          `yaml:"whole"`                 // is not left half done overnight
	Inspected   bool          `yaml:"inspected"`             // is done only once the authority has inspected, where it comes
	Optimistic  *money.Number `yaml:"optimistic" min:"0"`    // minutes when all goes well; not given: by the shop's spread
	Pessimistic *money.Number `yaml:"pessimistic" min:"0"`   // minutes when much goes wrong; likewise
}

// Phases in the order of a job, from the yard and back to it.
func Phases() []string {
	return []string{"load", Travel, "unload", "lay out", "assemble", "raise", "anchor", "sidewalls",
		"floor", "furnish", "strike", "reload", Return, "wash and dry", "put away"}
}

// The phases in which a crew is on the road.
const (
	Travel = "travel"
	Return = "return"
)

// Surface is the site factor that a tent may have of its own, and that says
// whether stakes can be driven.
const Surface = "surface"

// SiteFactor is one thing about a site that slows work, with its degrees.
type SiteFactor struct {
	Where   source.Where
	ID      string       `yaml:"id,required" long:"60"` // surface, slope, carry, light, heat, wind
	Name    string       `yaml:"name,required" long:"120"`
	Options []SiteOption `yaml:"options,required"` // the first is usual
}

// SiteOption is one degree of a site factor.
type SiteOption struct {
	Where    source.Where
	ID       string       `yaml:"id,required" long:"60"`
	Name     string       `yaml:"name,required" long:"120"`
	Factor   money.Number `yaml:"factor,required" min:"0.1" max:"10"`
	NoStakes bool         `yaml:"no_stakes"` // nothing can be driven here: ballast
	Engineer bool         `yaml:"engineer"`  // an engineer must design what holds a tent here
}

// SiteFactor looks a site factor up by id; nil if the shop has none.
func (c *Catalog) SiteFactor(id string) *SiteFactor {
	for i := range c.Site {
		if c.Site[i].ID == id {
			return &c.Site[i]
		}
	}
	return nil
}

// Option looks a degree of the factor up by id; nil if it has none.
func (f *SiteFactor) Option(id string) *SiteOption {
	for i := range f.Options {
		if f.Options[i].ID == id {
			return &f.Options[i]
		}
	}
	return nil
}
