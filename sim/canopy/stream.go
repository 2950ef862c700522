package canopy

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// phases is the number of start places within a cell along each axis. All points that share one share
// the list of crossings of a direction; a point moves by at most a quarter of a cell to reach it.
const phases = 2

// group is the points that share a phase and a mirroring: one list of steps serves them all.
type group struct {
	fraction [3]float64 // of the start within its cell
	columns  []column
	lowest   int // layers of its lowest and highest start
	highest  int
}

// column is the points of a group that start from one column of cells, the highest first.
type column struct {
	ix     int
	starts []start
}

// start is a point snapped to a phase: its layer, the offset of its cell in its column, where every run along the row is
// written twice, and its index among the points.
type start struct{ iz, offset, point int }

// groupByPhase sorts points by mirroring, phase and column: plain ones and mirrored ones. Points outside the grid
// count into its lowest or highest layer.
func groupByPhase(g *Grid, points []Point) (sides [2][]group) {
	for side := range sides {
		sides[side] = make([]group, phases*phases*phases)
	}
	for i, p := range points {
		x, y, z := g.cell(p.At)
		cell := [3]float64{math.Floor(x), math.Floor(y), math.Floor(z)}
		key := 0
		var fraction [3]float64
		for axis, value := range [3]float64{x, y, z} {
			phase := min(int((value-cell[axis])*phases), phases-1)
			key = key*phases + phase
			fraction[axis] = (float64(phase) + 0.5) / phases
		}
		to := &sides[p.side()][key]
		to.fraction = fraction
		iz := min(max(int(cell[2]), 0), g.nz-1)
		to.add(wrap(int(cell[0]), g.nx), start{iz, iz*g.layer() + wrap(int(cell[1]), g.ny), i})
	}
	for side := range sides {
		sides[side] = slices.DeleteFunc(sides[side], func(g group) bool { return len(g.columns) == 0 })
		for _, g := range sides[side] {
			for _, c := range g.columns {
				slices.SortStableFunc(c.starts, func(a, b start) int { return b.iz - a.iz })
			}
		}
	}
	return sides
}

// add puts a start into its column.
func (g *group) add(ix int, s start) {
	if len(g.columns) == 0 {
		g.lowest, g.highest = s.iz, s.iz
	}
	g.lowest, g.highest = min(g.lowest, s.iz), max(g.highest, s.iz)
	for k := range g.columns {
		if g.columns[k].ix == ix {
			g.columns[k].starts = append(g.columns[k].starts, s)
			return
		}
	}
	g.columns = append(g.columns, column{ix, []start{s}})
}

// segment is the part of a ray in one cell that may hold leaves: where the cell lies from the start,
// and the length in it [m].
type segment struct {
	offset int32
	length float32
}

// streamer sums optical depth along the rays of many starts. It keeps its buffers from direction to
// direction.
type streamer struct {
	grid      *Grid
	ray       *Ray
	thickness *Thickness // towards the direction
	filled    []int32    // where each column of cells begins, negative without leaves; twice, so that nothing wraps
	segments  []segment
}

func newStreamer(g *Grid) *streamer {
	s := &streamer{grid: g, ray: NewRay(g), thickness: NewThickness(g), filled: make([]int32, 2*g.nx)}
	for i := range s.filled {
		s.filled[i] = -1
	}
	for run := 0; run < len(g.density); run += g.ny {
		if slices.ContainsFunc(g.density[run:run+g.ny], func(a float32) bool { return a > 0 }) {
			ix := run / g.ny % g.nx
			s.filled[ix], s.filled[ix+g.nx] = int32(ix*2*g.ny), int32(ix*2*g.ny)
		}
	}
	return s
}

// runAll finds the optical depths of some groups along a unit vector of the row frame.
func (s *streamer) runAll(groups []group, direction mgl64.Vec3, row []float32) {
	for k := range groups {
		s.run(&groups[k], direction, row)
	}
}

// run finds the optical depths of a group along a unit vector of the row frame near that for which the thickness was
// found.
func (s *streamer) run(g *group, direction mgl64.Vec3, row []float32) {
	up := s.grid.sheared(direction)[2] >= 0
	// The start from which the way out is longest has a list that serves all.
	first := g.lowest
	if !up {
		first = g.highest
	}
	s.ray.trace(g.fraction[0], g.fraction[1], g.fraction[2], first, direction)
	steps, turns := s.ray.steps, s.ray.turns[:s.ray.layers+1]
	if s.ray.count > len(s.segments) {
		s.segments = make([]segment, len(steps))
	}
	cells := s.thickness.cells
	for _, column := range g.columns {
		// The start with the shortest way out comes first, and each that follows goes on from there.
		from, n := 0, 0
		for k := range column.starts {
			at, layers := &column.starts[k], 0
			if up {
				layers = s.grid.nz - 1 - at.iz
			} else {
				at = &column.starts[len(column.starts)-1-k]
				layers = at.iz
			}
			if to := turns[min(layers+1, len(turns)-1)]; to > from {
				n = s.gather(column.ix, steps[from:to], n)
				from = to
			}
			row[at.point] = s.sum(cells, at, n)
		}
	}
}

// gather keeps those of some steps that lie in columns that hold leaves, as seen from one start column, after the n
// segments that are kept already, and tells how many there are then.
func (s *streamer) gather(ix int, rest []step, n int) int {
	// Nothing that holds a pointer is written here: while garbage is looked for, each would be noted.
	filled, segments := s.filled[ix:], s.segments
	// Four at a time, as in sum: 1.5 % of a day in a browser.
	for len(rest) >= 4 {
		a, b, c, d := &rest[0], &rest[1], &rest[2], &rest[3]
		if column := filled[a.column]; column >= 0 {
			segments[n] = segment{column + a.offset, a.length}
			n++
		}
		if column := filled[b.column]; column >= 0 {
			segments[n] = segment{column + b.offset, b.length}
			n++
		}
		if column := filled[c.column]; column >= 0 {
			segments[n] = segment{column + c.offset, c.length}
			n++
		}
		if column := filled[d.column]; column >= 0 {
			segments[n] = segment{column + d.offset, d.length}
			n++
		}
		rest = rest[4:]
	}
	for i := range rest {
		c := &rest[i]
		if column := filled[c.column]; column >= 0 {
			segments[n] = segment{column + c.offset, c.length}
			n++
		}
	}
	return n
}

// opaque is the optical depth at which a sum may stop: less than 1e-5 of the light passes, and a sun
// near the horizon would otherwise cross a thousand cells.
const opaque = 12.0

// batch is the number of segments between two looks at the sum.
const batch = 64

// sum adds up thickness times length from a start over so many segments, until the light is gone.
func (s *streamer) sum(cells []float32, from *start, count int) float32 {
	segments := s.segments[:count]
	base := from.offset
	total := float32(0)
	for total < opaque && len(segments) > 0 {
		n := min(batch, len(segments))
		rest := segments[:n]
		segments = segments[n:]
		// Four at a time: in a browser the way back to the start of a loop costs more than an addition.
		for len(rest) >= 4 {
			a, b, c, d := rest[0], rest[1], rest[2], rest[3]
			total += cells[base+int(a.offset)] * a.length
			total += cells[base+int(b.offset)] * b.length
			total += cells[base+int(c.offset)] * c.length
			total += cells[base+int(d.offset)] * d.length
			rest = rest[4:]
		}
		for _, e := range rest {
			total += cells[base+int(e.offset)] * e.length
		}
	}
	return total
}
