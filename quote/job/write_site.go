package job

import "encoding"

// surroundings writes what holds for the place: wind, heat, power, the plot.
func (w *writer) surroundings(j *Job) {
	if j.Wind.Gust != 0 || j.Wind.Terrain != "" {
		w.group("wind", func() {
			if j.Wind.Gust != 0 {
				w.field("gust", exactText(j.Wind.Gust))
			}
			w.text("terrain", j.Wind.Terrain)
		})
	}
	if j.Heat != nil {
		w.group("heat", func() { w.heat(j.Heat) })
	}
	if j.Power != nil {
		w.group("power", func() {
			w.text("source", j.Power.Source)
			w.field("distance", lengthText(j.Power.Distance))
			w.number("hours", j.Power.Hours)
		})
	}
	if j.Plot != nil {
		w.group("plot", func() { w.plot(j.Plot) })
	}
}

func (w *writer) heat(h *Heat) {
	if h.Inside != nil {
		w.field("inside", exactText(h.Inside))
	}
	if h.Outside != nil {
		w.field("outside", exactText(h.Outside))
	}
	w.field("hours", h.Hours.String())
	w.texts("tents", h.Tents)
}

func (w *writer) plot(p *Plot) {
	w.field("width", lengthText(p.Width))
	w.field("depth", lengthText(p.Depth))
	w.number("north", p.North)
	entries(w, "obstacles", p.Obstacles, func(o *Obstacle) {
		w.text("name", o.Name)
		w.text("kind", o.Kind)
		w.field("x", lengthText(o.X))
		w.field("y", lengthText(o.Y))
		if o.Radius != 0 {
			w.field("radius", lengthText(o.Radius))
		}
		if o.Width != 0 || o.Depth != 0 {
			w.field("width", lengthText(o.Width))
			w.field("depth", lengthText(o.Depth))
		}
	})
}

// exactText is a quantity as its own kind reads it back; one that no file can
// hold is written so that it is refused.
func exactText(q encoding.TextMarshaler) string {
	text, err := q.MarshalText()
	if err != nil {
		return `"` + err.Error() + `"`
	}
	return string(text)
}
