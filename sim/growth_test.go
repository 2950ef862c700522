package sim_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"rowlight/sim"
	"rowlight/sim/growth"
	"rowlight/sim/scenario"
)

// TestDayShowsVinesAsGrown: three days after fruit set a day by date is that of a scenario which gives such young vines
// itself, light, heat, ranges and explanation; design, crop and frost stay those of full-grown vines.
func TestDayShowsVinesAsGrown(t *testing.T) {
	byDate := scenario.Default()
	byDate.Options, byDate.Compare = byDate.Options[:1], 0
	byDate.Weather.Date = "2026-06-04"
	full := byDate
	byDate.Season.Growth = scenario.ByDate
	given := growth.Grown(byDate)
	engine := sim.NewEngine()
	run := func(s scenario.Scenario) *sim.Run {
		t.Helper()
		day, err := engine.Day(s, free, nil)
		if err != nil {
			t.Fatal(err)
		}
		if day.Result.Ranges, err = engine.Ranges(s, day, 10, free, nil); err != nil {
			t.Fatal(err)
		}
		return day
	}
	got, want, grown := run(byDate), run(given), run(full)
	if diff := cmp.Diff(want.Result.Options[0].Sides, got.Result.Options[0].Sides); diff != "" {
		t.Errorf("given (-), by date (+):\n%s", diff)
	}
	if diff := cmp.Diff(want.Result.Ranges, got.Result.Ranges); diff != "" {
		t.Errorf("ranges given (-), by date (+):\n%s", diff)
	}
	area := func(r *sim.Run) float64 { return r.Result.Options[0].Canopy.LeafArea_m2_per_m }
	if share := area(got) / area(grown); share < 0.58 || share > 0.7 { // six tenths after fruit set, of which short shoots lose nothing to hedging
		t.Errorf("leaf area is %.2f of that of full-grown vines", share)
	}
	at := sim.Where{Side: scenario.Right, Hour_h: 15}
	chain, err := engine.Explain(byDate, at, free)
	if err != nil {
		t.Fatal(err)
	}
	same, err := engine.Explain(given, at, free)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(same, chain); diff != "" {
		t.Errorf("explanation of the given (-), by date (+):\n%s", diff)
	}
	if diff := cmp.Diff(grown.Result.Weighing.Options[0].Crop, got.Result.Weighing.Options[0].Crop); diff != "" {
		t.Errorf("crop of the full-grown (-), by date (+):\n%s", diff)
	}
	notices := got.Result.Options[0].Notices
	if len(notices) != 1 || notices[0].Code != "notice.growth" || len(grown.Result.Options[0].Notices) != 0 {
		t.Errorf("notices: %v, full-grown %v", notices, grown.Result.Options[0].Notices)
	}
}
