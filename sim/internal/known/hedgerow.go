// Package known holds problems with known answers: canopies in closed form that the tests of several
// packages and the verify command share.
package known

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
)

// Hedgerow is an endless planting of rows with a box for a section: |x| ≤ Width/2, Bottom ≤ z ≤ Top,
// uniform leaf area density, leaves that face everywhere alike.
type Hedgerow struct {
	Spacing, Width, Bottom, Top, Density float64
}

// hedgerowCells are the edges of a grid that are tried, so that the edges of the box are those of cells [m].
var hedgerowCells = [4]float64{0.05, 0.025, 0.01, 0.005}

// cell is the largest edge that fits; ok is false where none does.
func (h Hedgerow) cell() (edge float64, ok bool) {
	for _, edge = range hedgerowCells {
		ok = true
		for _, size := range []float64{h.Spacing, (h.Spacing - h.Width) / 2, h.Bottom, h.Top} {
			count := size / edge
			ok = ok && math.Abs(count-math.Round(count)) < 1e-6
		}
		if ok {
			break
		}
	}
	return edge, ok
}

// Check tells what keeps a hedgerow from a grid.
func (h Hedgerow) Check() error {
	_, fits := h.cell()
	switch {
	case h.Width > h.Spacing:
		return fmt.Errorf("rows %g m wide do not fit into %g m", h.Width, h.Spacing)
	case h.Bottom >= h.Top:
		return fmt.Errorf("leaves from %g m up to %g m are none", h.Bottom, h.Top)
	case !fits:
		return fmt.Errorf("rows of %g m in %g m, from %g to %g m: their edges are not multiples of 5 mm", h.Width, h.Spacing, h.Bottom, h.Top)
	}
	return nil
}

// Grid is the hedgerow as a leaf-area grid.
func (h Hedgerow) Grid() *canopy.Grid {
	cell, _ := h.cell()
	nx, nz := int(math.Round(h.Spacing/cell)), int(math.Round(h.Top/cell))
	g := canopy.NewGrid(nx, 4, nz, h.Spacing, 4, h.Top, canopy.Slope{})
	g.FillBox(h.Width/2, h.Bottom, h.Top, h.Density)
	return g
}

// LeafAreaIndex is leaf area per ground area [m²/m²].
func (h Hedgerow) LeafAreaIndex() float64 {
	return h.Density * h.Width * (h.Top - h.Bottom) / h.Spacing
}

// SunInRow is the unit vector to a sun at a zenith angle and azimuth from true north [deg] in the frame
// of a row with the given azimuth [deg].
func SunInRow(zenith_deg, azimuth_deg, row_deg float64) mgl64.Vec3 {
	sinZ, cosZ := math.Sincos(mgl64.DegToRad(zenith_deg))
	sin, cos := math.Sincos(mgl64.DegToRad(azimuth_deg - row_deg))
	return mgl64.Vec3{sinZ * sin, sinZ * cos, cosZ}
}
