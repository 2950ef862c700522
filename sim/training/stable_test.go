package training

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rowlight/sim/scenario"
)

func TestSameSeedSameStand(t *testing.T) {
	for _, f := range scenario.Forms() {
		first, second := build(t, f.Option, 7), build(t, f.Option, 7)
		if !reflect.DeepEqual(first, second) {
			t.Errorf("%s: two builds differ: %s", f.Key, cmp.Diff(first, second))
		}
		other := build(t, f.Option, 8)
		if reflect.DeepEqual(first.Bunches, other.Bunches) {
			t.Errorf("%s: another seed hangs the same bunches", f.Key)
		}
	}
}

// leafKey is what stays the same of a leaf when the trellis changes.
type leafKey struct {
	shoot   int32
	node    int16
	lateral bool
	nth     int
}

func byKey(s *Stand) map[leafKey]Leaf {
	leaves := map[leafKey]Leaf{}
	for _, leaf := range s.Leaves {
		key := leafKey{leaf.Shoot, leaf.Node, leaf.Lateral, 0}
		for _, taken := leaves[key]; taken; _, taken = leaves[key] {
			key.nth++
		}
		leaves[key] = leaf
	}
	return leaves
}

// moved gives the mean displacement of the leaves that two stands share, and the share of them.
func moved(before, after *Stand) (mean, shared float64) {
	old, fresh := byKey(before), byKey(after)
	for key, leaf := range old {
		if now, ok := fresh[key]; ok {
			shared++
			mean += now.Centre.Sub(leaf.Centre).Len()
		}
	}
	return mean / shared, shared / float64(max(len(old), len(fresh)))
}

// One input moves what it moves: the vine is not reshuffled. A fresh seed moves leaves by about the
// size of the canopy, which shows that the bounds below mean something.
func TestOneInputDoesNotReshuffle(t *testing.T) {
	base := form(t, "sprawl")
	before := build(t, base, 1)
	if mean, _ := moved(before, build(t, base, 2)); mean < 0.3 {
		t.Fatalf("another seed moves leaves by %.3f m only", mean)
	}
	cases := map[string]struct {
		change func(o *scenario.Option)
		most   float64 // mean displacement [m]
		shared float64 // least share of leaves that persist
	}{
		"foliage wire 5 cm up":  {func(o *scenario.Option) { o.Trellis.Wires[1].Height_m += 0.05 }, 0.09, 0.97},
		"shoots 5 cm longer":    {func(o *scenario.Option) { o.Shoots.Length_m += 0.05 }, 0.05, 0.93},
		"leaf area 5 % up":      {func(o *scenario.Option) { o.Leaves.Area_m2_per_m *= 1.05 }, 0.005, 0.93},
		"bunches 10 % heavier":  {func(o *scenario.Option) { o.Bunches.Mass_g *= 1.1 }, 0, 1},
		"rows 10 cm wider":      {func(o *scenario.Option) { o.Rows.RowSpacing_m += 0.1 }, 0, 1},
		"a little more habit":   {func(o *scenario.Option) { o.Shoots.Habit += 0.05 }, 0.06, 0.97},
		"rows turned 5 degrees": {func(o *scenario.Option) { o.Rows.Azimuth_deg += 5 }, 0, 1},
	}
	for name, c := range cases {
		o := base
		o.Trellis.Wires = slices.Clone(base.Trellis.Wires)
		c.change(&o)
		after := build(t, o, 1)
		mean, shared := moved(before, after)
		if !(mean <= c.most && shared >= c.shared) {
			t.Errorf("%s: leaves move by %.4f m on average, %.1f %% persist", name, mean, 100*shared)
		}
		for i := range before.Bunches {
			if before.Bunches[i].Shoot != after.Bunches[i].Shoot || before.Bunches[i].Seed != after.Bunches[i].Seed {
				t.Fatalf("%s: bunch %d is another one", name, i)
			}
		}
	}
}

// Leaf removal takes leaves from one side of the fruit zone and touches nothing else.
func TestLeafRemovalIsOneSided(t *testing.T) {
	base := form(t, "vsp-spurs")
	base.Rows.Azimuth_deg = 0
	before := build(t, base, 1)
	fruit := before.Measure().FruitHeight_m

	o := base
	o.Leaves.RemovedMorning = 1
	after := build(t, o, 1)
	if after.Measure().LeafArea_m2_per_m >= base.Leaves.Area_m2_per_m {
		t.Error("the leaf area does not fall")
	}
	kept := map[Leaf]bool{}
	for _, leaf := range after.Leaves {
		kept[leaf] = true
	}
	pulled := 0
	for _, leaf := range before.Leaves {
		// The right side of a north-south row is its east side: the morning side.
		zone := leaf.Centre.X() > 0.001 && math.Abs(leaf.Centre.Z()-fruit) < 0.08
		switch {
		case kept[leaf] && zone:
			t.Fatalf("a leaf is still in the fruit zone at %v", leaf.Centre)
		case !kept[leaf] && leaf.Centre.X() < 0:
			t.Fatalf("a leaf is gone from the afternoon side at %v", leaf.Centre)
		case !kept[leaf]:
			pulled++
		}
	}
	if pulled != len(before.Leaves)-len(after.Leaves) {
		t.Errorf("%d leaves were pulled, %d are missing", pulled, len(before.Leaves)-len(after.Leaves))
	}
	if pulled < 100 {
		t.Errorf("only %d leaves were pulled", pulled)
	}

	o.Leaves.RemovedMorning = 0.5
	half := len(before.Leaves) - len(build(t, o, 1).Leaves)
	within(t, "share pulled at one half", float64(half)/float64(pulled), 0.4, 0.6)
}

// A mirrored option gives a mirrored canopy: exactly so in the wires, statistically in the leaves.
func TestMirroredTrellisMirrorsTheCanopy(t *testing.T) {
	o := form(t, "sprawl")
	o.Trellis.Wires = append(slices.Clone(o.Trellis.Wires), scenario.Wire{Height_m: 1.5, Offset_m: 0.4, Role: scenario.Foliage})
	mirrored := o
	mirrored.Trellis.Wires = slices.Clone(o.Trellis.Wires)
	for i := range mirrored.Trellis.Wires {
		mirrored.Trellis.Wires[i].Offset_m *= -1
	}
	right, left := 0.0, 0.0
	for seed := range 8 {
		right += meanX(build(t, o, seed)) / 8
		left += meanX(build(t, mirrored, seed)) / 8
	}
	within(t, "mean x of the leaf area with the second wire on the right", right, 0.03, 0.5)
	within(t, "the same plus its mirror image", right+left, -0.04, 0.04)

	symmetric := 0.0
	for seed := range 8 {
		symmetric += meanX(build(t, form(t, "sprawl"), seed)) / 8
	}
	within(t, "mean x of the leaf area of a symmetric trellis", symmetric, -0.03, 0.03)
}

func meanX(s *Stand) float64 {
	x, area := 0.0, 0.0
	for i := range s.Leaves {
		x += s.Leaves[i].Centre.X() * s.Leaves[i].Area
		area += s.Leaves[i].Area
	}
	return x / area
}
