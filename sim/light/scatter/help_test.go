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
	"rowlight/sim/scenario"
	"rowlight/sim/training"
	"rowlight/testdata"
)

const strips = 16

func free() error { return nil }

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

// stand is a form of the catalogue.
func stand(t testing.TB, key string) *training.Stand {
	t.Helper()
	form, ok := scenario.FormByKey(key)
	if !ok {
		t.Fatalf("no form %q", key)
	}
	s, err := training.Build(form.Option, 36, 1)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// standModel is the model of a form with the cells of the simulation.
func standModel(t testing.TB, s *training.Stand, slope canopy.Slope) *scatter.Model {
	t.Helper()
	return model(t, canopy.FromStand(s, slope), nil, scatter.Resolution{})
}

// places are the faces of a stand.
func places(s *training.Stand) []scatter.Place {
	var list []scatter.Place
	for _, face := range s.Faces() {
		list = append(list, scatter.Place{At: face.Point, Right: face.Right})
	}
	return list
}

// half is a bunch that leaves half of its surroundings open, without a soft edge.
func half(cosine float64) float64 {
	if cosine > 0 {
		return 1
	}
	return 0
}

// toSun is a unit vector of the row frame; azimuths count from x towards y.
func toSun(elevation_deg, azimuth_deg float64) mgl64.Vec3 {
	sinE, cosE := math.Sincos(mgl64.DegToRad(elevation_deg))
	sin, cos := math.Sincos(mgl64.DegToRad(azimuth_deg))
	return mgl64.Vec3{cosE * cos, cosE * sin, sinE}
}
