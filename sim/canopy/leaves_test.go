package canopy_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/training"
)

// passed is the mean gap that a grid gives to parallel rays spread evenly over the ground.
func passed(grid *canopy.Grid, d mgl64.Vec3, across, along int) float64 {
	ray, thickness := canopy.NewRay(grid), canopy.NewThickness(grid)
	thickness.Toward(d)
	sum := 0.0
	for i := range across {
		for j := range along {
			x, y := (float64(i)+0.5)/float64(across)-0.5, (float64(j)+0.5)/float64(along)
			sum += math.Exp(-ray.Depth(thickness, mgl64.Vec3{x * grid.Width(), y * grid.Length(), 1e-6}, d))
		}
	}
	return sum / float64(across*along)
}

var someDirections = []mgl64.Vec3{
	{0, 0, 1}, {0.6, 0, 0.8}, {-0.6, 0, 0.8}, {0, 0.8, 0.6}, {0.5, 0.5, math.Sqrt(0.5)}, {-0.48, 0.64, 0.6},
}

// One leaf stops what it shows: A·|n·d| of the light's cross-section (geometry). Cells of half its width spread
// it out, and what they let pass is still right to a twentieth of it.
func TestOneLeafStopsWhatItShows(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 0))
	stopped, shows := 0.0, 0.0
	for range 30 {
		n := mgl64.Vec3{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()}.Normalize()
		leaf := training.Leaf{
			Centre: mgl64.Vec3{random.Float64(), random.Float64(), 0.4 + 0.1*random.Float64()},
			Normal: n, Tip: n.Cross(mgl64.Vec3{0.2, 1, 0.1}).Normalize(), Area: 0.0105,
		}
		grid := canopy.FromStand(&training.Stand{RowSpacing: 1, VineSpacing: 1, Length: 1, Top: 1, Leaves: []training.Leaf{leaf}}, canopy.Slope{})
		for _, d := range someDirections {
			stopped += (1 - passed(grid, d, 90, 90)) * d[2]
			shows += leaf.Area * math.Abs(n.Dot(d))
		}
	}
	if math.Abs(stopped-shows) > 0.05*shows {
		t.Errorf("leaves stop %.5f m², show %.5f", stopped, shows)
	}
	t.Logf("leaves stop %.3f of what they show", stopped/shows)
}

// Leaves that hang at random, whatever their angles, leave gaps e^(−ΣA|n·d|/(ground·sin of the height)) (Poisson),
// although the grid knows where they hang.
func TestRandomLeavesLeaveThePoissonGap(t *testing.T) {
	const stands, leaves, area = 6, 260, 0.0105
	random := rand.New(rand.NewPCG(12, 0))
	got, want := make([]float64, len(someDirections)), make([]float64, len(someDirections))
	for range stands {
		stand := &training.Stand{RowSpacing: 1.2, VineSpacing: 1, Length: 2, Top: 1}
		shows := make([]float64, len(someDirections))
		for range leaves {
			// Leaves face outward and up, as those of one side of a wall.
			n := mgl64.Vec3{1, 0.4 * random.NormFloat64(), 0.5 + 0.3*random.NormFloat64()}.Normalize()
			at := mgl64.Vec3{1.2 * random.Float64(), 2 * random.Float64(), 0.15 + 0.8*random.Float64()}
			stand.Leaves = append(stand.Leaves, training.Leaf{Centre: at, Normal: n, Tip: n.Cross(mgl64.Vec3{0, 1, 0}).Normalize(), Area: area})
			for k, d := range someDirections {
				shows[k] += area * math.Abs(n.Dot(d)) / (2.4 * d[2])
			}
		}
		grid := canopy.FromStand(stand, canopy.Slope{})
		for k, d := range someDirections {
			got[k] += passed(grid, d, 60, 100) / stands
			want[k] += math.Exp(-shows[k]) / stands
		}
	}
	// The sampling error of six stands of 260 leaves is about 0.01.
	for k := range got {
		if math.Abs(got[k]-want[k]) > 0.03 {
			t.Errorf("direction %v: %.4f passes, want %.4f", someDirections[k], got[k], want[k])
		}
		t.Logf("direction %.2f: %.4f passes, want %.4f", someDirections[k], got[k], want[k])
	}
}

// Leaves that face one side stop more of the light from that side than of light from the other, cell by cell: each
// half of a wall shows what its own leaves show.
func TestEachCellShowsItsOwnLeaves(t *testing.T) {
	stand := &training.Stand{RowSpacing: 1, VineSpacing: 1, Length: 1, Top: 1}
	outward := mgl64.Vec3{0.8, 0, 0.6}
	for k := range 50 {
		for _, side := range []float64{-1, 1} {
			n := mgl64.Vec3{side * outward[0], 0, outward[2]}
			stand.Leaves = append(stand.Leaves, training.Leaf{
				Centre: mgl64.Vec3{side * 0.25, float64(k) / 50, 0.5}, Normal: n, Tip: mgl64.Vec3{0, 1, 0}, Area: 1e-4,
			})
		}
	}
	grid := canopy.FromStand(stand, canopy.Slope{})
	ray, thickness := canopy.NewRay(grid), canopy.NewThickness(grid)
	thickness.Toward(outward)
	for x, facing := range map[float64]float64{0.25: 1, -0.25: math.Abs(0.6*0.6 - 0.8*0.8)} {
		from := mgl64.Vec3{x, 0.5, 0.5}.Sub(outward.Mul(0.2))
		path, depth := ray.Path(from, outward), ray.Depth(thickness, from, outward)
		// Blades of 1 cm² overlap themselves by less than 1 %.
		if path == 0 || math.Abs(depth/path-facing) > 0.01 {
			t.Errorf("leaves at %+.2f show %.4f of their area, want %.4f", x, depth/path, facing)
		}
	}
}

// Leaf area without blades faces everywhere alike.
func TestLooseLeafAreaHasGOfOneHalf(t *testing.T) {
	grid := canopy.NewGrid(4, 4, 4, 1, 1, 1, canopy.Slope{})
	grid.FillBox(1, 0, 1, 2)
	ray, thickness := canopy.NewRay(grid), canopy.NewThickness(grid)
	for _, d := range someDirections {
		thickness.Toward(d)
		path, depth := ray.Path(mgl64.Vec3{}, d), ray.Depth(thickness, mgl64.Vec3{}, d)
		if want := 2 / d[2]; math.Abs(path-want) > 1e-5 || math.Abs(depth-want/2) > 1e-5 {
			t.Errorf("direction %v: path %.5f and depth %.5f, want %.5f and half of it", d, path, depth, want)
		}
	}
}
