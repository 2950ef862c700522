//go:build !js

package sim_test

import (
	"testing"
	"time"

	"rowlight/sim"
	"rowlight/sim/scenario"
)

// ripe are days of ripening, with the stages of the season.
func ripe(b *testing.B, s *scenario.Scenario, days, jobs int) sim.Sweep {
	b.Helper()
	first := day(time.August, 5)
	sweep, faults := sim.Stretch(s, nil, first, first.AddDate(0, 0, days-1), 1)
	if len(faults) > 0 {
		b.Fatal(faults)
	}
	sweep.Jobs = jobs
	return sweep
}

// BenchmarkSeasonByOne runs two options through 60 days of one stage, from nothing.
func BenchmarkSeasonByOne(b *testing.B) { benchmarkSeason(b, 1) }

// BenchmarkSeasonByTwo is the same with two hands.
func BenchmarkSeasonByTwo(b *testing.B) { benchmarkSeason(b, 2) }

func benchmarkSeason(b *testing.B, jobs int) {
	s := scenario.Default()
	sweep := ripe(b, &s, 60, jobs)
	for b.Loop() {
		if _, err := sim.NewEngine().Season(s, sweep, free, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkTurnedWeek turns two options through 36 azimuths over seven days, from nothing: 252 days.
func BenchmarkTurnedWeek(b *testing.B) {
	s := scenario.Default()
	sweep := ripe(b, &s, 7, 1)
	for b.Loop() {
		if _, err := sim.NewEngine().Directions(s, sweep, 5, free, nil); err != nil {
			b.Fatal(err)
		}
	}
}
