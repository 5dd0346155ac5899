package crew

import (
	"slices"

	"tentwright/quote/crew/schedule"
)

// carried is the plan of a part on another axis, every work at its time on the
// clock; nil where one would begin or end later there.
func (p *placed) carried(ax *axis) *placed {
	if p.plan == nil {
		return nil
	}
	plan := &schedule.Plan{Start: make([]int, len(p.plan.Start)), Mode: slices.Clone(p.plan.Mode)}
	for i, start := range p.plan.Start {
		minutes := p.a.minutes(i)
		old := p.ax.spells(start, minutes)
		at := ax.minute(old[0].Day, old[0].From)
		now := ax.spells(at, minutes)
		end, was := now[len(now)-1], old[len(old)-1]
		if now[0].Day != old[0].Day || now[0].From != old[0].From || end.Day > was.Day || end.Day == was.Day && end.To > was.To {
			return nil
		}
		plan.Start[i] = at
		plan.Finish = max(plan.Finish, at+minutes)
	}
	out := *p
	out.plan, out.ax = plan, ax
	return &out
}
