package spread

import (
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/samplemv"

	"rowlight/sim/internal/draw"
)

// Draws are n draws of the inputs, evenly spread over all their ranges together: a Halton sequence scrambled
// by Owen's method (Owen 2017, arXiv:1706.02808). The same seed gives the same draws.
func Draws(inputs []Input, seed, n int) []Draw {
	if n <= 0 {
		return nil
	}
	points := mat.NewDense(n, len(inputs), nil)
	samplemv.Halton{
		Kind: samplemv.Owen,
		Q:    distmv.NewUnitUniform(len(inputs), nil),
		Src:  &digits{source: draw.New(seed)},
	}.Sample(points)
	draws := make([]Draw, n)
	for k := range draws {
		for i := range inputs {
			draws[k][i] = inputs[i].at(points.At(k, i))
		}
	}
	return draws
}

// digits scramble the sequence: frozen bits, one after the other.
type digits struct {
	source draw.Source
	drawn  int
}

// Uint64 is the next bits.
func (d *digits) Uint64() uint64 {
	d.drawn++
	return d.source.Of(d.drawn).Bits(scramble)
}

// scramble is what the bits decide.
const scramble draw.Purpose = 0
