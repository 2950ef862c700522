package render

import (
	"cmp"
	"math"
	"slices"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// Planting is what a scene shows: one option planted on the site.
type Planting struct {
	Stand           *training.Stand
	RowAzimuth_deg  float64 // direction of the row line [deg from true north]
	Floor           scenario.Floor
	BerryDiameter_m float64 // 0 takes a common size
}

// Scene is a planting made ready for drawing, with the light and the temperatures of one instant. It
// is not safe for use by several goroutines at once.
type Scene struct {
	planting Planting
	atlas    *Atlas
	tone     *toneTable
	open     *openness
	slices   int

	leaves     *leafSet
	leafStarts []int // by slice
	bunches    *bunchSet
	bunchOf    [][]int32 // bunches by slice
	wood       []woodPiece
	woodOf     [][]int32 // pieces by slice

	instant Instant
	light   daylight
	sunMap  *sunMap
	ground  *groundImage
	version int // counts the changes of the ground image
	palette Palette
}

// Owners on the map of the sun that are not leaves.
const (
	bunchOwner int32 = -2
	woodOwner  int32 = -3
)

// NewScene prepares a planting at an instant.
func NewScene(p Planting, atlas *Atlas, now Instant) *Scene {
	s := &Scene{planting: p, atlas: atlas, tone: newToneTable(), palette: TemperaturePalette()}
	s.slices = max(int(math.Round(p.Stand.Length/sliceLength_m)), 1)
	s.open = newOpenness(p.Stand)
	s.leaves, s.leafStarts = newLeafSet(p.Stand, atlas, s.open, s.slices)
	s.bunches = newBunchSet(p.Stand, s.open, p.BerryDiameter_m, s.slices)
	s.wood = newWood(p.Stand, s.open, s.slices)
	s.bunchOf, s.woodOf = make([][]int32, s.slices), make([][]int32, s.slices)
	for i := range s.bunches.bunch {
		at := s.bunches.bunch[i].slice
		s.bunchOf[at] = append(s.bunchOf[at], int32(i))
	}
	for _, members := range s.bunchOf {
		// Far slices show the first few of their bunches: a fair sample.
		slices.SortFunc(members, func(a, b int32) int { return cmp.Compare(hash(uint64(a), 12), hash(uint64(b), 12)) })
	}
	for i := range s.wood {
		at := s.wood[i].slice
		s.woodOf[at] = append(s.woodOf[at], int32(i))
	}
	s.sunMap = newSunMap()
	s.ground = newGroundImage(s.open, atlas.noise)
	s.SetInstant(now)
	return s
}

// Planting is what the scene was made from.
func (s *Scene) Planting() Planting { return s.planting }

// SetInstant moves the sun: shadows on the ground and the light on every leaf are made anew.
func (s *Scene) SetInstant(now Instant) {
	s.instant = now
	s.light = newDaylight(now, s.planting.RowAzimuth_deg)
	s.sunMap.aim(&s.light, s.planting.Stand.RowSpacing, s.planting.Stand.Length)
	if s.sunMap.lit {
		s.leaves.cast(s.sunMap, s.atlas)
		s.bunches.cast(s.sunMap, s.light.sun, bunchOwner)
		castWood(s.wood, s.sunMap, s.light.sun, woodOwner)
	}
	s.leaves.light(s.sunMap, &s.light, s.tone)
	lightWood(s.wood, s.sunMap, &s.light, woodOwner)
	s.ground.shade(s.sunMap)
	s.version++
}

// SetFaces gives each bunch face its temperature [°C], NaN or missing where unknown, and whether the
// direct sun is on it. Faces come in the order of training.Stand.Faces.
func (s *Scene) SetFaces(surface_C []float32, lit []uint8, scale Scale) {
	for i := range s.bunches.colour {
		s.bunches.colour[i], s.bunches.lit[i] = unknownFruit, false
		if i < len(surface_C) && surface_C[i] == surface_C[i] {
			s.bunches.colour[i] = s.palette.at(scale.Share(float64(surface_C[i])))
		}
		if i < len(lit) {
			s.bunches.lit[i] = lit[i] != 0
		}
	}
}

// Faces is the number of bunch faces of one period.
func (s *Scene) Faces() int { return len(s.bunches.colour) }
