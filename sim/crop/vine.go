// Package crop says what the wood kept at pruning means for the crop: nodes, shoots, bunches and the weight of fruit,
// whether the vigour of the site fills the arms of a form, and what fruit brings and work takes. It is arithmetic on
// the user's own numbers, and promises nothing.
package crop

import (
	"math"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

const (
	// berryDensity_gcm3 is that of ripe berries (1.05 to 1.08, from memory).
	berryDensity_gcm3 = 1.06
	// squareMetres_perHa is 100 m by 100 m.
	squareMetres_perHa = 1e4
	// t_perHa_perTon is a US ton on an acre: 907.18474 kg on 0.40468564 ha.
	t_perHa_perTon = 0.90718474 / 0.40468564224
	// kg_perPound is exact.
	kg_perPound = 0.45359237
	// youngArms is the part of their length to which the arms of a young vine have grown, as in the stand.
	youngArms = 0.5
)

// vine is one vine of an option by its numbers, before anything is drawn.
type vine struct {
	canopy_m float64 // length of canopy when full-grown
	nodes    float64 // kept at pruning when full-grown
	bearing  float64 // share of nodes that give a shoot that stays, over all places of the row
	perHa    float64
}

// vineOf counts the vine of an option. A place for a shoot is a node that is meant to give one; nodes that stay
// blind are among them.
func vineOf(o scenario.Option) vine {
	t := o.Training
	canopy := o.Rows.VineSpacing_m * float64(canopies(o))
	arms := float64(t.ArmsPerVine)
	there := 1 - t.MissingVines - (1-youngArms)*t.YoungVines - t.SingleArmVines*(1-1/arms)
	return vine{
		canopy_m: canopy, nodes: o.Shoots.PerMetre * canopy,
		bearing: math.Max(there, 0) * (1 - t.BlindNodes) * (1 - o.Shoots.Thinned),
		perHa:   squareMetres_perHa / (o.Rows.RowSpacing_m * o.Rows.VineSpacing_m),
	}
}

// canopies is the number of lengths of canopy beside and above each other in a row: one for each fruiting wire, as
// shoots and leaf area per metre count.
func canopies(o scenario.Option) int {
	count := 0
	for _, wire := range o.Trellis.Wires {
		if wire.Role == scenario.Fruiting {
			count++
		}
	}
	return max(count, 1)
}

// wood counts the spurs and canes of a full-grown vine. Canes laid along are the arms; others leave a cordon.
func wood(o scenario.Option, v vine) (spurs, canes float64) {
	t := o.Training
	arms := v.canopy_m
	if t.ArmLayout == scenario.ArmsSpread {
		arms = float64(t.ArmsPerVine) * t.ArmLength_m
	}
	switch {
	case t.Wood == scenario.Spurs:
		return math.Max(math.Round(arms/t.SpurSpacing_m), 1), 0
	case t.CaneLayout == scenario.CanesAlong:
		return 0, float64(t.ArmsPerVine)
	}
	return 0, math.Max(math.Round(arms/t.SpurSpacing_m), 1)
}

// Berry is the weight of a berry of a diameter [g].
func Berry(diameter_mm float64) float64 {
	return berryDensity_gcm3 * math.Pi / 6 * math.Pow(diameter_mm/10, 3)
}

// Of is the crop of an option. leafArea_m2 is the leaf area on a square metre of ground as the stand has it, after
// hedging and pulling; 0 tells nothing of leaves.
func Of(s scenario.Scenario, o scenario.Option, leafArea_m2 float64) result.OptionCrop {
	v := vineOf(o)
	shoots := v.nodes * v.bearing
	bunches := shoots * o.Bunches.PerShoot
	berry := Berry(s.Fruit.Diameter_mm)
	c := result.OptionCrop{
		VinesPerHa: v.perHa, Canopy_m: v.canopy_m, NodesPerVine: v.nodes,
		ShootsPerVine: shoots, BunchesPerVine: bunches,
		Bunch_g: o.Bunches.Mass_g, Berry_g: berry, BerriesPerBunch: o.Bunches.Mass_g / berry,
	}
	c.Spurs, c.Canes = wood(o, v)
	judgeVigour(&c, s.Crop, o, v)
	// What the vigour of the site does not fill bears nothing.
	c.PerVine_kg = spread(bunches*o.Bunches.Mass_g/1000*c.Filled, s.Crop.Spread)
	c.PerHa_t = times(c.PerVine_kg, v.perHa/1000)
	c.PerAcre_ton = times(c.PerHa_t, 1/t_perHa_perTon)
	balance(&c, leafArea_m2)
	c.Balance = balanced(c, o)
	c.FourArms = fourArms(s.Crop, o, c)
	c.Income = income(s.Crop.Price_per_t, o.Cost.Year_per_ha, c.PerHa_t)
	return c
}

// spread is a value with a share of it either way.
func spread(value, share float64) result.Estimate {
	return result.Estimate{Low: value * (1 - share), Value: value, High: value * (1 + share)}
}

// times scales a value and its range by a factor that is not negative.
func times(e result.Estimate, factor float64) result.Estimate {
	return result.Estimate{Low: e.Low * factor, Value: e.Value * factor, High: e.High * factor}
}

// income is price times yield, less cost; without a price or a cost there is none.
func income(price_per_t, cost_per_ha float64, yield result.Estimate) *result.Income {
	if price_per_t <= 0 || cost_per_ha <= 0 {
		return nil
	}
	gross := times(yield, price_per_t)
	return &result.Income{
		PerHa:       result.Estimate{Low: gross.Low - cost_per_ha, Value: gross.Value - cost_per_ha, High: gross.High - cost_per_ha},
		BreakEven_t: cost_per_ha / price_per_t,
	}
}
