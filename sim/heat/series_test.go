package heat

import (
	"testing"
)

// The coefficients are those of max(cosθ, 0): the reference prints the first, quadrature gives all.
func TestBeamCoefficients(t *testing.T) {
	for m, want := range map[int]float64{0: 1.0 / 4, 1: 5.0 / 16, 2: -3.0 / 32, 3: 13.0 / 256} {
		near(t, "printed coefficient", beamCoefficient(m), want, 1e-16)
	}
	for m := range 8 {
		n := 2 * m
		integral, steps := 0.0, 20000
		for i := range steps {
			mu := (float64(i) + 0.5) / float64(steps)
			integral += mu * legendre(n, mu) / float64(steps)
		}
		near(t, "coefficient by quadrature", beamCoefficient(m), float64(2*n+1)/2*integral, 1e-6)
	}
}

// legendre is P_n by its recurrence.
func legendre(n int, mu float64) float64 {
	before, here := 1.0, mu
	if n == 0 {
		return 1
	}
	for j := 2; j <= n; j++ {
		before, here = here, (float64(2*j-1)*mu*here-float64(j-1)*before)/float64(j)
	}
	return here
}

// Without conduction the surface is local, max(cosθ, 0)·q0/h; with endless conductivity uniform, q0/4h.
func TestEvenPoleLimits(t *testing.T) {
	value, slope := evenPole(0)
	near(t, "value without conduction", value, 0.5, 1e-8)
	near(t, "slope without conduction", slope, 0.5, 1e-6)
	value, slope = evenPole(1e12)
	near(t, "value with endless conduction", value, 0.25, 1e-11)
	near(t, "slope with endless conduction", slope, 0, 1e-11)
	for _, cosine := range []float64{-1, -0.3, 0, 0.6, 1} {
		near(t, "uniform sphere", BeamRise(cosine, 800, 25, 1e12, 0.007), 800/4.0/25, 1e-9)
	}
}

// The accelerated sums agree with 200,000 plain terms, for the conduction of any fruit.
func TestEvenPoleAgainstPlainSums(t *testing.T) {
	for _, inner := range []float64{0.1, 0.5, 1, 3, 10, 50} {
		// The mean of two neighbouring partial sums of an alternating series; twice over for the slope.
		value, slope, valueBefore, slopeBefore := 0.25, 0.0, 0.0, 0.0
		var means [2]float64
		coefficient := 5.0 / 16
		for m := 1; m <= 200000; m++ {
			i := float64(m)
			term := coefficient / (1 + 2*i*inner)
			valueBefore, slopeBefore = value, slope
			value += term
			slope += term * i * (2*i + 1)
			means[0], means[1] = means[1], (slope+slopeBefore)/2
			coefficient *= -(4*i + 5) / (4*i + 1) * (2*i - 1) / (2*i + 4)
		}
		gotValue, gotSlope := evenPole(inner)
		near(t, "value", gotValue, (value+valueBefore)/2, 1e-9)
		near(t, "slope", gotSlope, (means[0]+means[1])/2, 1e-6)
	}
}

// The two ways to sum agree at the poles, and the slope is that of the even part.
func TestBeamRiseMeetsBeamPoles(t *testing.T) {
	const q0, h, k, radius = 700, 25, 0.55, 0.008
	lit, mean, shaded := BeamPoles(q0, h, k, radius)
	near(t, "sunlit pole", BeamRise(1, q0, h, k, radius), lit, 1e-4*q0/h)
	near(t, "shaded pole", BeamRise(-1, q0, h, k, radius), shaded, 1e-4*q0/h)
	average := 0.0
	for i := range 1000 {
		average += BeamRise((float64(i)+0.5)/500-1, q0, h, k, radius) / 1000
	}
	near(t, "mean over the surface", average, mean, 1e-4)
}

// The rest that is left of the beam after its vector bends upward: no chord from the pole is above
// what Hottest_C takes for a bound.
func TestTangentAtThePoleIsALowerBound(t *testing.T) {
	for _, inner := range []float64{0.3, 1, 3, 10} {
		value, slope := evenPole(inner)
		for i := range 201 {
			cosine := float64(i)/100 - 1
			even := (BeamRise(cosine, 1, 1, inner, 1) + BeamRise(-cosine, 1, 1, inner, 1)) / 2
			if even < value-slope*(1-cosine)-1e-4 {
				t.Errorf("inner %g, cosine %g: %.6f is below the tangent", inner, cosine, even)
			}
		}
	}
}
