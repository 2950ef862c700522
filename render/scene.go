package render

import (
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// Planting is what a scene shows: one option planted on the site.
type Planting struct {
	Stand           *training.Stand
	RowAzimuth_deg  float64 // direction of the row line [deg from true north]
	Floor           scenario.Floor
	BerryDiameter_m float64        // 0 takes a common size
	Latitude_deg    float64        // of the site
	Slope_deg       float64        // of the ground
	Aspect_deg      float64        // the way downhill [deg from true north]
	Shade           scenario.Shade // nets and film
}

// PlantingOf is an option of a scenario whose stand has been grown.
func PlantingOf(stand *training.Stand, o scenario.Option, s scenario.Scenario) Planting {
	return Planting{
		Stand: stand, RowAzimuth_deg: o.Rows.Azimuth_deg, Floor: s.Site.Floor, BerryDiameter_m: s.Fruit.Diameter_mm / 1000,
		Latitude_deg: s.Site.Latitude_deg, Slope_deg: s.Site.Slope_deg, Aspect_deg: s.Site.Aspect_deg, Shade: o.Shade,
	}
}

// with is the planting with its stand.
func (p Planting) with(stand *training.Stand) Planting {
	p.Stand = stand
	return p
}

// Scene is a planting made ready for drawing, with the light and the temperatures of one instant. It
// is not safe for use by several goroutines at once.
type Scene struct {
	*plants
	*lighting // the one that is shown
	planting  Planting
	atlas     *Atlas
	tone      *toneTable
	palette   Palette
	lights    [256]rgb // colours of the scale of sunlight

	sunMap  *sunMap
	spare   *lighting // where the next light is made while this one is shown
	version int       // counts the changes of the ground image

	faceColour []rgb  // display colour of each bunch face
	faceLit    []bool // whether it is in the direct sun
}

// Owners on the map of the sun that are not leaves.
const (
	bunchOwner int32 = -2
	woodOwner  int32 = -3
	netOwner   int32 = -4
)

// NewScene prepares a planting at an instant.
func NewScene(p Planting, atlas *Atlas, now Instant) *Scene {
	// A pace without errors leaves no others.
	shown, _ := newPlants(p.Stand, p.BerryDiameter_m, atlas, unhurried)
	s := newScene(p, shown, atlas)
	s.SetInstant(now)
	return s
}

// newScene puts plants in the dark: it cannot be drawn before it is lit.
func newScene(p Planting, shown *plants, atlas *Atlas) *Scene {
	s := &Scene{plants: shown, planting: p, atlas: atlas, tone: newToneTable(), palette: TemperaturePalette(), sunMap: newSunMap()}
	s.faceColour, s.faceLit = make([]rgb, 2*len(shown.bunches.bunch)), make([]bool, 2*len(shown.bunches.bunch))
	for i := range s.faceColour {
		s.faceColour[i] = unknownFruit
	}
	for i, lights := 0, LightPalette(); i < len(s.lights); i++ {
		s.lights[i] = lights.at(float64(i) / float64(len(s.lights)-1))
	}
	return s
}

// Planting is what the scene was made from.
func (s *Scene) Planting() Planting { return s.planting }

// SetInstant moves the sun: shadows on the ground and the light on every leaf are made anew.
func (s *Scene) SetInstant(now Instant) {
	_ = s.relight(now, s.planting, false, unhurried)
}

// SetFaces gives each bunch face its temperature [°C], NaN or missing where unknown, and whether the
// direct sun is on it. Faces come in the order of training.Stand.Faces.
func (s *Scene) SetFaces(surface_C []float32, lit []uint8, scale Scale) {
	for i := range s.faceColour {
		s.faceColour[i], s.faceLit[i] = unknownFruit, false
		if i < len(surface_C) && surface_C[i] == surface_C[i] {
			s.faceColour[i] = s.palette.at(scale.Share(float64(surface_C[i])))
		}
		if i < len(lit) {
			s.faceLit[i] = lit[i] != 0
		}
	}
}

// Faces is the number of bunch faces of one period.
func (s *Scene) Faces() int { return len(s.faceColour) }
