// Package exp is the exponential function for inner loops, the same to the last digit in WebAssembly and on processors for
// which Go does not fuse a product with a sum, as amd64.
//
// In a browser math.Exp is four calls and a division, a third of what a berry costs there; this is a table and a
// polynomial.
package exp

import "math"

// parts is the number of steps between two powers of two.
const parts = 32

// powers are 2^(j/parts).
var powers = newPowers()

func newPowers() (p [parts]float64) {
	for j := range p {
		p[j] = math.Exp2(float64(j) / parts)
	}
	return p
}

// ln 2/parts in two numbers, the first with so few digits that its multiples are exact (Cody & Waite 1980).
const (
	stepHigh = 6.93147180369123816490e-01 / parts
	stepLow  = 1.90821492927058770002e-10 / parts
)

// Of is e^x, within three units of the last digit. Beyond ±700 it is math.Exp.
func Of(x float64) float64 {
	if !(x > -700 && x < 700) {
		return math.Exp(x)
	}
	return joined(parted(x))
}

// OfEach puts in the place of each number what Of makes of it, without a call for each.
func OfEach(numbers []float64) {
	for i, x := range numbers {
		if !(x > -700 && x < 700) {
			numbers[i] = math.Exp(x)
			continue
		}
		numbers[i] = joined(parted(x))
	}
}

// parted is x as steps of ln 2/parts, and the rest.
func parted(x float64) (steps int32, rest float64) {
	// Added to this, a number is rounded to a whole one, which the lowest bits hold.
	const whole = 3 << 51
	shifted := x*(parts/math.Ln2) + whole
	n := shifted - whole
	return int32(uint32(math.Float64bits(shifted))), x - n*stepHigh - n*stepLow
}

// joined is e to so many steps and the rest.
func joined(steps int32, r float64) float64 {
	rest := r * (1 + r*(1.0/2+r*(1.0/6+r*(1.0/24+r*(1.0/120+r*(1.0/720))))))
	power := powers[steps&(parts-1)]
	return (power + power*rest) * math.Float64frombits(uint64(int64(steps>>5)+1023)<<52)
}
