package canopy_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
)

// A cross-section of any division keeps the leaf area.
func TestSectionKeepsLeafArea(t *testing.T) {
	stand := scattered(11, false)
	grid := canopy.FromStand(stand, canopy.Slope{})
	for _, cells := range [][2]int{{7, 5}, {28, 24}, {50, 3}} {
		s := grid.Section(cells[0], cells[1], 0)
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

// A box is found where it stands: at the left in the columns, at its height in the layers.
func TestSectionPlacesLeaves(t *testing.T) {
	grid := canopy.NewGrid(4, 2, 4, 4, 2, 4, canopy.Slope{})
	grid.AddArea(mgl64.Vec3{-1.5, 0.5, 2.5}, 6) // one cell of 1 m³ in one half of the row
	s := grid.Section(2, 2, 0)
	// Cells of 4 m² section and 2 m of row: 6 m² in 8 m³ in the left column and the upper layer.
	want := []float64{0, 0, 0.75, 0}
	for cell := range want {
		if math.Abs(s.Density[cell]-want[cell]) > 1e-12 || math.Abs(s.Effective[cell]-want[cell]) > 1e-12 {
			t.Errorf("cell %d holds %.4f and works as %.4f, want %.4f", cell, s.Density[cell], s.Effective[cell], want[cell])
		}
	}
}

// Leaves in half of the row only: half of the light passes freely, half through twice the mean density
// (closed form); leaves spread evenly work as what they are.
func TestUnevenRowWorksAsLess(t *testing.T) {
	const depth, density = 0.1, 8.0
	uneven := canopy.NewGrid(1, 2, 1, 1, 2, 1, canopy.Slope{})
	uneven.AddArea(mgl64.Vec3{0, 0.5, 0.5}, density)
	want := -math.Log((1+math.Exp(-depth*density))/2) / depth
	if got := uneven.Section(1, 1, depth).Effective[0]; math.Abs(got-want) > 1e-6 {
		t.Errorf("uneven row works as %.6f m²/m³, want %.6f", got, want)
	}
	even := canopy.NewGrid(3, 2, 2, 1, 2, 1, canopy.Slope{})
	even.FillBox(1, 0, 1, density)
	for cell, got := range even.Section(2, 3, depth).Effective {
		if math.Abs(got-density) > 1e-6 {
			t.Errorf("even row: cell %d works as %.6f m²/m³, want %.6f", cell, got, density)
		}
	}
}
