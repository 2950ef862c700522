package crop

import (
	"math"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// Bounds of vigour and balance. They hold for wine grapes on warm sites, and are all assumptions for any one vineyard.
const (
	// fillsFrom_kgm are the prunings per metre of canopy from which shoots fill it: the least of the usual range of
	// 0.3 to 0.6 (Smart & Robinson 1991, from memory).
	fillsFrom_kgm = 0.3
	// divide_kgm are those of one curtain from which dividing it is advised: 0.3 lb/ft (Wolf 2003).
	divide_kgm = 0.45
	// tooStrong_kgm are those above which one curtain is too dense: the top of the balanced range of one curtain, 0.5
	// to 1.0 (Kliewer & Dokoozlian 2005, AJEV 56:170).
	tooStrong_kgm = 1.0
	// leastLeaf and mostLeaf bound the leaf area that ripens fruit [m²/kg]: 0.8 to 1.2 on one curtain, 0.5 to 0.8 on
	// divided ones (the same source).
	leastLeaf, mostLeaf               = 0.8, 1.2
	leastLeafDivided, mostLeafDivided = 0.5, 0.8
	// mostLoad is the yield over prunings above which a vine is said to be overcropped: 4 to 10 (the same source).
	mostLoad = 10.0
)

// judgeVigour spreads the prunings of the site over the canopy of the option and says whether they fill it. That a
// vine grows as much wood on two curtains as on one is careful: in the trial of Kliewer & Dokoozlian 2005 divided
// canopies cut 8 to 62 % more per metre of row than VSP.
func judgeVigour(c *result.OptionCrop, site scenario.Crop, o scenario.Option, v vine) {
	c.Prunings_kgm = site.Prunings_kg_per_m / float64(canopies(o))
	c.Filled = filled(c.Prunings_kgm)
	c.BalancedNodes = BalancedNodes(site, site.Prunings_kg_per_m*o.Rows.VineSpacing_m)
	values := map[string]float64{
		"prunings": c.Prunings_kgm, "least": fillsFrom_kgm, "most": tooStrong_kgm,
		"arms": float64(o.Training.ArmsPerVine), "balanced": c.BalancedNodes, "nodes": v.nodes,
	}
	c.Verdict = result.Sentence{Code: vigourCode(c, o), Values: values}
}

// vigourCode names the verdict on the vigour of a vine.
func vigourCode(c *result.OptionCrop, o scenario.Option) string {
	switch {
	case o.Training.ArmsPerVine == 4 && canopies(o) > 1 && c.Prunings_kgm*float64(canopies(o)) < divide_kgm:
		return "crop.not-four-arms"
	case c.Filled < 1:
		return "crop.not-filled"
	case c.Prunings_kgm > tooStrong_kgm:
		return "crop.too-strong"
	}
	return "crop.filled"
}

// filled is the share of a canopy that vines of so much prunings per metre of it fill [0–1]; in proportion to them,
// an assumption.
func filled(prunings_kgm float64) float64 { return math.Min(prunings_kgm/fillsFrom_kgm, 1) }

// BalancedNodes are the nodes that balanced pruning keeps on a vine of some prunings: so many for the first pound, so
// many for each further one. Below a pound they fall in proportion (common practice).
func BalancedNodes(site scenario.Crop, prunings_kg float64) float64 {
	pounds := prunings_kg / kg_perPound
	if pounds < 1 {
		return site.FirstNodes * pounds
	}
	return site.FirstNodes + site.MoreNodes*(pounds-1)
}

// balance sets leaves and wood against fruit.
func balance(c *result.OptionCrop, leafArea_m2 float64) {
	prunings_t := c.Prunings_kgm * c.Canopy_m * c.VinesPerHa / 1000
	leaves_m2 := leafArea_m2 * squareMetres_perHa
	if prunings_t > 0 {
		c.YieldToPrunings = times(c.PerHa_t, 1/prunings_t)
	}
	if fruit := c.PerHa_t; fruit.Low > 0 {
		// More fruit leaves each kilogram fewer leaves.
		c.LeafToFruit_m2kg = result.Estimate{
			Low: leaves_m2 / fruit.High / 1000, Value: leaves_m2 / fruit.Value / 1000, High: leaves_m2 / fruit.Low / 1000,
		}
	}
}

// balanced says of a crop whether its leaves ripen it and its wood carries it.
func balanced(c result.OptionCrop, o scenario.Option) result.Sentence {
	least, most := leastLeaf, mostLeaf
	if canopies(o) > 1 {
		least, most = leastLeafDivided, mostLeafDivided
	}
	code := "crop.balanced"
	switch leaf := c.LeafToFruit_m2kg.Value; {
	case leaf > 0 && leaf < least:
		code = "crop.few-leaves"
	case c.YieldToPrunings.Value > mostLoad:
		code = "crop.overcropped"
	case leaf > most:
		code = "crop.many-leaves"
	}
	return result.Sentence{Code: code, Values: map[string]float64{
		"leaf": c.LeafToFruit_m2kg.Value, "least": least, "most": most,
		"load": math.Round(10*c.YieldToPrunings.Value) / 10, "mostLoad": mostLoad,
	}}
}
