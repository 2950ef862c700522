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

// Lattice is the set of directions of a dome, in the point's own frame: azimuth from the outward
// axis, elevation above the horizontal.
type Lattice struct {
	azimuth0, azimuthStep     float64 // [rad]
	elevation0, elevationStep float64 // [rad]
	columns, rows             int
	around                    bool // the last column is followed by the first
}

// Half is the lattice of a face: it looks up and outward, 30° past the plane of the face.
func Half(step_deg float64) Lattice {
	columns := int(240/step_deg) + 1
	rows := int(90 / step_deg)
	step := mgl64.DegToRad(step_deg)
	return Lattice{-step * float64(columns-1) / 2, step, step / 2, step, columns, rows, false}
}

// HalfDown is the lattice of a face that looks at the ground.
func HalfDown(step_deg float64) Lattice {
	l := Half(step_deg)
	l.elevation0, l.elevationStep = -l.elevation0, -l.elevationStep
	return l
}

// Full is the lattice of a point that sees the whole sky.
func Full(step_deg float64) Lattice {
	step := mgl64.DegToRad(step_deg)
	return Lattice{0, step, step / 2, step, int(math.Round(360 / step_deg)), int(90 / step_deg), true}
}

// FullDown is the lattice of a point that looks at the ground all around.
func FullDown(step_deg float64) Lattice {
	l := Full(step_deg)
	l.elevation0, l.elevationStep = -l.elevation0, -l.elevationStep
	return l
}

// Size is the number of directions.
func (l Lattice) Size() int { return l.columns * l.rows }

// Direction is the unit vector of a direction in the point's frame.
func (l Lattice) Direction(i int) mgl64.Vec3 {
	return fromAngles(l.azimuth0+l.azimuthStep*float64(i%l.columns), l.elevation0+l.elevationStep*float64(i/l.columns))
}

// SolidAngle is the solid angle of the cell around a direction [sr]. The cells of a full lattice add
// up to 2π exactly.
func (l Lattice) SolidAngle(i int) float64 {
	middle := l.elevation0 + l.elevationStep*float64(i/l.columns)
	return l.azimuthStep * math.Abs(math.Sin(middle+l.elevationStep/2)-math.Sin(middle-l.elevationStep/2))
}

// Sample is a direction between lattice directions, as four of them and their weights.
type Sample struct {
	index  [4]int
	weight [4]float64
}

// Sample finds the lattice directions around a direction in the point's frame; ok is false for a
// direction outside the lattice. Directions beyond the last row take the last row: the lattice ends
// half a step from the horizon and from the zenith.
func (l Lattice) Sample(d mgl64.Vec3) (s Sample, ok bool) {
	azimuth := math.Atan2(d[1], d[0])
	row := (math.Atan2(d[2], math.Hypot(d[0], d[1])) - l.elevation0) / l.elevationStep
	row = math.Min(math.Max(row, 0), float64(l.rows-1))
	column := (azimuth - l.azimuth0) / l.azimuthStep
	if l.around && column < 0 {
		column += float64(l.columns)
	}
	if !l.around && (column < 0 || column > float64(l.columns-1)) {
		return s, false
	}
	i, j := min(int(row), l.rows-2), min(int(column), l.columns-1)
	if !l.around {
		j = min(j, l.columns-2)
	}
	u, v := row-float64(i), column-float64(j)
	k := (j + 1) % l.columns
	s.index = [4]int{i*l.columns + j, i*l.columns + k, (i+1)*l.columns + j, (i+1)*l.columns + k}
	s.weight = [4]float64{(1 - u) * (1 - v), (1 - u) * v, u * (1 - v), u * v}
	return s, true
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

// phases is the number of start places within a cell along each axis. All points that share one share
// the list of crossings of a direction; a point moves by at most a quarter of a cell to reach it.
const phases = 2

// start is a point snapped to a phase: its cell and its index among the points.
type start struct {
	ix, iy, iz, point int
}

// NewDomes finds the path integrals of all points. Crossings are listed once per direction and phase
// and then streamed over the points. Pace is called between directions; its error abandons the work.
func NewDomes(g *Grid, lattice Lattice, points []Point, pace func() error) (*Domes, error) {
	domes := &Domes{Lattice: lattice, Points: points, path: make([]float32, lattice.Size()*len(points))}
	groups := groupByPhase(g, points)
	ray := NewRay(g)
	for i := range lattice.Size() {
		if err := pace(); err != nil {
			return nil, err
		}
		row := domes.Path(i)
		local := lattice.Direction(i)
		for key, starts := range groups {
			if len(starts) == 0 {
				continue
			}
			point := Point{Mirrored: key&1 == 1}
			fraction := phaseFraction(key >> 1)
			direction := point.InFrame(local)
			// The start from which the way out is longest has a list that serves all.
			first := starts[0]
			if g.sheared(direction)[2] < 0 {
				first = starts[len(starts)-1]
			}
			ray.trace(fraction[0], fraction[1], fraction[2], first.iz, direction)
			for _, s := range starts {
				row[s.point] = float32(g.sumLit(ray.list, s.ix, s.iy, s.iz))
			}
		}
	}
	return domes, nil
}

// groupByPhase sorts points by phase and mirroring, and within a group by height. Points outside the
// grid count into its lowest or highest layer.
func groupByPhase(g *Grid, points []Point) [][]start {
	groups := make([][]start, 2*phases*phases*phases)
	for i, p := range points {
		x, y, z := g.cell(p.At)
		cell := [3]float64{math.Floor(x), math.Floor(y), math.Floor(z)}
		key := 0
		for axis, value := range [3]float64{x, y, z} {
			key = key*phases + min(int((value-cell[axis])*phases), phases-1)
		}
		key *= 2
		if p.Mirrored {
			key++
		}
		s := start{wrap(int(cell[0]), g.nx), wrap(int(cell[1]), g.ny), min(max(int(cell[2]), 0), g.nz-1), i}
		groups[key] = append(groups[key], s)
	}
	for _, starts := range groups {
		slices.SortStableFunc(starts, func(a, b start) int { return a.iz - b.iz })
	}
	return groups
}

// phaseFraction is the place of a phase within a cell.
func phaseFraction(key int) (fraction [3]float64) {
	for axis := 2; axis >= 0; axis-- {
		fraction[axis] = (float64(key%phases) + 0.5) / phases
		key /= phases
	}
	return fraction
}

// Snap moves a point to the place from which a dome of it is made: the middle of the nearest phase.
func (g *Grid) Snap(p mgl64.Vec3) mgl64.Vec3 {
	x, y, z := g.cell(p)
	middle := func(value float64) float64 { return (math.Floor(value*phases) + 0.5) / phases }
	at := mgl64.Vec3{g.x0 + g.dx*middle(x), g.y0 + g.dy*middle(y), 0}
	at[2] = g.dz*middle(z) + at[0]*g.slope.Across
	return at
}
