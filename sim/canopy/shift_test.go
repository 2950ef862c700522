package canopy_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"rowlight/sim/canopy"
)

// Domes and what has gone of their leaves are domes of the leaves that are left, and with what has come they are domes of all;
// the same where the new leaves are all counted and the old ones are taken from the domes.
func TestShiftedDomesAreThoseOfTheLeavesThereAre(t *testing.T) {
	before, after, slope := scattered(5, false), *scattered(5, false), canopy.Slope{Across: 0.05}
	kept, gone := before.Leaves[500:], before.Leaves[:500]
	come := scattered(6, false).Leaves[:300]
	after.Leaves = append(kept[:len(kept):len(kept)], come...)
	points := somePoints(canopy.FromStand(before, slope), rand.New(rand.NewPCG(9, 9)))
	domes := domesOf(t, canopy.FromStand(before, slope), canopy.Half(10), points)
	want := domesOf(t, canopy.FromStand(&after, slope), canopy.Half(10), points)
	parts := func(taken *canopy.Grid) *canopy.Domes {
		added := canopy.FromLeaves(before, come, slope)
		if taken == nil {
			added = canopy.FromStand(&after, slope)
		}
		shift, err := domes.Shift(domes.Lattice, added, taken, nil, free)
		if err != nil {
			t.Fatal(err)
		}
		return domes.Shifted(shift)
	}
	for name, got := range map[string]*canopy.Domes{"by parts": parts(canopy.FromLeaves(before, gone, slope)), "as a whole": parts(nil)} {
		most := 0.0
		for i := range want.Lattice.Size() {
			for k, depth := range want.Depth(i) {
				most = math.Max(most, float64(depth-domes.Depth(i)[k]))
				dark := domes.Depth(i)[k] > 11 || depth > 11 // sums break off
				if !dark && math.Abs(float64(got.Depth(i)[k]-depth)) > 1e-4 {
					t.Fatalf("%s: depth %.5f in direction %d of point %d, of the leaves there are %.5f", name, got.Depth(i)[k], i, k, depth)
				}
			}
		}
		if most < 0.5 {
			t.Errorf("leaves that have come add %.2f at most: the test says nothing", most)
		}
	}
}

// A lattice holds its own directions, those on its border too.
func TestLatticeHoldsItsDirections(t *testing.T) {
	for _, lattice := range []canopy.Lattice{canopy.Half(2.5), canopy.Half(7.5), canopy.Half(10), canopy.HalfDown(10), canopy.Full(7.5)} {
		for i := range lattice.Size() {
			sample, ok := lattice.Sample(lattice.Direction(i))
			if !ok {
				t.Errorf("direction %d of %d lies outside", i, lattice.Size())
				continue
			}
			own := 0.0
			directions, weights := sample.Parts()
			for k, direction := range directions {
				if direction == i {
					own += weights[k]
				}
			}
			if math.Abs(own-1) > 1e-9 {
				t.Errorf("direction %d of %d is itself by %.12f", i, lattice.Size(), own)
			}
		}
	}
}
