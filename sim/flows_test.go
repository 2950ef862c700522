package sim_test

import (
	"math"
	"testing"

	"rowlight/sim"
	"rowlight/sim/scenario"
)

// The flows of a berry close at every instant (conservation), agree with the chain that explains the same bunch, and over
// the whole day store no more than a berry that ends as warm as it began.
func TestFlowsCloseAndAgreeWithTheChain(t *testing.T) {
	s, engine := one(t, "vsp-spurs"), sim.NewEngine()
	at := sim.Where{Side: scenario.Left, Bunch: -1, Hour_h: 15.5}
	flows, err := engine.Flows(s, at, free)
	if err != nil {
		t.Fatal(err)
	}
	chain, err := engine.Explain(s, at, free)
	if err != nil {
		t.Fatal(err)
	}
	if flows.Bunch != chain.Bunch || flows.Side != chain.Side || len(flows.Stored_Wm2) != 289 {
		t.Fatalf("flows of bunch %d on the %s side at %d instants, want bunch %d, %s, 289", flows.Bunch, flows.Side, len(flows.Stored_Wm2), chain.Bunch, chain.Side)
	}
	stored, highest := 0.0, 0.0
	for k := range flows.Stored_Wm2 {
		in := flows.Sunlight_Wm2[k] + flows.Longwave_Wm2[k]
		if rest := in - flows.Air_Wm2[k] - flows.Evaporation_Wm2[k] - flows.Stored_Wm2[k]; math.Abs(rest) > 1e-9*math.Max(1, math.Abs(in)) {
			t.Fatalf("instant %d: %g W/m² are left over", k, rest)
		}
		if k > 0 {
			stored += flows.Stored_Wm2[k] * 300
		}
		highest = math.Max(highest, flows.Sunlight_Wm2[k])
	}
	k := int(math.Round(chain.Hour_h * 12))
	for symbol, got := range map[string]float64{"absorbed": flows.Sunlight_Wm2[k], "transpiration": flows.Evaporation_Wm2[k]} {
		if want, ok := chain.Value(symbol); !ok || math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
			t.Errorf("%s at %.2f h is %g W/m², the chain says %g", symbol, chain.Hour_h, got, want)
		}
	}
	capacity, ok := chain.Value("capacity")
	if !ok {
		t.Fatal("the chain has no heat capacity")
	}
	// From one midnight to the next of a repeated day the berry changes by less than 3 K.
	if math.Abs(stored) > 3*capacity {
		t.Errorf("the berry stores %.0f J/m² over the day, as much as %.1f K", stored, stored/capacity)
	}
	if highest <= 0 || math.Abs(flows.Sunlight_Wm2[0]) > 1e-9 {
		t.Errorf("sunlight of at most %g W/m², and %g at midnight", highest, flows.Sunlight_Wm2[0])
	}
}
