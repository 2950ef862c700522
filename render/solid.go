package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/training"
)

// Solid is one kind of part of a planting as triangles, for programs that show solid bodies.
type Solid struct {
	Name      string       // leaves, bunches, shoots, arms, trunks, posts or wires
	Colour    [3]float32   // reflectance for red, green and blue, 0 to 1, not gamma coded
	TwoSided  bool         // whether it is thin and seen from both sides
	Positions [][3]float32 // [m] east, up and south of the foot of the row line at its start
	Normals   [][3]float32 // unit vectors, one for each position
	Triangles [][3]uint32  // indices of positions, counter-clockwise seen from outside
}

// Counts of the round parts: how many flat sides stand for a circle, and how many straight pieces for half the
// margin of a leaf.
const (
	tubeSides   = 6
	marginSteps = 24
)

// solidFruit is the colour of ripe dark berries, set by eye.
var solidFruit = rgb{0.055, 0.022, 0.075}

// Solids are the bodies of one period of one row as the simulation has them: blades with the outline, area and
// centroid of each leaf, berries, wood, posts and wires. The period repeats every Stand.Length along the row and
// every Stand.RowSpacing across it. Kinds of which there is none are left out.
func Solids(p Planting) []Solid {
	towards := p.RowAzimuth_deg * math.Pi / 180
	all := []solid{
		leafSolid(p.Stand), bunchSolid(p.Stand, p.BerryDiameter_m),
		limbSolid("shoots", shootGreen, p.Stand.Shoots), limbSolid("arms", barkColour, p.Stand.Arms),
		limbSolid("trunks", barkColour, p.Stand.Trunks), postSolid(p.Stand), wireSolid(p.Stand),
	}
	var solids []Solid
	for _, s := range all {
		if len(s.triangles) > 0 {
			solids = append(solids, s.facing(towards))
		}
	}
	return solids
}

// solid is a Solid in the row frame.
type solid struct {
	name      string
	colour    rgb
	twoSided  bool
	at        []mgl64.Vec3
	normal    []mgl64.Vec3
	triangles [][3]uint32
}

// facing turns a solid of a row frame into east, up and south.
func (s solid) facing(towards float64) Solid {
	sin, cos := math.Sincos(towards)
	turn := func(list []mgl64.Vec3) [][3]float32 {
		turned := make([][3]float32, len(list))
		for i, v := range list {
			east, north := v[0]*cos+v[1]*sin, v[1]*cos-v[0]*sin
			turned[i] = [3]float32{float32(east), float32(v[2]), float32(-north)}
		}
		return turned
	}
	return Solid{
		Name: s.name, Colour: [3]float32(s.colour), TwoSided: s.twoSided,
		Positions: turn(s.at), Normals: turn(s.normal), Triangles: s.triangles,
	}
}

// add appends a corner and returns its index.
func (s *solid) add(at, normal mgl64.Vec3) uint32 {
	s.at, s.normal = append(s.at, at), append(s.normal, normal)
	return uint32(len(s.at) - 1)
}

// leafSolid is all blades, each a fan about the point where the petiole meets it.
func leafSolid(stand *training.Stand) solid {
	s := solid{name: "leaves", colour: oldGreen, twoSided: true}
	var margins [leafShapes]margin
	for kind := range margins {
		margins[kind] = newMargin(newLeafShape(lobings[kind]))
	}
	for i := range stand.Leaves {
		leaf := &stand.Leaves[i]
		m := &margins[hash(uint64(i), 5)%leafShapes]
		scale := math.Sqrt(leaf.Area / m.area)
		side := leaf.Tip.Cross(leaf.Normal)
		place := func(p [2]float64) mgl64.Vec3 {
			return leaf.Centre.Add(side.Mul(scale * p[0])).Add(leaf.Tip.Mul(scale * (p[1] - m.centroid)))
		}
		petiole := s.add(place([2]float64{}), leaf.Normal)
		for _, p := range m.points {
			s.add(place(p), leaf.Normal)
		}
		for k := 1; k < len(m.points); k++ {
			s.triangles = append(s.triangles, [3]uint32{petiole, petiole + uint32(k) + 1, petiole + uint32(k)})
		}
	}
	return s
}

// margin is the outline of a blade as straight pieces, x to the right of the midrib and y along it, from one side
// of the petiole round the tip to the other; lengths in units of the midrib.
type margin struct {
	points   [][2]float64
	area     float64
	centroid float64 // along the midrib
}

func newMargin(shape *leafShape) margin {
	var m margin
	for k := -marginSteps; k <= marginSteps; k++ {
		angle := float64(k) / marginSteps * math.Pi
		r := float64(shape.radius[int(math.Round(math.Abs(angle)/math.Pi*outlineSteps))])
		sin, cos := math.Sincos(angle)
		m.points = append(m.points, [2]float64{r * sin, r * cos})
	}
	for k := 1; k < len(m.points); k++ {
		a, b := m.points[k-1], m.points[k]
		area := (a[1]*b[0] - a[0]*b[1]) / 2
		m.area += area
		m.centroid += area * (a[1] + b[1]) / 3
	}
	m.centroid /= m.area
	return m
}

// bunchSolid is the berries of all bunches.
func bunchSolid(stand *training.Stand, berry_m float64) solid {
	s := solid{name: "bunches", colour: solidFruit}
	if !(berry_m > 0) {
		berry_m = fallbackBerry_m
	}
	var berries []berry
	for i := range stand.Bunches {
		berries = appendBerries(berries, &stand.Bunches[i], int32(i), berry_m)
	}
	for i := range berries {
		b := &berries[i]
		if b.core {
			continue // fills the picture only
		}
		first := uint32(len(s.at))
		centre := mgl64.Vec3{float64(b.centre[0]), float64(b.centre[1]), float64(b.centre[2])}
		for _, corner := range ballCorners {
			s.add(centre.Add(corner.Mul(float64(b.radius))), corner)
		}
		for _, t := range ballTriangles {
			s.triangles = append(s.triangles, [3]uint32{first + t[0], first + t[1], first + t[2]})
		}
	}
	return s
}

// limbSolid is shoots or wood.
func limbSolid(name string, colour rgb, limbs []training.Limb) solid {
	s := solid{name: name, colour: colour}
	for i := range limbs {
		s.tube(limbs[i].Points, limbs[i].Radius)
	}
	return s
}

// postSolid is posts with their crossarms.
func postSolid(stand *training.Stand) solid {
	s := solid{name: "posts", colour: postColour}
	for _, post := range stand.Posts {
		s.straight(mgl64.Vec3{0, post.Y, 0}, mgl64.Vec3{0, post.Y, post.Height}, postRadius_m)
		for _, arm := range post.Crossarms {
			s.straight(mgl64.Vec3{arm.Left, post.Y, arm.Z + arm.Slope*arm.Left}, mgl64.Vec3{arm.Right, post.Y, arm.Z + arm.Slope*arm.Right}, crossarm_m)
		}
	}
	return s
}

// wireSolid is wires along and across the row.
func wireSolid(stand *training.Stand) solid {
	s := solid{name: "wires", colour: wireColour}
	for _, wire := range stand.Wires {
		s.straight(mgl64.Vec3{wire.X, 0, wire.Z}, mgl64.Vec3{wire.X, stand.Length, wire.Z}, wireRadius_m)
	}
	for _, wire := range stand.CrossWires {
		for k := 1; k < len(wire.Points); k++ {
			a, b := wire.Points[k-1], wire.Points[k]
			s.straight(mgl64.Vec3{a[0], wire.Y, a[1]}, mgl64.Vec3{b[0], wire.Y, b[1]}, wireRadius_m)
		}
	}
	return s
}

// straight adds a closed rod of one thickness.
func (s *solid) straight(from, to mgl64.Vec3, radius float64) {
	s.tube([]mgl64.Vec3{from, to}, []float64{radius, radius})
}

// tube adds a closed rod around a polyline. A polyline without length adds nothing.
func (s *solid) tube(points []mgl64.Vec3, radius []float64) {
	var before uint32
	rings := 0
	var along, a mgl64.Vec3
	for i, p := range points {
		ahead := points[min(i+1, len(points)-1)].Sub(points[max(i-1, 0)])
		if ahead.Len() == 0 {
			continue
		}
		along = ahead.Normalize()
		a = squareTo(along, a)
		b := along.Cross(a)
		ring := uint32(len(s.at))
		for k := range tubeSides {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / tubeSides)
			out := a.Mul(cos).Add(b.Mul(sin))
			s.add(p.Add(out.Mul(radius[i])), out)
		}
		if rings == 0 {
			s.lid(p, along.Mul(-1), ring)
		} else {
			s.wall(before, ring)
		}
		before, rings = ring, rings+1
	}
	if rings > 1 {
		s.lid(points[len(points)-1], along, before)
	}
}

// wall joins two rings.
func (s *solid) wall(low, high uint32) {
	for k := range uint32(tubeSides) {
		next := (k + 1) % tubeSides
		s.triangles = append(s.triangles, [3]uint32{low + k, low + next, high + next}, [3]uint32{low + k, high + next, high + k})
	}
}

// lid closes a ring at an end of a rod.
func (s *solid) lid(at, outward mgl64.Vec3, ring uint32) {
	corners := append([]mgl64.Vec3(nil), s.at[ring:ring+tubeSides]...)
	middle := s.add(at, outward)
	first := uint32(len(s.at))
	for _, corner := range corners {
		s.add(corner, outward)
	}
	for k := range uint32(tubeSides) {
		t := [3]uint32{middle, first + k, first + (k+1)%tubeSides}
		edge := s.at[t[1]].Sub(at).Cross(s.at[t[2]].Sub(at))
		if edge.Dot(outward) < 0 {
			t[1], t[2] = t[2], t[1]
		}
		s.triangles = append(s.triangles, t)
	}
}

// squareTo is a unit vector square to a direction, as near as can be to the one before, so that tubes do not twist.
func squareTo(direction, before mgl64.Vec3) mgl64.Vec3 {
	for _, v := range []mgl64.Vec3{before, {1, 0, 0}, {0, 1, 0}} {
		if v = v.Sub(direction.Mul(v.Dot(direction))); v.Len() > 0.1 {
			return v.Normalize()
		}
	}
	return mgl64.Vec3{0, 0, 1} // a direction of no length
}
