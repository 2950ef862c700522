package light

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/canopy/yardstick"
	"rowlight/sim/internal/draw"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// Settings are the inputs of the light model beside the stand.
type Settings struct {
	Seed     int
	Slope    canopy.Slope
	Clumping float64 // factor on Ω, which the stand's own leaves set
}

// Model is how the faces of a stand see sun, sky and floor, whatever the site, date, hour and weather.
type Model struct {
	Faces  []training.Face
	Strips int // floor strips across one row spacing, from the left edge of the period

	factor   float64 // on Ω
	clumping *yardstick.Clumping
	domes    *canopy.Domes // of the faces, upward
	down     *canopy.Domes // of the faces, to the floor
	shift    *canopy.Domes // upward, by leaves that have come and gone since; nil but in sketches
	slope    canopy.Slope
	width    float64        // of the period across the row [m]
	angles   [waves]float64 // of the field
	bunches  []int          // of each face, what names its bunch in frozen draws
	up       mgl64.Vec3     // unit normal of the ground
	field    *Field
	edge     []float64 // how far around its bunch each face still sees the sun: least d·n
	sky      []Broad   // view of a uniform sky of unit horizontal irradiance, per face
	own      []Broad   // view of the face's own bunch
	ground   []Broad   // view of each floor strip of unit radiosity [face*Strips + strip]
	top      float64   // of the canopy [m]
	netted   *netted   // nil without nets
}

const (
	strips   = 16   // across one row spacing, about 17 cm each
	faceStep = 2.5  // lattice of the faces [deg]; the sun moves as far in 10 minutes
	downStep = 10.0 // lattice from the faces to the floor [deg]
)

// soft is half the range of d·n over which the berries of a face pass into the shade of their own
// bunch: the surface of a bunch is as rough as its berries [assumption; at a bunch of 4 cm radius and
// berries of 7 mm the outermost berry sees 20 to 30° past the plane of the face].
const soft = 0.2

// New prepares the light of a stand. Pace is called between slices of work; its error abandons it.
func New(stand *training.Stand, settings Settings, pace func() error) (*Model, error) {
	m := &Model{
		Faces: stand.Faces(), Strips: strips, factor: settings.Clumping,
		up: mgl64.Vec3{-settings.Slope.Across, -settings.Slope.Along, 1}.Normalize(), slope: settings.Slope,
		top: stand.Top,
	}
	grid := canopy.FromStand(stand, settings.Slope)
	m.width = grid.Width()
	points := yardstick.Places(stand)
	var err error
	if m.clumping, err = yardstick.Fit(stand, grid, settings.Slope, pace); err != nil {
		return nil, err
	}
	if m.angles, err = spans(stand, grid, points, pace); err != nil {
		return nil, err
	}
	m.freeze(stand, settings.Seed)
	if m.domes, err = canopy.NewDomes(grid, canopy.Half(faceStep), points, pace); err != nil {
		return nil, err
	}
	if m.down, err = canopy.NewDomes(grid, canopy.HalfDown(downStep), points, pace); err != nil {
		return nil, err
	}
	if err = m.viewSky(pace); err != nil {
		return nil, err
	}
	m.viewOwn()
	m.viewGround()
	return m, pace()
}

// freeze draws what is frozen on each face: its light field and the edge of its own shade. Both faces
// of a bunch share the source of the bunch, counted from outward, so that a mirrored stand gives mirrored light.
func (m *Model) freeze(stand *training.Stand, seed int) {
	const edgeOf draw.Purpose = 17
	m.bunches, m.edge = make([]int, len(m.Faces)), make([]float64, len(m.Faces))
	for i, face := range m.Faces {
		m.bunches[i] = int(stand.Bunches[face.Bunch].Seed >> 1)
		m.edge[i] = soft * (2*m.source(i, seed).Uniform(edgeOf) - 1)
	}
	m.field = m.fieldOf(seed)
}

// source is that of what a seed freezes on a face.
func (m *Model) source(face, seed int) draw.Source {
	return draw.New(seed).Of(m.bunches[face]).Of(face % 2)
}

// fieldOf is the light field of the faces by a seed.
func (m *Model) fieldOf(seed int) *Field {
	sources := make([]draw.Source, len(m.Faces))
	for i := range sources {
		sources[i] = m.source(i, seed)
	}
	return NewField(draw.New(seed), sources, m.angles)
}

// omega is Ω for the faces of a side in a direction of their own frame.
func (m *Model) omega(side int, local mgl64.Vec3) float64 {
	return m.factor * m.clumping.Toward(scenario.Side(side), local)
}

// Shown is the share of a face's berries that their own bunch does not shade from a direction with
// the given cosine to the outward normal.
func Shown(cosine float64) float64 {
	return math.Min(math.Max((cosine+soft)/(2*soft), 0), 1)
}
