package known

import (
	"math"

	"rowlight/sim/canopy"
)

// Slab is a closed canopy of leaves that face everywhere alike, even from the ground to its top, given by
// its optical depth G·a·height with G = 0.5.
type Slab struct{ Depth float64 }

// slabWidth is one period of a slab [m]: so wide that light stays within one column of cells.
const slabWidth = 1000

// Grid is the slab as a leaf-area grid of one column, 1 m high, with layers of at most the given optical depth.
func (s Slab) Grid(layer float64) *canopy.Grid {
	layers := int(math.Ceil(s.Depth/layer - 1e-9))
	g := canopy.NewGrid(1, 1, layers, slabWidth, 1, 1, canopy.Slope{})
	g.FillBox(slabWidth, 0, 1, 2*s.Depth)
	return g
}
