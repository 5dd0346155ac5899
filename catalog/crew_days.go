package catalog

// LightFactor is the site factor of the light: its first option is that of the
// day, the others are those of lamps.
const LightFactor = "light"

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
