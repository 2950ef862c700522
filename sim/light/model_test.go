package light

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

// invented is a wall of random leaves over a row of bunches, mirrored about the row line if asked.
func invented(seed uint64, leaves, bunches int, mirror bool) *training.Stand {
	random := rand.New(rand.NewPCG(seed, 0))
	s := &training.Stand{RowSpacing: 2.5, VineSpacing: 1.5, Length: 9, Top: 2}
	for range leaves {
		n := mgl64.Vec3{random.NormFloat64(), 0.4 * random.NormFloat64(), 0.4 * random.NormFloat64()}.Normalize()
		tip := n.Cross(mgl64.Vec3{0, 1, 0.01}).Normalize()
		at := mgl64.Vec3{random.NormFloat64() * 0.17, random.Float64() * 9, 0.9 + 1.05*random.Float64()}
		s.Leaves = append(s.Leaves, training.Leaf{Centre: at, Normal: n, Tip: tip, Area: 0.009})
	}
	for b := range bunches {
		at := mgl64.Vec3{0.06 * random.NormFloat64(), random.Float64() * 9, 1 + 0.04*random.NormFloat64()}
		s.Bunches = append(s.Bunches, training.Bunch{Centre: at, Radius: 0.04, Length: 0.14, Berries: 90, Seed: uint64(2 * b)})
	}
	if mirror {
		for i := range s.Leaves {
			l := &s.Leaves[i]
			l.Centre[0], l.Normal[0], l.Tip[0] = -l.Centre[0], -l.Normal[0], -l.Tip[0]
		}
		for i := range s.Bunches {
			s.Bunches[i].Centre[0] *= -1
		}
	}
	return s
}

func model(t *testing.T, stand *training.Stand, slope canopy.Slope) *Model {
	t.Helper()
	m, err := New(stand, Settings{Seed: 1, Slope: slope, Clumping: 1}, free)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func toSun(elevation_deg, azimuth_deg float64) mgl64.Vec3 {
	sinE, cosE := math.Sincos(mgl64.DegToRad(elevation_deg))
	sin, cos := math.Sincos(mgl64.DegToRad(azimuth_deg))
	return mgl64.Vec3{cosE * cos, cosE * sin, sinE}
}

// Over many directions the share of lit faces is the mean gap: the field is uniform in 0–1.
func TestLitShareIsTheMeanGap(t *testing.T) {
	m := model(t, invented(1, 4500, 250, false), canopy.Slope{})
	var at Instant
	lit, gaps, n := 0.0, 0.0, 0.0
	for elevation := 6.0; elevation < 80; elevation += 2 {
		for azimuth := -70.0; azimuth <= 70; azimuth += 10 {
			sun := toSun(elevation, azimuth)
			m.At(Sky{Sun: sun, Beam: 900}, &at)
			sample, _ := m.domes.Lattice.Sample(sun)
			for f := 1; f < len(m.Faces); f += 2 {
				gaps += canopy.Gap(m.omega(1, sun), m.domes.Along(f, &sample))
				if at.Lit[f] {
					lit++
				}
				n++
			}
		}
	}
	// 250 independent faces, each correlated over the sky: the standard error is below 0.01.
	if math.Abs(lit-gaps)/n > 0.02 {
		t.Errorf("lit share %.4f, mean gap %.4f", lit/n, gaps/n)
	}
	if gaps/n < 0.02 || gaps/n > 0.98 {
		t.Errorf("mean gap %.4f says nothing", gaps/n)
	}
}

// Without leaves every face sees half of the sky and half of the ground beside its own bunch, and
// nothing else (closed form: mean view 1/2 − what the bunch hides).
func TestViewsWithoutLeaves(t *testing.T) {
	m := model(t, invented(2, 0, 30, false), canopy.Slope{})
	for f := range m.Faces {
		sky, ground, own, leaves := m.Views(f)
		if math.Abs(own.Mean-0.5) > 1e-3 || math.Abs(sky.Mean-0.25) > 1e-3 || math.Abs(ground.Mean-0.25) > 2e-3 {
			t.Fatalf("face %d: sky %.4f, ground %.4f, own %.4f, want 0.25, 0.25, 0.50", f, sky.Mean, ground.Mean, own.Mean)
		}
		if math.Abs(leaves.Mean) > 3e-3 || leaves.Vector.Len() > 0.01 {
			t.Fatalf("face %d: sees leaves %+v in an empty vineyard", f, leaves)
		}
	}
}

// A mirrored vineyard under a mirrored sun has the mirrored light, face by face.
func TestMirroredVineyard(t *testing.T) {
	plain, mirrored := model(t, invented(4, 4000, 100, false), canopy.Slope{Across: 0.08}), model(t, invented(4, 4000, 100, true), canopy.Slope{Across: -0.08})
	// Faces of a bunch draw by their side: give the mirrored ones the draws of the other side.
	for f := 0; f < len(plain.Faces); f += 2 {
		mirrored.edge[f], mirrored.edge[f+1] = plain.edge[f+1], plain.edge[f]
		swap(mirrored.field, plain.field, f)
	}
	var a, b Instant
	differ := 0
	for hour := range 40 {
		sun := toSun(5+2*float64(hour), 9*float64(hour))
		m := sun
		m[0] = -m[0]
		plain.At(Sky{Sun: sun, Beam: 850, Diffuse: 90}, &a)
		mirrored.At(Sky{Sun: m, Beam: 850, Diffuse: 90}, &b)
		for f := range plain.Faces {
			if a.Lit[f] != b.Lit[f^1] {
				differ++
			}
			if math.Abs(a.Short[f].Mean-b.Short[f^1].Mean) > 1e-3*(1+a.Short[f].Mean) {
				t.Fatalf("hour %d face %d: light %.5f, mirrored %.5f", hour, f, a.Short[f].Mean, b.Short[f^1].Mean)
			}
		}
	}
	// A field within rounding of a gap may fall either way.
	if differ > 1 {
		t.Errorf("%d of 8000 faces are lit on one vineyard and not on its mirror image", differ)
	}
}

// swap gives the two faces of a bunch each other's phases.
func swap(to, from *Field, face int) {
	for k := range waves {
		left, right := face*waves+k, (face+1)*waves+k
		to.cos[left], to.cos[right] = from.cos[right], from.cos[left]
		to.sin[left], to.sin[right] = from.sin[right], from.sin[left]
	}
}

// The moment at which a face comes into or out of the sun by its dome lies within 2 minutes of that
// by direct rays, for a sun that climbs 0.2° and turns 0.15° a minute.
func TestMomentOfLightingAgreesWithRays(t *testing.T) {
	stand := invented(5, 4500, 200, false)
	m := model(t, stand, canopy.Slope{})
	grid := canopy.FromStand(stand, canopy.Slope{})
	ray, thickness := canopy.NewRay(grid), canopy.NewThickness(grid)
	minutes, faces := 120, 0
	off := 0.0
	wrong, turns, was := make([]int, len(m.Faces)), make([]int, len(m.Faces)), make([]bool, len(m.Faces))
	for k := range minutes {
		sun := toSun(15+0.2*float64(k), -20+0.15*float64(k))
		sample, _ := m.domes.Lattice.Sample(sun)
		field, omega := m.field.At(sun), m.omega(1, sun)
		thickness.Toward(sun)
		for f := 1; f < len(m.Faces); f += 2 {
			u := field.Of(f)
			byDome := u < canopy.Gap(omega, m.domes.Along(f, &sample))
			byRay := u < canopy.Gap(omega, ray.Depth(thickness, grid.Snap(m.domes.Points[f].At), sun))
			if byDome != byRay {
				wrong[f]++
			}
			if k > 0 && byRay != was[f] {
				turns[f]++
			}
			was[f] = byRay
		}
	}
	for f := range turns {
		if turns[f] > 0 {
			off += float64(wrong[f]) / float64(turns[f])
			faces++
		}
	}
	if faces < 50 {
		t.Fatalf("only %d faces change light in two hours: the test says nothing", faces)
	}
	if mean := off / float64(faces); mean > 2 {
		t.Errorf("faces change light %.2f minutes off on average, allowed 2", mean)
	} else {
		t.Logf("faces change light %.2f minutes off on average", mean)
	}
}

func TestModelStopsWhenTold(t *testing.T) {
	stop := errors.New("newer input")
	if _, err := New(invented(6, 100, 5, false), Settings{Clumping: 1}, func() error { return stop }); !errors.Is(err, stop) {
		t.Errorf("got %v, want the error of pace", err)
	}
}

func BenchmarkInstant(b *testing.B) {
	m, err := New(invented(7, 4500, 220, false), Settings{Seed: 1, Clumping: 1}, free)
	if err != nil {
		b.Fatal(err)
	}
	var at Instant
	for b.Loop() {
		m.At(Sky{Sun: toSun(35, 20), Beam: 850, Diffuse: 90}, &at)
	}
}

func BenchmarkModel(b *testing.B) {
	stand := invented(8, 4500, 220, false)
	for b.Loop() {
		if _, err := New(stand, Settings{Seed: 1, Clumping: 1}, free); err != nil {
			b.Fatal(err)
		}
	}
}
