package scatter

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
)

// Length of path over which leaves of one place along the row stand behind each other [m; assumption]: level light meets
// other leaves after about two of them, light along the upright or hanging shoots goes on between the same two shoots.
// With them the share of the beam that passes the cross-section follows that of the uneven row within 0.03 at every bearing
// from 20 to 75° of height (TestSectionPassesWhatTheUnevenRowPasses); a mean density alone loses up to 0.09.
const (
	clumpLevel = 0.17
	clumpSteep = 0.37
)

// section is the cross-section of a canopy as cells for light: only cells with leaves are numbered.
type section struct {
	canopy.Section
	cells      []Cell
	number     []int32      // of each place of the section, -1 without leaves
	extinction []extinction // of each cell
	dx, dz     float64      // of a cell [m]
	strips     int

	lowest, highest int // layers with leaves
}

// extinction is Ω·a of a cell, before G [1/m]: for level light, and what upright light has more (less, in fact).
type extinction struct{ level, more float64 }

// newSection divides a canopy into cells.
func newSection(grid *canopy.Grid, settings Settings) *section {
	columns := cellsIn(grid.Width(), settings.Resolution.Across)
	layers := cellsIn(grid.Height(), settings.Resolution.Up)
	s := &section{
		Section: grid.Section(columns, layers, 0.5*settings.Clumping*clumpLevel),
		strips:  settings.Strips,
	}
	steep := grid.Section(columns, layers, 0.5*settings.Clumping*clumpSteep).Effective
	s.dx, s.dz = s.Width/float64(s.Columns), s.Height/float64(s.Layers)
	for place, level := range s.Effective {
		if settings.Clumping*steep[place] <= 0 {
			s.number = append(s.number, -1)
			continue
		}
		if layer := place / columns; len(s.cells) == 0 {
			s.lowest, s.highest = layer, layer
		} else {
			s.highest = layer
		}
		s.number = append(s.number, int32(len(s.cells)))
		s.cells = append(s.cells, s.cell(place))
		s.extinction = append(s.extinction, extinction{settings.Clumping * level, settings.Clumping * (steep[place] - level)})
	}
	return s
}

// cell describes a place of the section.
func (s *section) cell(place int) Cell {
	return Cell{
		X: (float64(place%s.Columns)+0.5)*s.dx - s.Width/2, Z: (float64(place/s.Columns) + 0.5) * s.dz,
		Width: s.dx, Height: s.dz,
		LeafArea: s.Density[place] * s.dx * s.dz,
	}
}

// strip is the floor strip under a place across the row, counted from the left edge of the period.
func (s *section) strip(x float64) int {
	share := x/s.Width + 0.5
	return min(int((share-math.Floor(share))*float64(s.strips)), s.strips-1)
}

// step is the part of a way that lies in one cell with leaves.
type step struct {
	cell        int32
	level, more float64 // extinction times length within the section, before G and the slant along the row
}

// pass is how light in one direction takes the steps of its way.
type pass struct {
	stretch float64 // G times length per length within the section
	steep   float64 // share of the extinction of upright light in place of that of level light
}

// newPass is the pass of light in a direction with projection g that is stretched along the row.
func newPass(g, stretch float64, d mgl64.Vec3) pass {
	upright := d[2] * d[2]
	return pass{g * stretch, upright * upright}
}

// depth is the optical depth of a step.
func (p pass) depth(s step) float64 { return p.stretch * (s.level + p.steep*s.more) }

// walk appends the steps of a straight way in the section from a place (height above the local ground) to
// the floor or the top, and tells where across the row it ends. The way must not be level.
func (s *section) walk(list []step, x, z, dx, dz float64) (steps []step, end float64) {
	column, layer := int(math.Floor((x+s.Width/2)/s.dx)), min(max(int(z/s.dz), 0), s.Layers-1)
	across := newBorders((x+s.Width/2)/s.dx-float64(column), dx/s.dx)
	up := newBorders(z/s.dz-float64(layer), dz/s.dz)
	column = ((column % s.Columns) + s.Columns) % s.Columns
	end, last := x+dx*(s.Height-z)/dz, s.highest
	if dz < 0 {
		end, last = x-dx*z/dz, s.lowest
	}
	for at := 0.0; (last-layer)*up.sign >= 0; {
		next := math.Min(across.next, up.next)
		if cell := s.number[layer*s.Columns+column]; cell >= 0 {
			e, length := s.extinction[cell], next-at
			list = append(list, step{cell, e.level * length, e.more * length})
		}
		at = next
		if next == up.next {
			up.next += up.step
			layer += up.sign
			continue
		}
		across.next += across.step
		switch column += across.sign; column {
		case s.Columns:
			column = 0
		case -1:
			column = s.Columns - 1
		}
	}
	return list, end
}

// borders are the cell borders that a way meets along one axis, as lengths of the way.
type borders struct {
	next, step float64
	sign       int
}

// newBorders starts at a fraction of a cell with a speed in cells per metre.
func newBorders(fraction, speed float64) borders {
	switch {
	case speed > 0:
		return borders{(1 - fraction) / speed, 1 / speed, 1}
	case speed < 0:
		return borders{fraction / -speed, 1 / -speed, -1}
	default:
		return borders{math.Inf(1), math.Inf(1), 0}
	}
}
