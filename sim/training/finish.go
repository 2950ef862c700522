package training

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// finish rounds every length to 0.1 mm and every direction to 10⁻⁶, so that native and wasm give
// the same Stand, and notes the top of the canopy.
func (s *Stand) finish() {
	for _, limbs := range [][]Limb{s.Trunks, s.Arms, s.Shoots} {
		for _, limb := range limbs {
			for i := range limb.Points {
				limb.Points[i] = rounded(limb.Points[i], 1e4)
			}
		}
	}
	for i := range s.Leaves {
		leaf := &s.Leaves[i]
		leaf.Centre = rounded(leaf.Centre, 1e4)
		leaf.Normal = rounded(leaf.Normal.Normalize(), 1e6)
		leaf.Tip = rounded(leaf.Tip.Normalize(), 1e6)
		s.Top = max(s.Top, leaf.Centre.Z()+bladeReach(leaf))
	}
	s.Top = round(s.Top, 1e4)
	for i := range s.Bunches {
		b := &s.Bunches[i]
		b.Centre = rounded(b.Centre, 1e4)
		b.Radius, b.Length = round(b.Radius, 1e5), round(b.Length, 1e5)
	}
}

// bladeReach is how far a blade, as a disc of its area, rises above its centre [m].
func bladeReach(leaf *Leaf) float64 {
	sin := math.Hypot(leaf.Normal.X(), leaf.Normal.Y())
	return sin * math.Sqrt(leaf.Area/math.Pi)
}

func rounded(v mgl64.Vec3, perUnit float64) mgl64.Vec3 {
	return mgl64.Vec3{round(v[0], perUnit), round(v[1], perUnit), round(v[2], perUnit)}
}

func mix(a, b mgl64.Vec3, u float64) mgl64.Vec3 { return a.Mul(1 - u).Add(b.Mul(u)) }

func radians(deg float64) float64 { return deg * math.Pi / 180 }

func round(x, perUnit float64) float64 { return math.RoundToEven(x*perUnit) / perUnit }
