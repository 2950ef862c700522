package training

import (
	"math"
	"testing"

	"rowlight/sim/scenario"
)

// meanOf measures an option over all seeds.
func meanOf(t *testing.T, o scenario.Option) (mean Measures) {
	t.Helper()
	n := float64(len(seeds))
	for _, seed := range seeds {
		m := build(t, o, seed).Measure()
		mean.LeafArea_m2_per_m += m.LeafArea_m2_per_m / n
		mean.LeafLayers += m.LeafLayers / n
		mean.Gaps += m.Gaps / n
		mean.Exterior += m.Exterior / n
		mean.Width_m += m.Width_m / n
		mean.Top_m += m.Top_m / n
		mean.Bottom_m += m.Bottom_m / n
		mean.LateralShare += m.LateralShare / n
		mean.ShootsPerVine += m.ShootsPerVine / n
		mean.BunchesPerVine += m.BunchesPerVine / n
		mean.ShootsPerMetre += m.ShootsPerMetre / n
		mean.ExposedLeaf_m2_per_ha += m.ExposedLeaf_m2_per_ha / n
	}
	return mean
}

// Shoot thinning opens the canopy: fewer leaf layers, more gaps, more exterior bunches (Smart 1988, AJEV 39:325). A
// larger share takes the same shoots and more, spread evenly along the arm.
func TestShootThinningOpensTheCanopy(t *testing.T) {
	o := form(t, "vsp-spurs")
	o.Shoots.PerMetre, o.Leaves.Area_m2_per_m = 24, 8
	before := meanOf(t, o)
	o.Shoots.Thinned = 0.4
	after := meanOf(t, o)
	within(t, "shoots left", after.ShootsPerMetre/before.ShootsPerMetre, 0.55, 0.65)
	within(t, "leaf area left", after.LeafArea_m2_per_m/before.LeafArea_m2_per_m, 0.55, 0.65)
	if !(after.LeafLayers < 0.8*before.LeafLayers && after.Gaps > before.Gaps && after.Exterior > before.Exterior+0.05) {
		t.Errorf("layers %.2f to %.2f, gaps %.2f to %.2f, exterior %.2f to %.2f", before.LeafLayers, after.LeafLayers,
			before.Gaps, after.Gaps, before.Exterior, after.Exterior)
	}

	sources := func(share float64) map[uint64]bool {
		o.Shoots.Thinned = share
		g := newGrower(o, 1)
		g.planVines(6)
		left := map[uint64]bool{}
		for _, p := range g.plans {
			left[uint64(p.source)] = true
		}
		return left
	}
	some, more := sources(0.2), sources(0.5)
	for source := range more {
		if !some[source] {
			t.Fatal("heavier thinning leaves a shoot that lighter thinning takes")
		}
	}
	within(t, "longest run without a shoot over the mean distance", widestGap(t, o, 0.5), 1, 3.2)
}

// widestGap is the largest distance between neighbouring shoots along the row over the mean one.
func widestGap(t *testing.T, o scenario.Option, thinned float64) float64 {
	t.Helper()
	o.Shoots.Thinned, o.Training.Wood = thinned, scenario.Canes
	g := newGrower(o, 1)
	g.planVines(6)
	widest, last := 0.0, math.NaN()
	for i := range g.plans {
		if i > 0 && g.plans[i].arm == g.plans[i-1].arm {
			widest = math.Max(widest, g.plans[i].along-last)
		}
		last = g.plans[i].along
	}
	return widest * float64(len(g.plans)) / g.stand.Length
}

// Hedging the sides narrows a sprawl to twice the distance given and a little, takes leaf area, and opens its fruit.
func TestHedgingTheSidesNarrows(t *testing.T) {
	o := form(t, "sprawl")
	before := meanOf(t, o)
	o.Shoots.TrimSide_m = 0.35
	after := meanOf(t, o)
	within(t, "width", after.Width_m, 0.5, 0.75)
	within(t, "leaf area left", after.LeafArea_m2_per_m/before.LeafArea_m2_per_m, 0.3, 0.75)
	if after.Exterior <= before.Exterior {
		t.Errorf("exterior bunches go from %.2f to %.2f", before.Exterior, after.Exterior)
	}
	for i, shoot := range build(t, o, 1).Shoots {
		for _, p := range shoot.Points {
			if math.Abs(p.X()) > o.Shoots.TrimSide_m+4*hedgeSpread+stepLength {
				t.Fatalf("shoot %d reaches %v", i, p)
			}
		}
	}
}

// Hedging the top lower leaves a lower wall with less leaf area, as much as it is lower, and no denser at the fruit.
func TestHedgingTheTopTakesLeaves(t *testing.T) {
	o := form(t, "vsp-spurs")
	before := meanOf(t, o)
	o.Shoots.TrimTop_m = 1.6
	after := meanOf(t, o)
	within(t, "top", after.Top_m-before.Top_m, -0.5, -0.33)
	within(t, "leaf area left", after.LeafArea_m2_per_m/before.LeafArea_m2_per_m, 0.5, 0.75)
	within(t, "leaf layers at the fruit", after.LeafLayers/before.LeafLayers, 0.8, 1.1)
}

// Skirting cuts what hangs below its height and nothing above.
func TestSkirtingLiftsTheCurtain(t *testing.T) {
	o := form(t, "double-curtain")
	before := meanOf(t, o)
	o.Shoots.Skirt_m = 0.9
	after := meanOf(t, o)
	within(t, "bottom", after.Bottom_m, 0.85, 1.05)
	within(t, "top", after.Top_m-before.Top_m, -0.02, 0.02)
	if before.Bottom_m > 0.7 || after.LeafArea_m2_per_m > 0.85*before.LeafArea_m2_per_m {
		t.Errorf("bottom %.2f to %.2f m, leaf area %.2f to %.2f", before.Bottom_m, after.Bottom_m, before.LeafArea_m2_per_m, after.LeafArea_m2_per_m)
	}
}

// Combing down turns a canopy over: leaf area above the fruit goes below it, and more light meets the fruit from above.
func TestCombingDownTurnsTheCanopyOver(t *testing.T) {
	o := form(t, "double-curtain")
	above := func(combed float64) float64 {
		o.Shoots.CombedDown = combed
		o.Shoots.Start_deg, o.Shoots.Habit = 50, 0.6
		s := build(t, o, 1)
		return areaAbove(s, s.Measure().FruitHeight_m+0.15)
	}
	none, all := above(0), above(1)
	within(t, "leaf area above the fruit, none combed", none, 0.5, 1)
	within(t, "leaf area above the fruit, all combed", all, 0, 0.35)
}

// Leaves are pulled in the band that is given, on the side that is given.
func TestLeafRemovalKeepsToItsBand(t *testing.T) {
	o := form(t, "vsp-spurs")
	before := build(t, o, 1)
	o.Leaves.RemovedMorning, o.Leaves.RemovedFrom_m, o.Leaves.RemovedTo_m = 1, 1.4, 1.7
	after := build(t, o, 1)
	kept := map[Leaf]bool{}
	for _, leaf := range after.Leaves {
		kept[leaf] = true
	}
	pulled := 0
	for _, leaf := range before.Leaves {
		inside := leaf.Centre.X() >= 0 && leaf.Centre.Z() >= 1.4 && leaf.Centre.Z() <= 1.7
		onEdge := math.Abs(leaf.Centre.Z()-1.4) < 1e-3 || math.Abs(leaf.Centre.Z()-1.7) < 1e-3 || math.Abs(leaf.Centre.X()) < 1e-3
		if kept[leaf] == inside && !onEdge {
			t.Fatalf("a leaf at %v is kept: %v", leaf.Centre, kept[leaf])
		}
		if inside {
			pulled++
		}
	}
	if pulled < 300 {
		t.Errorf("only %d leaves stood in the band", pulled)
	}
}

// Shoots that are not put between their wires lean out: the worse the job, the wider the wall and the more fruit it
// covers from the sides (common practice).
func TestPoorPositioningWidensTheWall(t *testing.T) {
	o := form(t, "vsp-spurs")
	width := func(share float64) float64 {
		o.Shoots.Positioning = share
		return meanOf(t, o).Width_m
	}
	good, middling, none := width(1), width(0.6), width(0)
	if !(good < middling && middling < none) {
		t.Errorf("the wall is %.2f, %.2f and %.2f m wide with all, 60 %% and no shoots in place", good, middling, none)
	}
	within(t, "width without positioning over that with it", none/good, 1.5, 5)
}
