package canopy

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// Point is a place for which a dome is made. A mirrored point counts its azimuths from negative x
// towards positive y, so that the faces of both sides of a row use the same lattice.
type Point struct {
	At       mgl64.Vec3
	Mirrored bool
}

// Domes hold, for many points, the optical depth of the leaves in every direction of a lattice, before
// clumping: the path integral of what the leaves of each cell show that way. Scaling the leaf area, Ω or
// a net costs one exponential.
type Domes struct {
	Lattice Lattice
	Points  []Point
	depth   []float32 // [direction*points + point]
}

// Depth is the row of optical depths of one lattice direction over all points.
func (d *Domes) Depth(direction int) []float32 {
	n := len(d.Points)
	return d.depth[direction*n : (direction+1)*n]
}

// Along interpolates the optical depth of one point at a sampled direction.
func (d *Domes) Along(point int, s *Sample) float64 {
	n := len(d.Points)
	depth := 0.0
	for k := range 4 {
		depth += s.weight[k] * float64(d.depth[s.index[k]*n+point])
	}
	return depth
}

// At is the same depths of points that hang elsewhere by now.
func (d *Domes) At(points []Point) *Domes { return &Domes{d.Lattice, points, d.depth} }

// InFrame turns a direction of the row frame into the frame of a point.
func (p Point) InFrame(d mgl64.Vec3) mgl64.Vec3 {
	if p.Mirrored {
		d[0] = -d[0]
	}
	return d
}

// side is 1 for a mirrored point, 0 for a plain one.
func (p Point) side() int {
	if p.Mirrored {
		return 1
	}
	return 0
}

// usualPatch is how many by how many directions share one look at what the leaves show.
const usualPatch = 2

// NewDomes finds the optical depths of all points. What the leaves show is looked at once for two by two
// directions (the share of light that passes to the floor then errs by at most 0.01 at steps of 6°), on both sides of
// the row. Steps of rays are listed once per direction and phase, cleared of empty columns, and then streamed over
// the points. Pace is called between directions; its error abandons the work.
func NewDomes(g *Grid, lattice Lattice, points []Point, pace func() error) (*Domes, error) {
	return newDomes(g, lattice, points, usualPatch, nil, pace)
}

// newDomes looks at the leaves once for so many by so many directions, and only in those that are wanted, where these are given.
func newDomes(g *Grid, lattice Lattice, points []Point, size int, wanted []bool, pace func() error) (*Domes, error) {
	domes := &Domes{Lattice: lattice, Points: points, depth: make([]float32, lattice.Size()*len(points))}
	groups, stream := groupByPhase(g, points), newStreamer(g)
	for _, patch := range lattice.patches(size) {
		for side := range groups {
			if len(groups[side]) == 0 {
				patch.directions[side] = nil
			} else if wanted != nil {
				patch.directions[side] = slices.DeleteFunc(patch.directions[side], func(i int) bool { return !wanted[i] })
			}
		}
		if len(patch.directions[0])+len(patch.directions[1]) == 0 {
			continue
		}
		stream.thickness.Toward(patch.middle)
		for side, directions := range patch.directions {
			for _, i := range directions {
				if err := pace(); err != nil {
					return nil, err
				}
				stream.runAll(groups[side], Point{Mirrored: side == 1}.InFrame(lattice.Direction(i)), domes.Depth(i))
			}
		}
	}
	return domes, nil
}

// Snap moves a point to the place from which a dome of it is made: the middle of the nearest phase.
func (g *Grid) Snap(p mgl64.Vec3) mgl64.Vec3 {
	x, y, z := g.cell(p)
	middle := func(value float64) float64 { return (math.Floor(value*phases) + 0.5) / phases }
	at := mgl64.Vec3{g.x0 + g.dx*middle(x), g.y0 + g.dy*middle(y), 0}
	at[2] = g.dz*middle(z) + at[0]*g.slope.Across
	return at
}
