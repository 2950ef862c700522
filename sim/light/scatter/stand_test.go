package scatter_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/table"
	"rowlight/sim/light"
	"rowlight/sim/light/scatter"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// The cross-section lets as much of the beam through to the floor as the uneven row does, found by 1,500 rays
// through the grid itself, for every form, from near across to near along the row and from 10° of height
// up: 0.025 rms. Low light looks down the lanes between bush vines, which a cross-section has not: 0.05.
func TestSectionPassesWhatTheUnevenRowPasses(t *testing.T) {
	for _, form := range scenario.Forms() {
		s := stand(t, form.Key)
		m := standModel(t, s, canopy.Slope{})
		grid := canopy.FromStand(s, canopy.Slope{})
		squares, n, worst := 0.0, 0.0, 0.0
		for _, elevation := range []float64{10, 20, 33, 45, 60, 75, 88} {
			for _, azimuth := range []float64{10, 30, 60, 85} {
				sun := toSun(elevation, azimuth)
				beam := new(scatter.Source)
				m.Beam(sun, beam)
				miss := beam.Floor(m)/beam.Total() - passed(grid, sun)
				squares, n, worst = squares+miss*miss, n+1, math.Max(worst, math.Abs(miss))
			}
		}
		allowed := 0.025
		if form.Key == "goblet" {
			allowed = 0.05
		}
		rms := math.Sqrt(squares / n)
		if rms > allowed {
			t.Errorf("%s: share of the beam misses by %.4f rms, allowed %.3f", form.Key, rms, allowed)
		}
		t.Logf("%s: share of the beam misses by %.4f rms and %.4f at most", form.Key, rms, worst)
	}
}

// passed is the share of the beam that reaches the floor through the grid.
func passed(grid *canopy.Grid, sun mgl64.Vec3) float64 {
	const across, along = 60, 25
	ray, thickness := canopy.NewRay(grid), canopy.NewThickness(grid)
	thickness.Toward(sun)
	sum := 0.0
	for i := range across * along {
		x, y := (float64(i%across)+0.5)/across, (float64(i/across)+0.5)/along
		at := mgl64.Vec3{grid.Width() * (x - 0.5), grid.Length() * y, 1e-6}
		sum += math.Exp(-ray.Depth(thickness, at, sun))
	}
	return sum / (across * along)
}

// The cells of the simulation give the faces of every form the light that cells of two thirds of the size
// and twice the directions give, in the near infrared, where leaves scatter most: 0.02 rms of the unit beam
// or sky.
func TestFacesBarelyFeelTheCells(t *testing.T) {
	for _, form := range scenario.Forms() {
		s := stand(t, form.Key)
		grid := canopy.FromStand(s, canopy.Slope{})
		r := scatter.Suited(grid)
		coarse := lightOnFaces(t, s, model(t, grid, nil, r))
		fine := lightOnFaces(t, s, model(t, grid, nil, scatter.Resolution{
			Across: r.Across / 1.5, Up: r.Up / 1.5, Spacing: r.Spacing / 1.5, Bearings: 2 * r.Bearings, Slants: 2 * r.Slants,
		}))
		squares, mean := 0.0, 0.0
		for i := range fine {
			squares += (coarse[i] - fine[i]) * (coarse[i] - fine[i])
			mean += fine[i] / float64(len(fine))
		}
		rms := math.Sqrt(squares / float64(len(fine)))
		if rms > 0.02 || mean < 0.05 {
			t.Errorf("%s: light on faces misses by %.4f rms, allowed 0.02, of %.4f", form.Key, rms, mean)
		}
		t.Logf("%s: cells of %.2f m: light on faces misses by %.4f rms of %.4f", form.Key, r.Across, rms, mean)
	}
}

// lightOnFaces is the near-infrared light of leaves and floor on the outward axis of every face, under three
// suns and a sky.
func lightOnFaces(t *testing.T, s *training.Stand, m *scatter.Model) (all []float64) {
	t.Helper()
	r, err := m.Receivers(places(s), half, free)
	if err != nil {
		t.Fatal(err)
	}
	b := band(t, m, scatter.LeafNIR, 0.25)
	firsts := []*scatter.Source{m.Sky()}
	for _, sun := range []mgl64.Vec3{toSun(53, 0), toSun(30, 157), toSun(45, 80)} {
		beam := new(scatter.Source)
		m.Beam(sun, beam)
		firsts = append(firsts, beam)
	}
	leaves, floor := make([]light.Broad, len(s.Faces())), make([]light.Broad, len(s.Faces()))
	for _, first := range firsts {
		var solution scatter.Solution
		b.At(first, &solution)
		r.Leaves(&solution, leaves)
		r.Floor(&solution, floor)
		for i, face := range s.Faces() {
			all = append(all, leaves[i].On(&face.Normal)+floor[i].On(&face.Normal))
		}
	}
	return all
}

// The light that comes up to a place on top of a half-space under a uniform sky: by reciprocity its radiance
// at µ is the plane albedo at µ (Chandrasekhar 1960), so its mean is ½∫A dµ and the upward part of its
// vector −∫Aµ dµ, by the trapezoid rule over the table, whose steps cost up to 0.002.
func TestLightAboveHalfSpace(t *testing.T) {
	rows := read(t, "reference/rt_H.csv")
	m := slab(t, 12, 0.05)
	r, err := m.Receivers([]scatter.Place{{At: mgl64.Vec3{0, 0, 1}}}, nil, free)
	if err != nil {
		t.Fatal(err)
	}
	for _, omega := range []float64{0.1, 0.5, 0.85, 0.95} {
		mean, rising := emergent(t, rows, omega)
		var s scatter.Solution
		slabBand(t, m, omega).At(m.Sky(), &s)
		into := make([]light.Broad, 1)
		r.Leaves(&s, into)
		if math.Abs(into[0].Mean-mean) > 0.002 || math.Abs(into[0].Vector[2]+rising) > 0.002 {
			t.Errorf("ω %.2f: got %.5f and %.5f, want %.5f and %.5f", omega, into[0].Mean, into[0].Vector[2], mean, -rising)
		}
	}
}

// emergent integrates the plane albedo of a table over the directions from which it comes.
func emergent(t *testing.T, rows table.Table, omega float64) (mean, rising float64) {
	t.Helper()
	var mus, albedos []float64
	for i := range rows.Len() {
		if number(t, rows, i, "omega") == omega {
			mus, albedos = append(mus, number(t, rows, i, "mu0")), append(albedos, number(t, rows, i, "plane_albedo"))
		}
	}
	for i := 1; i < len(mus); i++ {
		step := mus[i] - mus[i-1]
		mean += step * (albedos[i] + albedos[i-1]) / 4
		rising += step * (albedos[i]*mus[i] + albedos[i-1]*mus[i-1]) / 2
	}
	return mean, rising
}

func BenchmarkNew(b *testing.B) {
	eachForm(b, func(b *testing.B, s *training.Stand) {
		grid := canopy.FromStand(s, canopy.Slope{})
		for b.Loop() {
			model(b, grid, nil, scatter.Resolution{})
		}
	})
}

func BenchmarkBand(b *testing.B) {
	eachForm(b, func(b *testing.B, s *training.Stand) {
		m := standModel(b, s, canopy.Slope{})
		for b.Loop() {
			band(b, m, scatter.LeafNIR, 0.2)
		}
	})
}

func BenchmarkBeam(b *testing.B) {
	eachForm(b, func(b *testing.B, s *training.Stand) {
		m := standModel(b, s, canopy.Slope{})
		var beam scatter.Source
		k := 0
		for b.Loop() {
			k++
			m.Beam(toSun(float64(5+k%70), float64(3*k)), &beam)
		}
	})
}

func BenchmarkReceivers(b *testing.B) {
	eachForm(b, func(b *testing.B, s *training.Stand) {
		m := standModel(b, s, canopy.Slope{})
		for b.Loop() {
			if _, err := m.Receivers(places(s), half, free); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// An instant of the simulation: deposit, two bands, light on all faces.
func BenchmarkInstant(b *testing.B) {
	eachForm(b, func(b *testing.B, s *training.Stand) {
		m := standModel(b, s, canopy.Slope{})
		r, err := m.Receivers(places(s), half, free)
		if err != nil {
			b.Fatal(err)
		}
		par, nir := band(b, m, scatter.LeafPAR, 0.1), band(b, m, scatter.LeafNIR, 0.25)
		var beam, first scatter.Source
		var visible, infrared scatter.Solution
		leaves := make([]light.Broad, len(s.Faces()))
		k := 0
		for b.Loop() {
			k++
			m.Beam(toSun(float64(10+k%70), float64(3*k)), &beam)
			first.Mix(&beam, 800, m.Sky(), 100)
			par.At(&first, &visible)
			nir.At(&first, &infrared)
			visible.Add(&infrared)
			r.Leaves(&visible, leaves)
		}
	})
}

func eachForm(b *testing.B, run func(b *testing.B, s *training.Stand)) {
	for _, form := range scenario.Forms() {
		s := stand(b, form.Key)
		b.Run(form.Key, func(b *testing.B) { run(b, s) })
	}
}
