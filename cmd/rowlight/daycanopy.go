package main

import "rowlight/sim/result"

// canopySheet lists what the canopy of every option measures. Height to gap is a dash where there is no alley, leaf to
// fruit where there is no fruit.
func canopySheet(day result.Day) sheet {
	out := sheet{columns: []column{
		{"option", "option", "", 0},
		{"fruitHeight_m", "fruit", "m", 2},
		{"top_m", "top", "m", 2},
		{"width_m", "width", "m", 2},
		{"leafArea_m2_per_m", "leaf", "m2/m", 1},
		{"leafArea_m2_per_ha", "leaf", "m2/ha", 0},
		{"exposedLeaf_m2_per_ha", "exposed", "m2/ha", 0},
		{"leafLayers", "layers", "", 1},
		{"gaps", "gaps", "share", 0},
		{"exteriorBunches", "bunches outside", "share", 0},
		{"heightToGap", "height:gap", "", 2},
		{"leafToFruit_m2_per_kg", "leaf:fruit", "m2/kg", 2},
		{"intercepted", "light", "share", 0},
	}}
	for o, option := range day.Options {
		c := option.Canopy
		out.rows = append(out.rows, []any{
			letter(o), c.FruitHeight_m, c.Top_m, c.Width_m, c.LeafArea_m2_per_m, hundreds(c.LeafArea_m2_per_ha), hundreds(c.ExposedLeaf_m2_per_ha),
			c.LeafLayers, c.Gaps, c.Exterior, orDash(c.HeightToGap), orDash(c.LeafToFruit_m2_per_kg), c.Intercepted,
		})
	}
	return out
}

// orDash is a ratio, or a dash where there is none.
func orDash(ratio float64) any {
	if ratio == 0 {
		return "–"
	}
	return ratio
}
