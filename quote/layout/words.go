package layout

import (
	"fmt"
	"strings"
)

// Title names the drawing.
func (p *Plan) Title() string { return "Site plan, " + p.Reference + ": " + p.Event }

// Words tell what the drawing shows, for those who cannot see it.
func (p *Plan) Words() string {
	ground := "the ground that the tents take"
	if p.Given {
		ground = fmt.Sprintf("a plot of %s by %s", p.Text(p.High.X-p.Low.X), p.Text(p.High.Y-p.Low.Y))
	}
	const most = 12
	var named []string
	for i := range p.Tents {
		if i == most {
			named = append(named, fmt.Sprintf("and %d more", len(p.Tents)-most))
			break
		}
		named = append(named, p.Tents[i].Label()+" "+p.SizeOf(&p.Tents[i]))
	}
	words := "Site plan to scale, " + ground + ": " + strings.Join(named, ", ") + "."
	for i := range min(len(p.Faults), most) {
		words += " " + p.Faults[i].Words() + " by " + p.AtLeast(p.Faults[i].Missing) + "."
	}
	return words
}

// SizeOf is width and length of a tent, as people write them: "40 x 80 ft".
func (p *Plan) SizeOf(t *Tent) string {
	wide, long := p.Text(t.Width), p.Text(t.Length)
	unit := " " + p.Units.LengthUnit()
	if short, ok := strings.CutSuffix(wide, unit); ok && strings.HasSuffix(long, unit) {
		wide = short
	}
	return wide + " x " + long
}
