package render

// lighting is the light of one instant on the plants of a scene whose rows run one way: on every leaf, on
// the wood and on the ground.
type lighting struct {
	instant    Instant
	coarse     bool // made from a map of the sun with larger texels
	light      daylight
	leafColour []leafColour
	average    rgb // display colour of the canopy seen from far away
	woodLit    [][2]float32
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

// relight makes the light of an instant for rows of a direction and then shows it; until then, and if an
// error of pace abandons it, the light before is shown. Coarse light takes about half the work: the edges
// of its shadows are less sharp.
func (s *Scene) relight(now Instant, rowAzimuth_deg float64, coarse bool, pace func() error) error {
	if s.spare == nil {
		s.spare = newLighting(s.plants, s.atlas)
	}
	next := s.spare
	next.instant, next.coarse, next.light = now, coarse, newDaylight(now, rowAzimuth_deg)
	m, stand := s.sunMap, s.stand
	m.aim(&next.light, stand.RowSpacing, stand.Length, coarse)
	if err := s.cast(next, pace); err != nil {
		return err
	}
	if err := next.lightLeaves(s.leaves, m, s.tone, pace); err != nil {
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
	s.planting.RowAzimuth_deg = rowAzimuth_deg
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
	castWood(s.wood, s.sunMap, next.light.sun, woodOwner)
	return pace()
}
