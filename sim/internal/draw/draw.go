// Package draw gives frozen random draws: each is a hash of what it decides, never the next number
// of a sequence. A change of one input therefore moves what it moves and does not reshuffle the
// rest of the vine.
//
// All operations are integer arithmetic and exact divisions, so that native and wasm agree to the
// last bit.
package draw

import "math"

// Source is the identity of a thing about which draws are made: a stand, a vine, a shoot, a node.
type Source uint64

// Purpose names what one draw about a thing decides.
type Purpose uint64

// weyl is 2⁶⁴ divided by the golden ratio, the odd increment of the SplitMix64 generator
// (Steele, Lea & Flood 2014, OOPSLA).
const weyl = 0x9e3779b97f4a7c15

// New is the source of a whole stand.
func New(seed int) Source { return Source(mix(uint64(int64(seed)) * weyl)) }

// Of is the source of the part number id of s.
func (s Source) Of(id int) Source {
	return Source(mix(uint64(s) + weyl*(2*uint64(int64(id))+1)))
}

// Bits are 64 equally likely bits.
func (s Source) Bits(p Purpose) uint64 {
	return mix(uint64(s) ^ mix(weyl*(2*uint64(p)+2)))
}

// Uniform is evenly spread over [0, 1).
func (s Source) Uniform(p Purpose) float64 {
	return float64(s.Bits(p)>>11) / (1 << 53)
}

// Normal has mean 0 and standard deviation 1: the scaled sum of four even draws, so that it stays
// within ±3.5 and no draw makes a freak.
func (s Source) Normal(p Purpose) float64 {
	bits := s.Bits(p)
	sum := bits&0xffff + bits>>16&0xffff + bits>>32&0xffff + bits>>48
	return (float64(sum)/65535 - 2) * math.Sqrt(3)
}

// Sign is -1 or +1, the latter with the given probability [0–1].
func (s Source) Sign(p Purpose, plus float64) float64 {
	if s.Uniform(p) < plus {
		return 1
	}
	return -1
}

// Count is a whole number of mean m ≥ 0: one of the two whole numbers around m.
func (s Source) Count(p Purpose, m float64) int {
	return int(math.Floor(m + s.Uniform(p)))
}

// mix is the finaliser of SplitMix64: every bit of x moves every bit of the result.
func mix(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
