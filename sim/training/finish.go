package training

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// finish rounds every length to 0.1 mm, so that native and wasm give the same Stand. Leaves are finished where they are left.
func (s *Stand) finish() {
	for _, limbs := range [][]Limb{s.Trunks, s.Arms, s.Shoots} {
		for _, limb := range limbs {
			for i := range limb.Points {
				limb.Points[i] = rounded(limb.Points[i], 1e4)
			}
		}
	}
	for i := range s.Bunches {
		b := &s.Bunches[i]
		b.Centre = rounded(b.Centre, 1e4)
		b.Radius, b.Length = round(b.Radius, 1e5), round(b.Length, 1e5)
	}
}

// finish rounds lengths to 0.1 mm and directions to 10⁻⁶.
func (l *Leaf) finish() {
	l.Centre = rounded(l.Centre, 1e4)
	l.Normal = rounded(l.Normal.Normalize(), 1e6)
	l.Tip = rounded(l.Tip.Normalize(), 1e6)
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
