package sim_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// single is a scenario of one option of a form, of the first of the default scenario where none is named.
func single(t testing.TB, form string) scenario.Scenario {
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
	return s
}

// Previews of other leaves are nearly as near to the run as those of another sun, in a canopy that is thin or thick at the
// fruit. The run draws its light fields anew where leaves hang elsewhere: where there is little sun on the fruit, the
// hottest tenth is some flecks, and jumps by up to 3 K among unchanged leaves.
func TestPreviewOfLeavesIsNearTheRun(t *testing.T) {
	near := result.Summary{
		Lit_h: 0.4, Light_MJm2: 0.8, Hottest_C: 1.7, MeanMax_C: 0.7, OverWatch_h: 0.6, OverHot_h: 0.5, OverBurn_h: 0.3,
		HottestOverWatch_h: 0.6, HottestOverHot_h: 0.8, HottestOverBurn_h: 1.5, AtRisk: 0.1, Browning: 1,
	}
	flecks := near
	flecks.Hottest_C, flecks.MeanMax_C = 3, 0.9
	flecks.HottestOverHot_h, flecks.HottestOverBurn_h = 2, 2
	half := pull([2]float64{0, 0.5})
	for _, c := range []struct {
		form    string
		before  func(l *scenario.Leaves)
		near    result.Summary
		changes map[string]func(l *scenario.Leaves)
	}{
		{"", none, near, map[string]func(l *scenario.Leaves){
			"half of the afternoon side": half,
			"both sides":                 pull([2]float64{1, 1}),
			"fewer leaves":               func(l *scenario.Leaves) { l.Area_m2_per_m *= 0.85 },
			"few laterals":               func(l *scenario.Leaves) { l.Laterals = 0.15 },
		}},
		{"", half, near, map[string]func(l *scenario.Leaves){"none": none, "the whole afternoon side": pull([2]float64{0, 1})}},
		{"quadrilateral", none, near, map[string]func(l *scenario.Leaves){"half of the afternoon side": half, "both sides": pull([2]float64{1, 1})}},
		{"quadrilateral", half, near, map[string]func(l *scenario.Leaves){"the whole afternoon side": pull([2]float64{0, 1})}},
		{"sprawl", none, flecks, map[string]func(l *scenario.Leaves){"half of the afternoon side": half, "both sides": pull([2]float64{1, 1})}},
		{"sprawl", half, flecks, map[string]func(l *scenario.Leaves){"the whole afternoon side": pull([2]float64{0, 1})}},
	} {
		s := single(t, c.form)
		c.before(&s.Options[0].Leaves)
		was, soon := previewed(t, s)
		for change, to := range c.changes {
			s := s
			s.Options = slices.Clone(s.Options)
			to(&s.Options[0].Leaves)
			previewIsNear(t, c.form+", "+change, c.near, s, was, soon)
		}
	}
}

// Where vines are trained otherwise the same bunches hang elsewhere, among leaves that all hang otherwise.
func TestPreviewOfTrainingIsNearTheRun(t *testing.T) {
	near := result.Summary{
		Lit_h: 0.25, Light_MJm2: 0.5, Hottest_C: 1.7, MeanMax_C: 0.7, OverWatch_h: 0.4, OverHot_h: 0.3, OverBurn_h: 0.3,
		HottestOverWatch_h: 0.6, HottestOverHot_h: 0.8, HottestOverBurn_h: 1.5, AtRisk: 0.1, Browning: 0.5,
	}
	flecks := near
	flecks.Light_MJm2, flecks.Hottest_C, flecks.HottestOverHot_h, flecks.HottestOverBurn_h = 0.7, 4, 2, 2
	raised := func(by float64, roles ...scenario.WireRole) func(o *scenario.Option) {
		return func(o *scenario.Option) {
			o.Trellis.Wires = slices.Clone(o.Trellis.Wires)
			for i := range o.Trellis.Wires {
				if slices.Contains(roles, o.Trellis.Wires[i].Role) {
					o.Trellis.Wires[i].Height_m += by
				}
			}
		}
	}
	all := raised(0.1, scenario.Fruiting, scenario.Foliage, scenario.Catch, scenario.Tie, scenario.Roof)
	for _, c := range []struct {
		form    string
		near    result.Summary
		changes map[string]func(o *scenario.Option)
	}{
		{"vsp-spurs", near, map[string]func(o *scenario.Option){
			"all wires higher": all, "fruit higher": raised(0.1, scenario.Fruiting), "fruit lower": raised(-0.15, scenario.Fruiting),
			"longer shoots": func(o *scenario.Option) { o.Shoots.Length_m += 0.2 },
		}},
		{"sprawl", flecks, map[string]func(o *scenario.Option){"all wires higher": all, "fruit higher": raised(0.1, scenario.Fruiting)}},
		{"high-cordon", near, map[string]func(o *scenario.Option){"all wires higher": all, "upright": func(o *scenario.Option) { o.Shoots.Habit *= 0.8 }}},
		{"double-curtain", near, map[string]func(o *scenario.Option){"all wires higher": all}},
		{"quadrilateral", flecks, map[string]func(o *scenario.Option){"all wires higher": all}},
		{"lyre", near, map[string]func(o *scenario.Option){"fruit higher": raised(0.1, scenario.Fruiting)}},
	} {
		s := single(t, c.form)
		was, soon := previewed(t, s)
		for change, to := range c.changes {
			s := s
			s.Options = slices.Clone(s.Options)
			to(&s.Options[0])
			if err := s.Validate(); err != nil {
				t.Fatal(err)
			}
			previewIsNear(t, c.form+", "+change, c.near, s, was, soon)
		}
	}
}

// Fruit that hangs higher has more wind, where all else has risen with it.
func TestPreviewOfHigherFruitHasItsWind(t *testing.T) {
	s := single(t, "high-cordon")
	was, soon := previewed(t, s)
	s.Options[0].Trellis.Wires = slices.Clone(s.Options[0].Trellis.Wires)
	for i := range s.Options[0].Trellis.Wires {
		s.Options[0].Trellis.Wires[i].Height_m += 0.3
	}
	got, err := soon.Of(s, free)
	if err != nil || got == nil {
		t.Fatal(got, err)
	}
	run, err := sim.NewEngine().Day(s, free, nil)
	if err != nil {
		t.Fatal(err)
	}
	for side, of := range was.Result.Options[0].Sides {
		want := run.Result.Options[0].Sides[side].Summary.Hottest_C - of.Summary.Hottest_C
		foretold := got.Options[0].Sides[side].Summary.Hottest_C - of.Summary.Hottest_C
		if want > -0.1 || foretold > want/2 || foretold < 2*want {
			t.Errorf("the hottest fruit of side %d moves by %+.2f K, in the run by %+.2f K", side, foretold, want)
		}
	}
}

// previewIsNear holds the numbers of a preview of one option, and what is seen of it at some hours, against the run.
func previewIsNear(t *testing.T, name string, near result.Summary, s scenario.Scenario, was *sim.Run, soon *sim.Previews) {
	t.Helper()
	got, err := soon.Of(s, free)
	if err != nil || got == nil {
		t.Errorf("%s: %v, %v", name, got, err)
		return
	}
	run, err := sim.NewEngine().Day(s, free, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, hour := range []float64{9, 12, 15.5} {
		seen, err := soon.At(s, hour, free)
		if err != nil || seen == nil {
			t.Fatal(seen, err)
		}
		isSeenNear(t, fmt.Sprintf("%s, %g h", name, hour), int(hour*12), &was.Options[0], seen.Options[0], &run.Options[0])
	}
	for side := range got.Options[0].Sides {
		t.Run(fmt.Sprintf("%s, side %d", name, side), func(t *testing.T) {
			isNear(t, near, &was.Result.Options[0].Sides[side].Summary, &got.Options[0].Sides[side].Summary, &run.Result.Options[0].Sides[side])
		})
	}
}

// isSeenNear wants the fruit of either side seen as warm and as much in the sun as the run has it on the whole. Which bunches it lights the
// run draws anew.
func isSeenNear(t *testing.T, name string, k int, before *sim.OptionRun, seen *sim.FacesSoon, run *sim.OptionRun) {
	t.Helper()
	n := len(run.Faces)
	for side := range 2 {
		warmer, change, lit, sun := 0.0, 0.0, 0, 0
		for f := side; f < n; f += 2 {
			want := run.Surface_C[k*n+f]
			warmer += float64(seen.Surface_C[f]-want) / float64(n/2)
			change += float64(want-before.Surface_C[k*n+f]) / float64(n/2)
			lit += int(seen.Lit[f]) - int(run.Lit[k*n+f])
			sun += int(seen.Lit[f]) + int(run.Lit[k*n+f])
		}
		t.Logf("%s, side %d: %+.2f K, %+d lit; the run makes it %+.2f K", name, side, warmer, lit, change)
		near := max(0.7, 0.25*math.Abs(change))
		if sun == 0 {
			near = 0.25 // only light from sky, leaves and floor has changed
		}
		if math.Abs(warmer) > near {
			t.Errorf("%s: side %d is seen %+.2f K warmer than in the run, which makes it %+.2f K warmer", name, side, warmer, change)
		}
		if math.Abs(float64(lit)) > 0.08*float64(n/2) {
			t.Errorf("%s: of side %d %+d more of %d faces are lit", name, side, lit, n/2)
		}
	}
}

func countOther(a, b []uint8) (other int) {
	for i := range a {
		if a[i] != b[i] {
			other++
		}
	}
	return other
}

// isNear wants a preview of a change near to the run after it. Where the run moves clearly the preview moves the same way, and
// by half as much at least, but for 0.15 K by which so few bunches tell another mean than all. Fruit is nearly as hot for hours, of which any may be named, and the
// hottest tenth jumps by up to 3 K from one fleck to the next.
func isNear(t *testing.T, near result.Summary, before, got *result.Summary, run *result.Side) {
	t.Helper()
	want := run.Summary
	if then := run.Steps.Hottest_C[int(got.HottestAt_h*12)]; want.Hottest_C-then > 4 {
		t.Errorf("%.2f h is named as that of the hottest fruit; in the run it is %.2f °C then, %.2f at %.2f h", got.HottestAt_h, then, want.Hottest_C, want.HottestAt_h)
	}
	want.HottestAt_h = got.HottestAt_h
	t.Logf("hottest %+.2f, in the run %+.2f; mean %+.2f, in the run %+.2f", got.Hottest_C-before.Hottest_C, want.Hottest_C-before.Hottest_C,
		got.MeanMax_C-before.MeanMax_C, want.MeanMax_C-before.MeanMax_C)
	a, b, most := got.Numbers(), want.Numbers(), near.Numbers()
	for k := range a {
		if math.Abs(a[k]-b[k]) > most[k] {
			t.Errorf("number %d is %.3f, in the run %.3f", k, a[k], b[k])
		}
	}
	moves := func(name string, got, want, clearly, noise float64) {
		if math.Abs(want) > clearly && got/want < 0.5-noise/math.Abs(want) {
			t.Errorf("%s moves by %+.3f, in the run by %+.3f", name, got, want)
		}
	}
	moves("the mean", got.MeanMax_C-before.MeanMax_C, want.MeanMax_C-before.MeanMax_C, 0.4, 0.15)
	moves("sun", got.Lit_h-before.Lit_h, want.Lit_h-before.Lit_h, 0.15, 0)
}

// pull pulls shares of the leaves of the morning and afternoon side.
func pull(shares [2]float64) func(l *scenario.Leaves) {
	return func(l *scenario.Leaves) { l.RemovedMorning, l.RemovedAfternoon = shares[0], shares[1] }
}

func none(l *scenario.Leaves) { l.RemovedMorning, l.RemovedAfternoon = 0, 0 }

// A preview of leaves does not depend on those before it, and goes back to the numbers of the run; its picture goes back to that of the
// run.
func TestPreviewsOfLeavesLeaveNoTrace(t *testing.T) {
	s := single(t, "")
	s.Options[0].Leaves.RemovedAfternoon = 0.5
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
	seen, err := soon.At(s, 15, free)
	if err != nil {
		t.Fatal(err)
	}
	lit := run.Options[0].Lit[15*12*len(run.Options[0].Faces):][:len(run.Options[0].Faces)]
	if got := seen.Options[0].Lit; !slices.Equal(got, lit) {
		t.Errorf("among the leaves of the run %d faces are lit otherwise", countOther(got, lit))
	}
}

// Of bunches that move beside nets there is no preview, of leaves there is.
func TestPreviewOfBunchesBesideNets(t *testing.T) {
	s := single(t, "")
	s.Options[0].Shade.NetSides, s.Options[0].Shade.NetShade = scenario.BothSides, 0.6
	_, soon := previewed(t, s)
	s.Options[0].Leaves.RemovedAfternoon = 0.5
	if got, err := soon.Of(s, free); got == nil || err != nil {
		t.Errorf("of leaves: %v, %v", got, err)
	}
	s.Options[0].Shoots.Length_m += 0.2
	if got, err := soon.Of(s, free); got != nil || err != nil {
		t.Errorf("of bunches: %+v, %v", got, err)
	}
}

// Nets about an option leave the light of another that has none.
func TestPreviewBesideNets(t *testing.T) {
	alone := single(t, "")
	beside := single(t, "")
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

// BenchmarkPreviewLeaves tells what a change of leaves of one of two options makes of numbers and picture, which share a sketch.
func BenchmarkPreviewLeaves(b *testing.B) {
	benchmarkPreviews(b, func(s *scenario.Scenario, k int) { s.Options[0].Leaves.RemovedAfternoon = 0.1 + float64(k%7)/10 }, allOf)
}

// BenchmarkPreviewWire is the same for a fruiting wire that is moved.
func BenchmarkPreviewWire(b *testing.B) {
	benchmarkPreviews(b, func(s *scenario.Scenario, k int) {
		s.Options[0].Trellis.Wires = slices.Clone(s.Options[0].Trellis.Wires)
		s.Options[0].Trellis.Wires[0].Height_m = 0.8 + float64(k%7)/20
	}, allOf)
}

// BenchmarkPreviewLeafArea is the same where all leaves change.
func BenchmarkPreviewLeafArea(b *testing.B) {
	benchmarkPreviews(b, func(s *scenario.Scenario, k int) { s.Options[0].Leaves.Area_m2_per_m = 4 + float64(k%7)/10 }, allOf)
}
