package job

import "tentwright/catalog"

// wind checks the terrain and the ground at each side.
func (k *checker) wind() {
	var terrains []string
	if k.c.Anchors != nil {
		terrains = ids(k.c.Anchors.Terrains, func(t *catalog.Terrain) string { return t.ID })
	}
	k.want("terrain", k.j.Wind.Terrain, k.j.Wind.Where.Of("terrain"), terrains)
	surface := k.c.SiteFactor(catalog.Surface)
	if surface == nil {
		return
	}
	grounds := ids(surface.Options, func(o *catalog.SiteOption) string { return o.ID })
	for i := range k.j.Tents {
		for n := range k.j.Tents[i].Sides {
			s := &k.j.Tents[i].Sides[n]
			k.want("surface", s.Ground, s.Where.Of("ground"), grounds)
		}
	}
}
