// Package training builds the Stand: the wires, wood, shoots, leaves and bunches of one training
// form. Every form is data (wires, arms, shoots, habit) read from a scenario option; the package
// does not know the sun.
package training

import "github.com/go-gl/mathgl/mgl64"

// Stand is one period of one row in the row frame: x across the row, y along it, z up from the
// ground at the row line [m]. The planting repeats it every Length along the row and every RowSpacing
// across it, so that every row shades every other. Leaves and shoots at both ends stick out of
// 0 ≤ y < Length; the repetitions fill in.
type Stand struct {
	RowSpacing  float64 // distance between row lines [m]
	VineSpacing float64 // distance between vines in the row [m]
	Length      float64 // period along the row, a whole number of vines [m]
	Top         float64 // highest point of any leaf [m]
	Posts       []Post
	Wires       []Strand
	CrossWires  []CrossWire
	Trunks      []Limb
	Arms        []Limb // cordon arms and canes
	Shoots      []Limb
	Leaves      []Leaf
	Bunches     []Bunch
}

// Post is one line post with an optional crossarm.
type Post struct {
	Y         float64 // place along the row [m]
	Height    float64 // top above the ground [m]
	Crossarms []Crossarm
}

// Crossarm is a bar across the row on a post, reaching the wires that it carries. The beam of a sloping roof rises
// to one side.
type Crossarm struct {
	Z, Left, Right float64 // height at the row line and the x of both ends [m]
	Slope          float64 // rise per metre of x
}

// Strand is one wire, straight along the whole row.
type Strand struct {
	X, Z float64 // place in the cross-section [m]
	Role string  // scenario.WireRole
}

// CrossWire is one wire across the row that joins the roof wires.
type CrossWire struct {
	Y      float64      // place along the row [m]
	Points [][2]float64 // x and z of the roof wires that it joins, from left to right [m]
}

// Limb is a piece of wood or a shoot: a polyline with a radius at each point.
type Limb struct {
	Vine   int32
	Points []mgl64.Vec3 // [m]
	Radius []float64    // [m], same length as Points
}

// Leaf is one flat blade. Normal is the unit normal of its upper face, Tip the unit vector in its
// plane from the petiole to the tip.
type Leaf struct {
	Centre, Normal, Tip mgl64.Vec3
	Area                float64 // one-sided [m²]
	Shoot               int32   // index into Stand.Shoots
	Node                int16   // from 0 at the base
	Lateral             bool
}

// Bunch is one bunch, drawn as berries and computed as two faces.
type Bunch struct {
	Centre  mgl64.Vec3 // [m]
	Radius  float64    // half width [m]
	Length  float64    // from shoulder to tip [m]
	Berries int
	Shoot   int32
	Seed    uint64 // hash for everything drawn about this bunch
}

// Face is the part of a bunch that looks to one side of the row.
type Face struct {
	Bunch  int32
	Right  bool       // looks to positive x
	Point  mgl64.Vec3 // on the surface of the bunch [m]
	Normal mgl64.Vec3 // unit vector outward, horizontal across the row
}

// Faces lists the faces of all bunches: index 2b looks left, index 2b+1 looks right.
func (s *Stand) Faces() []Face {
	faces := make([]Face, 0, 2*len(s.Bunches))
	for b, bunch := range s.Bunches {
		for side, sign := range [2]float64{-1, 1} {
			normal := mgl64.Vec3{sign, 0, 0}
			faces = append(faces, Face{
				Bunch:  int32(b),
				Right:  side == 1,
				Point:  bunch.Centre.Add(normal.Mul(bunch.Radius)),
				Normal: normal,
			})
		}
	}
	return faces
}
