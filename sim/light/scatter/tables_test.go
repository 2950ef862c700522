package scatter_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/known"
	"rowlight/sim/internal/table"
	"rowlight/sim/light/scatter"
	"rowlight/sim/verify/tabletest"
	"rowlight/testdata"
)

const strips = 16

func free() error { return nil }

// Rows of scattering leaves by Monte Carlo, slabs by adding–doubling, and Chandrasekhar's half-space.
func TestReferenceTables(t *testing.T) { tabletest.Hold(t, "hedgerow_mc", "rt_slab", "rt_H") }

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
