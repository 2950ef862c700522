package sim_test

import (
	"slices"
	"testing"

	"rowlight/sim"
	"rowlight/sim/scenario"
)

func free() error { return nil }

// BenchmarkDay runs the two options of the default scenario from nothing.
func BenchmarkDay(b *testing.B) {
	s := scenario.Default()
	for b.Loop() {
		if _, err := sim.NewEngine().Day(s, free, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkWindChange reruns them after a change of wind, which leaves stands, domes and light as they are.
func BenchmarkWindChange(b *testing.B) {
	benchmarkChange(b, func(s *scenario.Scenario, k int) { s.Weather.Wind_ms = 1 + float64(k%7)/2 })
}

// BenchmarkAzimuthChange reruns them after a turn of the rows, which leaves stands and domes as they are.
func BenchmarkAzimuthChange(b *testing.B) {
	benchmarkChange(b, func(s *scenario.Scenario, k int) {
		for i := range s.Options {
			s.Options[i].Rows.Azimuth_deg = float64(k * 5 % 90)
		}
	})
}

// BenchmarkLeafRemovalChange reruns them after leaves were pulled from the afternoon side of one.
func BenchmarkLeafRemovalChange(b *testing.B) {
	benchmarkChange(b, func(s *scenario.Scenario, k int) { s.Options[0].Leaves.RemovedAfternoon = float64(k%19+1) / 20 })
}

// BenchmarkWireHeightChange reruns them after the wires of one moved, so that its vines grow anew.
func BenchmarkWireHeightChange(b *testing.B) {
	benchmarkChange(b, func(s *scenario.Scenario, k int) {
		wires := slices.Clone(s.Options[1].Trellis.Wires)
		for i := range wires {
			wires[i].Height_m += 0.01 * float64(k%2*2-1) * float64(k%17+1)
		}
		s.Options[1].Trellis.Wires = wires
	})
}

func benchmarkChange(b *testing.B, change func(s *scenario.Scenario, k int)) {
	s, engine := scenario.Default(), sim.NewEngine()
	if _, err := engine.Day(s, free, nil); err != nil {
		b.Fatal(err)
	}
	k := 0
	for b.Loop() {
		change(&s, k)
		k++
		if _, err := engine.Day(s, free, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkDirections turns the two options of the default scenario through 36 azimuths over one day, from nothing.
func BenchmarkDirections(b *testing.B) {
	s := scenario.Default()
	for b.Loop() {
		if _, err := sim.NewEngine().Directions(s, sim.OneDay(s), 5, free, nil); err != nil {
			b.Fatal(err)
		}
	}
}
