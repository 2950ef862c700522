// Package canopy spreads the leaves of a Stand over a periodic grid of leaf area density and finds
// how much leaf area a ray crosses. It knows directions, never the sun or the weather.
package canopy

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/training"
)

// The wished edges of a grid cell [m]. A leaf of 100 cm² is about 0.11 m wide. Rows are thin, and the leaf
// that shades a bunch hangs beside it within a few centimetres across the row: wider cells would smear it
// into the bunch and behind (measured on the forms of the catalogue against their leaves one by one).
const (
	cellAcross = 0.06
	cellAlong  = 0.09
	cellUp     = 0.09
)

// Grid is leaf area density on cells, periodic along and across the row, so that every row shades
// every other. Coordinates are those of the row frame, with heights measured from the sloping ground.
type Grid struct {
	nx, ny, nz int
	dx, dy, dz float64
	x0, y0     float64   // lower edges [m]
	density    []float32 // of all leaf area [m²/m³]
	loose      []float32 // of what was put in without blades; nil if none was
	leaves     leaves
	slope      Slope
}

// Slope is the rise of the ground per metre across and along the row. Vines stay plumb, so a slope
// shears the ground between rows; it does not turn the canopy.
type Slope struct{ Across, Along float64 }

// NewGrid makes an empty grid of nx·ny·nz cells over width × length × height [m], with the row line
// in the middle of the width.
func NewGrid(nx, ny, nz int, width, length, height float64, slope Slope) *Grid {
	return &Grid{
		nx: nx, ny: ny, nz: nz,
		dx: width / float64(nx), dy: length / float64(ny), dz: height / float64(nz),
		x0: -width / 2, density: make([]float32, nx*ny*nz), slope: slope,
	}
}

// FromStand spreads the leaves of a stand over a grid with cells of about 6 × 9 × 9 cm.
func FromStand(s *training.Stand, slope Slope) *Grid { return FromLeaves(s, s.Leaves, slope) }

// FromLeaves spreads leaves over a grid as large as that of a stand.
func FromLeaves(s *training.Stand, leaves []training.Leaf, slope Slope) *Grid {
	top := math.Max(s.Top, 0.5)
	// The slope lifts the downhill half of the canopy above its own ground.
	top += math.Abs(slope.Across) * s.RowSpacing / 2
	cells := func(size, edge float64) int { return max(4, int(math.Round(size/edge))) }
	nx, ny, nz := cells(s.RowSpacing, cellAcross), cells(s.Length, cellAlong), cells(top, cellUp)+1
	g := NewGrid(nx, ny, nz, s.RowSpacing, s.Length, top+cellUp, slope)
	g.hang(leaves)
	return g
}

// AddArea puts leaf area [m²] into the cell that holds a point of the row frame.
func (g *Grid) AddArea(p mgl64.Vec3, area float64) {
	g.add(g.cellOf(p), area/(g.dx*g.dy*g.dz))
}

// add puts leaf area without blades into a cell [m²/m³].
func (g *Grid) add(cell int, density float64) {
	if g.loose == nil {
		g.loose = make([]float32, len(g.density))
	}
	g.loose[cell] += float32(density)
	g.density[cell] += float32(density)
}

// cellOf is the cell that holds a point of the row frame. Points below the ground count into the lowest
// cell and points above the grid into the highest.
func (g *Grid) cellOf(p mgl64.Vec3) int { return g.holding(g.cell(p)) }

// holding is the cell that holds a point given in units of cells.
func (g *Grid) holding(x, y, z float64) int {
	ix, iy := wrap(int(math.Floor(x)), g.nx), wrap(int(math.Floor(y)), g.ny)
	return g.index(ix, iy, min(max(int(math.Floor(z)), 0), g.nz-1))
}

// FillBox adds a uniform leaf area density [m²/m³] to every cell whose centre lies in the box
// |x| ≤ half width, bottom ≤ z ≤ top, all along the row.
func (g *Grid) FillBox(halfWidth, bottom, top, density float64) {
	for iz := range g.nz {
		z := (float64(iz) + 0.5) * g.dz
		for ix := range g.nx {
			x := g.x0 + (float64(ix)+0.5)*g.dx
			if z < bottom || z > top || math.Abs(x) > halfWidth {
				continue
			}
			for iy := range g.ny {
				g.add(g.index(ix, iy, iz), density)
			}
		}
	}
}

// LeafArea is the leaf area of one period of the row [m²].
func (g *Grid) LeafArea() float64 {
	sum := 0.0
	for _, a := range g.density {
		sum += float64(a)
	}
	return sum * g.dx * g.dy * g.dz
}

// Height is the top of the grid above the ground [m].
func (g *Grid) Height() float64 { return float64(g.nz) * g.dz }

// Width is the period across the rows [m].
func (g *Grid) Width() float64 { return float64(g.nx) * g.dx }

// Length is the period along the rows [m].
func (g *Grid) Length() float64 { return float64(g.ny) * g.dy }

// index keeps cells along the row next to each other.
func (g *Grid) index(ix, iy, iz int) int { return (iz*g.nx+ix)*g.ny + iy }

// layer is how far cells of two layers lie from each other where every run along the row is written twice.
func (g *Grid) layer() int { return g.nx * 2 * g.ny }

// cell gives a point of the row frame in units of cells, with its height taken from the ground below it.
func (g *Grid) cell(p mgl64.Vec3) (x, y, z float64) {
	return (p[0] - g.x0) / g.dx, (p[1] - g.y0) / g.dy, (p[2] - p[0]*g.slope.Across) / g.dz
}

// inCells gives a step in the row frame in units of cells.
func (g *Grid) inCells(d mgl64.Vec3) mgl64.Vec3 {
	return mgl64.Vec3{d[0] / g.dx, d[1] / g.dy, (d[2] - d[0]*g.slope.Across) / g.dz}
}

// sheared gives a direction of the row frame in the frame that follows the ground.
func (g *Grid) sheared(d mgl64.Vec3) mgl64.Vec3 {
	return mgl64.Vec3{d[0], d[1], d[2] - d[0]*g.slope.Across - d[1]*g.slope.Along}
}

// wrap brings an index into 0 … n-1.
func wrap(i, n int) int {
	if i %= n; i < 0 {
		i += n
	}
	return i
}
