package scenario_test

import (
	"testing"

	"rowlight/sim/scenario"
)

// TestLeavesHangUntilTheyArePulled goes through the dates about a leaf removal, also over the turn of a year.
func TestLeavesHangUntilTheyArePulled(t *testing.T) {
	for _, test := range []struct {
		pulled, date string
		share        float64
		fruit        scenario.Hardening
	}{
		{"", "2026-07-18", 0.5, scenario.Usual},
		{"2026-07-19", "2026-07-18", 0, scenario.Usual},
		{"2026-07-18", "2026-07-18", 0.5, scenario.NewlyUncovered},
		{"2020-07-12", "2026-07-18", 0.5, scenario.NewlyUncovered},
		{"2026-07-11", "2026-07-18", 0.5, scenario.Usual},
		{"2025-12-28", "2026-01-02", 0.5, scenario.NewlyUncovered},
		{"2026-01-05", "2025-12-20", 0, scenario.Usual},
		{"2024-02-29", "2026-03-01", 0.5, scenario.NewlyUncovered},
	} {
		s := scenario.Default()
		o := s.Options[0]
		s.Weather.Date, o.Leaves.RemovedMorning, o.Leaves.RemovedOn = test.date, 0.5, test.pulled
		if got := o.On(test.date).Leaves.RemovedMorning; got != test.share {
			t.Errorf("pulled on %q, on %s the share pulled is %g, not %g", test.pulled, test.date, got, test.share)
		}
		if got := s.FruitOf(o).Hardening; got != test.fruit {
			t.Errorf("pulled on %q, on %s the fruit is %s, not %s", test.pulled, test.date, got, test.fruit)
		}
		code := map[bool]string{true: "notice.leaves-hang"}[test.share == 0]
		if test.fruit == scenario.NewlyUncovered {
			code = "notice.leaves-fresh"
		}
		notices := o.RemovalNotices(test.date, "/options/2")
		if code == "" && len(notices) != 0 || code != "" && (len(notices) != 1 || notices[0].Code != code || notices[0].Path != "/options/2/leaves/removedOn") {
			t.Errorf("pulled on %q, on %s: %v, want %q", test.pulled, test.date, notices, code)
		}
		o.Leaves.RemovedMorning = 0
		if got := s.FruitOf(o).Hardening; got != scenario.Usual {
			t.Errorf("no leaf was pulled, and the fruit is %s", got)
		}
	}
	s := scenario.Default()
	s.Options[0].Leaves.RemovedOn = "in June"
	if faults := s.Validate(); len(faults) != 1 || faults[0].Path != "/options/0/leaves/removedOn" {
		t.Errorf("of a text that is no date: %v", faults)
	}
}
