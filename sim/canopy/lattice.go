package canopy

import (
	"math"
	"slices"

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

// patch is neighbouring directions of the row frame that share one look at what the leaves show, and the unit vector in
// their middle. Its directions are those of a lattice: of plain points, and of mirrored ones.
type patch struct {
	middle     mgl64.Vec3
	directions [2][]int
}

// patches parts a lattice into patches of so many by so many directions, and of more columns towards the zenith, where they
// lie closer together. Patches mirror each other about the row line, so that plain and mirrored points share them, and a
// mirrored row is looked at from mirrored directions.
func (l Lattice) patches(size int) []patch {
	var all []patch
	for row := 0; row < l.rows; row += size {
		elevation := l.elevation0 + l.elevationStep*(float64(row)+float64(size-1)/2)
		quarter := max(int(math.Ceil(math.Pi/2/l.azimuthStep/float64(size)*math.Cos(elevation))), 1)
		band := make([]patch, 4*(quarter+1))
		for j := range l.columns {
			outward, inward := l.places(j, quarter)
			for i := row * l.columns; i < min(row+size, l.rows)*l.columns; i += l.columns {
				band[outward].directions[0] = append(band[outward].directions[0], i+j)
				band[inward].directions[1] = append(band[inward].directions[1], i+j)
			}
		}
		for k := range band {
			if k&1 == 0 {
				l.aim(&band[k], &band[k^1], k/4 == quarter)
			}
		}
		all = append(all, band...)
	}
	return slices.DeleteFunc(all, func(p patch) bool { return len(p.directions[0])+len(p.directions[1]) == 0 })
}

// places finds the patch of a column in a band with so many patches to a quarter turn: that of plain points and, on the
// other side of the row, that of mirrored ones. Where columns lie on the axes, so do the middles of patches, and
// those are not told apart by the side on which they lie of theirs.
func (l Lattice) places(column, quarter int) (plain, mirrored int) {
	azimuth := math.Remainder(l.azimuth0+l.azimuthStep*float64(column), 2*math.Pi)
	angle := math.Abs(azimuth)
	inward := angle > math.Pi/2+onBorder
	if inward {
		angle = math.Pi - angle
	}
	place := angle/(math.Pi/2)*float64(quarter) + onBorder
	onAxes := math.Abs(math.Remainder(l.azimuth0, l.azimuthStep)) < l.azimuthStep/4
	if onAxes {
		place += 0.5
	}
	k := int(place)
	at := 4 * k
	if azimuth < -onBorder && !(onAxes && k == 0) {
		at += 2
	}
	switch {
	case onAxes && k == quarter:
		return at, at
	case inward:
		return at + 1, at
	default:
		return at, at + 1
	}
}

// aim finds the middles of two patches that mirror each other, of which one lies outward of plain points, or which are one.
func (l Lattice) aim(outward, inward *patch, one bool) {
	for _, i := range outward.directions[0] {
		outward.middle = outward.middle.Add(l.Direction(i))
	}
	if one {
		outward.middle[0] = 0
	}
	outward.middle = outward.middle.Normalize()
	inward.middle = Point{Mirrored: true}.InFrame(outward.middle)
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
