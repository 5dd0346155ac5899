package catalog

// LightFactor is the site factor of the light: its first option is that of the
// day, the others are those of lamps.
const LightFactor = "light"

// Ids of skills that a crew plan knows by name: who leads, and who drives. Every
// other skill of a labour rule is one that somebody of the crew has.
const (
	LeadSkill   = "lead"
	DriverSkill = "driver"
)

// Hand is the skill that the yard pays least for: that of everybody who is
// asked for no other.
func (c *Catalog) Hand() *Skill {
	hand := &c.Rates.Skills[0]
	for i := range c.Rates.Skills {
		if s := &c.Rates.Skills[i]; s.Cost.LessThan(hand.Cost) {
			hand = s
		}
	}
	return hand
}

// Day is the setting of a window of work; nil if the file has none.
func (c *Crew) Day(window string) *CrewDay {
	for i := range c.Days {
		if c.Days[i].Window == window {
			return &c.Days[i]
		}
	}
	return nil
}

// Light is when there is light in a month, from 1 to 12; nil if the file does
// not say.
func (c *Crew) Light(month int) *Daylight {
	for i := range c.Daylight {
		if MonthNumber(c.Daylight[i].Month) == month {
			return &c.Daylight[i]
		}
	}
	return nil
}
