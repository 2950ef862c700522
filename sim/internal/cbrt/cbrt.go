// Package cbrt is the cube root for inner loops.
//
// In a browser math.Cbrt, with its five divisions after one another and one of a whole number, is a tenth of what a berry
// costs there; this is a table and a polynomial in half the time.
package cbrt

import "math"

// parts is the number of steps between two powers of two.
const parts = 64

// What is known at the middle of each step.
var inverses, roots = newTables()

// newTables finds one over the number in the middle of each step, and the cube roots of it, of twice and of four times it.
// The last fourth of the roots is not used; it spares the check of an index.
func newTables() (inverses [parts]float64, roots [4 * parts]float64) {
	for j := range inverses {
		middle := 1 + (float64(j)+0.5)/parts
		inverses[j] = 1 / middle
		for power := range 3 {
			roots[power*parts+j] = math.Cbrt(math.Ldexp(middle, power))
		}
	}
	return inverses, roots
}

// The layout of a float64 (IEEE 754).
const (
	fractionBits = 52
	bias         = 1023
	fraction     = 1<<fractionBits - 1
	stepBits     = fractionBits - 6 // below those of a step
)

// Of is the cube root of x, within two units of the last digit. Where x is not positive, or smaller or larger than
// normal numbers are, it is math.Cbrt.
func Of(x float64) float64 {
	if !(x >= 0x1p-1022 && x <= math.MaxFloat64) {
		return math.Cbrt(x)
	}
	bits := math.Float64bits(x)
	step := uint32(bits>>stepBits) % parts
	exponent := uint32(bits >> fractionBits)
	third := exponent / 3 // of the bias too, which is a multiple of 3
	// x is (1+d) times the middle of its step; the series of (1+d)^(1/3) ends where d⁷ is below a unit.
	d := math.Float64frombits(bits&fraction|bias<<fractionBits)*inverses[step] - 1
	p := d * (1.0/3 - d*(1.0/9-d*(5.0/81-d*(10.0/243-d*(22.0/729-d*(154.0/6561))))))
	root := roots[((exponent-3*third)*parts+step)%uint32(len(roots))]
	return (root + root*p) * math.Float64frombits(uint64(third+bias-bias/3)<<fractionBits)
}
