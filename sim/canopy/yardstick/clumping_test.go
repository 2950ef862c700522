package yardstick_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/canopy/yardstick"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

func free() error { return nil }

// wall is an invented wall of leaves at random about a row of bunches, each leaf hung the given number of times
// in the same place.
func wall(seed uint64, times int) *training.Stand {
	random := rand.New(rand.NewPCG(seed, 0))
	s := &training.Stand{RowSpacing: 3, VineSpacing: 1.5, Length: 9, Top: 1.8}
	for range 2000 {
		normal := mgl64.Vec3{random.NormFloat64(), 0.6 * random.NormFloat64(), 0.6 * random.NormFloat64()}.Normalize()
		at := mgl64.Vec3{0.5 * (random.Float64() - 0.5), 9 * random.Float64(), 0.6 + 1.1*random.Float64()}
		leaf := training.Leaf{Centre: at, Normal: normal, Tip: normal.Cross(mgl64.Vec3{0, 1, 0.1}).Normalize(), Area: 0.01}
		for range times {
			s.Leaves = append(s.Leaves, leaf)
		}
	}
	for b := range 300 {
		at := mgl64.Vec3{0.1 * random.NormFloat64(), 0.03 * float64(b), 0.9 + 0.1*random.NormFloat64()}
		s.Bunches = append(s.Bunches, training.Bunch{Centre: at, Radius: 0.04, Length: 0.13, Seed: random.Uint64()})
	}
	return s
}

func clumpingOf(t *testing.T, s *training.Stand, slope canopy.Slope) *yardstick.Clumping {
	t.Helper()
	c, err := yardstick.Fit(s, canopy.FromStand(s, slope), slope, free)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// mean is the mean Ω of both sides over some directions.
func mean(c *yardstick.Clumping) float64 {
	sum, n := 0.0, 0.0
	for _, side := range scenario.Sides {
		for height := 20.0; height <= 60; height += 10 {
			for turn := -60.0; turn <= 60; turn += 20 {
				sum, n = sum+c.Toward(side, yardstick.Direction(scenario.Right, height, turn)), n+1
			}
		}
	}
	return sum / n
}

// Leaves at random have Ω = 1, on a slope too; leaves that hang two by two in one place do the work of half of
// them (definition of Ω). Three walls of 300 bunches know Ω to some 0.03.
func TestClumpingOfKnownWalls(t *testing.T) {
	for _, c := range []struct {
		name  string
		times int
		slope canopy.Slope
		want  float64
	}{{"at random", 1, canopy.Slope{}, 1}, {"on a slope", 1, canopy.Slope{Across: 0.15, Along: 0.1}, 1}, {"two by two", 2, canopy.Slope{}, 0.5}} {
		got := 0.0
		for seed := range uint64(3) {
			got += mean(clumpingOf(t, wall(seed, c.times), c.slope)) / 3
		}
		if math.Abs(got-c.want) > 0.08*c.want {
			t.Errorf("%s: Ω is %.3f, want %.2f", c.name, got, c.want)
		}
		t.Logf("%s: Ω is %.3f", c.name, got)
	}
}

// A stand mirrored about the row line has the Ω of each side on the other.
func TestMirroredStandHasMirroredClumping(t *testing.T) {
	plain, other := wall(7, 1), wall(7, 1)
	for i := range other.Leaves {
		l := &other.Leaves[i]
		l.Centre[0], l.Normal[0], l.Tip[0] = -l.Centre[0], -l.Normal[0], -l.Tip[0]
	}
	for i := range other.Bunches {
		other.Bunches[i].Centre[0] *= -1
	}
	a, b := clumpingOf(t, plain, canopy.Slope{Across: 0.1}), clumpingOf(t, other, canopy.Slope{Across: -0.1})
	for height := 3.0; height < 90; height += 7 {
		d := yardstick.Direction(scenario.Right, height, height-50)
		// One ray in 600 that grazes a leaf may fall either way.
		if l, r := a.Toward(scenario.Left, d), b.Toward(scenario.Right, d); math.Abs(l-r) > 0.01 {
			t.Errorf("at %.0f°: Ω is %.4f on the left and %.4f on the right of the mirror image", height, l, r)
		}
	}
}

func TestClumpingWithoutLeavesOrBunches(t *testing.T) {
	bare := wall(1, 1)
	bare.Leaves = nil
	empty := wall(1, 1)
	empty.Bunches = nil
	for _, s := range []*training.Stand{bare, empty} {
		if got := mean(clumpingOf(t, s, canopy.Slope{})); got != 1 {
			t.Errorf("Ω is %g with %d leaves and %d bunches, want 1", got, len(s.Leaves), len(s.Bunches))
		}
	}
}

func TestFitStopsWhenTold(t *testing.T) {
	stop := errors.New("newer input")
	s := wall(1, 1)
	if _, err := yardstick.Fit(s, canopy.FromStand(s, canopy.Slope{}), canopy.Slope{}, func() error { return stop }); !errors.Is(err, stop) {
		t.Errorf("got %v, want the error of pace", err)
	}
}

// Spots lie on the bunch, on the side that they are drawn for, and see the sun past their own bunch.
func TestSpotsSeeTheSun(t *testing.T) {
	b := &training.Bunch{Centre: mgl64.Vec3{0.1, 2, 1}, Radius: 0.04, Length: 0.14, Seed: 12345}
	for _, side := range scenario.Sides {
		for _, turn := range []float64{-80, 0, 60} {
			sun := yardstick.Direction(side, 40, turn)
			for ray := range 200 {
				at := yardstick.Spot(b, side, sun, ray).Sub(b.Centre)
				x, y, z := at[0]/b.Radius, at[1]/b.Radius, at[2]/(b.Length/2)
				facing := x*sun[0]/b.Radius + y*sun[1]/b.Radius + z*sun[2]/(b.Length/2)
				outward := x
				if side == scenario.Left {
					outward = -x
				}
				if math.Abs(x*x+y*y+z*z-1) > 1e-9 || outward < 0 || facing <= 0 {
					t.Fatalf("side %d, ray %d: (%.3f, %.3f, %.3f) of the bunch, facing %.3f", side, ray, x, y, z, facing)
				}
			}
		}
	}
}

// The places that stand for faces lie at the mean depth of the berries seen from their side, 2/3 of the half width
// (geometry), by 20,000 spots.
func TestPlacesAreTheMeanOfSpots(t *testing.T) {
	s := wall(1, 1)
	b := &s.Bunches[0]
	sum := 0.0
	const n = 20_000
	for ray := range n {
		sum += yardstick.Spot(b, scenario.Right, mgl64.Vec3{1, 0, 0}, ray)[0] - b.Centre[0]
	}
	place := yardstick.Places(s)[1].At[0] - b.Centre[0]
	if math.Abs(sum/n-place) > 0.01*b.Radius {
		t.Errorf("spots lie %.5f m out on average, the place %.5f", sum/n, place)
	}
}

func BenchmarkFit(b *testing.B) {
	s := formStand(b, "vsp-spurs", 1)
	grid := canopy.FromStand(s, canopy.Slope{})
	for b.Loop() {
		if _, err := yardstick.Fit(s, grid, canopy.Slope{}, free); err != nil {
			b.Fatal(err)
		}
	}
}
