package scatter

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
	"gonum.org/v1/gonum/blas/blas64"

	"rowlight/sim/internal/exp"
	"rowlight/sim/light"
)

// Place is a point that receives light, and the side to which it looks.
type Place struct {
	At    mgl64.Vec3 // in the row frame [m]
	Right bool       // looks to positive x
}

// Receivers find the light at many places. The cross-section is even along the row, so the light is found at
// the knots of a lattice, half a cell apart or a cell, and interpolated between them. They keep scratch: give every
// goroutine its own.
type Receivers struct {
	model  *Model
	knots  []knot
	rows   int       // sides of knots that are needed
	seen   []float64 // of each part, and at last of the sky, the terms of a Broad [(row*terms + term)*stride + part]
	places []between
	field  []float64 // scratch: terms at each row
}

// knot is a point of the lattice.
type knot struct {
	x, z float64 // in the section [m]
	row  [2]int  // of the side that looks left and the one that looks right, -1 where no place needs it
}

// between are the rows of the four knots around a place.
type between struct {
	row    [4]int
	weight [4]float64
}

// Receivers prepares places. Shown is the share of light that reaches a place from a direction with a given
// cosine to its outward axis, the rest being hidden by the bunch on which it lies; nil for places that see
// all around. Pace is called for every knot; its error abandons the work.
func (m *Model) Receivers(places []Place, shown func(cosine float64) float64, pace func() error) (*Receivers, error) {
	if shown == nil {
		shown = func(float64) float64 { return 1 }
	}
	r := &Receivers{model: m}
	if r.tie(places, 2); r.rows > mostRows {
		r.tie(places, 1)
	}
	r.seen = make([]float64, r.rows*terms*r.stride())
	r.field = make([]float64, r.rows*terms)
	all := views(m.section, m.bearings, shown)
	var way []step
	parts := make([]seen, r.stride())
	for i := range r.knots {
		if err := pace(); err != nil {
			return nil, err
		}
		way = r.look(&r.knots[i], all, way, parts)
	}
	return r, nil
}

// stride is the number of parts and the sky.
func (r *Receivers) stride() int { return r.model.parts() + 1 }

// mostRows is the number of sides of knots above which knots lie a whole cell apart: where fruit hangs all
// over a canopy. Against knots closer by, half cells miss by 0.002 of unit light (rms over the faces) and
// whole cells by 0.005 (measured on the forms of the catalogue).
const mostRows = 130

// tie finds or makes the knots around every place, so many to a cell along each axis.
func (r *Receivers) tie(places []Place, perCell int) {
	s := r.model.section
	r.knots, r.rows, r.places = nil, 0, nil
	dx, dz := s.dx/float64(perCell), s.dz/float64(perCell)
	top := s.Layers * perCell
	made := map[[2]int]int{}
	for _, p := range places {
		x, z := (p.At[0]+s.Width/2)/dx, (p.At[2]-s.Slope.Across*p.At[0])/dz
		z = math.Min(math.Max(z, 0), float64(top))
		column, layer := int(math.Floor(x)), min(int(z), top-1)
		u, v := x-float64(column), z-float64(layer)
		side := 0
		if p.Right {
			side = 1
		}
		var b between
		for k := range 4 {
			corner := [2]int{column + k%2, layer + k/2}
			number, ok := made[corner]
			if !ok {
				number = len(r.knots)
				made[corner] = number
				r.knots = append(r.knots, knot{float64(corner[0])*dx - s.Width/2, float64(corner[1]) * dz, [2]int{-1, -1}})
			}
			b.row[k] = r.need(&r.knots[number], side)
		}
		b.weight = [4]float64{(1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v}
		r.places = append(r.places, b)
	}
}

// need is the row of one side of a knot.
func (r *Receivers) need(k *knot, side int) int {
	if k.row[side] < 0 {
		k.row[side] = r.rows
		r.rows++
	}
	return k.row[side]
}

// faint is the share of light below which a view ends.
const faint = 1e-5

// seen is what a knot sees of one part: the terms of a Broad for a place that looks left and one that looks
// right.
type seen [2][terms]float64

// look follows all views from a knot and gathers what they show of every part and, at last, of the sky. It
// reuses way.
func (r *Receivers) look(k *knot, all []view, way []step, parts []seen) []step {
	s := r.model.section
	clear(parts)
	for i := range all {
		var end float64
		way, end = s.walk(way[:0], k.x, k.z, all[i].x, all[i].z)
		last := &parts[s.parts()]
		if all[i].z < 0 {
			last = &parts[len(s.cells)+s.strip(end)]
		}
		for j := range all[i].slants {
			v := &all[i].slants[j]
			left := 1.0
			for _, step := range way {
				passed := left * exp.Of(-v.depths[step.cell]*step.length)
				parts[step.cell].add(left-passed, &v.part)
				if left = passed; left < faint {
					break
				}
			}
			if all[i].z > 0 {
				last.add(left, &v.sky)
			} else {
				last.add(left, &v.part)
			}
		}
	}
	r.keep(k, parts)
	return way
}

// add adds a share of a view.
func (p *seen) add(share float64, view *seen) {
	for side := range view {
		for term := range view[side] {
			p[side][term] += share * view[side][term]
		}
	}
}

// keep turns what a knot sees into rows over the parts.
func (r *Receivers) keep(k *knot, parts []seen) {
	for side, number := range k.row {
		if number < 0 {
			continue
		}
		rows := r.seen[number*terms*r.stride():][:terms*r.stride()]
		for part := range parts {
			for term, value := range parts[part][side] {
				rows[term*r.stride()+part] = value
			}
		}
	}
}

// Leaves is the light that comes from leaves to every place.
func (r *Receivers) Leaves(s *Solution, into []light.Broad) {
	r.find(0, s.emitted[:len(s.Cells)], into)
}

// Floor is the light that comes from the floor to every place.
func (r *Receivers) Floor(s *Solution, into []light.Broad) {
	r.find(len(s.Cells), s.emitted[len(s.Cells):], into)
}

// Sky is the light that comes straight from a sky of unit horizontal irradiance to every place.
func (r *Receivers) Sky(into []light.Broad) { r.find(r.model.parts(), []float64{1}, into) }

// find adds up what places see of the parts from a first one on.
func (r *Receivers) find(first int, radiosity []float64, into []light.Broad) {
	multiply(blas64.General{
		Rows: len(r.field), Cols: len(radiosity), Stride: r.stride(), Data: r.seen[min(first, len(r.seen)):],
	}, radiosity, r.field)
	for i := range into {
		r.interpolate(&r.places[i], &into[i])
	}
}

// interpolate finds the light at a place between its knots.
func (r *Receivers) interpolate(p *between, into *light.Broad) {
	mean, x, y, z := 0.0, 0.0, 0.0, 0.0
	for k := range p.row {
		t, weight := r.field[p.row[k]*terms:][:terms], p.weight[k]
		mean += weight * t[0]
		x += weight * t[1]
		y += weight * t[2]
		z += weight * t[3]
	}
	into.Mean, into.Vector[0], into.Vector[1], into.Vector[2] = mean, x, y, z
}
