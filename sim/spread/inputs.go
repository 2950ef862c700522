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

// Inputs are the uncertain inputs, in the order of their constants.
func Inputs() []Input {
	return []Input{
		Wind: {of("wind", "wind speed", 0.6, 1, 1.6, "1",
			"assumption: a station 10 m above open ground some way off, and one course of the wind for every day"), Ratio},
		Skin: {of("skin", "sunlight that skins absorb", -0.05, 0, 0.05, "1",
			"half the range of solar absorptance of a colour of skin, 0.60–0.70 and 0.70–0.80, from memory"), Even},
		LeafArea: {of("leafArea", "leaf area", 0.85, 1, 1.15, "1",
			"assumption: leaf area counted or known from vines alike is good to some 15 %"), Even},
		Clumping: {of("clumping", "clumping of the leaves", 0.9, 1, 1.1, "1",
			"assumption: Ω is fitted to leaves drawn at random for every stand, which real shoots resemble only so far"), Even},
		Convection: {of("convection", "cooling by the air", 0.8, 1, 1.4, "1",
			"assumption: open-air turbulence adds 20 to 50 % to the convection of a sphere, the face of a tight bunch leaves it 50 to 80 %"), Peaked},
		T50: {of("t50", "heat that skins stand", -3, 0, 2, "K",
			"limits of necrosis within 30 minutes lie at 44 to 49 °C about 47 °C: assumption after the spread of cultivars (Müller et al., mobile infrared device)"), Peaked},
		Turbidity: {of("turbidity", "haze", 0.5, 1, 2, "1",
			"assumption: aerosol of clear days about that of the scenario; measured hours have none of it"), Ratio},
		Stomata: {of("stomata", "stomata of the leaves", 0.6, 1, 1.6, "1",
			"the classes of water status of vines by Medrano et al. 2002, from memory, are about as wide"), Ratio},
		Field: {of("field", "which bunches the sun finds", 0, 0, 1, "1",
			"which bunches the sun finds is drawn for the bunches of the sample: another draw, the same vines"), Even},
	}
}

// of names an input.
func of(key, name string, low, usual, high float64, unit, source string) result.Input {
	return result.Input{Key: key, Name: name, Low: low, Usual: usual, High: high, Unit: unit, Source: source}
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
