package light

import (
	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
)

// Sight is how a face meets the sun: what decides whether it is lit.
type Sight struct {
	At       mgl64.Vec3 // place that stands for the face, in the row frame [m]
	Ground   float64    // cosine of the sun to the normal of the ground; the sun is down where it is not positive
	Outward  float64    // cosine of the sun to the outward normal of the face
	Edge     float64    // cosine up to which the bunch shades the face
	Depth    float64    // optical depth of the leaves on the way, at Ω = 1
	Clumping float64    // Ω in this direction
	Gap      float64    // probability that the way is free
	Field    float64    // frozen value of the face; lit below the gap
}

// Sight reads out how a face meets the sun, by the same dome and field as At; ok is false where the sun stands outside
// the dome, behind the bunch.
func (m *Model) Sight(face int, sky Sky) (s Sight, ok bool) {
	point := m.domes.Points[face]
	local := point.InFrame(sky.Sun)
	s = Sight{At: point.At, Ground: sky.Sun.Dot(m.up), Outward: local[0], Edge: m.edge[face], Clumping: m.omega(face%2, local)}
	sample, ok := m.domes.Lattice.Sample(local)
	if !ok {
		return s, false
	}
	field := m.field.At(local)
	s.Depth, s.Field = m.domes.Along(face, &sample), field.Of(face)
	s.Gap = canopy.Gap(s.Clumping, s.Depth)
	return s, true
}

// Edge is the least cosine of the sun to the outward normal of a face at which its own bunch leaves it in the sun.
func (m *Model) Edge(face int) float64 { return m.edge[face] }

// Place is the point that stands for a face, in the row frame [m].
func (m *Model) Place(face int) mgl64.Vec3 { return m.domes.Points[face].At }
