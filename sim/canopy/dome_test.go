package canopy_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/training"
)

func free() error { return nil }

// scattered is an invented stand of random leaves in a half-metre wall.
func scattered(seed uint64, mirror bool) *training.Stand {
	random := rand.New(rand.NewPCG(seed, 0))
	s := &training.Stand{RowSpacing: 2.5, VineSpacing: 1.5, Length: 6, Top: 2}
	for range 3000 {
		normal := mgl64.Vec3{0.8 + 0.4*random.NormFloat64(), 0.4 * random.NormFloat64(), 0.6 + 0.3*random.NormFloat64()}.Normalize()
		leaf := training.Leaf{
			Centre: mgl64.Vec3{random.NormFloat64() * 0.2, random.Float64() * 6, 0.9 + 1.05*random.Float64()},
			Normal: normal, Tip: normal.Cross(mgl64.Vec3{0.1, 0.9, -0.3}).Normalize(), Area: 0.009,
		}
		if mirror {
			leaf.Centre[0], leaf.Normal[0], leaf.Tip[0] = -leaf.Centre[0], -leaf.Normal[0], -leaf.Tip[0]
		}
		s.Leaves = append(s.Leaves, leaf)
	}
	return s
}

func TestEmptyCanopyLetsAllLightThrough(t *testing.T) {
	grid := canopy.FromStand(&training.Stand{RowSpacing: 2.5, VineSpacing: 1.5, Length: 6, Top: 2}, canopy.Slope{})
	ray := canopy.NewRay(grid)
	lattice := canopy.Full(10)
	for i := range lattice.Size() {
		if path := ray.Path(mgl64.Vec3{0, 1, 1}, lattice.Direction(i)); path != 0 {
			t.Fatalf("direction %v: path %g in an empty canopy", lattice.Direction(i), path)
		}
	}
}

func TestGridKeepsLeafArea(t *testing.T) {
	stand := scattered(3, false)
	grid := canopy.FromStand(stand, canopy.Slope{Across: 0.1})
	want := 0.009 * float64(len(stand.Leaves))
	if got := grid.LeafArea(); math.Abs(got-want) > 1e-5*want {
		t.Errorf("grid holds %.5f m² of leaves, the stand %.5f", got, want)
	}
}

// A vertical ray's path, averaged over the ground, is the leaf area index, with or without a slope (geometry).
func TestVerticalPathIsLeafAreaIndex(t *testing.T) {
	stand := scattered(4, false)
	for _, slope := range []canopy.Slope{{}, {Across: 0.2, Along: -0.1}} {
		grid := canopy.FromStand(stand, slope)
		ray := canopy.NewRay(grid)
		sum, n := 0.0, 0
		for x := -1.25 + 0.0005; x < 1.25; x += 0.001 {
			for y := 0.0155; y < 6; y += 0.031 {
				sum += ray.Path(mgl64.Vec3{x, y, x * slope.Across}, mgl64.Vec3{0, 0, 1})
				n++
			}
		}
		want := 0.009 * 3000 / (2.5 * 6)
		if got := sum / float64(n); math.Abs(got-want) > 0.002*want && slope.Along == 0 {
			t.Errorf("slope %+v: mean vertical path %.4f, leaf area index %.4f", slope, got, want)
		}
	}
}

// A path is the sum of the densities at places a millimetre apart on it, wherever it leaves the period of the row.
func TestPathIsASumOfSmallSteps(t *testing.T) {
	const (
		nx, ny, nz = 7, 5, 6
		edge       = 0.3
		across     = 0.1
		along      = -0.07
	)
	grid := canopy.NewGrid(nx, ny, nz, nx*edge, ny*edge, nz*edge, canopy.Slope{Across: across, Along: along})
	random := rand.New(rand.NewPCG(11, 0))
	var density [nx][ny][nz]float64
	for i := range 90 {
		x, y, z := i%nx, i/nx%ny, random.IntN(nz)
		area := 0.1 * random.Float64()
		at := (float64(x)+0.5)*edge - nx*edge/2
		grid.AddArea(mgl64.Vec3{at, (float64(y) + 0.5) * edge, (float64(z)+0.5)*edge + at*across}, area)
		density[x][y][z] += area / (edge * edge * edge)
	}
	cell := func(place float64, n int) int { return (int(math.Floor(place/edge))%n + n) % n }
	ray := canopy.NewRay(grid)
	for range 400 {
		from := mgl64.Vec3{2 * (random.Float64() - 0.5), 3 * (random.Float64() - 0.5), 0.9}
		d := mgl64.Vec3{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()}.Normalize()
		rise := d[2] - d[0]*across - d[1]*along
		if math.Abs(rise) < 0.02 {
			continue
		}
		const step = 0.001
		want := 0.0
		for way := step / 2; ; way += step {
			height := from[2] - from[0]*across + way*rise
			if height < 0 || height >= nz*edge {
				break
			}
			want += step * density[cell(from[0]+way*d[0]+nx*edge/2, nx)][cell(from[1]+way*d[1], ny)][int(height/edge)]
		}
		// Each border that is met may be off by half a step.
		if got := ray.Path(from, d); math.Abs(got-want) > 0.01+0.002*want {
			t.Fatalf("from %.3v along %.3v: path %.4f, by small steps %.4f", from, d, got, want)
		}
	}
}

// Without blades a dome agrees to rounding with direct rays from the same place, for points snapped to the
// phase of the dome.
func TestDomeAgreesWithDirectRays(t *testing.T) {
	leaves := scattered(5, false)
	grid := canopy.NewGrid(40, 60, 24, 2.5, 6, 2.1, canopy.Slope{Across: 0.05})
	for _, leaf := range leaves.Leaves {
		grid.AddArea(leaf.Centre, leaf.Area)
	}
	random := rand.New(rand.NewPCG(9, 9))
	points := somePoints(grid, random)
	domes := domesOf(t, grid, canopy.Half(3), points)
	ray := canopy.NewRay(grid)
	for i := range domes.Lattice.Size() {
		for k, p := range points {
			want := 0.5 * ray.Path(p.At, p.InFrame(domes.Lattice.Direction(i)))
			if want > 10 { // opaque: both are lower bounds
				continue
			}
			if got := float64(domes.Depth(i)[k]); math.Abs(got-want) > 1e-5*(1+want) {
				t.Fatalf("direction %d point %d: dome %.6f, ray %.6f", i, k, got, want)
			}
		}
	}
}

// With blades and between the directions of a lattice the gap errs, root mean square over the sky, by at
// most 0.025: a third of a degree on a gap that a leaf opens over 15°, about a minute of the sun's way.
func TestDomeBetweenItsDirections(t *testing.T) {
	grid := canopy.FromStand(scattered(5, false), canopy.Slope{Across: 0.05})
	random := rand.New(rand.NewPCG(9, 9))
	points := somePoints(grid, random)
	domes := domesOf(t, grid, canopy.Half(2.5), points)
	ray, thickness := canopy.NewRay(grid), canopy.NewThickness(grid)
	squares, n := 0.0, 0
	for range 2000 {
		k := random.IntN(len(points))
		elevation, azimuth := random.Float64()*1.4+0.06, (random.Float64()-0.5)*math.Pi
		local := mgl64.Vec3{math.Cos(elevation) * math.Cos(azimuth), math.Cos(elevation) * math.Sin(azimuth), math.Sin(elevation)}
		sample, ok := domes.Lattice.Sample(local)
		if !ok {
			t.Fatalf("direction %v lies outside the lattice", local)
		}
		d := points[k].InFrame(local)
		thickness.Toward(d)
		miss := math.Exp(-domes.Along(k, &sample)) - math.Exp(-ray.Depth(thickness, points[k].At, d))
		squares += miss * miss
		n++
	}
	if rms := math.Sqrt(squares / float64(n)); rms > 0.025 {
		t.Errorf("interpolated gap misses by %.4f rms, allowed 0.025", rms)
	} else {
		t.Logf("interpolated gap misses by %.4f rms", rms)
	}
}

// somePoints lie about the row line at fruit height, every second mirrored, at places where domes start.
func somePoints(grid *canopy.Grid, random *rand.Rand) []canopy.Point {
	points := make([]canopy.Point, 60)
	for i := range points {
		at := grid.Snap(mgl64.Vec3{0.3 * (random.Float64() - 0.5), 6 * random.Float64(), 0.8 + 0.4*random.Float64()})
		points[i] = canopy.Point{At: at, Mirrored: i%2 == 1}
	}
	return points
}

func domesOf(t *testing.T, grid *canopy.Grid, lattice canopy.Lattice, points []canopy.Point) *canopy.Domes {
	t.Helper()
	domes, err := canopy.NewDomes(grid, lattice, points, free)
	if err != nil {
		t.Fatal(err)
	}
	return domes
}

// A canopy mirrored about the row line gives mirrored domes.
func TestMirroredCanopyGivesMirroredDomes(t *testing.T) {
	a, b := canopy.FromStand(scattered(6, false), canopy.Slope{}), canopy.FromStand(scattered(6, true), canopy.Slope{})
	var left, right []canopy.Point
	for k := range 40 {
		at := mgl64.Vec3{0.21, 0.137 * float64(k), 1}
		right = append(right, canopy.Point{At: at})
		at[0] = -at[0]
		left = append(left, canopy.Point{At: at, Mirrored: true})
	}
	rights, lefts := domesOf(t, a, canopy.Half(6), right), domesOf(t, b, canopy.Half(6), left)
	for i := range rights.Lattice.Size() {
		for k, want := range rights.Depth(i) {
			if got := lefts.Depth(i)[k]; math.Abs(float64(got-want)) > 1e-4*(1+float64(want)) && want < 10 {
				t.Fatalf("direction %d point %d: mirrored %.6f, plain %.6f", i, k, got, want)
			}
		}
	}
}

func TestSolidAnglesFillTheSky(t *testing.T) {
	for _, lattice := range []canopy.Lattice{canopy.Full(3), canopy.FullDown(6)} {
		sum := 0.0
		for i := range lattice.Size() {
			sum += lattice.SolidAngle(i)
		}
		if math.Abs(sum-2*math.Pi) > 1e-9 {
			t.Errorf("solid angles add up to %.9f, want 2π", sum)
		}
	}
}

func TestDomesStopWhenTold(t *testing.T) {
	stop := errors.New("newer input")
	grid := canopy.FromStand(scattered(7, false), canopy.Slope{})
	calls := 0
	_, err := canopy.NewDomes(grid, canopy.Half(3), []canopy.Point{{At: mgl64.Vec3{0, 1, 1}}}, func() error {
		if calls++; calls == 5 {
			return stop
		}
		return nil
	})
	if !errors.Is(err, stop) || calls != 5 {
		t.Errorf("got error %v after %d calls, want the error of the fifth call", err, calls)
	}
}

// benchPoints are 400 places in the fruit zone of a stand.
func benchPoints() (*canopy.Grid, []canopy.Point) {
	grid := canopy.FromStand(scattered(8, false), canopy.Slope{})
	random := rand.New(rand.NewPCG(1, 1))
	points := make([]canopy.Point, 400)
	for i := range points {
		points[i] = canopy.Point{At: mgl64.Vec3{0.2 * (random.Float64() - 0.5), 6 * random.Float64(), 0.85 + 0.2*random.Float64()}, Mirrored: i%2 == 0}
	}
	return grid, points
}

// BenchmarkDomes makes the domes of all points in one stream.
func BenchmarkDomes(b *testing.B) {
	grid, points := benchPoints()
	for b.Loop() {
		if _, err := canopy.NewDomes(grid, canopy.Half(3), points, free); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSingleRays sends the rays of the same domes one by one.
func BenchmarkSingleRays(b *testing.B) {
	grid, points := benchPoints()
	ray, lattice := canopy.NewRay(grid), canopy.Half(3)
	for b.Loop() {
		for _, p := range points {
			for k := range lattice.Size() {
				ray.Path(p.At, lattice.Direction(k))
			}
		}
	}
}
