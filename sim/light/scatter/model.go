// Package scatter finds the light that leaves and floor scatter, by a radiosity on the cross-section of a
// row: beam and sky light are deposited along straight ways, every cell sends out again what its leaves do
// not absorb, in proportion to G(direction)·Ω, the very factor that extinguishes light in that direction,
// and exchange between cells, floor strips and sky is solved once per stand and band.
//
// Limits: gaps along the row count by the light that they let through, not where they are (lanes between
// bush vines, in line with the light, are missed); light goes either way along the row alike; and a leaf sends light out evenly from both faces, whichever face it met.
package scatter

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
)

// Share of the light that a vine leaf does not absorb.
const (
	LeafPAR = 0.10 + 0.06 // reflected and transmitted, 400–700 nm [Smart 2019]
	LeafNIR = 0.43 + 0.42 // the same above 700 nm [from memory: 0.40–0.45 each]
)

// Settings are the inputs beside the canopy.
type Settings struct {
	Clumping   float64    // Ω: how much of the leaf area works as if spread at random within a cell [0–1]
	Strips     int        // of floor across one row spacing, from the left edge of the period
	Resolution Resolution // zero: as suits the canopy
}

// Resolution is how finely the cross-section and its directions are divided.
type Resolution struct {
	Across, Up float64 // edges of a cell [m]
	Spacing    float64 // of ways, across the light [m]
	Bearings   int     // directions in the section, over a half turn
	Slants     int     // directions along the row, over a quarter turn
}

// Suited is the resolution of the simulation: the coarsest that keeps each share of hedgerow_mc within 0.01
// (measured: 0.006). About so many cells hold leaves, whatever the form, so that every form costs the same.
func Suited(grid *canopy.Grid) Resolution {
	const (
		cells       = 110
		least, most = 0.08, 0.2 // edges [m]
		first       = 0.1       // edge with which leaves are looked for [m], and how often
		looks       = 3
	)
	edge := first
	for range looks {
		s := grid.Section(cellsIn(grid.Width(), edge), cellsIn(grid.Height(), edge))
		leafy := 0
		for _, a := range s.Density {
			if a > 0 {
				leafy++
			}
		}
		area := float64(leafy) * s.Width * s.Height / float64(len(s.Density))
		edge = math.Min(math.Max(math.Sqrt(area/cells), least), most)
	}
	return Resolution{Across: edge, Up: edge, Spacing: edge, Bearings: 16, Slants: 4}
}

// cellsIn is the number of cells of about the given edge in a length [m].
func cellsIn(length, edge float64) int { return max(1, int(math.Round(length/edge))) }

// Cell is a part of the cross-section with leaves.
type Cell struct {
	X, Z          float64 // of the middle, Z above the local ground [m]
	Width, Height float64 // [m]
	LeafArea      float64 // one-sided, per metre of row [m²/m]
}

// Model is the way of light through a stand, whatever the band, the floor, the sun and the weather. It keeps
// scratch: give every goroutine its own.
type Model struct {
	section  *section
	bearings []bearing
	exchange *exchange
	spacing  float64
	tracks   tracks    // scratch
	depths   []float64 // scratch: of every cell per length within the section
	fitted   Source    // scratch
}

// New prepares the exchange of light of a canopy. G of g replaces what the canopy's own leaves show a
// direction; nil leaves it. Pace is called between slices of work; its error abandons it.
func New(grid *canopy.Grid, g *canopy.Projection, settings Settings, pace func() error) (*Model, error) {
	if settings.Resolution == (Resolution{}) {
		settings.Resolution = Suited(grid)
	}
	r := settings.Resolution
	l := looker{
		grid: grid, thickness: canopy.NewThickness(grid), g: g,
		columns: cellsIn(grid.Width(), r.Across), layers: cellsIn(grid.Height(), r.Up),
		clumping: settings.Clumping, pace: pace,
	}
	section, err := newSection(&l, settings.Strips)
	if err != nil {
		return nil, err
	}
	m := &Model{section: section, spacing: r.Spacing, depths: make([]float64, len(section.cells))}
	if err := m.fit(&l); err != nil {
		return nil, err
	}
	m.bearings = bearings(section.Slope, r.Bearings, r.Slants)
	m.exchange, err = newExchange(section, m.bearings, m.spacing, pace)
	return m, err
}

// Cells are the parts of the cross-section with leaves, in the order of Solution.Cells.
func (m *Model) Cells() []Cell { return m.section.cells }

// parts is the number of leaf cells and floor strips.
func (m *Model) parts() int { return m.section.parts() }

// stripArea is the area of a floor strip per metre of row in plan [m²/m].
func (m *Model) stripArea() float64 {
	slope := m.section.Slope
	lean := mgl64.Vec3{-slope.Across, -slope.Along, 1}
	return m.section.Width / float64(m.section.strips) * lean.Len()
}

// Width is the row spacing that the model covers [m].
func (m *Model) Width() float64 { return m.section.Width }
