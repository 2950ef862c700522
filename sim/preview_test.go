package sim_test

import (
	"math"
	"slices"
	"testing"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// previewed runs a scenario and prepares for changes of it.
func previewed(t testing.TB, s scenario.Scenario) (*sim.Run, *sim.Previews) {
	t.Helper()
	engine := sim.NewEngine()
	run, err := engine.Day(s, free, nil)
	if err != nil {
		t.Fatal(err)
	}
	soon, err := engine.Previews(s, run, nil, free)
	if err != nil {
		t.Fatal(err)
	}
	return run, soon
}

// A preview is as near to the run that follows as its ranges are wide: other air and other fruit in the same sun move the
// numbers of few bunches as those of all; where the sun comes from elsewhere, each bunch meets other gaps.
func TestPreviewIsNearTheRun(t *testing.T) {
	_, soon := previewed(t, scenario.Default())
	sameSun := result.Summary{
		Lit_h: 0.01, Light_MJm2: 0.01, Hottest_C: 0.6, HottestAt_h: 1.5, MeanMax_C: 0.25, OverWatch_h: 0.1, OverHot_h: 0.1, OverBurn_h: 0.1,
		HottestOverWatch_h: 0.1, HottestOverHot_h: 1, HottestOverBurn_h: 1, AtRisk: 0.06, Browning: 0.4,
	}
	otherSun := result.Summary{
		Lit_h: 0.2, Light_MJm2: 0.4, Hottest_C: 1.7, HottestAt_h: 2.5, MeanMax_C: 0.7, OverWatch_h: 0.2, OverHot_h: 0.2, OverBurn_h: 0.2,
		HottestOverWatch_h: 0.2, HottestOverHot_h: 0.4, HottestOverBurn_h: 0.8, AtRisk: 0.06, Browning: 0.6,
	}
	for name, c := range map[string]struct {
		change func(s *scenario.Scenario)
		near   result.Summary
	}{
		"little wind":     {func(s *scenario.Scenario) { s.Weather.Wind_ms = 1 }, sameSun},
		"more wind":       {func(s *scenario.Scenario) { s.Weather.Wind_ms = 4 }, sameSun},
		"hotter air":      {func(s *scenario.Scenario) { s.Weather.AirMax_C += 4 }, sameSun},
		"lower limit":     {func(s *scenario.Scenario) { s.Limits.Burn_C -= 2 }, sameSun},
		"white fruit":     {func(s *scenario.Scenario) { s.Fruit.Colour = scenario.White }, sameSun},
		"another day":     {func(s *scenario.Scenario) { s.Weather.Date = "2025-07-01" }, otherSun},
		"turned a little": {func(s *scenario.Scenario) { s.Options[0].Rows.Azimuth_deg = 20 }, otherSun},
		"turned aslant":   {func(s *scenario.Scenario) { s.Options[0].Rows.Azimuth_deg = 45 }, otherSun},
		"turned across":   {func(s *scenario.Scenario) { s.Options[0].Rows.Azimuth_deg = 90 }, otherSun},
	} {
		s := scenario.Default()
		c.change(&s)
		got, err := soon.Of(s, free)
		if err != nil || got == nil {
			t.Errorf("%s: %v, %v", name, got, err)
			continue
		}
		want, err := sim.NewEngine().Day(s, free, nil)
		if err != nil {
			t.Fatal(err)
		}
		near := c.near.Numbers()
		for i, option := range got.Options {
			for side, of := range option.Sides {
				full := want.Result.Options[i].Sides[side]
				if of.Compass != full.Compass || of.SunSide != full.SunSide || of.Azimuth_deg != full.Azimuth_deg {
					t.Errorf("%s: side %d of option %d is called %+v, in the run %s, %s", name, side, i, of, full.Compass, full.SunSide)
				}
				a, b := of.Summary.Numbers(), full.Summary.Numbers()
				for k := range a {
					if math.Abs(a[k]-b[k]) > near[k] {
						t.Errorf("%s: number %d of side %d of option %d is %.3f, in the run %.3f", name, k, side, i, a[k], b[k])
					}
				}
			}
		}
	}
}

// An option that stays as it is keeps its numbers to the last digit.
func TestPreviewLeavesOtherOptions(t *testing.T) {
	s := scenario.Default()
	run, soon := previewed(t, s)
	s.Options[0].Rows.Azimuth_deg += 30
	got, err := soon.Of(s, free)
	if err != nil {
		t.Fatal(err)
	}
	for side, of := range got.Options[1].Sides {
		if of.Summary != run.Result.Options[1].Sides[side].Summary {
			t.Errorf("side %d of the other option became %+v", side, of.Summary)
		}
	}
	if got.Options[0].Sides[0].Summary == run.Result.Options[0].Sides[0].Summary {
		t.Error("the turned option kept its numbers")
	}
}

// Of other bunches there is no telling, and nothing to tell where nothing changes that bears on heat or light.
func TestPreviewsThatAreNone(t *testing.T) {
	_, soon := previewed(t, scenario.Default())
	for name, change := range map[string]func(s *scenario.Scenario){
		"nothing":        func(*scenario.Scenario) {},
		"weights":        func(s *scenario.Scenario) { s.Weights.Frost = 1 },
		"more shoots":    func(s *scenario.Scenario) { s.Options[0].Shoots.PerMetre++ },
		"missing vines":  func(s *scenario.Scenario) { s.Options[0].Training.MissingVines = 0.2 },
		"a net":          func(s *scenario.Scenario) { s.Options[0].Shade.NetSides = scenario.AfternoonSide },
		"another option": func(s *scenario.Scenario) { s.Options = append(slices.Clone(s.Options), s.Options[0]) },
	} {
		s := scenario.Default()
		change(&s)
		if got, err := soon.Of(s, free); got != nil || err != nil {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
	var none *sim.Previews
	if got, err := none.Of(scenario.Default(), free); got != nil || err != nil {
		t.Errorf("before any run: %+v, %v", got, err)
	}
}

// BenchmarkPreview tells what a change of wind makes of two options.
func BenchmarkPreview(b *testing.B) { benchmarkPreviews(b, otherWind, numbersOf) }

// benchmarkPreviews changes the default scenario over and over and asks for what comes of it.
func benchmarkPreviews(b *testing.B, change func(s *scenario.Scenario, k int), ask func(soon *sim.Previews, s scenario.Scenario) (there bool, err error)) {
	s := scenario.Default()
	_, soon := previewed(b, s)
	k := 0
	for b.Loop() {
		change(&s, k)
		k++
		if there, err := ask(soon, s); !there || err != nil {
			b.Fatal(there, err)
		}
	}
}

func otherWind(s *scenario.Scenario, k int) { s.Weather.Wind_ms = 3.1 + float64(k%7)/2 }

func numbersOf(soon *sim.Previews, s scenario.Scenario) (there bool, err error) {
	got, err := soon.Of(s, free)
	return got != nil, err
}

// What is seen at an hour after a change is what the run makes of it: the same faces are lit, and all are as warm but for what is
// left of their warmth of 20 minutes before.
func TestSightedIsTheRun(t *testing.T) {
	_, soon := previewed(t, scenario.Default())
	for name, change := range map[string]func(s *scenario.Scenario){
		"wind":   func(s *scenario.Scenario) { s.Weather.Wind_ms = 1 },
		"day":    func(s *scenario.Scenario) { s.Weather.Date = "2025-07-01" },
		"turned": func(s *scenario.Scenario) { s.Options[0].Rows.Azimuth_deg = 45 },
	} {
		s := scenario.Default()
		change(&s)
		run, err := sim.NewEngine().Day(s, free, nil)
		if err != nil {
			t.Fatal(err)
		}
		more := scenario.Default()
		more.Options[0].Shoots.PerMetre++
		for what, of := range map[string]scenario.Scenario{"without a change": scenario.Default(), "on more shoots": more} {
			if seen, err := soon.At(of, 12, free); seen != nil || err != nil {
				t.Errorf("%s %+v, %v are seen", what, seen, err)
			}
		}
		for _, k := range []int{0, 2, 7 * 12, 12 * 12, 15*12 + 7, 22 * 12, 288} {
			hour := float64(k) / 12
			seen, err := soon.At(s, hour, free)
			if err != nil {
				t.Fatal(err)
			}
			if seen.Now.Sun.Azimuth_deg != run.Result.Sun.Azimuth_deg[k] || seen.Now.DNI != run.Result.Air.DNI_Wm2[k] {
				t.Errorf("%s, %.2f h: the sun is seen at %+v", name, hour, seen.Now.Sun)
			}
			for i, option := range seen.Options {
				if (option == nil) != (name == "turned" && i == 1) {
					t.Fatalf("%s: option %d is %+v", name, i, option)
				}
				if option == nil {
					continue
				}
				full, n := run.Options[i], len(run.Options[i].Faces)
				worst, other := 0.0, 0
				for f := range n {
					worst = max(worst, math.Abs(float64(option.Surface_C[f]-full.Surface_C[k*n+f])))
					if option.Lit[f] != full.Lit[k*n+f] {
						other++
					}
				}
				if worst > 1.25 || other > 0 {
					t.Errorf("%s, %.2f h, option %d: %.2f K off, %d faces lit otherwise", name, hour, i, worst, other)
				}
				for side, got := range option.Sides {
					steps := &run.Result.Options[i].Sides[side].Steps
					want := sim.SideSoon{LitShare: steps.LitShare[k], Mean_C: steps.Mean_C[k], Hottest_C: steps.Hottest_C[k]}
					if got.LitShare != want.LitShare || math.Abs(got.Mean_C-want.Mean_C) > 0.3 || math.Abs(got.Hottest_C-want.Hottest_C) > 0.6 {
						t.Errorf("%s, %.2f h, side %d of option %d is seen as %+v, in the run %+v", name, hour, side, i, got, want)
					}
				}
			}
		}
	}
}

// BenchmarkSighted is what is seen of all bunches of two options after a change of wind.
func BenchmarkSighted(b *testing.B) { benchmarkPreviews(b, otherWind, seenOf) }

func seenOf(soon *sim.Previews, s scenario.Scenario) (there bool, err error) {
	got, err := soon.At(s, 15.5, free)
	return got != nil, err
}

func allOf(soon *sim.Previews, s scenario.Scenario) (there bool, err error) {
	if there, err = numbersOf(soon, s); !there || err != nil {
		return there, err
	}
	return seenOf(soon, s)
}
