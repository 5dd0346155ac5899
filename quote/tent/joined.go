package tent

// Offset is where a tent stands among those that it is joined with: the front
// left corner of its plan, in metres from that of the group's first tent.
type Offset struct {
	Group int // counted from 0 in the order of the job
	X, Y  float64
}

// Offsets places the tents of each group that shares gutters. A tent that is
// joined with none is a group of its own. Tents that are joined in a ring keep
// the place by which they were reached first.
func Offsets(tents []Tent) []Offset {
	at := make([]Offset, len(tents))
	placed := make([]bool, len(tents))
	index := map[string]int{}
	for i := range tents {
		index[tents[i].Job.ID] = i
	}
	var reach func(i int)
	reach = func(i int) {
		placed[i] = true
		for k := range tents {
			if placed[k] {
				continue
			}
			if other, ok := index[tents[k].Job.Joins]; ok && other == i {
				at[k] = beside(&tents[k], &tents[i], at[i])
				reach(k)
			} else if own, ok := index[tents[i].Job.Joins]; ok && own == k {
				back := beside(&tents[i], &tents[k], Offset{})
				at[k] = Offset{at[i].Group, at[i].X - back.X, at[i].Y - back.Y}
				reach(k)
			}
		}
	}
	groups := 0
	for i := range tents {
		if !placed[i] {
			at[i].Group = groups
			groups++
			reach(i)
		}
	}
	return at
}

// beside is the place of a tent that joins another by its own side.
func beside(t, other *Tent, at Offset) Offset {
	switch t.Job.JoinAt {
	case "front":
		at.Y += other.Graph.Width.Metres()
	case "back":
		at.Y -= t.Graph.Width.Metres()
	case "left":
		at.X += other.Graph.Length.Metres()
	case "right":
		at.X -= t.Graph.Length.Metres()
	}
	return at
}
