package heat

import "github.com/go-gl/mathgl/mgl64"

// Broad is a field of flux that varies gently over direction: a surface element whose outward unit
// normal is n receives Mean + Vector·n [W/m²]. These are the terms n = 0 and n = 1 of a Legendre
// series. They hold uniform hemispheres exactly and stand for anything broader than the sun's beam. A field may also
// be a view: the share of what an element sees that is sky, floor or leaves [1].
type Broad struct {
	Mean   float64    // over all directions of n
	Vector mgl64.Vec3 // largest minus mean, pointing to where the flux comes from; frame of the caller
}

// Uniform is the same flux on every element.
func Uniform(flux float64) Broad { return Broad{Mean: flux} }

// Hemisphere is a uniform hemisphere about the unit vector axis that gives a plane facing it the
// flux: an element whose normal makes the angle θ with the axis receives flux·(1+cosθ)/2, exactly.
func Hemisphere(flux float64, axis mgl64.Vec3) Broad {
	return Broad{Mean: flux / 2, Vector: axis.Mul(flux / 2)}
}

// On is the flux on an element whose outward unit normal is n.
func (b Broad) On(n mgl64.Vec3) float64 { return b.Mean + b.Vector.Dot(n) }

// Add is both fields together.
func (b Broad) Add(other Broad) Broad {
	return Broad{Mean: b.Mean + other.Mean, Vector: b.Vector.Add(other.Vector)}
}

// Scale is the field a factor stronger.
func (b Broad) Scale(factor float64) Broad {
	return Broad{Mean: b.Mean * factor, Vector: b.Vector.Mul(factor)}
}
