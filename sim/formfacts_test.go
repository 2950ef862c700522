//go:build !js

package sim_test

import (
	"math"
	"testing"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// sums are what one face of a day adds up to.
type sums struct {
	day, daylight float64 // berry temperature over 10 °C: 24 hours, and with the sun up [K h]
	lit_h         float64
}

// faceSums adds up every face of the first option.
func faceSums(r *sim.Run) []sums {
	n := len(r.Options[0].Faces)
	all := make([]sums, n)
	for k := range r.Result.Hour[1:] {
		for f := range all {
			heat := math.Max(float64(r.Options[0].Berry_C[k*n+f])-10, 0) * 5 / 60
			all[f].day += heat
			if r.Result.Sun.Elevation_deg[k] > 0 {
				all[f].daylight += heat
			}
			all[f].lit_h += float64(r.Options[0].Lit[k*n+f]) * 5 / 60
		}
	}
	return all
}

// Fact 5: in a single curtain of N–S rows exposed bunches differ by up to about 12 K at one moment of the middle of the
// day, while their heat sums over 24 hours differ by less than 10 % and those of daylight are larger on the west side
// (conference abstract 093, "Position of sunlight-exposed clusters influences diurnal patterns of fruit
// temperature", authors not shown). Exposed are the faces with at least two hours of sun. The base of the heat sums,
// 10 °C, is common practice; the abstract names none.
func TestFactSingleCurtain(t *testing.T) {
	s := one(t, "high-cordon")
	s.Weather.AirMax_C, s.Weather.AirMin_C = 35, 18
	r := run(t, s)
	all, n := faceSums(r), len(r.Options[0].Faces)
	exposed := func(f int) bool { return all[f].lit_h >= 2 }
	widest := 0.0
	for k, hour := range r.Result.Hour {
		if hour < r.Result.Sun.Transit_h-1.5 || hour > r.Result.Sun.Transit_h+1.5 {
			continue
		}
		var surface []float64
		for f := range n {
			if exposed(f) {
				surface = append(surface, float64(r.Options[0].Surface_C[k*n+f]))
			}
		}
		if len(surface) < 40 {
			t.Fatalf("only %d exposed faces: the test says nothing", len(surface))
		}
		widest = math.Max(widest, quantile(surface, 0.97)-quantile(surface, 0.03))
	}
	var day, daylight [2]float64 // left is west
	var count [2]float64
	for f := range all {
		if exposed(f) {
			day[f%2], daylight[f%2], count[f%2] = day[f%2]+all[f].day, daylight[f%2]+all[f].daylight, count[f%2]+1
		}
	}
	for side := range day {
		day[side], daylight[side] = day[side]/count[side], daylight[side]/count[side]
	}
	t.Logf("exposed faces %.0f west, %.0f east; midday spread %.1f K (published up to 12); 24 h sums W %.0f, E %.0f K h; daylight W %.0f, E %.0f",
		count[0], count[1], widest, day[0], day[1], daylight[0], daylight[1])
	if widest < 5 || widest > 13 {
		t.Errorf("exposed bunches differ by %.1f K in the middle of the day, published up to about 12", widest)
	}
	if math.Abs(day[0]/day[1]-1) > 0.1 {
		t.Errorf("heat sums over 24 hours: west %.1f, east %.1f K h, published nearly equal", day[0], day[1])
	}
	published(t, "single curtain: daylight heat sum, west over east", daylight[0]/daylight[1], 1, 1.2)
}

// Fact 9: from 5 over 15 to 30 shoots per metre fruit goes from mostly exposed to mostly interior (Smart 1988, AJEV
// 39:325). Exposed is fruit with more than an hour of sun a day on its outer side; leaf area follows the shoots.
func TestFactShootDensity(t *testing.T) {
	var share []float64
	for _, perMetre := range []float64{5, 15, 30} {
		s := one(t, "vsp-spurs")
		o := &s.Options[0]
		o.Leaves.Area_m2_per_m *= perMetre / o.Shoots.PerMetre
		o.Shoots.PerMetre = perMetre
		exposed, all := 0.0, faceSums(run(t, s))
		for _, face := range all {
			if face.lit_h > 1 {
				exposed += 1 / float64(len(all))
			}
		}
		share = append(share, exposed)
	}
	t.Logf("faces with over an hour of sun at 5, 15, 30 shoots per metre: %.2f", share)
	if share[0] < 0.5 || share[2] > 0.5 || share[0] <= share[1] || share[1] <= share[2] {
		t.Errorf("%.2f of the faces are exposed, published mostly, some, few", share)
	}
}

// Fact 12: fruit under a tendone meets almost no beam, and its berries stay within about 1 to 2 K of the air (the light
// that it intercepts is Nuzzo et al. 2005; the band is an assumption from it).
func TestFactFruitUnderARoof(t *testing.T) {
	r := run(t, one(t, "pergola"))
	roof, wall := r.Result.Options[0], run(t, one(t, "vsp-spurs")).Result.Options[0]
	daylight := r.Result.Sun.Set_h - r.Result.Sun.Rise_h
	for side := range roof.Sides {
		lit := roof.Sides[side].Summary.Lit_h / daylight
		off := 0.0
		for k, berry := range roof.Sides[side].Steps.Berry_C {
			off = math.Max(off, math.Abs(berry-roof.Sides[side].Steps.AirNear_C[k]))
		}
		t.Logf("%s: in the sun %.3f of the day (upright wall %.2f h), mean berry at most %.2f K from the air",
			roof.Sides[side].Compass, lit, wall.Sides[side].Summary.Lit_h, off)
		if lit > 0.05 {
			t.Errorf("fruit under a roof is in the sun %.3f of the day, published almost none", lit)
		}
		if off > 2 {
			t.Errorf("berries under a roof are %.2f K from the air, published within about 1 to 2", off)
		}
	}
}

// Fact 14: the same exposure does less harm when fruit has lived with it from its first weeks than when it is opened
// late: up to 60 % less necrosis (Waber et al. 2025, OENO One 9357). Fruit that leaves shade comes through the
// same day nearly whole, so that only shaded fruit suddenly opened on hot days scores high. The trial was of Riesling,
// its days are not named: here a warm one, air up to 32 °C.
func TestFactEarlyExposure(t *testing.T) {
	s := washington(t)
	s.Weather.AirMax_C, s.Weather.AirMin_C, s.Fruit.Colour = 32, 16, scenario.White
	engine := sim.NewEngine()
	risk := func(removed float64, hardening scenario.Hardening) float64 {
		s.Options[0].Leaves.RemovedMorning, s.Options[0].Leaves.RemovedAfternoon, s.Fruit.Hardening = removed, removed, hardening
		r, err := engine.Day(s, free, nil)
		if err != nil {
			t.Fatal(err)
		}
		return worstRisk(r.Result.Options[0])
	}
	shaded, early, late := risk(0, scenario.Usual), risk(1, scenario.EarlyExposed), risk(1, scenario.NewlyUncovered)
	t.Logf("fruit at risk: shaded %.3f, opened early %.3f, opened on the day %.3f", shaded, early, late)
	published(t, "exposed early: cut of the fruit at risk", 1-early/late, 0.2, 0.6)
	if late < 0.1 || shaded > late/2 || early >= late {
		t.Errorf("fruit at risk: shaded %.3f, opened early %.3f, opened on the day %.3f", shaded, early, late)
	}
}

// worstRisk is the share of fruit at risk on the worse side.
func worstRisk(o result.Option) float64 {
	return math.Max(o.Sides[0].Summary.AtRisk, o.Sides[1].Summary.AtRisk)
}
