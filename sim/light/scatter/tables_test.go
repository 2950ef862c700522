package scatter_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"gonum.org/v1/gonum/floats"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/known"
	"rowlight/sim/internal/table"
	"rowlight/sim/light/scatter"
	"rowlight/testdata"
)

const strips = 16

func free() error { return nil }

// Rows of scattering leaves of box section over a Lambertian ground, by Monte Carlo with 1e7 photons (see the header of
// the table). The README of the tables allows 0.005 of the incoming light on each share; cells of 5 cm must keep that, and the cells
// of the simulation 0.01. Rows "bilambertian" have leaves that send light out according to the face that they show to the sun; the
// model's leaves do not, and stay within the same bound.
func TestHedgerowShares(t *testing.T) {
	rows := read(t, "reference/hedgerow_mc.csv")
	fine := scatter.Resolution{Across: 0.05, Up: 0.05, Spacing: 0.05, Bearings: 16, Slants: 4}
	for _, c := range []struct {
		name       string
		resolution scatter.Resolution
		allowed    float64
	}{{"cells of 5 cm", fine, 0.005}, {"cells of the simulation", scatter.Resolution{}, 0.01}} {
		worst := 0.0
		bands := hedgerowBands{resolution: c.resolution, known: map[hedgerowKey]*scatter.Band{}, models: map[known.Hedgerow]*scatter.Model{}}
		for i := range rows.Len() {
			got := bands.shares(t, rows, i)
			for k, column := range []string{"abs_canopy", "abs_ground", "reflected", "direct_ground"} {
				want := number(t, rows, i, column)
				worst = math.Max(worst, math.Abs(got[k]-want))
				if math.Abs(got[k]-want) > c.allowed {
					t.Errorf("%s: row %d %s: got %.5f, want %.5f", c.name, i, column, got[k], want)
				}
			}
		}
		t.Logf("%s: worst share misses by %.4f, allowed %.3f", c.name, worst, c.allowed)
	}
}

// hedgerowBands remembers models and bands from row to row.
type hedgerowBands struct {
	resolution scatter.Resolution
	models     map[known.Hedgerow]*scatter.Model
	known      map[hedgerowKey]*scatter.Band
}

type hedgerowKey struct {
	hedgerow      known.Hedgerow
	omega, albedo float64
}

// shares are the light absorbed by canopy and ground, reflected, and straight to the ground, of unit light.
func (b *hedgerowBands) shares(t *testing.T, rows table.Table, i int) [4]float64 {
	t.Helper()
	h, err := known.HedgerowOf(rows, i)
	if err != nil {
		t.Fatal(err)
	}
	key := hedgerowKey{h, number(t, rows, i, "omega"), number(t, rows, i, "ground_albedo")}
	if b.models[h] == nil {
		b.models[h] = model(t, h.Grid(), canopy.Uniform(), b.resolution)
	}
	if b.known[key] == nil {
		b.known[key] = band(t, b.models[h], key.omega, key.albedo)
	}
	first := b.models[h].Sky()
	if rows.String(i, "src") == "beam" {
		sun := known.SunInRow(number(t, rows, i, "sun_zen"), number(t, rows, i, "sun_az"), number(t, rows, i, "row_az"))
		first = new(scatter.Source)
		b.models[h].Beam(sun, first)
	}
	var s scatter.Solution
	b.known[key].At(first, &s)
	in := first.Total()
	ground := floats.Sum(s.Strips) * h.Spacing / strips
	return [4]float64{
		floats.Sum(s.Cells) * (1 - key.omega) / in, ground * (1 - key.albedo) / in, s.Up / in,
		first.Floor(b.models[h]) / in,
	}
}

// A slab over black ground, by adding–doubling (see the header of the table); 1e-3 with cells of optical
// depth 0.03 is the tolerance of its README.
func TestSlab(t *testing.T) {
	rows := read(t, "reference/rt_slab.csv")
	models, bands := map[float64]*scatter.Model{}, map[[2]float64]*scatter.Band{}
	worst := 0.0
	for i := range rows.Len() {
		omega, depth, mu := number(t, rows, i, "omega"), number(t, rows, i, "tau"), number(t, rows, i, "mu0")
		if models[depth] == nil {
			models[depth] = slab(t, depth, 0.03)
		}
		m, key := models[depth], [2]float64{omega, depth}
		if bands[key] == nil {
			bands[key] = slabBand(t, m, omega)
		}
		beam := new(scatter.Source)
		m.Beam(mgl64.Vec3{math.Sqrt(1 - mu*mu), 0, mu}, beam)
		for _, c := range []struct {
			first   *scatter.Source
			columns [4]string
		}{{beam, [4]string{"R", "Tdif", "Tdir", "A"}}, {m.Sky(), [4]string{"R_diffuse", "", "", ""}}} {
			reflected, scattered, direct, absorbed := slabShares(m, bands[key], c.first, omega)
			for k, got := range [4]float64{reflected, scattered, direct, absorbed} {
				if c.columns[k] == "" {
					continue
				}
				want := number(t, rows, i, c.columns[k])
				worst = math.Max(worst, math.Abs(got-want))
				if math.Abs(got-want) > 1e-3 {
					t.Errorf("row %d %s: got %.6f, want %.6f", i, c.columns[k], got, want)
				}
			}
			if c.first != beam {
				want := number(t, rows, i, "T_diffuse")
				worst = math.Max(worst, math.Abs(scattered+direct-want))
				if math.Abs(scattered+direct-want) > 1e-3 {
					t.Errorf("row %d T_diffuse: got %.6f, want %.6f", i, scattered+direct, want)
				}
			}
		}
	}
	t.Logf("worst share misses by %.5f, allowed 0.001", worst)
}

// The light that a half-space of leaves sends back, from Chandrasekhar's H-function (see the header of the table): plane
// albedo, ω ≤ 0.95, within 2e-3 as its README allows. A slab of depth 12 stands for the half-space: at ω = 0.95 less than
// 1e-4 of the light returns from deeper (decay length 2.6). A beam along the surface (µ = 0) brings no light and is left out.
func TestHalfSpaceAlbedo(t *testing.T) {
	rows := read(t, "reference/rt_H.csv")
	m := slab(t, 12, 0.03)
	bands := map[float64]*scatter.Band{}
	worst := 0.0
	for i := range rows.Len() {
		omega, mu := number(t, rows, i, "omega"), number(t, rows, i, "mu0")
		if omega > 0.95 || mu == 0 {
			continue
		}
		if bands[omega] == nil {
			bands[omega] = slabBand(t, m, omega)
		}
		beam := new(scatter.Source)
		m.Beam(mgl64.Vec3{math.Sqrt(1 - mu*mu), 0, mu}, beam)
		got, _, _, _ := slabShares(m, bands[omega], beam, omega)
		want := number(t, rows, i, "plane_albedo")
		worst = math.Max(worst, math.Abs(got-want))
		if math.Abs(got-want) > 2e-3 {
			t.Errorf("row %d: ω %.3f µ %.2f: got %.6f, want %.6f", i, omega, mu, got, want)
		}
	}
	t.Logf("worst plane albedo misses by %.5f, allowed 0.002", worst)
}

// slab is the model of a closed canopy in layers of at most the given optical depth.
func slab(t *testing.T, depth, layer float64) *scatter.Model {
	t.Helper()
	grid := known.Slab{Depth: depth}.Grid(layer)
	up := 1 / math.Ceil(depth/layer-1e-9)
	r := scatter.Resolution{Across: grid.Width(), Up: up, Spacing: grid.Width(), Bearings: 24, Slants: 6}
	m, err := scatter.New(grid, canopy.Uniform(), scatter.Settings{Clumping: 1, Strips: 1, Resolution: r}, free)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// slabBand is a slab over black ground.
func slabBand(t *testing.T, m *scatter.Model, omega float64) *scatter.Band {
	t.Helper()
	b, err := m.Band(omega, []float64{0}, free)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// slabShares are shares of the incoming light.
func slabShares(m *scatter.Model, b *scatter.Band, first *scatter.Source, omega float64) (reflected, scattered, direct, absorbed float64) {
	var s scatter.Solution
	b.At(first, &s)
	in := first.Total()
	direct = first.Floor(m) / in
	return s.Up / in, s.Strips[0]*m.Width()/in - direct, direct, floats.Sum(s.Cells) * (1 - omega) / in
}

// model prepares a canopy without clumping over the usual floor strips.
func model(t testing.TB, grid *canopy.Grid, g *canopy.Projection, r scatter.Resolution) *scatter.Model {
	t.Helper()
	m, err := scatter.New(grid, g, scatter.Settings{Clumping: 1, Strips: strips, Resolution: r}, free)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// band solves a model over a floor of one albedo.
func band(t testing.TB, m *scatter.Model, leaf, albedo float64) *scatter.Band {
	t.Helper()
	floor := make([]float64, strips)
	floats.AddConst(albedo, floor)
	b, err := m.Band(leaf, floor, free)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func read(t *testing.T, name string) table.Table {
	t.Helper()
	rows, err := table.Read(testdata.FS, name)
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func number(t *testing.T, rows table.Table, row int, column string) float64 {
	t.Helper()
	value, err := rows.Float(row, column)
	if err != nil {
		t.Fatal(err)
	}
	return value
}
