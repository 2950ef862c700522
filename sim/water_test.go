//go:build !js

package sim_test

import (
	"testing"

	"rowlight/sim"
	"rowlight/sim/scenario"
)

// Thirsty vines have warmer leaves and so hotter fruit: burning is worst in bright, hot, still air, on thirsty vines
// (Oxford Companion to Wine 2006, "sunburn"). Fruit feels leaves by their longwave alone, so that it follows them only
// in part. The vines themselves stay the same.
func TestThirstyVinesHaveHotterFruit(t *testing.T) {
	s := washington(t)
	engine := sim.NewEngine()
	var leaf, hottest, light []float64
	for _, water := range []scenario.Water{scenario.Watered, scenario.Short, scenario.Thirsty} {
		s.Options[0].Leaves.Water = water
		r, err := engine.Day(s, free, nil)
		if err != nil {
			t.Fatal(err)
		}
		chain, err := engine.Explain(s, sim.Where{Side: scenario.Left, Bunch: -1, Hour_h: 15.5}, free)
		if err != nil {
			t.Fatal(err)
		}
		for _, link := range chain.Links {
			if link.Symbol == "leafTemperature" {
				leaf = append(leaf, link.Value)
			}
		}
		west := r.Result.Options[0].Sides[scenario.Left].Summary
		hottest, light = append(hottest, west.Hottest_C), append(light, west.Light_MJm2)
	}
	t.Logf("watered, short, thirsty: leaves at 15:30 %.1f °C, hottest fruit %.2f °C", leaf, hottest)
	for k := range 2 {
		warmer, hotter := leaf[k+1]-leaf[k], hottest[k+1]-hottest[k]
		if warmer < 0.3 || hotter < 0.05 || hotter > warmer {
			t.Errorf("less water warms leaves by %.2f K and fruit by %.2f K", warmer, hotter)
		}
		if light[k+1] != light[k] {
			t.Errorf("less water changes the light on fruit from %g to %g MJ/m²", light[k], light[k+1])
		}
	}
}
