//go:build !js

package sim_test

import (
	"runtime"
	"testing"

	"rowlight/sim"
)

// What an engine remembers is bounded: after the first changes of every kind its memory grows no more.
func TestMemoryIsFlat(t *testing.T) { flat(t, 90) }

// flat goes through changes and wants the memory after the last as it was after a third of them.
func flat(t *testing.T, changes int) {
	s, engine := one(t, "goblet"), sim.NewEngine()
	heap := func() float64 {
		var m runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&m)
		return float64(m.HeapAlloc) / (1 << 20)
	}
	least := 0.0
	for k := range changes {
		// Every third change makes vines anew, so that all that is kept of them comes and goes.
		switch k % 3 {
		case 0:
			s.Options[0].Leaves.RemovedAfternoon = 0.9 * float64(k) / float64(changes)
		case 1:
			s.Weather.Wind_ms = 1 + 3*float64(k)/float64(changes)
		case 2:
			s.Options[0].Rows.Azimuth_deg = 90 * float64(k) / float64(changes)
		}
		if _, err := engine.Day(s, free, nil); err != nil {
			t.Fatal(err)
		}
		if k == changes/3 {
			least = heap()
		}
	}
	most := heap()
	t.Logf("%.1f MB after %d changes, %.1f MB after %d", least, changes/3, most, changes)
	if most > 1.1*least {
		t.Errorf("memory grows from %.1f to %.1f MB", least, most)
	}
	runtime.KeepAlive(engine)
}
