// Package known holds problems with known answers: canopies in closed form that the tests of several
// packages and the verify command share.
package known

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/table"
)

// Hedgerow is an endless planting of rows with a box for a section: |x| ≤ Width/2, Bottom ≤ z ≤ Top,
// uniform leaf area density, leaves that face everywhere alike.
type Hedgerow struct {
	Spacing, Width, Bottom, Top, Density float64
}

// HedgerowOf reads the columns s, w, zb, zt and lad of a row of a hedgerow table.
func HedgerowOf(t table.Table, row int) (h Hedgerow, err error) {
	for _, field := range []struct {
		column string
		value  *float64
	}{{"s", &h.Spacing}, {"w", &h.Width}, {"zb", &h.Bottom}, {"zt", &h.Top}, {"lad", &h.Density}} {
		if *field.value, err = t.Float(row, field.column); err != nil {
			return h, err
		}
	}
	return h, nil
}

// hedgerowCell divides every size in the tables of hedgerows, so that box edges are cell edges [m].
const hedgerowCell = 0.05

// Grid is the hedgerow as a leaf-area grid.
func (h Hedgerow) Grid() *canopy.Grid {
	nx, nz := int(math.Round(h.Spacing/hedgerowCell)), int(math.Round(h.Top/hedgerowCell))
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
