package sim_test

import (
	"testing"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// TestLeafRemovalHasADate runs a day before and after leaves are pulled: before the date the day is that without a
// removal; in the week after it temperatures are those of leaves pulled long before, and more of the fruit is at risk
// (fruit uncovered on hot days stands less: Waber et al. 2025, OENO One 9357).
func TestLeafRemovalHasADate(t *testing.T) {
	engine := sim.NewEngine()
	west := func(share float64, pulled string) result.Summary {
		s := scenario.Default()
		s.Options, s.Compare = s.Options[:1], 0
		s.Options[0].Leaves.RemovedAfternoon, s.Options[0].Leaves.RemovedOn = share, pulled
		day, err := engine.Day(s, free, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, side := range day.Result.Options[0].Sides {
			if side.SunSide == scenario.Afternoon {
				return side.Summary
			}
		}
		t.Fatal("no afternoon side")
		return result.Summary{}
	}
	none, long, before, fresh := west(0, ""), west(0.8, ""), west(0.8, "2026-07-25"), west(0.8, "2026-07-15")
	if before != none {
		t.Errorf("before the date: %+v, without a removal %+v", before, none)
	}
	if fresh.Lit_h != long.Lit_h || fresh.Hottest_C != long.Hottest_C {
		t.Errorf("in the week after the date: %+v, pulled long before %+v", fresh, long)
	}
	if long.Lit_h <= none.Lit_h {
		t.Errorf("pulled leaves do not let more sun in: %g h, %g h with them", long.Lit_h, none.Lit_h)
	}
	if fresh.AtRisk <= long.AtRisk {
		t.Errorf("newly uncovered fruit at risk: %g, uncovered long before %g", fresh.AtRisk, long.AtRisk)
	}
}
