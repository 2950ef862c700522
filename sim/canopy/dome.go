package canopy

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Point is a place for which a dome is made. A mirrored point counts its azimuths from negative x
// towards positive y, so that the faces of both sides of a row use the same lattice.
type Point struct {
	At       mgl64.Vec3
	Mirrored bool
}

// Domes hold, for many points, the path integral of leaf area density in every direction of a
// lattice, before G and clumping: scaling the leaf area or a net costs one exponential.
type Domes struct {
	Lattice Lattice
	Points  []Point
	path    []float32 // [direction*points + point]
}

// Path is the row of path integrals of one lattice direction over all points [m²/m²].
func (d *Domes) Path(direction int) []float32 {
	n := len(d.Points)
	return d.path[direction*n : (direction+1)*n]
}

// Along interpolates the path integral of one point at a sampled direction.
func (d *Domes) Along(point int, s *Sample) float64 {
	n := len(d.Points)
	path := 0.0
	for k := range 4 {
		path += s.weight[k] * float64(d.path[s.index[k]*n+point])
	}
	return path
}

// InFrame turns a direction of the row frame into the frame of a point.
func (p Point) InFrame(d mgl64.Vec3) mgl64.Vec3 {
	if p.Mirrored {
		d[0] = -d[0]
	}
	return d
}

// NewDomes finds the path integrals of all points. Crossings are listed once per direction and phase,
// cleared of empty columns, and then streamed over the points. Pace is called between directions; its
// error abandons the work.
func NewDomes(g *Grid, lattice Lattice, points []Point, pace func() error) (*Domes, error) {
	domes := &Domes{Lattice: lattice, Points: points, path: make([]float32, lattice.Size()*len(points))}
	groups := groupByPhase(g, points)
	stream := newStreamer(g)
	for i := range lattice.Size() {
		if err := pace(); err != nil {
			return nil, err
		}
		for k := range groups {
			stream.run(&groups[k], lattice.Direction(i), domes.Path(i))
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
