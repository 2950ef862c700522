package yardstick

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/draw"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// faceDepth is where the berries of a face lie on average, from the middle of the bunch, in half widths:
// the mean of √(1 − r²) over the outline of a round bunch (geometry).
const faceDepth = 2.0 / 3

// Places are the points that stand for the faces of all bunches, in the order of training.Stand.Faces.
func Places(stand *training.Stand) []canopy.Point {
	faces := stand.Faces()
	points := make([]canopy.Point, len(faces))
	for i, face := range faces {
		bunch := &stand.Bunches[face.Bunch]
		points[i] = canopy.Point{At: bunch.Centre.Add(face.Normal.Mul(faceDepth * bunch.Radius)), Mirrored: !face.Right}
	}
	return points
}

// Direction is the unit vector of the row frame at a height above the horizontal and a turn from the way
// that the faces of a side look, positive towards the y axis of the row [deg].
func Direction(side scenario.Side, height_deg, turn_deg float64) mgl64.Vec3 {
	sinE, cosE := math.Sincos(mgl64.DegToRad(height_deg))
	sin, cos := math.Sincos(mgl64.DegToRad(turn_deg))
	return canopy.Point{Mirrored: side == scenario.Left}.InFrame(mgl64.Vec3{cosE * cos, cosE * sin, sinE})
}

// spotTries is how often a berry is drawn until one is turned to the sun.
const spotTries = 64

// Spot is a place on a bunch face from which a berry sees the sun past its own bunch: one drawn for each
// bunch and ray, evenly over the outline of the bunch as seen from its side, the same on both sides.
func Spot(b *training.Bunch, side scenario.Side, sun mgl64.Vec3, ray int) mgl64.Vec3 {
	source := draw.Source(b.Seed & ^uint64(1)).Of(ray)
	half := mgl64.Vec3{b.Radius, b.Radius, b.Length / 2}
	var u mgl64.Vec3
	for try := range draw.Purpose(spotTries) {
		u = berry(source, side, 2*try)
		if u[0]*sun[0]/half[0]+u[1]*sun[1]/half[1]+u[2]*sun[2]/half[2] > 0 {
			break
		}
	}
	return b.Centre.Add(mgl64.Vec3{u[0] * half[0], u[1] * half[1], u[2] * half[2]})
}

// berry draws a place on the half of a unit sphere that looks to a side, evenly over its outline.
func berry(source draw.Source, side scenario.Side, purpose draw.Purpose) mgl64.Vec3 {
	r := math.Sqrt(source.Uniform(purpose))
	sin, cos := math.Sincos(2 * math.Pi * source.Uniform(purpose+1))
	x := math.Sqrt(1 - r*r)
	if side == scenario.Left {
		x = -x
	}
	return mgl64.Vec3{x, r * cos, r * sin}
}
