package sim_test

import (
	"errors"
	"math"
	"testing"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// run runs a scenario from nothing.
func run(t *testing.T, s scenario.Scenario) *sim.Run {
	t.Helper()
	r, err := sim.NewEngine().Day(s, free, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// one is the default scenario with one option of a form.
func one(t *testing.T, form string) scenario.Scenario {
	t.Helper()
	s := scenario.Default()
	f, ok := scenario.FormByKey(form)
	if !ok {
		t.Fatalf("no form %q", form)
	}
	s.Options = []scenario.Option{f.Option}
	return s
}

func TestPaceAbandonsARun(t *testing.T) {
	stop, calls := errors.New("newer input"), 0
	_, err := sim.NewEngine().Day(one(t, "sprawl"), func() error {
		if calls++; calls > 700 {
			return stop
		}
		return nil
	}, nil)
	if !errors.Is(err, stop) || calls != 701 {
		t.Errorf("error %v after %d calls, want the error of call 701", err, calls)
	}
}

func TestProgressRisesToOne(t *testing.T) {
	last := -1.0
	_, err := sim.NewEngine().Day(scenario.Default(), free, func(stage string, done float64) {
		if done < last || done > 1 || stage == "" {
			t.Errorf("progress %q %.3f after %.3f", stage, done, last)
		}
		last = done
	})
	if err != nil || last != 1 {
		t.Errorf("progress ends at %.3f with error %v, want 1", last, err)
	}
}

// Every number of a day is a number, shares stay shares, and the courses fit the clock.
func TestResultIsWhole(t *testing.T) {
	day := run(t, scenario.Default()).Result
	for _, option := range day.Options {
		if c := option.Canopy; c.Intercepted <= 0.2 || c.Intercepted >= 0.7 || c.Exterior <= 0 || c.ExposedLeaf_m2_per_ha >= c.LeafArea_m2_per_ha {
			t.Errorf("%s: canopy %+v", option.Name, c)
		}
		if option.Notices == nil || len(option.Notices) > 0 {
			t.Errorf("%s: notices %v, want an empty list", option.Name, option.Notices)
		}
		for _, side := range option.Sides {
			for name, course := range courses(side) {
				if len(course) != len(day.Hour) {
					t.Errorf("%s %s %s: %d values for %d instants", option.Name, side.Compass, name, len(course), len(day.Hour))
				}
				for k, v := range course {
					if math.IsNaN(v) || math.IsInf(v, 0) {
						t.Fatalf("%s %s %s: %g at instant %d", option.Name, side.Compass, name, v, k)
					}
				}
			}
			for k, share := range side.Steps.LitShare {
				if share < 0 || share > 1 || share > 0 && day.Sun.Elevation_deg[k] < 0 {
					t.Errorf("%s %s: lit share %g with the sun at %.1f°", option.Name, side.Compass, share, day.Sun.Elevation_deg[k])
				}
			}
			over, limit := 0.0, day.Scenario.Limits.Hot_C
			for k := 1; k < len(day.Hour); k++ {
				// A straight line from one instant to the next: the part of it over the limit.
				a, b := side.Steps.Hottest_C[k-1], side.Steps.Hottest_C[k]
				if high, low := max(a, b), min(a, b); high > limit {
					over += (day.Hour[k] - day.Hour[k-1]) * min(1, (high-limit)/max(high-low, 1e-12))
				}
			}
			if got := side.Summary.HottestOverHot_h; math.Abs(got-over) > 1e-9 || over == 0 {
				t.Errorf("%s %s: hottest fruit %g h over the middle limit, its course %g h", option.Name, side.Compass, got, over)
			}
			if s := side.Summary; s.OverWatch_h < s.OverHot_h || s.OverHot_h < s.OverBurn_h || s.AtRisk < 0 || s.AtRisk > 1 {
				t.Errorf("%s %s: summary out of order: %+v", option.Name, side.Compass, s)
			}
		}
	}
	if len(day.Comparison) != len(day.Options)-1 {
		t.Errorf("%d sentences of comparison for %d options", len(day.Comparison), len(day.Options))
	}
}

func courses(side result.Side) map[string][]float64 {
	s := side.Steps
	return map[string][]float64{
		"litShare": s.LitShare, "light": s.Light_Wm2, "mean": s.Mean_C, "hottest": s.Hottest_C,
		"coolest": s.Coolest_C, "berry": s.Berry_C, "air": s.AirNear_C, "wind": s.Wind_ms,
	}
}

// A polar night has no design day: the fault says so in place of numbers.
func TestPolarNightIsRefused(t *testing.T) {
	s := scenario.Default()
	s.Site.Latitude_deg, s.Weather.Date = 75, "2026-12-21"
	if _, err := sim.NewEngine().Day(s, free, nil); err == nil {
		t.Error("a day without a sun was run")
	}
}
