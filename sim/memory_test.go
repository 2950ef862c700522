//go:build !js

package sim_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"rowlight/sim"
	"rowlight/sim/scenario"
)

// What an engine remembers never shows: after each change it answers as an engine that knows nothing.
func TestMemoryChangesNothing(t *testing.T) {
	s, engine := one(t, "vsp-spurs"), sim.NewEngine()
	goblet, _ := scenario.FormByKey("goblet")
	changes := []func(){
		func() {},
		func() { s.Weather.Wind_ms = 4 },
		func() { s.Options[0].Rows.Azimuth_deg, s.Options[0].Leaves.RemovedAfternoon = 45, 0.5 },
		func() { s.Options[0].Rows.Azimuth_deg = 135 }, // turns the afternoon side to the other side of the vine
		func() { s.Site.Slope_deg, s.Weather.Date = 8, "2026-08-20" },
		func() { s.Site.Floor, s.Limits.Hot_C = scenario.Straw, 41 },
		func() {
			shade := &s.Options[0].Shade
			shade.NetSides, shade.OverheadShade, shade.Film = scenario.AfternoonSide, 0.3, scenario.FullFilm
		},
		func() { s.Options[0].Shade.NetColour, s.Options[0].Trellis.AfternoonWire_m = scenario.WhiteCloth, 1.9 },
		func() { s.Options = append(s.Options, goblet.Option) },
		func() { s.Options[1].Rows.Azimuth_deg, s.Compare = 20, 1 },
		func() { s.Options[0], s.Options[1] = s.Options[1], s.Options[0] },
		func() { s.Options[1].Name, s.Options[0].Cost.Year_per_ha = "another", 900 },
	}
	for k, change := range changes {
		change()
		warm, err := engine.Day(s, free, nil)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(run(t, s).Result, warm.Result); diff != "" {
			t.Fatalf("change %d: a fresh engine and a used one differ:\n%s", k, diff)
		}
	}
}

// Changes of one option, however many, do not drive out what is remembered of another: a change of wind then makes nothing
// anew. Work is counted by its slices.
func TestOneOptionDoesNotDriveOutAnother(t *testing.T) {
	s, engine := one(t, "goblet"), sim.NewEngine()
	sprawl, _ := scenario.FormByKey("sprawl")
	s.Options = append(s.Options, sprawl.Option)
	slices := func() (count int) {
		if _, err := engine.Day(s, func() error { count++; return nil }, nil); err != nil {
			t.Fatal(err)
		}
		return count
	}
	slices()
	s.Weather.Wind_ms = 3
	want := slices()
	first := 0
	for k := range 10 {
		s.Options[0].Leaves.RemovedAfternoon = 0.05 * float64(k+1)
		if count := slices(); k == 0 {
			first = count
		} else if float64(count) > 1.3*float64(first) {
			t.Errorf("change %d of leaves took %d slices of work, the first %d", k, count, first)
		}
	}
	s.Weather.Wind_ms = 4
	if got := slices(); got != want {
		t.Errorf("a change of wind took %d slices of work, at first %d", got, want)
	}
}
