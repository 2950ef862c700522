package heat

import "math"

// A sphere with conductivity k and radius R that absorbs the beam q0·max(cosθ, 0) and loses
// h·(T − Tair) has the surface rise Σ q0 c_n P_n(cosθ)/(h + n k/R): each surface harmonic of the
// Laplace equation conducts n k/R of its rise inward. The c_n of max(cosθ, 0) are 1/4, 1/2, 5/16,
// 0, −3/32, 0, 13/256 …; all odd ones but c_1 are zero, so the rise is an even function plus
// (q0/2)·cosθ/(h + k/R). Carslaw & Jaeger 1959, Conduction of Heat in Solids, ch. 9.

// poleTerms is the number of even terms summed at a pole; the acceleration gains a factor 5.8 a term.
const poleTerms = 10

// seriesTerms is the highest order summed away from a pole; the rest is below 1e-4 of q0/h.
const seriesTerms = 60

// poleSeries holds the weights of the even part at a pole.
type poleSeries struct{ value, slope [poleTerms]float64 }

var pole = newPoleSeries()

// newPoleSeries folds the coefficients |c_2m| and the weights that sum an alternating series from
// its first terms (Cohen, Rodriguez Villegas & Zagier 2000, Experimental Mathematics 9:3,
// algorithm 1) into one factor a term. The slope is by cosθ, with P_n'(1) = n(n+1)/2.
func newPoleSeries() (s poleSeries) {
	d := math.Pow(3+math.Sqrt(8), poleTerms)
	d = (d + 1/d) / 2
	b, weight := -1.0, -d
	for k := range poleTerms {
		weight = b - weight
		m := float64(k + 1)
		s.value[k] = weight / d * math.Abs(beamCoefficient(k+1))
		s.slope[k] = s.value[k] * m * (2*m + 1)
		b *= (float64(k) + poleTerms) * (float64(k) - poleTerms) / ((float64(k) + 0.5) * (float64(k) + 1))
	}
	return s
}

// beamCoefficient is c_2m of max(cosθ, 0), m ≥ 0: 1/4, 5/16, −3/32 and on by the ratio of
// neighbours that follows from ∫ μ P_2m dμ over 0…1.
func beamCoefficient(m int) float64 {
	if m == 0 {
		return 0.25
	}
	c := 5.0 / 16
	for j := 1; j < m; j++ {
		i := float64(j)
		c *= -(4*i + 5) / (4*i + 1) * (2*i - 1) / (2*i + 4)
	}
	return c
}

// evenPole is the even part of h·rise/q0 at a pole, and its slope by cosθ there.
// inner = (k/R)/h; 0 means no conduction (1/2 and slope 1/2), infinity a uniform sphere (1/4 and 0).
func evenPole(inner float64) (value, slope float64) {
	value = 0.25
	step := 2 * inner
	divisor := 1.0
	for k := range poleTerms {
		divisor += step
		inverse := 1 / divisor
		value += pole.value[k] * inverse
		slope += pole.slope[k] * inverse
	}
	return value, slope
}

// BeamPoles is the steady rise over air [K] of a sphere in a beam that it absorbs with q0 [W/m²] at
// the sunlit pole: at that pole, on average, and at the shaded pole. h is the loss to the air and
// surroundings [W/m²/K], k the conductivity [W/m/K]. Accurate to 1e-6 of q0/h.
func BeamPoles(q0_Wm2, h, k, radius_m float64) (lit, mean, shaded float64) {
	inward := k / radius_m
	even, _ := evenPole(inward / h)
	even *= q0_Wm2 / h
	odd := q0_Wm2 / 2 / (h + inward)
	return even + odd, q0_Wm2 / 4 / h, even - odd
}

// BeamRise is the same rise at any angle from the beam, by its cosine. It sums the series
// itself and is slower than BeamPoles; accurate to 1e-4 of q0/h with berry conductivities.
func BeamRise(cosine, q0_Wm2, h, k, radius_m float64) float64 {
	inward := k / radius_m
	rise := 0.25/h + 0.5*cosine/(h+inward)
	before, here := 1.0, cosine
	coefficient := 5.0 / 16
	for n := 2; n <= seriesTerms; n++ {
		order := float64(n)
		before, here = here, ((2*order-1)*cosine*here-(order-1)*before)/order
		if n%2 == 0 {
			rise += coefficient * here / (h + order*inward)
			coefficient *= -(2*order + 5) / (2*order + 1) * (order - 1) / (order + 4)
		}
	}
	return q0_Wm2 * rise
}
