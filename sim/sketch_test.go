package sim_test

import (
	"math"
	"testing"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// pulled is a scenario of one option of a form, none for that of the default scenario, with shares of the leaves of its
// morning and afternoon side pulled.
func pulled(t testing.TB, form string, shares [2]float64) scenario.Scenario {
	t.Helper()
	s := scenario.Default()
	s.Options = s.Options[:1]
	if form != "" {
		f, ok := scenario.FormByKey(form)
		if !ok {
			t.Fatalf("there is no form %q", form)
		}
		s.Options[0] = f.Option
	}
	s.Options[0].Leaves.RemovedMorning, s.Options[0].Leaves.RemovedAfternoon = shares[0], shares[1]
	return s
}

// Previews of other leaves are nearly as near to the run as those of another sun, in a canopy that is thin or thick at the
// fruit. The run draws its light fields anew where leaves hang elsewhere: where there is little sun on the fruit, the
// hottest tenth is some flecks, and jumps by up to 3 K among unchanged leaves.
func TestPreviewOfLeavesIsNearTheRun(t *testing.T) {
	near := result.Summary{
		Lit_h: 0.4, Light_MJm2: 0.8, Hottest_C: 1.7, HottestAt_h: 2.5, MeanMax_C: 0.7, OverWatch_h: 0.6, OverHot_h: 0.5, OverBurn_h: 0.3,
		HottestOverWatch_h: 0.6, HottestOverHot_h: 0.8, HottestOverBurn_h: 1.5, AtRisk: 0.1, Browning: 1,
	}
	flecks := near
	flecks.Hottest_C, flecks.MeanMax_C = 3, 0.9
	flecks.HottestOverHot_h, flecks.HottestOverBurn_h = 2, 2
	afternoon := [2]float64{0, 0.5}
	for _, c := range []struct {
		form   string
		pulled [2]float64 // in the run
		change string
		to     func(l *scenario.Leaves)
		near   result.Summary
	}{
		{"", [2]float64{}, "half of the afternoon side", pull(afternoon), near},
		{"", [2]float64{}, "both sides", pull([2]float64{1, 1}), near},
		{"", afternoon, "all of the afternoon side", pull([2]float64{0, 1}), near},
		{"", afternoon, "none", pull([2]float64{}), near},
		{"", [2]float64{}, "fewer leaves", func(l *scenario.Leaves) { l.Area_m2_per_m *= 0.85 }, near},
		{"", [2]float64{}, "few laterals", func(l *scenario.Leaves) { l.Laterals = 0.15 }, near},
		{"quadrilateral", [2]float64{}, "half of the afternoon side", pull(afternoon), near},
		{"quadrilateral", [2]float64{}, "both sides", pull([2]float64{1, 1}), near},
		{"quadrilateral", afternoon, "all of the afternoon side", pull([2]float64{0, 1}), near},
		{"sprawl", [2]float64{}, "half of the afternoon side", pull(afternoon), flecks},
		{"sprawl", [2]float64{}, "both sides", pull([2]float64{1, 1}), flecks},
		{"sprawl", afternoon, "all of the afternoon side", pull([2]float64{0, 1}), flecks},
	} {
		s := pulled(t, c.form, c.pulled)
		was, soon := previewed(t, s)
		c.to(&s.Options[0].Leaves)
		got, err := soon.Of(s, free)
		if err != nil || got == nil {
			t.Errorf("%s, %s: %v, %v", c.form, c.change, got, err)
			continue
		}
		run, err := sim.NewEngine().Day(s, free, nil)
		if err != nil {
			t.Fatal(err)
		}
		for side, of := range got.Options[0].Sides {
			before, after := &was.Result.Options[0].Sides[side].Summary, &run.Result.Options[0].Sides[side].Summary
			t.Logf("%s from %.1f, %s, side %d: hottest %+.2f, in the run %+.2f; mean %+.2f, in the run %+.2f", c.form, c.pulled, c.change, side,
				of.Summary.Hottest_C-before.Hottest_C, after.Hottest_C-before.Hottest_C, of.Summary.MeanMax_C-before.MeanMax_C, after.MeanMax_C-before.MeanMax_C)
			a, b, near := of.Summary.Numbers(), after.Numbers(), c.near.Numbers()
			for k := range a {
				if math.Abs(a[k]-b[k]) > near[k] {
					t.Errorf("%s from %.1f, %s: number %d of side %d is %.3f, in the run %.3f", c.form, c.pulled, c.change, k, side, a[k], b[k])
				}
			}
			// Where the run moves clearly, the preview moves the same way and by half as much at least.
			for name, moved := range map[string][3]float64{
				"mean": {of.Summary.MeanMax_C - before.MeanMax_C, after.MeanMax_C - before.MeanMax_C, 0.4},
				"lit":  {of.Summary.Lit_h - before.Lit_h, after.Lit_h - before.Lit_h, 0.15},
			} {
				if clearly := math.Abs(moved[1]) > moved[2]; clearly && moved[0]/moved[1] < 0.5 {
					t.Errorf("%s from %.1f, %s: %s of side %d moves by %+.3f, in the run by %+.3f", c.form, c.pulled, c.change, name, side, moved[0], moved[1])
				}
			}
		}
	}
}

// pull pulls shares of the leaves of the morning and afternoon side.
func pull(shares [2]float64) func(l *scenario.Leaves) {
	return func(l *scenario.Leaves) { l.RemovedMorning, l.RemovedAfternoon = shares[0], shares[1] }
}

// A preview of leaves does not depend on those before it, and goes back to the numbers of the run.
func TestPreviewsOfLeavesLeaveNoTrace(t *testing.T) {
	s := pulled(t, "", [2]float64{0, 0.5})
	run, soon := previewed(t, s)
	of := func(share, wind float64) result.Summary {
		t.Helper()
		s.Options[0].Leaves.RemovedAfternoon, s.Weather.Wind_ms = share, wind
		got, err := soon.Of(s, free)
		if err != nil || got == nil {
			t.Fatal(got, err)
		}
		return got.Options[0].Sides[0].Summary
	}
	wind := s.Weather.Wind_ms
	first := of(0.7, wind)
	if first == run.Result.Options[0].Sides[0].Summary {
		t.Error("leaves change nothing: the test says nothing")
	}
	of(0.2, wind+1)
	if again := of(0.7, wind); again != first {
		t.Errorf("the same leaves give %+v, then %+v", first, again)
	}
	// So few leaves between 0.5 and this that none is pulled more.
	if back := of(0.5+1e-9, wind); back != run.Result.Options[0].Sides[0].Summary {
		t.Errorf("the leaves of the run give %+v", back)
	}
}

// Nets about an option leave the light of another that has none.
func TestPreviewBesideNets(t *testing.T) {
	alone := pulled(t, "", [2]float64{})
	beside := pulled(t, "", [2]float64{})
	beside.Options = append(beside.Options, beside.Options[0])
	beside.Options[0].Shade.NetSides, beside.Options[0].Shade.NetShade = scenario.BothSides, 0.6
	var sums [2]result.Summary
	for i, s := range []scenario.Scenario{alone, beside} {
		_, soon := previewed(t, s)
		last := len(s.Options) - 1
		s.Options[last].Leaves.RemovedAfternoon = 0.5
		got, err := soon.Of(s, free)
		if err != nil || got == nil {
			t.Fatal(got, err)
		}
		sums[i] = got.Options[last].Sides[0].Summary
	}
	if sums[0] != sums[1] {
		t.Errorf("alone %+v, beside nets %+v", sums[0], sums[1])
	}
}

// BenchmarkPreviewLeaves tells what a change of leaves of one of two options makes.
func BenchmarkPreviewLeaves(b *testing.B) {
	benchmarkLeaves(b, func(l *scenario.Leaves, k int) { l.RemovedAfternoon = 0.1 + float64(k%7)/10 })
}

// BenchmarkPreviewLeafArea is the same where all leaves change.
func BenchmarkPreviewLeafArea(b *testing.B) {
	benchmarkLeaves(b, func(l *scenario.Leaves, k int) { l.Area_m2_per_m = 4 + float64(k%7)/10 })
}

func benchmarkLeaves(b *testing.B, change func(l *scenario.Leaves, k int)) {
	s := scenario.Default()
	_, soon := previewed(b, s)
	k := 0
	for b.Loop() {
		change(&s.Options[0].Leaves, k)
		k++
		if got, err := soon.Of(s, free); got == nil || err != nil {
			b.Fatal(got, err)
		}
	}
}
