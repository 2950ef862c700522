// Package spread draws the inputs that nobody knows well and sums up what their draws make of a result:
// bands, the input that matters most, and how often one option is worse than another. It computes no physics.
package spread

import (
	"math"

	"rowlight/sim/result"
)

// Which input a value belongs to.
const (
	Wind       = iota // factor on the wind speed
	Skin              // added to the share of sunlight that the skin absorbs
	LeafArea          // factor on the leaf area, and so on the optical depth of leaves
	Clumping          // factor on Ω
	Convection        // factor on what a bunch leaves of the convection of its berries
	T50               // added to the limit of necrosis [K]
	Turbidity         // factor on the aerosol optical depths of a design day
	Stomata           // factor on the conductance of the stomata
	Field             // which light field is frozen on the fruit [0–1)
	Count
)

// Shape is how the draws of an input lie in its range.
type Shape int

// The shapes.
const (
	Even   Shape = iota // every value as likely
	Ratio               // every ratio as likely: even in the logarithm
	Peaked              // a triangle with its top at the usual value
)

// Input is an uncertain input: Low ≤ Usual ≤ High, in what its constant says. The central numbers have
// Usual.
type Input struct {
	result.Input
	Shape Shape
}

// Inputs are the uncertain inputs, in the order of their constants. Where each range is from, and that it is an assumption,
// stands in the catalogues of sim/words under its key.
func Inputs() []Input {
	return []Input{
		Wind:       {of("wind", 0.6, 1, 1.6, "1"), Ratio},
		Skin:       {of("skin", -0.05, 0, 0.05, "1"), Even},
		LeafArea:   {of("leafArea", 0.85, 1, 1.15, "1"), Even},
		Clumping:   {of("clumping", 0.9, 1, 1.1, "1"), Even},
		Convection: {of("convection", 0.8, 1, 1.4, "1"), Peaked},
		T50:        {of("t50", -3, 0, 2, "K"), Peaked},
		Turbidity:  {of("turbidity", 0.5, 1, 2, "1"), Ratio},
		Stomata:    {of("stomata", 0.6, 1, 1.6, "1"), Ratio},
		Field:      {of("field", 0, 0, 1, "1"), Even},
	}
}

// of gives an input its key, by which sim/words knows its name and where its range is from.
func of(key string, low, usual, high float64, unit string) result.Input {
	return result.Input{Key: key, Low: low, Usual: usual, High: high, Unit: unit}
}

// Draw is one value of every input.
type Draw [Count]float64

// Usual is the draw that changes nothing.
func Usual(inputs []Input) (d Draw) {
	for i := range inputs {
		d[i] = inputs[i].Usual
	}
	return d
}

// at is the value below which a share u of the draws lies.
func (in *Input) at(u float64) float64 {
	width := in.High - in.Low
	switch {
	case !(width > 0):
		return in.Usual
	case in.Shape == Ratio:
		return in.Low * math.Pow(in.High/in.Low, u)
	case in.Shape == Peaked:
		// The triangular distribution: its quantile has a branch on either side of the top.
		if rising := in.Usual - in.Low; u*width < rising {
			return in.Low + math.Sqrt(u*width*rising)
		}
		return in.High - math.Sqrt((1-u)*width*(in.High-in.Usual))
	default:
		return in.Low + width*u
	}
}
