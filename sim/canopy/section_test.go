package canopy_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
)

// A cross-section of any division keeps the leaf area.
func TestSectionKeepsLeafArea(t *testing.T) {
	grid := canopy.FromStand(scattered(11, false), canopy.Slope{})
	for _, cells := range [][2]int{{7, 5}, {28, 24}, {50, 3}} {
		s := grid.Section(cells[0], cells[1])
		sum := 0.0
		for _, a := range s.Density {
			sum += a
		}
		got := sum * s.Width * s.Height / float64(cells[0]*cells[1]) * grid.Length()
		if want := grid.LeafArea(); math.Abs(got-want) > 1e-9*want {
			t.Errorf("%v cells hold %.6f m², the grid %.6f", cells, got, want)
		}
	}
}

// Leaves are found where they are: at the left in the columns, at their height in the layers.
func TestSectionPlacesLeaves(t *testing.T) {
	grid := canopy.NewGrid(4, 2, 4, 4, 2, 4, canopy.Slope{})
	grid.AddArea(mgl64.Vec3{-1.5, 0.5, 2.5}, 6) // one cell of 1 m³ in one half of the row
	s := grid.Section(2, 2)
	// Cells of 4 m² section and 2 m of row: 6 m² in 8 m³ in the left column and the upper layer.
	for cell, want := range []float64{0, 0, 0.75, 0} {
		if math.Abs(s.Density[cell]-want) > 1e-12 {
			t.Errorf("cell %d holds %.4f m²/m³, want %.4f", cell, s.Density[cell], want)
		}
	}
}

// Leaves in half of the row only: half of the light passes freely, half through twice the mean (closed
// form). Leaves spread evenly stop what they show: 0.5 of their area where they face everywhere alike, and
// all of it where a projection says so.
func TestThicknessOfSection(t *testing.T) {
	const length, clumping, density = 0.2, 0.8, 8.0
	uneven := canopy.NewGrid(1, 2, 1, 1, 2, 1, canopy.Slope{})
	uneven.AddArea(mgl64.Vec3{0, 0.5, 0.5}, density)
	want := -math.Log((1+math.Exp(-0.5*density*clumping*length))/2) / length
	if got := canopy.NewThickness(uneven).Section(1, 1, length, clumping)[0]; math.Abs(got-want) > 1e-6 {
		t.Errorf("uneven row stops %.6f per metre, want %.6f", got, want)
	}
	even := canopy.NewGrid(3, 2, 2, 1, 2, 1, canopy.Slope{})
	even.FillBox(1, 0, 1, density)
	up, flat := mgl64.Vec3{0, 0, 1}, canopy.Custom(func(d mgl64.Vec3) float64 { return d[2] })
	thickness := canopy.NewThickness(even)
	for share, toward := range map[float64]func(){
		0.5: func() { thickness.Toward(up) },
		1:   func() { thickness.As(flat, up) },
	} {
		thickness = canopy.NewThickness(even)
		toward()
		for cell, got := range thickness.Section(2, 3, length, clumping) {
			if want := share * density * clumping; math.Abs(got-want) > 1e-5 {
				t.Errorf("even row: cell %d stops %.6f per metre, want %.6f", cell, got, want)
			}
		}
	}
}

// Gaps that go on from cell to cell: where half of the row has no leaves at any height, half of the light
// passes straight down and straight across, whatever stands in the other half (closed form). A canopy that
// nothing passes keeps its depth.
func TestColumnsAndLayersKeepGaps(t *testing.T) {
	grid := canopy.NewGrid(2, 2, 3, 2, 2, 3, canopy.Slope{})
	for _, z := range []float64{0.5, 1.5, 2.5} {
		for _, x := range []float64{-0.5, 0.5} {
			grid.AddArea(mgl64.Vec3{x, 0.5, z}, 4)
		}
	}
	closed := func(depth float64) float64 { return -math.Log((1 + math.Exp(-depth)) / 2) }
	thickness := canopy.NewThickness(grid)
	for column, got := range thickness.Columns(2, 0.9) {
		if want := closed(0.5 * 0.9 * 12); math.Abs(got-want) > 1e-6 {
			t.Errorf("column %d has depth %.6f, want %.6f", column, got, want)
		}
	}
	for layer, got := range thickness.Layers(3, 0.9) {
		if want := closed(0.5 * 0.9 * 8); math.Abs(got-want) > 1e-6 {
			t.Errorf("layer %d has depth %.6f, want %.6f", layer, got, want)
		}
	}
	thick := canopy.NewGrid(1, 2, 1, 1000, 2, 1, canopy.Slope{})
	thick.FillBox(500, 0, 1, 8)
	if got := canopy.NewThickness(thick).Layers(1, 1)[0]; math.Abs(got-4000) > 1e-3 {
		t.Errorf("thick layer has depth %.6f, want 4000", got)
	}
}
