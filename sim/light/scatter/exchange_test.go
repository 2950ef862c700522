package scatter

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/known"
)

// Every part gets in uniform light as much as it sends out at unit radiosity, and gives to every other part
// what it gets from it (conservation and reciprocity), on level ground and on slopes, for leaves that face
// everywhere alike, outward and up.
func TestExchangeIsBalanced(t *testing.T) {
	hedgerow := known.Hedgerow{Spacing: 2.5, Width: 0.5, Bottom: 0.8, Top: 2, Density: 5}
	for name, g := range map[string]*canopy.Projection{
		"alike":   canopy.Uniform(),
		"outward": canopy.Custom(func(d mgl64.Vec3) float64 { return math.Abs(d[0]) }),
		"flat":    canopy.Custom(func(d mgl64.Vec3) float64 { return d[2] }),
	} {
		for _, slope := range []canopy.Slope{{}, {Across: 0.2, Along: -0.3}} {
			grid := canopy.NewGrid(25, 4, 20, hedgerow.Spacing, 4, hedgerow.Top, slope)
			grid.FillBox(hedgerow.Width/2, hedgerow.Bottom, hedgerow.Top, hedgerow.Density)
			m, err := New(grid, g, Settings{Clumping: 0.8, Strips: 16}, func() error { return nil })
			if err != nil {
				t.Fatal(err)
			}
			e := m.exchange
			for i := range m.parts() {
				got := e.lost[i]
				for j := range m.parts() {
					got += e.between[i*m.parts()+j]
					if e.between[i*m.parts()+j] != e.between[j*m.parts()+i] {
						t.Fatalf("%s, slope %+v: parts %d and %d exchange unequal light", name, slope, i, j)
					}
				}
				if want := e.out[i]; math.Abs(got-want) > 1e-9*want {
					t.Fatalf("%s, slope %+v: part %d of %d gets %.12f in uniform light, sends %.12f", name, slope, i, m.parts(), got, want)
				}
			}
		}
	}
}

// On any slope the directions of the bearings fill the half of all directions that points away from the
// ground, and uniform light falls on the ground by the area of the slope (closed form).
func TestBearingsFillTheHalf(t *testing.T) {
	for _, slope := range []canopy.Slope{{}, {Across: 0.25}, {Along: -0.3}, {Across: -0.2, Along: 0.4}} {
		solidAngle, flux := 0.0, 0.0
		for _, b := range bearings(slope, 16, 4) {
			for _, s := range b.slants {
				solidAngle += s.solidAngle
				flux += s.solidAngle * s.rise / math.Pi
				for _, to := range s.to {
					if math.Abs(to.Len()-1) > 1e-12 {
						t.Fatalf("slope %+v: direction %v is no unit vector", slope, to)
					}
					rise := to[2] - slope.Across*to[0] - slope.Along*to[1]
					if math.Abs(rise-s.rise) > 1e-12 {
						t.Fatalf("slope %+v: direction %v rises by %.6f, counted %.6f", slope, to, rise, s.rise)
					}
				}
			}
		}
		if math.Abs(solidAngle-2*math.Pi) > 1e-3 {
			t.Errorf("slope %+v: directions fill %.6f sr, want 2π", slope, solidAngle)
		}
		area := mgl64.Vec3{slope.Across, slope.Along, 1}.Len()
		if math.Abs(flux-area) > 1e-3 {
			t.Errorf("slope %+v: unit light sends %.6f to the ground under 1 m² of plan, want %.6f", slope, flux, area)
		}
	}
}

// A way through the section has the length that geometry gives it, whatever cells it crosses.
func TestWalkKeepsLength(t *testing.T) {
	grid := canopy.NewGrid(10, 2, 8, 2.5, 2, 2, canopy.Slope{})
	grid.FillBox(2, 0, 2, 1)
	l := looker{
		grid: grid, thickness: canopy.NewThickness(grid), columns: 10, layers: 8,
		clumping: 1, pace: func() error { return nil },
	}
	s, err := newSection(&l, 4)
	if err != nil {
		t.Fatal(err)
	}
	for _, angle := range []float64{0.02, 0.7, math.Pi / 2, 2.5, -0.3, -math.Pi / 4, -2} {
		sin, cos := math.Sincos(angle)
		steps, end := s.walk(nil, 0.3, 1.25, cos, sin)
		length := 0.75 / sin
		if sin < 0 {
			length = -1.25 / sin
		}
		depth := 0.0
		for _, step := range steps {
			depth += step.length
		}
		if math.Abs(depth-length) > 1e-9*length || math.Abs(end-(0.3+length*cos)) > 1e-9*length {
			t.Errorf("angle %.2f: length %.9f ends at %.9f, want %.9f and %.9f", angle, depth, end, length, 0.3+length*cos)
		}
	}
}

// A way that meets cell corners exactly passes cells without length, which must not spoil the others.
func TestWaysThroughCorners(t *testing.T) {
	grid := canopy.NewGrid(8, 2, 8, 2, 2, 2, canopy.Slope{})
	grid.FillBox(1, 0, 2, 3)
	settings := Settings{Clumping: 1, Strips: 4, Resolution: Resolution{Across: 0.25, Up: 0.25, Spacing: 1, Bearings: 4, Slants: 2}}
	m, err := New(grid, nil, settings, func() error { return nil })
	if err != nil {
		t.Fatal(err)
	}
	var beam Source
	for _, sun := range []mgl64.Vec3{{1, 0, 1}, {-1, 0, 1}, {1, 0, 2}, {0, 0, 1}} {
		m.Beam(sun.Normalize(), &beam)
		if want := 2 * sun.Normalize()[2]; math.Abs(beam.Total()-want) > 1e-9 {
			t.Errorf("sun %v brings %g, want %g", sun, beam.Total(), want)
		}
	}
}
