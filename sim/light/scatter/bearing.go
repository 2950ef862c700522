package scatter

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
	"gonum.org/v1/gonum/integrate/quad"

	"rowlight/sim/canopy"
)

// bearing is a direction within the section, upward, with the slants along the row in which light takes it.
// The section follows the ground, which a slope shears.
type bearing struct {
	x, z   float64 // unit vector in the section, z > 0
	slants []slant
}

// slant is a pair of directions that share a way in the section and lean along the row to either side.
type slant struct {
	to         [2]mgl64.Vec3 // unit vectors of the row frame, upward
	solidAngle float64       // of both together [sr]
	rise       float64       // height above the ground gained per length
	stretch    float64       // length per length within the section
}

// bearings covers the half of all directions that points away from the ground with Gauss–Legendre nodes.
func bearings(slope canopy.Slope, count, slants int) []bearing {
	angles, angleWeights := make([]float64, count), make([]float64, count)
	quad.Legendre{}.FixedLocations(angles, angleWeights, 0, math.Pi)
	leans, leanWeights := make([]float64, slants), make([]float64, slants)
	quad.Legendre{}.FixedLocations(leans, leanWeights, 0, math.Pi/2)
	list := make([]bearing, count)
	for i, angle := range angles {
		sin, cos := math.Sincos(angle)
		list[i] = bearing{x: cos, z: sin}
		for k, lean := range leans {
			pair := newSlant(slope, cos, sin, lean)
			pair.solidAngle *= angleWeights[i] * leanWeights[k]
			list[i].slants = append(list[i].slants, pair)
		}
	}
	return list
}

// newSlant turns a direction (x, z) of the section by an angle along the row. In the row frame the way is
// u + t·v with u = (x, 0, z + across·x) and v = (0, 1, along) per length within the section; the shear keeps
// volumes, so its solid angle is dφ dt / |u + t·v|³. Measured from the t where the way is shortest this is
// an angle in a plane.
func newSlant(slope canopy.Slope, x, z, lean float64) slant {
	sin, cos := math.Sincos(lean)
	u, v := mgl64.Vec3{x, 0, z + slope.Across*x}, mgl64.Vec3{0, 1, slope.Along}
	nearest := u.Sub(v.Mul(u.Dot(v) / v.LenSqr()))
	least := nearest.Len()
	s := slant{rise: z * cos / least, stretch: least / cos, solidAngle: 2 * cos / (v.Len() * least * least)}
	for side, sign := range [2]float64{1, -1} {
		s.to[side] = nearest.Mul(cos / least).Add(v.Mul(sign * sin / v.Len()))
	}
	return s
}

// depths is the optical depth of every cell per length within the section. That of a pair is its mean, so
// that light goes either way along the row alike.
func (s *slant) depths(section *section) []float64 {
	depths := make([]float64, len(section.cells))
	for _, to := range s.to {
		section.toward(to, s.stretch/2, depths)
	}
	return depths
}
