//go:build !js

package sim_test

import (
	"testing"

	"rowlight/sim"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
	"rowlight/testdata"
)

// A hot week gives every option its days, with the sum of what they have, the worst first among the worst, and a
// calendar whose highest hour is the hottest of the day. A day of it is the day that the directions have.
func TestSeasonOfAHotWeek(t *testing.T) {
	opened, err := testdata.FS.Open("weather/stony-bend-hot-week.epw")
	if err != nil {
		t.Fatal(err)
	}
	defer opened.Close()
	file, _ := weather.Read("week.epw", opened)
	s, engine := one(t, "vsp-spurs"), sim.NewEngine()
	file.PutPlace(&s)
	sweep, faults := sim.Span(&s, &file, day(7, 12), day(7, 18), 1)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	sweep.Jobs = 2
	season, err := engine.Season(s, sweep, free, nil)
	if err != nil {
		t.Fatal(err)
	}
	rows := over(t, engine, s, sweep, 90).Options[0].Rows[0]
	for _, side := range scenario.Sides {
		of := season.Options[0].Sides[side]
		sum, risk := 0.0, 0.0
		for i, day := range of.Days {
			sum += day.OverHot_h
			risk = max(risk, day.AtRisk)
			highest := 0.0
			for _, hour := range day.Hourly_C {
				highest = max(highest, hour)
			}
			if highest != day.Hottest_C {
				t.Errorf("%s, %s: hottest hour %.2f °C, day %.2f °C", of.Compass, season.Days[i].Date, highest, day.Hottest_C)
			}
			if day.Heat_Kh > of.Days[of.Worst[0]].Heat_Kh {
				t.Errorf("%s: %s is worse than the worst", of.Compass, season.Days[i].Date)
			}
		}
		if sum != of.OverHot_h || of.AtRisk < risk {
			t.Errorf("%s: %.3f h over hot, its days %.3f; at risk %.3f, on one day %.3f", of.Compass, of.OverHot_h, sum, of.AtRisk, risk)
		}
		within(t, "mean degree-hours "+of.Compass, of.Heat_Kh/7, rows.Sides[side].HeatOverHot_Kh, 1e-9)
	}
}

func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if got < want-tolerance || got > want+tolerance {
		t.Errorf("%s: %g, want %g", what, got, want)
	}
}
