package yardstick_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/canopy/yardstick"
	"rowlight/sim/training"
)

// scattered is an invented stand of random leaves that stick out of the period at all sides.
func scattered(seed uint64, leaves int, area float64) *training.Stand {
	random := rand.New(rand.NewPCG(seed, 0))
	s := &training.Stand{RowSpacing: 2.4, VineSpacing: 1.5, Length: 3, Top: 2}
	for range leaves {
		normal := unit(random)
		tip := normal.Cross(mgl64.Vec3{0.1, 1, 0.03}).Normalize()
		at := mgl64.Vec3{random.NormFloat64() * 0.5, 3.4*random.Float64() - 0.2, 0.5 + 1.4*random.Float64()}
		s.Leaves = append(s.Leaves, training.Leaf{Centre: at, Normal: normal, Tip: tip, Area: area * (0.2 + 1.6*random.Float64())})
	}
	return s
}

func unit(random *rand.Rand) mgl64.Vec3 {
	return mgl64.Vec3{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()}.Normalize()
}

// everyLeaf counts the leaves on a ray by trying all of them in all periods near enough, and gives the
// distance of the nearest. World heights: rows stand on the sloping ground, leaves keep their normals.
func everyLeaf(s *training.Stand, slope canopy.Slope, from, d mgl64.Vec3, periods int) (count int, nearest float64) {
	nearest = math.Inf(1)
	for i := -periods; i <= periods; i++ {
		for j := -periods; j <= periods; j++ {
			dx, dy := float64(i)*s.RowSpacing, float64(j)*s.Length
			move := mgl64.Vec3{dx, dy, dx*slope.Across + dy*slope.Along}
			for k := range s.Leaves {
				l := &s.Leaves[k]
				// The stand measures heights along the row from the ground under each of its points.
				centre := l.Centre.Add(move).Add(mgl64.Vec3{0, 0, (l.Centre[1] - from[1]) * slope.Along})
				t := centre.Sub(from).Dot(l.Normal) / d.Dot(l.Normal)
				if t > 0 && from.Add(d.Mul(t)).Sub(centre).Len() <= math.Sqrt(l.Area/math.Pi) {
					count++
					nearest = math.Min(nearest, t)
				}
			}
		}
	}
	return count, nearest
}

func TestCasterFindsWhatTryingEveryLeafFinds(t *testing.T) {
	for _, slope := range []canopy.Slope{{}, {Across: 0.15, Along: -0.1}} {
		stand := scattered(1, 60, 0.12)
		caster := yardstick.NewCaster(stand, slope)
		random := rand.New(rand.NewPCG(2, 0))
		met := 0
		for range 800 {
			from := mgl64.Vec3{3 * (random.Float64() - 0.5), 3 * random.Float64(), 2.4 * random.Float64()}
			d := unit(random)
			if rise := d[2] - d[0]*slope.Across - d[1]*slope.Along; math.Abs(rise) < 0.25 {
				continue // would need more periods than are tried
			}
			want, nearest := everyLeaf(stand, slope, from, d, 5)
			if got := caster.Count(from, d); got != want {
				t.Fatalf("slope %+v: ray %v %v meets %d leaves, want %d", slope, from, d, got, want)
			}
			leaf, distance, ok := caster.First(from, d)
			if ok != (want > 0) || ok != caster.Hit(from, d) || ok && math.Abs(distance-nearest) > 1e-9 {
				t.Fatalf("slope %+v: ray %v %v: first leaf %d at %g (%t), want %g", slope, from, d, leaf, distance, ok, nearest)
			}
			met += want
		}
		if met < 200 {
			t.Errorf("only %d leaves met: the test says nothing", met)
		}
	}
}

// The mean number of leaves on plumb rays is the projected leaf area per ground area, Σ A·|n_z|.
func TestMeanCountIsProjectedArea(t *testing.T) {
	stand := scattered(3, 300, 0.008)
	caster := yardstick.NewCaster(stand, canopy.Slope{})
	want := 0.0
	for _, l := range stand.Leaves {
		want += l.Area * math.Abs(l.Normal[2])
	}
	const n = 400
	count := 0
	for i := range n {
		for j := range n {
			x, y := (float64(i)+0.5)/n-0.5, (float64(j)+0.5)/n
			count += caster.Count(mgl64.Vec3{x * stand.RowSpacing, y * stand.Length, 0}, mgl64.Vec3{0, 0, 1})
		}
	}
	// A lattice of 6 × 7.5 mm over discs of 50 to 130 mm: some 0.2 %.
	if got := float64(count) / (n * n) * stand.RowSpacing * stand.Length; math.Abs(got-want) > 0.003*want {
		t.Errorf("rays meet %.5f m² of leaves seen from above, want %.5f", got, want)
	}
}

// A level ray ends after the farthest distance; one above or below all leaves meets none.
func TestRaysThatMeetNoLeaf(t *testing.T) {
	caster := yardstick.NewCaster(scattered(4, 150, 0.01), canopy.Slope{})
	if caster.Hit(mgl64.Vec3{0, 0, 2.5}, mgl64.Vec3{1, 0, 0}) || caster.Hit(mgl64.Vec3{0, 0, 2.5}, mgl64.Vec3{0.6, 0, 0.8}) || caster.Hit(mgl64.Vec3{0, 0, 0.1}, mgl64.Vec3{0, 0, -1}) {
		t.Error("a ray outside the canopy meets a leaf")
	}
	if !caster.Hit(mgl64.Vec3{0, 0.4, 1.2}, mgl64.Vec3{1, 0.013, 0}.Normalize()) {
		t.Error("a level ray through a hundred rows meets no leaf")
	}
	if yardstick.NewCaster(&training.Stand{RowSpacing: 2, Length: 4}, canopy.Slope{}).Hit(mgl64.Vec3{0, 0, 0}, mgl64.Vec3{0, 0, 1}) {
		t.Error("an empty canopy holds a leaf")
	}
}

func BenchmarkHit(b *testing.B) {
	stand := formStand(b, "vsp-spurs", 1)
	caster := yardstick.NewCaster(stand, canopy.Slope{})
	faces := stand.Faces()
	random := rand.New(rand.NewPCG(5, 0))
	directions := make([]mgl64.Vec3, 512)
	for i := range directions {
		directions[i] = unit(random)
		directions[i][2] = math.Abs(directions[i][2]) + 0.1
		directions[i] = directions[i].Normalize()
	}
	i := 0
	for b.Loop() {
		caster.Hit(faces[i%len(faces)].Point, directions[i%len(directions)])
		i++
	}
}

func BenchmarkNewCaster(b *testing.B) {
	stand := formStand(b, "vsp-spurs", 1)
	for b.Loop() {
		yardstick.NewCaster(stand, canopy.Slope{})
	}
}
