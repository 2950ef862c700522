package canopy

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// farthest is where a ray stops that never leaves the canopy [m]. At the lowest sun that is computed
// a ray has left a canopy of 2.5 m long before.
const farthest = 250.0

// crossing is one cell on a ray: its offset from the start cell and the length of the ray in it [m].
// Offsets along and across the row are reduced to 0 … n-1, since the grid repeats.
type crossing struct {
	x, y, z int32
	length  float64
}

// Ray finds crossings, keeping its buffer from ray to ray. Use one Ray per goroutine.
type Ray struct {
	grid *Grid
	list []crossing
}

// NewRay makes a ray caster on a grid.
func NewRay(g *Grid) *Ray { return &Ray{grid: g} }

// Path is the integral of leaf area density from a point along a unit vector of the row frame
// [m² leaf per m² normal to the ray], found by exact traversal of the grid. A ray upward ends at the
// top of the canopy, a ray downward at the ground.
func (r *Ray) Path(from, direction mgl64.Vec3) float64 {
	return r.integral(r.grid.density, r.grid.ny, from, direction)
}

// Depth is the optical depth at Ω = 1 from a point along the direction for which the thickness was
// found: Path with what the leaves of each cell show that way.
func (r *Ray) Depth(t *Thickness, from, direction mgl64.Vec3) float64 {
	return r.integral(t.cells, 2*r.grid.ny, from, direction)
}

// Each visits the cells on a ray from near to far with the distances between which it crosses them [m] and
// what they add to the depth.
func (r *Ray) Each(t *Thickness, from, direction mgl64.Vec3, visit func(from, to, depth float64)) {
	r.Depth(t, from, direction)
	g := r.grid
	x, y, z := g.cell(from)
	ix, iy, iz := wrap(int(math.Floor(x)), g.nx), wrap(int(math.Floor(y)), g.ny), int(math.Floor(z))
	at := 0.0
	for _, c := range r.list {
		layer := iz + int(c.z)
		if layer < 0 || layer >= g.nz {
			return
		}
		cell := 2*g.index((ix+int(c.x))%g.nx, 0, layer) + iy + int(c.y)
		visit(at, at+c.length, float64(t.cells[cell])*c.length)
		at += c.length
	}
}

// integral adds up a quantity of the cells, kept in runs along the row of the given size, along a ray.
func (r *Ray) integral(cells []float32, run int, from, direction mgl64.Vec3) float64 {
	r.list = r.list[:0]
	g := r.grid
	x, y, z := g.cell(from)
	ix, iy, iz := math.Floor(x), math.Floor(y), math.Floor(z)
	if z >= float64(g.nz) && g.sheared(direction)[2] >= 0 {
		return 0
	}
	r.trace(x-ix, y-iy, z-iz, int(iz), direction)
	return r.sum(cells, run, wrap(int(ix), g.nx), wrap(int(iy), g.ny), int(iz))
}

// trace lists the crossings of a ray that starts at the given fractions of a cell in layer iz
// (Amanatides & Woo 1987).
func (r *Ray) trace(fx, fy, fz float64, iz int, direction mgl64.Vec3) {
	g := r.grid
	d := g.sheared(direction)
	x, y, z := newAxis(fx, d[0]/g.dx), newAxis(fy, d[1]/g.dy), newAxis(fz, d[2]/g.dz)
	layer, ox, oy := iz, 0, 0
	at := 0.0
	list := r.list[:cap(r.list)]
	n := 0
	for layer >= 0 && layer < g.nz {
		if n == len(list) {
			list = append(list, crossing{})
			list = list[:cap(list)]
		}
		c := &list[n]
		n++
		c.x, c.y, c.z = int32(ox), int32(oy), int32(layer-iz)
		var next float64
		// Not min: browsers would call a function for every cell.
		switch {
		case x.next <= y.next && x.next <= z.next:
			next = x.next
			x.next += x.step
			ox = around(ox+x.sign, g.nx)
		case y.next <= z.next:
			next = y.next
			y.next += y.step
			oy = around(oy+y.sign, g.ny)
		default:
			next = z.next
			z.next += z.step
			layer += z.sign
		}
		if next >= farthest {
			c.length = farthest - at
			break
		}
		c.length = next - at
		at = next
	}
	r.list = list[:n]
}

// around is wrap for an index that was stepped by one from inside 0 … n-1, without a division for every cell.
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

// sum adds up a quantity times length along the crossings from a start cell. Crossings outside the grid
// end it.
func (r *Ray) sum(cells []float32, run, ix, iy, iz int) float64 {
	nx, ny, nz := r.grid.nx, r.grid.ny, r.grid.nz
	total := 0.0
	for i := range r.list {
		c := &r.list[i]
		z := iz + int(c.z)
		if uint(z) >= uint(nz) {
			break
		}
		x := ix + int(c.x)
		if x >= nx {
			x -= nx
		}
		y := iy + int(c.y)
		if y >= ny {
			y -= ny
		}
		total += float64(cells[(z*nx+x)*run+y]) * c.length
	}
	return total
}
