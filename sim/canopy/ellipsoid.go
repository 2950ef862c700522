package canopy

import "math"

// EllipsoidalG is the projection of leaves whose normals are distributed like the surface of an
// ellipsoid (Campbell 1986, Agric. For. Meteorol. 36:317, exact normalisation), at a zenith angle
// [rad]. Chi is the ratio of the horizontal to the vertical half axis: 0 is vertical leaves, 1 is
// leaves that face everywhere alike, large is flat leaves.
func EllipsoidalG(zenith, chi float64) float64 {
	sin, cos := math.Sincos(zenith)
	return math.Sqrt(chi*chi*cos*cos+sin*sin) / ellipsoidNorm(chi)
}

// ellipsoidNorm is Λ of Campbell 1986.
func ellipsoidNorm(chi float64) float64 {
	switch {
	case math.Abs(chi-1) < 1e-9:
		return 2
	case chi < 1e-9:
		return math.Pi / 2
	case chi < 1:
		e := math.Sqrt(1 - chi*chi)
		return chi + math.Asin(e)/e
	default:
		e := math.Sqrt(1 - 1/(chi*chi))
		return chi + math.Log((1+e)/(1-e))/(2*e*chi)
	}
}
