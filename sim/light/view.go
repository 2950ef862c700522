package light

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
)

// paceEvery is how many directions of views are looked at between two calls of pace: some milliseconds of work.
const paceEvery = 256

// viewSky integrates the gaps of every face over the sky.
func (m *Model) viewSky(pace func() error) error {
	m.sky = make([]Broad, len(m.Faces))
	lattice, gaps := m.domes.Lattice, make([]float64, len(m.Faces))
	for i := range lattice.Size() {
		if i%paceEvery == 0 {
			if err := pace(); err != nil {
				return err
			}
		}
		local, weight := lattice.Direction(i), lattice.SolidAngle(i)*Shown(lattice.Direction(i)[0])
		if weight == 0 {
			continue
		}
		from, omega := m.fromSides(local, weight), [2]float64{m.omega(0, local), m.omega(1, local)}
		canopy.Gaps(omega, m.domes.Depth(i), gaps)
		for f, gap := range gaps {
			m.sky[f].AddScaled(&from[f%2], gap)
		}
	}
	return pace()
}

// fromSides is radiance of unit hemispherical flux from a small solid angle [sr] around a direction in the frame of the
// faces, as faces of either side have it.
func (m *Model) fromSides(local mgl64.Vec3, weight float64) (from [2]Broad) {
	for side := range from {
		from[side] = broadOf(m.domes.Points[side].InFrame(local), weight)
	}
	return from
}

// viewOwn is what the own bunch of every face hides from it.
func (m *Model) viewOwn() {
	m.own = make([]Broad, len(m.Faces))
	hidden := ownBunch()
	for f := range m.own {
		m.own[f] = Broad{hidden.Mean, m.domes.Points[f].InFrame(hidden.Vector)}
	}
}

// ownBunch is the view of the face's own bunch in the frame of a face that looks to positive x.
func ownBunch() (own Broad) {
	for _, lattice := range []canopy.Lattice{canopy.Full(3), canopy.FullDown(3)} {
		for i := range lattice.Size() {
			d := lattice.Direction(i)
			own.add(d, lattice.SolidAngle(i)*(1-Shown(d[0])))
		}
	}
	return own
}

// viewGround follows each face's downward directions to the strip that they hit.
func (m *Model) viewGround() {
	down, gaps := m.down, make([]float64, len(m.Faces))
	m.ground = make([]Broad, len(m.Faces)*m.Strips)
	for i := range down.Lattice.Size() {
		local, weight := down.Lattice.Direction(i), down.Lattice.SolidAngle(i)*Shown(down.Lattice.Direction(i)[0])
		if weight == 0 {
			continue
		}
		from := m.fromSides(local, weight)
		canopy.Gaps([2]float64{m.factor, m.factor}, down.Depth(i), gaps)
		for f, gap := range gaps {
			strip := m.hit(down.Points[f].At, down.Points[f].InFrame(local), m.slope, m.width)
			m.ground[f*m.Strips+strip].AddScaled(&from[f%2], gap)
		}
	}
}

// hit is the strip in which a downward direction from a point meets the sloping ground.
func (m *Model) hit(from, d mgl64.Vec3, slope canopy.Slope, width float64) int {
	height := from[2] - from[0]*slope.Across
	fall := -(d[2] - d[0]*slope.Across - d[1]*slope.Along)
	if fall < 1e-3 {
		fall = 1e-3
	}
	x := (from[0]+d[0]*height/fall)/width + 0.5
	return min(int((x-math.Floor(x))*float64(m.Strips)), m.Strips-1)
}
