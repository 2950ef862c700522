package canopy

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// farthest is where a ray stops that never leaves the canopy [m]. At the lowest sun that is computed
// a ray has left a canopy of 2.5 m long before.
const farthest = 250.0

// step is one cell on a ray: its columns from that of the start, the rest of the offset of its cell, where every
// run along the row is written twice, and the length of the ray in it [m]. Columns across and places along
// the row are reduced to 0 … n-1, since the grid repeats.
type step struct {
	column, offset int32
	length         float32
}

// Ray finds the cells on rays, keeping its buffers from ray to ray. Use one Ray per goroutine.
type Ray struct {
	grid   *Grid
	steps  []step     // of the last ray, and room for more
	count  int        // how many there are
	turns  []int      // how many of them lie nearer to the start than so many layers
	layers int        // that it crosses
	column int        // of its start
	rest   int        // of the offset of its cell
	area   *Thickness // leaf area density in place of what leaves show; nil until it is wanted
}

// NewRay makes a ray caster on a grid.
func NewRay(g *Grid) *Ray { return &Ray{grid: g, turns: make([]int, g.nz+1)} }

// Path is the integral of leaf area density from a point along a unit vector of the row frame
// [m² leaf per m² normal to the ray], found by exact traversal of the grid. A ray upward ends at the
// top of the canopy, a ray downward at the ground.
func (r *Ray) Path(from, direction mgl64.Vec3) float64 {
	if r.area == nil {
		r.area = areaOf(r.grid)
	}
	return r.Depth(r.area, from, direction)
}

// Depth is the optical depth at Ω = 1 from a point along the direction for which the thickness was
// found: Path with what the leaves of each cell show that way.
func (r *Ray) Depth(t *Thickness, from, direction mgl64.Vec3) float64 {
	g := r.grid
	x, y, z := g.cell(from)
	ix, iy, iz := math.Floor(x), math.Floor(y), math.Floor(z)
	r.trace(x-ix, y-iy, z-iz, int(iz), direction)
	r.column, r.rest = wrap(int(ix), g.nx), int(iz)*g.layer()+wrap(int(iy), g.ny)
	total := 0.0
	for i := range r.steps[:r.count] {
		s := &r.steps[i]
		total += float64(t.cells[r.cell(s)]) * float64(s.length)
	}
	return total
}

// cell is where the cell of a step lies.
func (r *Ray) cell(s *step) int {
	column := r.column + int(s.column)
	if column >= r.grid.nx {
		column -= r.grid.nx
	}
	return r.rest + column*2*r.grid.ny + int(s.offset)
}

// Each visits the cells on the ray whose Depth was found last, from near to far, with the distances between which
// it crosses them [m] and what they add to the depth.
func (r *Ray) Each(t *Thickness, visit func(from, to, depth float64)) {
	at := 0.0
	for i := range r.steps[:r.count] {
		s := &r.steps[i]
		to := at + float64(s.length)
		visit(at, to, float64(t.cells[r.cell(s)])*float64(s.length))
		at = to
	}
}

// trace lists the steps of a ray that starts at the given fractions of a cell in layer iz (Amanatides & Woo 1987),
// layer by layer.
func (r *Ray) trace(fx, fy, fz float64, iz int, direction mgl64.Vec3) {
	g := r.grid
	d := g.sheared(direction)
	x, y, z := newAxis(fx, d[0]/g.dx), newAxis(fy, d[1]/g.dy), newAxis(fz, d[2]/g.dz)
	pace := math.Abs(d[0]/g.dx) + math.Abs(d[1]/g.dy) // borders of a layer crossed per metre
	column, along, level, at := 0, 0, 0, 0.0
	n, layers := 0, 0
	for layer := iz; layer >= 0 && layer < g.nz && at < farthest; layer += z.sign {
		end := z.next
		if end > farthest {
			end = farthest
		}
		z.next += z.step
		r.turns[layers] = n
		layers++
		// The list moves only to grow: while garbage is looked for, each pointer that is written is noted.
		if most := n + int((end-at)*pace) + 8; most > len(r.steps) {
			r.steps = append(r.steps, make([]step, most)...)
		}
		steps := r.steps
		// Not min: browsers would call a function for every cell.
		for {
			s := &steps[n]
			s.column, s.offset = int32(column), int32(level+along)
			n++
			if x.next <= y.next {
				if x.next > end {
					s.length = float32(end - at)
					break
				}
				s.length = float32(x.next - at)
				at = x.next
				x.next += x.step
				column = around(column+x.sign, g.nx)
				continue
			}
			if y.next > end {
				s.length = float32(end - at)
				break
			}
			s.length = float32(y.next - at)
			at = y.next
			y.next += y.step
			along = around(along+y.sign, g.ny)
		}
		at = end
		level += z.sign * g.layer()
	}
	r.turns[layers] = n
	r.count, r.layers = n, layers
}

// axis walks the cell borders along one axis, in metres of the ray.
type axis struct {
	next, step float64
	sign       int
}

// newAxis starts an axis at a fraction of a cell with a speed in cells per metre.
func newAxis(fraction, speed float64) axis {
	switch {
	case speed > 0:
		return axis{(1 - fraction) / speed, 1 / speed, 1}
	case speed < 0:
		return axis{fraction / -speed, 1 / -speed, -1}
	default:
		return axis{math.Inf(1), math.Inf(1), 0}
	}
}

// around is where an index that has been stepped by one comes to where n places repeat.
func around(i, n int) int {
	switch i {
	case n:
		return 0
	case -1:
		return n - 1
	default:
		return i
	}
}
