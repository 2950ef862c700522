//go:build !js

package sim

import (
	"math"
	"testing"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

func TestHoursOver(t *testing.T) {
	hours := []float64{0, 1, 2, 3, 4}
	for name, c := range map[string]struct {
		course []float64
		want   float64
	}{
		"never": {[]float64{30, 30, 35, 30, 30}, 0}, "always": {[]float64{36, 37, 38, 37, 36}, 4},
		"a hat": {[]float64{34, 34, 36, 34, 34}, 1}, "from half an hour": {[]float64{34, 36, 36, 36, 36}, 3.5},
	} {
		if got := hoursOver(c.course, hours, 35); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s: %.3f h, want %.3f", name, got, c.want)
		}
	}
}

// weighedOf is an option by its hottest fruit and its yield, with the range of the yield.
func weighedOf(heat, yield, spread float64) result.Weighed {
	return result.Weighed{Heat: exactly(heat), Crop: result.OptionCrop{
		PerHa_t: result.Estimate{Low: yield * (1 - spread), Value: yield, High: yield * (1 + spread)}}}
}

func TestNothingIsRankedWithoutWeights(t *testing.T) {
	w := &result.Weighing{Options: []result.Weighed{weighedOf(50, 10, 0.2), weighedOf(45, 8, 0.2)}}
	if got := order(w, scenario.Weights{}); len(got) != 0 {
		t.Errorf("%+v", got)
	}
}

func TestOrderFollowsTheWeights(t *testing.T) {
	w := &result.Weighing{Options: []result.Weighed{weighedOf(50, 10, 0.2), weighedOf(45, 8, 0.2), weighedOf(47, 6, 0.2)}}
	first := func(weights scenario.Weights) result.Placed { return order(w, weights)[0] }
	if got := first(scenario.Weights{Heat: 1}); got.Option != 1 || got.Score.Value != 1 || !got.Decided {
		t.Errorf("by heat: %+v", got)
	}
	if got := first(scenario.Weights{Crop: 0.3}); got.Option != 0 || !got.Decided {
		t.Errorf("by crop: %+v", got)
	}
	// Heat 1 to 0, crop 0.5 to 1: the second option leads with 0.75 against 0.5.
	if got := first(scenario.Weights{Heat: 1, Crop: 1}); got.Option != 1 || math.Abs(got.Score.Value-0.75) > 1e-9 {
		t.Errorf("by both: %+v", got)
	}
}

// Two options whose places change with the end of a range are not decided; options that are alike count for nothing.
func TestUndecidedOrders(t *testing.T) {
	w := &result.Weighing{Options: []result.Weighed{weighedOf(50, 10, 0), weighedOf(50, 9, 0)}}
	w.Options[0].Heat.High = 55
	w.Options[1].Heat.High = 51
	got := order(w, scenario.Weights{Heat: 1, Crop: 0.5})
	if got[0].Option != 0 || got[0].Decided {
		t.Errorf("%+v", got)
	}
	alike := &result.Weighing{Options: []result.Weighed{weighedOf(50, 9, 0), weighedOf(50, 9, 0)}}
	for _, placed := range order(alike, scenario.Weights{Heat: 1, Crop: 1}) {
		if placed.Score.Value != 0 || placed.Decided {
			t.Errorf("%+v", placed)
		}
	}
}

// Known misses: VSP shades 25 to 35 % of the ground at midday and sprawl 40 to 60 % (from memory). The catalogue's VSP is
// hedged to 0.35 m in rows 2.7 m apart and the sun of the test stands at 74°, so that less is shaded. The test fails when
// a miss grows or is cured. A lysimeter with 60 and 75 % of shade had crop coefficients of 0.9 and 1.3 (Williams & Ayars
// 2005, Agric. For. Meteorol. 132:201).
func TestFactShadedGround(t *testing.T) {
	engine := NewEngine()
	run, err := engine.Day(scenario.Default(), func() error { return nil }, nil)
	if err != nil {
		t.Fatal(err)
	}
	w := run.Result.Weighing
	vsp, sprawl := w.Options[0], w.Options[1]
	t.Logf("shade at noon: VSP %.2f, sprawl %.2f; over 35 °C: %.1f and %.1f h", vsp.Water.Shaded, sprawl.Water.Shaded, vsp.Colour_h, sprawl.Colour_h)
	for _, c := range []struct {
		name                             string
		got, least, most, missed, margin float64
	}{{"VSP", vsp.Water.Shaded, 0.25, 0.35, 0.17, 0.03}, {"sprawl", sprawl.Water.Shaded, 0.40, 0.60, 0.39, 0.03}} {
		if math.Abs(c.got-c.missed) > c.margin || c.got >= c.least && c.got <= c.most {
			t.Errorf("%s shades %.2f, published %.2f to %.2f: the known miss of %.2f has moved", c.name, c.got, c.least, c.most, c.missed)
		}
	}
	for shaded, want := range map[float64]float64{0.6: 0.9, 0.75: 1.3} {
		if k := waterOf(shaded).CropCoefficient; want < k.Low || want > k.High {
			t.Errorf("%.0f %% of shade has a crop coefficient of %.2f to %.2f, published %.1f", 100*shaded, k.Low, k.High, want)
		}
	}
	if vsp.Heat.Value != math.Max(run.Result.Options[0].Sides[0].Summary.Hottest_C, run.Result.Options[0].Sides[1].Summary.Hottest_C) {
		t.Error("the heat is not that of the hottest fruit")
	}
	if len(w.Order) != 0 {
		t.Error("an order without weights")
	}
	if vsp.Frost.Buds_m > sprawl.Frost.Buds_m || vsp.Frost.Killed.Value <= sprawl.Frost.Killed.Value {
		t.Errorf("the lower cordon is not the colder one: %+v, %+v", vsp.Frost, sprawl.Frost)
	}
	again := weighOnly(t, engine, run)
	if len(again.Order) != 2 || again.Options[0].Crop.Income == nil || again.Options[0].Heat != vsp.Heat {
		t.Errorf("weighed again: %+v", again.Order)
	}
}

// weighOnly changes what is weighed alone, which leaves the courses of the fruit as they are, and then what is not.
func weighOnly(t *testing.T, engine *Engine, before *Run) *result.Weighing {
	t.Helper()
	s := scenario.Default()
	s.Weights.Heat, s.Crop.Price_per_t, s.Options[0].Cost.Year_per_ha, s.Frost.AirMin_C = 1, 900, 5000, -4
	after, err := engine.Day(s, func() error { return nil }, nil)
	if err != nil {
		t.Fatal(err)
	}
	if &after.Options[0].Surface_C[0] != &before.Options[0].Surface_C[0] {
		t.Error("weighing computes the heat anew")
	}
	weighing := after.Result.Weighing
	s.Weather.Wind_ms = 4
	other, err := engine.Day(s, func() error { return nil }, nil)
	if err != nil {
		t.Fatal(err)
	}
	if other.Result.Weighing.Options[0].Heat.Value >= weighing.Options[0].Heat.Value {
		t.Error("wind cools no fruit: the day before is shown")
	}
	return weighing
}
