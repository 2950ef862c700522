package scatter_test

import (
	"errors"
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"gonum.org/v1/gonum/floats"

	"rowlight/sim/canopy"
	"rowlight/sim/light"
	"rowlight/sim/light/scatter"
	"rowlight/sim/scenario"
)

// Furnace: in uniform light from the sky, over a white floor, among leaves that absorb nothing, the light is
// uniform everywhere: on the floor, out into the sky, and at every bunch from all around. It holds for
// leaves that stand upright, lie flat, and for the leaves of real stands.
func TestFurnace(t *testing.T) {
	vsp := stand(t, "vsp-spurs")
	projections := map[string]*canopy.Projection{
		"upright": canopy.Custom(func(d mgl64.Vec3) float64 { return 2 / math.Pi * math.Hypot(d[0], d[1]) }),
		"flat":    canopy.Custom(func(d mgl64.Vec3) float64 { return d[2] }),
		"real":    nil,
	}
	for name, g := range projections {
		m := model(t, canopy.FromStand(vsp, canopy.Slope{}), g, scatter.Resolution{})
		var s scatter.Solution
		band(t, m, 1, 1).At(m.Sky(), &s)
		for strip, got := range s.Strips {
			if math.Abs(got-1) > 1e-4 {
				t.Errorf("%s leaves: floor strip %d gets %.6f of uniform light", name, strip, got)
			}
		}
		if math.Abs(s.Up/m.Width()-1) > 1e-6 {
			t.Errorf("%s leaves: %.8f of uniform light goes up", name, s.Up/m.Width())
		}
		r, err := m.Receivers(places(vsp), nil, free)
		if err != nil {
			t.Fatal(err)
		}
		n := len(vsp.Faces())
		leaves, floor, sky := make([]light.Broad, n), make([]light.Broad, n), make([]light.Broad, n)
		r.Leaves(&s, leaves)
		r.Floor(&s, floor)
		r.Sky(sky)
		for i := range n {
			mean := leaves[i].Mean + floor[i].Mean + sky[i].Mean
			vector := leaves[i].Vector.Add(floor[i].Vector).Add(sky[i].Vector)
			if math.Abs(mean-1) > 1e-4 || vector.Len() > 1e-4 {
				t.Fatalf("%s leaves: face %d gets %.6f and %v of uniform light", name, i, mean, vector)
			}
		}
	}
}

// Energy: what comes in is absorbed by leaves and floor or goes out, for every form, sun height and bearing,
// band and slope. 0.5 % is allowed; the exchange keeps it to rounding and to the 1e-11 at which ways end.
func TestEnergyCloses(t *testing.T) {
	for _, form := range scenario.Forms() {
		for _, slope := range []canopy.Slope{{}, {Across: 0.15, Along: 0.1}} {
			m := standModel(t, stand(t, form.Key), slope)
			for _, omega := range []float64{scatter.LeafPAR, scatter.LeafNIR} {
				b := band(t, m, omega, 0.25)
				firsts := []*scatter.Source{m.Sky()}
				for elevation := 2.0; elevation < 90; elevation += 8 {
					beam := new(scatter.Source)
					m.Beam(toSun(elevation, 37*elevation), beam)
					firsts = append(firsts, beam)
				}
				for k, first := range firsts {
					var s scatter.Solution
					b.At(first, &s)
					area := m.Width() / strips * mgl64.Vec3{slope.Across, slope.Along, 1}.Len()
					out := floats.Sum(s.Cells)*(1-omega) + floats.Sum(s.Strips)*area*(1-0.25) + s.Up
					if in := first.Total(); math.Abs(out-in) > 1e-9*in || in < 0 {
						t.Errorf("%s, slope %+v, ω %.2f, source %d: %.9f comes in, %.9f is found", form.Key, slope, omega, k, in, out)
					}
				}
			}
		}
	}
}

// The beam brings to the vineyard what falls on its ground area, and the sky its horizontal irradiance
// (closed form).
func TestSourcesBringAllLight(t *testing.T) {
	m := standModel(t, stand(t, "vsp-spurs"), canopy.Slope{})
	for _, elevation := range []float64{0.2, 3, 30, 88} {
		beam := new(scatter.Source)
		m.Beam(toSun(elevation, 50), beam)
		want := m.Width() * math.Sin(mgl64.DegToRad(elevation))
		if got := beam.Total(); math.Abs(got-want) > 1e-9*want {
			t.Errorf("sun at %.1f°: beam brings %.9f W/m, want %.9f", elevation, got, want)
		}
	}
	if got := m.Sky().Total(); math.Abs(got-m.Width()) > 1e-5 {
		t.Errorf("sky brings %.7f W/m, want %.7f", got, m.Width())
	}
	dark := new(scatter.Source)
	for _, sun := range []mgl64.Vec3{toSun(-1, 0), {}} {
		if m.Beam(sun, dark); dark.Total() != 0 {
			t.Errorf("sun %v under the horizon brings %g", sun, dark.Total())
		}
	}
}

// Black leaves over black ground scatter nothing.
func TestBlackLeavesScatterNothing(t *testing.T) {
	s := stand(t, "sprawl")
	m := standModel(t, s, canopy.Slope{})
	r, err := m.Receivers(places(s), half, free)
	if err != nil {
		t.Fatal(err)
	}
	beam, solution := new(scatter.Source), new(scatter.Solution)
	m.Beam(toSun(40, 60), beam)
	band(t, m, 0, 0).At(beam, solution)
	into := make([]light.Broad, len(s.Faces()))
	for _, find := range []func(*scatter.Solution, []light.Broad){r.Leaves, r.Floor} {
		find(solution, into)
		for i, got := range into {
			if got != (light.Broad{}) {
				t.Fatalf("face %d gets %+v from black surroundings", i, got)
			}
		}
	}
	caught := floats.Sum(solution.Cells) + floats.Sum(solution.Strips)*m.Width()/strips
	if math.Abs(caught-beam.Total()) > 1e-9 || solution.Up != 0 {
		t.Errorf("of %.6f, black surroundings keep %.6f and send up %g", beam.Total(), caught, solution.Up)
	}
}

// A mirrored vineyard under a mirrored sun has the mirrored light.
func TestMirroredVineyard(t *testing.T) {
	plain := stand(t, "vsp-spurs")
	other := stand(t, "vsp-spurs")
	for i := range other.Leaves {
		l := &other.Leaves[i]
		l.Centre[0], l.Normal[0], l.Tip[0] = -l.Centre[0], -l.Normal[0], -l.Tip[0]
	}
	slope := canopy.Slope{Across: 0.12, Along: 0.05}
	a, b := standModel(t, plain, slope), standModel(t, other, canopy.Slope{Across: -slope.Across, Along: slope.Along})
	at, mirrored := places(plain), places(plain)
	for i := range mirrored {
		mirrored[i].At[0], mirrored[i].Right = -mirrored[i].At[0], !mirrored[i].Right
	}
	left, right := facesIn(t, a, at, toSun(33, 20)), facesIn(t, b, mirrored, toSun(33, 160))
	for i := range left {
		want, got := left[i], right[i]
		got.Vector[0] = -got.Vector[0]
		if math.Abs(got.Mean-want.Mean) > 2e-6 || got.Vector.Sub(want.Vector).Len() > 4e-6 {
			t.Fatalf("face %d gets %+v, its mirror image %+v", i, want, got)
		}
	}
}

// facesIn is the light of leaves and floor on places in the near infrared, for unit beam and sky.
func facesIn(t *testing.T, m *scatter.Model, at []scatter.Place, sun mgl64.Vec3) []light.Broad {
	t.Helper()
	r, err := m.Receivers(at, half, free)
	if err != nil {
		t.Fatal(err)
	}
	var beam, first scatter.Source
	var s scatter.Solution
	m.Beam(sun, &beam)
	first.Mix(&beam, 1, m.Sky(), 1)
	band(t, m, scatter.LeafNIR, 0.25).At(&first, &s)
	leaves, floor := make([]light.Broad, len(at)), make([]light.Broad, len(at))
	r.Leaves(&s, leaves)
	r.Floor(&s, floor)
	for i := range leaves {
		leaves[i].Mean += floor[i].Mean
		leaves[i].Vector = leaves[i].Vector.Add(floor[i].Vector)
	}
	return leaves
}

func TestWorkStopsWhenTold(t *testing.T) {
	s := stand(t, "vsp-spurs")
	stop := errors.New("newer input")
	halt := func() error { return stop }
	settings := scatter.Settings{Clumping: 1, Strips: strips}
	if _, err := scatter.New(canopy.FromStand(s, canopy.Slope{}), nil, settings, halt); !errors.Is(err, stop) {
		t.Errorf("New returns %v, want the error of pace", err)
	}
	m := standModel(t, s, canopy.Slope{})
	if _, err := m.Band(0.5, make([]float64, strips), halt); !errors.Is(err, stop) {
		t.Errorf("Band returns %v, want the error of pace", err)
	}
	if _, err := m.Receivers(places(s), nil, halt); !errors.Is(err, stop) {
		t.Errorf("Receivers returns %v, want the error of pace", err)
	}
}

func TestBandWantsOneAlbedoPerStrip(t *testing.T) {
	m := standModel(t, stand(t, "vsp-spurs"), canopy.Slope{})
	if _, err := m.Band(0.5, []float64{0.2}, free); err == nil {
		t.Error("one albedo for 16 strips is taken")
	}
}
