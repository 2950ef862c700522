package training

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

// Upright leaves that face along x, all of area a, fill a stand with chance placing: rods meet them as
// a Poisson process, leaf layers = leaf area over the face of the row, gaps = e^-layers.
func TestPointQuadratMatchesPoisson(t *testing.T) {
	const radius, count, length, height = 0.05, 6000, 40.0, 1.0
	s := &Stand{Length: length, VineSpacing: 2}
	golden := (math.Sqrt(5) - 1) / 2
	for i := range count {
		y := math.Mod(float64(i)*golden, 1) * length
		z := 0.5 + math.Mod(float64(i*i%7919)*0.7548776662, 1)*height
		s.Leaves = append(s.Leaves, Leaf{
			Centre: mgl64.Vec3{0.3 * math.Sin(float64(i)), y, z},
			Normal: mgl64.Vec3{1, 0, 0}, Tip: mgl64.Vec3{0, 0, -1}, Area: math.Pi * radius * radius,
		})
	}
	layers := count * math.Pi * radius * radius / (length * height)
	r := newRods(s)
	sum, gaps := 0.0, 0.0
	const pushes = 4000
	for i := range pushes {
		z := 0.6 + 0.8*math.Mod(float64(i)*0.5698402909, 1)
		hit := r.leaves(math.Inf(-1), math.Inf(1), length*float64(i)/pushes, z)
		sum += float64(hit) / pushes
		if hit == 0 {
			gaps += 1.0 / pushes
		}
	}
	within(t, "leaf layers", sum, 0.95*layers, 1.05*layers)
	within(t, "gaps", gaps, math.Exp(-layers)-0.04, math.Exp(-layers)+0.04)
}

// One leaf, by hand: a disc of radius 5 cm tilted 60° from the vertical about the row shows half
// its height to a rod across the row.
func TestRodMeetsTiltedDisc(t *testing.T) {
	tilt := math.Pi / 3
	shoot := Limb{Points: []mgl64.Vec3{{0, 9.9, 1}}, Radius: []float64{0.004}}
	s := &Stand{Length: 10, VineSpacing: 2, Shoots: []Limb{shoot}, Leaves: []Leaf{{
		Centre: mgl64.Vec3{0.2, 9.99, 1},
		Normal: mgl64.Vec3{math.Cos(tilt), 0, math.Sin(tilt)},
		Tip:    mgl64.Vec3{math.Sin(tilt), 0, -math.Cos(tilt)},
		Area:   math.Pi * 0.05 * 0.05,
	}}}
	r := newRods(s)
	everywhere := func(y, z float64) int { return r.leaves(math.Inf(-1), math.Inf(1), y, z) }
	for _, c := range []struct {
		y, z float64
		want int
	}{{9.99, 1, 1}, {9.99, 1.024, 1}, {9.99, 1.026, 0}, {0.02, 1, 1}, {0.05, 1, 0}, {5, 1, 0}} {
		if got := everywhere(c.y, c.z); got != c.want {
			t.Errorf("a rod at y %g, z %g meets %d leaves, want %d", c.y, c.z, got, c.want)
		}
	}
	if r.leaves(0.3, math.Inf(1), 9.99, 1) != 0 {
		t.Error("a rod meets a leaf that lies behind its start")
	}
	m := s.Measure()
	within(t, "inclination", m.Inclination_deg, 30-1e-9, 30+1e-9)
}

func TestBareStandMeasuresNothing(t *testing.T) {
	s := &Stand{Length: 10, VineSpacing: 2}
	if m := s.Measure(); m != (Measures{}) {
		t.Errorf("measures %+v", m)
	}
}
