package canopy

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

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
	return Lattice{step / 2, step, step / 2, step, int(math.Round(360 / step_deg)), int(90 / step_deg), true}
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

// patch is some neighbouring directions of a lattice and the unit vector in their middle.
type patch struct {
	middle     mgl64.Vec3
	directions []int
}

// patches parts a lattice into patches of so many by so many directions, fewer at its edge, and of more
// columns towards the zenith, where they lie closer together. Those of a full lattice mirror each other about
// the row line.
func (l Lattice) patches(size int) []patch {
	var all []patch
	for row := 0; row < l.rows; row += size {
		middle := l.elevation0 + l.elevationStep*(float64(row)+float64(size-1)/2)
		count := max(int(math.Round(float64(l.columns)/float64(size)*math.Abs(math.Cos(middle)))), 1)
		if l.columns%2 == 1 {
			count |= 1
		}
		border := func(k int) int {
			if 2*k > count {
				return l.columns - (count-k)*l.columns/count
			}
			return k * l.columns / count
		}
		for k := range count {
			var p patch
			for i := row; i < min(row+size, l.rows); i++ {
				for j := border(k); j < border(k+1); j++ {
					p.directions = append(p.directions, i*l.columns+j)
					p.middle = p.middle.Add(l.Direction(i*l.columns + j))
				}
			}
			p.middle = p.middle.Normalize()
			all = append(all, p)
		}
	}
	return all
}

// Sample is a direction between lattice directions, as four of them and their weights.
type Sample struct {
	index  [4]int
	weight [4]float64
}

// Parts are the directions of a sample and their weights, which add up to 1.
func (s *Sample) Parts() (directions [4]int, weights [4]float64) { return s.index, s.weight }

// onBorder is how far beyond its border a lattice still holds a direction [columns]: its own may be off by rounding.
const onBorder = 1e-9

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
	if last := float64(l.columns - 1); !l.around {
		if column < -onBorder || column > last+onBorder {
			return s, false
		}
		column = math.Min(math.Max(column, 0), last)
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
