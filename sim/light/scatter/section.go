package scatter

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
)

// section is the cross-section of a canopy as cells for light: only cells with leaves are numbered.
type section struct {
	canopy.Section
	cells      []Cell
	extinction []extinction // of each cell
	number     []int32      // of each place of the section, -1 without leaves
	dx, dz     float64      // of a cell [m]
	oblique    float64      // share of the extinction that stops oblique light
	strips     int

	lowest, highest int // layers with leaves
}

// newSection divides a canopy into cells.
func newSection(l *looker, strips int) (*section, error) {
	s := &section{Section: l.grid.Section(l.columns, l.layers), strips: strips, oblique: 1}
	s.dx, s.dz = s.Width/float64(s.Columns), s.Height/float64(s.Layers)
	all, err := l.extinctions(s.dx, s.dz)
	for place, e := range all {
		if e.xx+e.yy+e.zz == 0 {
			s.number = append(s.number, -1)
			continue
		}
		s.highest = place / s.Columns
		if len(s.cells) == 0 {
			s.lowest = s.highest
		}
		s.number = append(s.number, int32(len(s.cells)))
		s.cells = append(s.cells, s.cell(place))
		s.extinction = append(s.extinction, e)
	}
	return s, err
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

// parts is the number of leaf cells and floor strips.
func (s *section) parts() int { return len(s.cells) + s.strips }

// step is the part of a way that lies in one cell with leaves.
type step struct {
	cell   int32
	length float64 // within the section [m]
}

// toward adds the extinction of every cell for a direction of the row frame, times a factor.
func (s *section) toward(d mgl64.Vec3, factor float64, into []float64) {
	for i := range s.extinction {
		into[i] += factor * s.extinction[i].toward(d, s.oblique)
	}
}

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
		next := across.next // not Min: browsers would call a function for every cell
		if up.next < next {
			next = up.next
		}
		if cell := s.number[layer*s.Columns+column]; cell >= 0 {
			list = append(list, step{cell, next - at})
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
