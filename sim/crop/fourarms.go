package crop

import (
	"math"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// How the fruit of a node answers to the room that its shoot has: yield per shoot ∝ (shoots per metre)^−e.
//
// At Oakville four arms with about the nodes of two bore 1.06 times as much fruit per shoot (Cabernet Sauvignon, 1992:
// AJEV, attribution to Kliewer & Dokoozlian inferred) and 2 short tons per acre more over four years (American Vineyard
// Foundation), which is about 1.26 times: e = 0.08 to 0.33, with half the shoots per metre. In between is assumed.
const (
	leastRoom, usualRoom, mostRoom = 0.0, 0.2, 0.33
)

// crowded is the yield of so many times the nodes on the same canopy, as a multiple: growers who kept 60 buds on a
// vine instead of 24 had 11.0 instead of 6.6 short tons per acre (Oakville, American Vineyard Foundation): 2.5^0.56.
func crowded(times float64) float64 { return math.Pow(times, 0.56) }

// fourArms tells what four arms, two on each of two wires, would make of a vine with two arms on one. Other vines have
// no such way open, nor have those whose arms spread.
func fourArms(site scenario.Crop, o scenario.Option, now result.OptionCrop) *result.FourArms {
	if o.Training.ArmsPerVine != 2 || canopies(o) != 1 || o.Training.ArmLayout != scenario.ArmsAlong || len(o.Trellis.Wires) == 0 {
		return nil
	}
	f := &result.FourArms{Prunings: site.Prunings_kg_per_m / 2}
	f.Filled = filled(f.Prunings)
	same := func(exponent float64) float64 { return math.Pow(2, exponent) }
	f.SameNodes = result.Estimate{
		Low: now.PerHa_t.Low * same(leastRoom) * f.Filled, Value: now.PerHa_t.Value * same(usualRoom) * f.Filled, High: now.PerHa_t.High * same(mostRoom) * f.Filled,
	}
	// With as many nodes on each arm as before every shoot has the room it had. The least is that of as many nodes
	// crowded on two arms.
	f.TwiceNodes = result.Estimate{
		Low: now.PerHa_t.Low * crowded(2) * f.Filled, Value: now.PerHa_t.Value * 2 * f.Filled, High: now.PerHa_t.High * 2 * f.Filled,
	}
	code := "crop.four-arms-fill"
	switch {
	case site.Prunings_kg_per_m < divide_kgm:
		code = "crop.not-four-arms"
	case f.Filled < 1:
		code = "crop.four-arms-slowly"
	}
	f.Verdict = result.Sentence{Code: code, Values: map[string]float64{
		"prunings": f.Prunings, "least": fillsFrom_kgm, "arms": 4,
	}}
	return f
}
