package sim_test

import (
	"testing"

	"rowlight/sim"
	"rowlight/sim/scenario"
)

// shaded is the default VSP with nets, film and mist of every kind.
func shaded(t *testing.T) scenario.Scenario {
	s := one(t, "vsp-spurs")
	s.Options[0].Shade = scenario.Shade{
		NetSides: scenario.AfternoonSide, NetShade: 0.5, NetColour: scenario.WhiteCloth, NetDistance_m: 0.25,
		BirdNet: scenario.DrapedNet, OverheadShade: 0.25, OverheadColour: scenario.GreenCloth, OverheadHeight_m: 4,
		Film: scenario.LightFilm, MistRate_mmh: 0.6, MistAbove_C: 36, MistFrom_h: 12, MistTo_h: 17,
	}
	return s
}

// The chain behind nets, film and mist can be followed by hand too, and ends at the run's own numbers.
func TestChainBehindCoversCanBeFollowedByHand(t *testing.T) {
	s, engine := shaded(t), sim.NewEngine()
	day, err := engine.Day(s, free, nil)
	if err != nil {
		t.Fatal(err)
	}
	run, met := &day.Options[0], map[string]int{}
	for _, side := range scenario.Sides {
		for _, hour := range []float64{4, 8, 12.5, 15.5, 17} {
			chain, err := engine.Explain(s, sim.Where{Side: side, Bunch: -1, Hour_h: hour}, free)
			if err != nil {
				t.Fatal(err)
			}
			follow(t, chain)
			at := int(hour*12)*len(run.Faces) + 2*(chain.Bunch-1) + int(side)
			if surface, _ := chain.Value("surface"); float32(surface) != run.Surface_C[at] {
				t.Errorf("%s at %g h: chain %.6f °C, run %.6f", chain.Side, hour, surface, run.Surface_C[at])
			}
			for _, symbol := range []string{"netThrough", "netGlow", "netIn", "netWind", "overheadThrough", "windUnder", "filmLeaves", "mistAir", "skinWet"} {
				if _, ok := chain.Value(symbol); ok {
					met[symbol]++
				}
			}
		}
	}
	if len(met) != 9 {
		t.Errorf("the chains show %v alone", met)
	}
}
