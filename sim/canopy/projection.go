package canopy

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/exp"
	"rowlight/sim/training"
)

// Projection is G: the mean leaf area projected on a plane normal to a direction, per leaf area
// [0–1], tabulated over directions from the leaf normals of the canopy itself. Upright leaf walls face
// outward, so that G across the row is larger than the 0.5 of leaves that face everywhere alike.
type Projection struct {
	elevationStep, azimuthStep float64 // [deg]
	rows, columns              int     // elevation 0 … 90, azimuth in the row frame 0 … 360
	table                      []float64
}

// newProjection tabulates a function of direction. The table covers the upper half of all directions;
// G of a direction and of its opposite are equal.
func newProjection(elevationStep, azimuthStep float64, g func(direction mgl64.Vec3) float64) *Projection {
	p := &Projection{
		elevationStep: elevationStep, azimuthStep: azimuthStep,
		rows: int(math.Round(90/elevationStep)) + 1, columns: int(math.Round(360/azimuthStep)) + 1,
	}
	for i := range p.rows {
		for j := range p.columns {
			p.table = append(p.table, g(fromAngles(
				mgl64.DegToRad(azimuthStep*float64(j)), mgl64.DegToRad(elevationStep*float64(i)))))
		}
	}
	return p
}

// Uniform is the projection of leaves that face everywhere alike: 0.5 in every direction.
func Uniform() *Projection { return Custom(func(mgl64.Vec3) float64 { return 0.5 }) }

// Custom tabulates a given function of direction at steps where linear interpolation errs by less than 1e-4.
func Custom(g func(direction mgl64.Vec3) float64) *Projection { return newProjection(0.75, 5, g) }

// ProjectionOf weighs the normals of all leaves by their area, to 0.002. A stand without leaves has 0.5.
func ProjectionOf(leaves []training.Leaf) *Projection {
	normals, weights := binNormals(leaves)
	if len(normals) == 0 {
		return Uniform()
	}
	return newProjection(3, 7.5, func(d mgl64.Vec3) float64 {
		sum := 0.0
		for i, n := range normals {
			sum += weights[i] * math.Abs(n.Dot(d))
		}
		return sum
	})
}

// Gap is the probability [0–1] that light passes a path integral of leaf area density [m²/m²] between leaves that
// stand at random and project a share of their area across its direction: G, or G·Ω where leaves stand
// clumped (Monsi & Saeki 1953; Nilson 1971, Agric. Meteorol. 8:25). Without leaves it is 1.
func Gap(projection, path float64) float64 { return exp.Of(-projection * path) }

// Gaps are the gap probabilities of many paths, which lie by turns on either of two sides with their own projections.
func Gaps(projections [2]float64, paths []float32, gaps []float64) {
	for i, path := range paths {
		gaps[i] = -projections[i%2] * float64(path)
	}
	exp.OfEach(gaps[:len(paths)])
}

// normalBin is the width of the cells into which normals are gathered [deg].
const normalBin = 6.0

// binNormals gathers the normals into cells of 6° by 6°, each kept as its mean, and scales the area
// of all cells to one. |n·d| is the same for both faces of a leaf, so all normals are turned upward.
func binNormals(leaves []training.Leaf) (normals []mgl64.Vec3, weights []float64) {
	type bin struct {
		sum  mgl64.Vec3
		area float64
	}
	const columns = 360/normalBin + 1
	bins := make([]bin, int(90/normalBin+1)*columns)
	total := 0.0
	for i := range leaves {
		n := leaves[i].Normal
		if n[2] < 0 {
			n = n.Mul(-1)
		}
		azimuth, elevation := angles(n)
		b := &bins[int(elevation*180/math.Pi/normalBin)*columns+int(azimuth*180/math.Pi/normalBin)]
		b.sum = b.sum.Add(n.Mul(leaves[i].Area))
		b.area += leaves[i].Area
		total += leaves[i].Area
	}
	for _, b := range bins {
		if b.area > 0 {
			normals = append(normals, b.sum.Normalize())
			weights = append(weights, b.area/total)
		}
	}
	return normals, weights
}

// G interpolates the table at a unit vector of the row frame.
func (p *Projection) G(d mgl64.Vec3) float64 {
	if d[2] < 0 {
		d = d.Mul(-1)
	}
	azimuth, elevation := angles(d)
	return bilinear(p.table, p.columns,
		elevation*180/math.Pi/p.elevationStep, azimuth*180/math.Pi/p.azimuthStep, p.rows)
}

// bilinear interpolates a table of rows and columns at fractional indices inside it.
func bilinear(table []float64, columns int, row, column float64, rows int) float64 {
	i := min(max(int(row), 0), rows-2)
	j := min(max(int(column), 0), columns-2)
	u, v := row-float64(i), column-float64(j)
	at := i*columns + j
	return (1-u)*((1-v)*table[at]+v*table[at+1]) + u*((1-v)*table[at+columns]+v*table[at+columns+1])
}

// fromAngles makes a unit vector of the row frame from its azimuth (from x towards y) and elevation [rad].
func fromAngles(azimuth, elevation float64) mgl64.Vec3 {
	sinA, cosA := math.Sincos(azimuth)
	sinE, cosE := math.Sincos(elevation)
	return mgl64.Vec3{cosE * cosA, cosE * sinA, sinE}
}

// angles is the inverse of fromAngles, with the azimuth in 0 … 2π.
func angles(d mgl64.Vec3) (azimuth, elevation float64) {
	azimuth = math.Atan2(d[1], d[0])
	if azimuth < 0 {
		azimuth += 2 * math.Pi
	}
	return azimuth, math.Atan2(d[2], math.Hypot(d[0], d[1]))
}
