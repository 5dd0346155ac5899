package job

import (
	"fmt"
	"slices"

	"tentwright/catalog/diag"
)

// power checks heat and power: the tents to be heated are tents of the job.
func (k *checker) power() {
	if k.j.Heat == nil || !k.form.Sound(k.j.Where, "tents") {
		return
	}
	tents := ids(k.j.Tents, func(t *Tent) string { return t.ID })
	seen := map[string]bool{}
	for i, id := range k.j.Heat.Tents {
		pos := k.j.Heat.Where.Of(fmt.Sprintf("tents[%d]", i))
		k.repeated(seen, id, pos, "tent %q is to be heated twice; each may stand once", id)
		if id != "" && !slices.Contains(tents, id) {
			k.unknown("tent", id, "the job's tents have", pos, diag.DidYouMean(id, tents))
		}
	}
}
