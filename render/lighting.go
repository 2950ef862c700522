package render

import "rowlight/sim/cover"

// lighting is the light of one instant on the plants of a scene whose rows run one way: on every leaf, on
// the wood and on the ground.
type lighting struct {
	instant    Instant
	coarse     bool // made from a map of the sun with larger texels
	light      daylight
	terrain    terrain
	nets       []cover.Panel // about each row, and over all
	leafColour []leafColour
	average    rgb // display colour of the canopy seen from far away
	woodLit    [][2]float32
	netLit     []float32 // how far the edges of each net are in the sun: [(net*slices+slice)*2+edge], where slices start
	ground     *groundImage
	field      *lightField
}

func newLighting(p *plants, atlas *Atlas) *lighting {
	return &lighting{
		leafColour: make([]leafColour, len(p.leaves.leaf)),
		woodLit:    make([][2]float32, len(p.wood)),
		ground:     newGroundImage(p.open, atlas.noise),
		field:      newLightField(),
	}
}

// relight makes the light of an instant for the same plants on a site, in rows of a direction and behind nets, and then
// shows it; until then, and if an error of pace abandons it, what was before is shown. Coarse light takes about half the
// work: the edges of its shadows are less sharp.
func (s *Scene) relight(now Instant, site Planting, coarse bool, pace func() error) error {
	if s.spare == nil {
		s.spare = newLighting(s.plants, s.atlas)
		if err := pace(); err != nil {
			return err
		}
	}
	next := s.spare
	next.instant, next.coarse, next.light, next.terrain = now, coarse, newDaylight(now, site.RowAzimuth_deg), site.terrain()
	next.nets = site.nets()
	next.light.come(next.nets)
	m, stand := s.sunMap, s.stand
	m.aim(&next.light, next.terrain, stand.RowSpacing, stand.Length, coarse)
	if err := pace(); err != nil {
		return err
	}
	if err := s.cast(next, pace); err != nil {
		return err
	}
	if err := next.lightLeaves(s.leaves, m, s.tone, site.film(), pace); err != nil {
		return err
	}
	next.lightWood(s.wood, m)
	if err := next.field.fill(m, float32(stand.RowSpacing), float32(stand.Length), float32(stand.Top), pace); err != nil {
		return err
	}
	if err := next.ground.shade(m, pace); err != nil {
		return err
	}
	s.lighting, s.spare = next, s.lighting
	s.planting = site
	s.version++
	return nil
}

// cast lays all plants on the map of the sun.
func (s *Scene) cast(next *lighting, pace func() error) error {
	if !s.sunMap.lit {
		return nil
	}
	if err := s.leaves.cast(s.sunMap, s.atlas, pace); err != nil {
		return err
	}
	s.bunches.cast(s.sunMap, next.light.sun, bunchOwner)
	if err := pace(); err != nil {
		return err
	}
	castWood(s.wood, s.sunMap, next.light.sun, woodOwner)
	if err := pace(); err != nil {
		return err
	}
	s.castNets(next)
	return pace()
}
