package yardstick

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Hit says whether any leaf lies on the ray from a point along a unit vector of the row frame.
func (c *Caster) Hit(from, direction mgl64.Vec3) bool {
	_, _, ok := c.First(from, direction)
	return ok
}

// First is the leaf nearest to a point along a unit vector of the row frame, as its index in the Stand,
// and its distance [m]; ok is false where the ray leaves the canopy without meeting one.
func (c *Caster) First(from, direction mgl64.Vec3) (leaf int, distance float64, ok bool) {
	distance = math.Inf(1)
	c.walk(from, direction, func(l int32, t float64) {
		if t < distance {
			leaf, distance = int(l), t
		}
	}, func() bool { return !math.IsInf(distance, 1) })
	return leaf, distance, !math.IsInf(distance, 1)
}

// Count is the number of leaves on a ray. A ray that never leaves the canopy ends after 250 m.
func (c *Caster) Count(from, direction mgl64.Vec3) int {
	count := 0
	c.walk(from, direction, func(int32, float64) { count++ }, func() bool { return false })
	return count
}

// walk visits every leaf on a ray once, bin by bin (Amanatides & Woo 1987); within a bin in no order.
// After each bin it asks whether that is enough.
func (c *Caster) walk(from, direction mgl64.Vec3, visit func(leaf int32, distance float64), enough func() bool) {
	ground := mgl64.Vec3{from[0], from[1], from[2] - from[0]*c.slope.Across}
	rise := direction[2] - direction[0]*c.slope.Across - direction[1]*c.slope.Along
	at, end := c.span(ground[2], rise)
	if at >= end {
		return
	}
	start := c.inBins(ground.Add(mgl64.Vec3{direction[0], direction[1], rise}.Mul(at)))
	x := newAxis(start[0], direction[0]/c.dx, at)
	y := newAxis(start[1], direction[1]/c.dy, at)
	z := newAxis(math.Min(math.Max(start[2], 0), math.Nextafter(float64(c.nz), 0)), rise/c.dz, at)
	for at < end && z.bin >= 0 && z.bin < c.nz {
		// Not min: browsers would call a function for every bin.
		next := end
		if x.next < next {
			next = x.next
		}
		if y.next < next {
			next = y.next
		}
		if z.next < next {
			next = z.next
		}
		c.meet(ground, direction, &x, &y, &z, at, next, visit)
		if enough() {
			return
		}
		at = next
		switch next {
		case x.next:
			x.step()
		case y.next:
			y.step()
		default:
			z.step()
		}
	}
}

// span is the part of a ray that lies between the lowest and the highest leaf [m].
func (c *Caster) span(height, rise float64) (from, to float64) {
	switch {
	case rise > 0:
		from, to = (c.bottom-height)/rise, (c.top-height)/rise
	case rise < 0:
		from, to = (c.top-height)/rise, (c.bottom-height)/rise
	case height < c.bottom || height > c.top:
		return 0, 0
	default:
		to = c.farthest
	}
	return math.Max(from, 0), math.Min(to, c.farthest)
}

// meet visits the leaves of one bin that the ray meets between two distances.
func (c *Caster) meet(ground, direction mgl64.Vec3, x, y, z *axis, from, to float64, visit func(leaf int32, distance float64)) {
	bx, px := split(x.bin, c.nx)
	by, py := split(y.bin, c.ny)
	bin := (z.bin*c.nx+bx)*c.ny + by
	for _, e := range c.entries[c.first[bin]:c.first[bin+1]] {
		d := &c.discs[e.disc]
		to3 := d.centre.Sub(ground)
		to3[0] += float64(px+int(e.i)) * c.width
		to3[1] += float64(py+int(e.j)) * c.length
		to3[2] += to3[0]*c.slope.Across + to3[1]*c.slope.Along
		t := to3.Dot(d.normal) / direction.Dot(d.normal)
		if t > from && t <= to && direction.Mul(t).Sub(to3).LenSqr() <= d.squared {
			visit(e.disc, t)
		}
	}
}

// axis walks the bins along one axis, in metres of the ray.
type axis struct {
	bin, sign int
	next, gap float64
}

// newAxis starts an axis at a place in bins with a speed in bins per metre, after a distance.
func newAxis(place, speed, at float64) axis {
	bin := math.Floor(place)
	switch {
	case speed > 0:
		return axis{int(bin), 1, at + (bin+1-place)/speed, 1 / speed}
	case speed < 0:
		return axis{int(bin), -1, at + (place-bin)/-speed, 1 / -speed}
	default:
		return axis{int(bin), 0, math.Inf(1), math.Inf(1)}
	}
}

func (a *axis) step() {
	a.bin += a.sign
	a.next += a.gap
}
