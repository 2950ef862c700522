package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/training"
)

// woodPiece is a short straight piece of something round: wood, shoot, wire or post. It is drawn as
// a ribbon that faces the eye; pieces are short so that leaves and pieces sort right.
type woodPiece struct {
	from, to           mgl32.Vec3
	fromRadius, radius float32 // at both ends [m]
	tile               tileID
	detail             detail
	surface            rgb // reflectance
	open               float32
	slice              int
}

// detail says from how far a piece is drawn.
type detail uint8

const (
	closeBy     detail = iota // every piece of a trunk or arm
	midway                    // a few pieces for each
	distant                   // whole trunks and arms
	fineShoot                 // short pieces of a shoot
	coarseShoot               // long ones
	nearPost                  // short pieces of a post and its crossarms
	farPost                   // long ones
	thread                    // wires: until they are too thin to be seen
	details
)

// seenFrom is the range of distances in which each detail is drawn [m].
var seenFrom = [details][2]float32{
	closeBy: {0, 5}, midway: {5, 12}, distant: {12, 40},
	fineShoot: {0, 3.4}, coarseShoot: {3.4, 8}, nearPost: {0, 7}, farPost: {7, math.MaxFloat32}, thread: {0, 11},
}

const (
	sliceLength_m  = 0.9  // of the parts into which a period is cut along the row
	trunkPiece_m   = 0.20 // longest piece of a trunk
	armPiece_m     = 0.15
	postPiece_m    = 0.25
	farPostPiece_m = 0.9
	wirePieces     = 2      // per slice
	wireRadius_m   = 0.0016 // 2.5–3.5 mm wire is common practice
	postRadius_m   = 0.045  // round wooden line post, common practice
	crossarm_m     = 0.022
	// crossWirePiece_m is the longest piece of a wire across the row.
	crossWirePiece_m = 0.5
	finePoints       = 3 // points of a shoot per fine piece
	coarsePoints     = 8
)

var (
	barkColour  = rgb{0.165, 0.118, 0.082}
	postColour  = rgb{0.20, 0.175, 0.15}
	wireColour  = rgb{0.34, 0.35, 0.37}
	shootGreen  = rgb{0.150, 0.205, 0.055}
	shootBrown  = rgb{0.260, 0.150, 0.070}
	woodAmbient = float32(2.2) // light from leaves and floor on top of the sky's
)

func newWood(stand *training.Stand, open *openness, slices int) []woodPiece {
	var list []woodPiece
	for i := range stand.Trunks {
		piece := woodPiece{tile: barkTile, surface: barkColour, detail: closeBy}
		list = appendLimb(list, &stand.Trunks[i], 1, trunkPiece_m, piece)
		list = appendWhole(list, &stand.Trunks[i], 2, 1, piece)
	}
	for i := range stand.Arms {
		piece := woodPiece{tile: barkTile, surface: barkColour.scaled(0.92), detail: closeBy}
		list = appendLimb(list, &stand.Arms[i], 1, armPiece_m, piece)
		list = appendWhole(list, &stand.Arms[i], 3, 2, piece)
	}
	for i := range stand.Shoots {
		surface := shootGreen.mix(shootBrown, float32(hashUnit(uint64(i), 21)))
		piece := woodPiece{tile: roundTile, surface: surface, detail: fineShoot}
		list = appendLimb(list, &stand.Shoots[i], finePoints, math.Inf(1), piece)
		piece.detail = coarseShoot
		list = appendLimb(list, &stand.Shoots[i], coarsePoints, math.Inf(1), piece)
	}
	for i := range stand.Posts {
		list = appendPost(list, &stand.Posts[i], nearPost, postPiece_m)
		list = appendPost(list, &stand.Posts[i], farPost, farPostPiece_m)
	}
	for i := range stand.Wires {
		list = appendWire(list, &stand.Wires[i], stand.Length, slices*wirePieces)
	}
	for i := range stand.CrossWires {
		list = appendCrossWire(list, &stand.CrossWires[i])
	}
	for i := range list {
		middle := list[i].from.Add(list[i].to).Mul(0.5)
		list[i].slice = sliceOf(float64(middle[1]), stand.Length, slices)
		list[i].open = open.at(float64(middle[0]), float64(middle[2]))
	}
	return list
}

// appendLimb cuts a polyline at every few points and again where a piece is longer than longest [m].
func appendLimb(list []woodPiece, limb *training.Limb, every int, longest float64, piece woodPiece) []woodPiece {
	last := len(limb.Points) - 1
	for i := 0; i < last; i += every {
		j := min(i+every, last)
		list = appendStraight(list, limb.Points[i], limb.Points[j], limb.Radius[i], limb.Radius[j], longest, piece)
	}
	return list
}

// appendWhole cuts a limb into few pieces for the middle distance and fewer for the far one.
func appendWhole(list []woodPiece, limb *training.Limb, few, fewer int, piece woodPiece) []woodPiece {
	last := max(len(limb.Points)-1, 1)
	piece.detail = midway
	list = appendLimb(list, limb, (last+few-1)/few, math.Inf(1), piece)
	piece.detail = distant
	return appendLimb(list, limb, (last+fewer-1)/fewer, math.Inf(1), piece)
}

func appendStraight(list []woodPiece, from, to [3]float64, r0, r1, longest float64, piece woodPiece) []woodPiece {
	a, b := vec32(from), vec32(to)
	count := max(int(math.Ceil(float64(b.Sub(a).Len())/longest)), 1)
	for k := range count {
		f0, f1 := float32(k)/float32(count), float32(k+1)/float32(count)
		piece.from, piece.to = a.Mul(1-f0).Add(b.Mul(f0)), a.Mul(1-f1).Add(b.Mul(f1))
		piece.fromRadius = float32(r0)*(1-f0) + float32(r1)*f0
		piece.radius = float32(r0)*(1-f1) + float32(r1)*f1
		list = append(list, piece)
	}
	return list
}

func appendPost(list []woodPiece, post *training.Post, d detail, longest float64) []woodPiece {
	foot, top := [3]float64{0, post.Y, 0}, [3]float64{0, post.Y, post.Height}
	piece := woodPiece{tile: postTile, surface: postColour, detail: d}
	list = appendStraight(list, foot, top, postRadius_m, postRadius_m, longest, piece)
	for _, arm := range post.Crossarms {
		left := [3]float64{arm.Left, post.Y, arm.Z + arm.Slope*arm.Left}
		right := [3]float64{arm.Right, post.Y, arm.Z + arm.Slope*arm.Right}
		list = appendStraight(list, left, right, crossarm_m, crossarm_m, longest, piece)
	}
	return list
}

func appendWire(list []woodPiece, wire *training.Strand, length float64, pieces int) []woodPiece {
	for k := range pieces {
		list = append(list, woodPiece{
			from:       vec32([3]float64{wire.X, length * float64(k) / float64(pieces), wire.Z}),
			to:         vec32([3]float64{wire.X, length * float64(k+1) / float64(pieces), wire.Z}),
			fromRadius: wireRadius_m, radius: wireRadius_m,
			tile: roundTile, detail: thread, surface: wireColour,
		})
	}
	return list
}

// appendCrossWire lays a wire across the row from roof wire to roof wire.
func appendCrossWire(list []woodPiece, wire *training.CrossWire) []woodPiece {
	piece := woodPiece{tile: roundTile, detail: thread, surface: wireColour}
	for k := 1; k < len(wire.Points); k++ {
		from, to := wire.Points[k-1], wire.Points[k]
		list = appendStraight(list, [3]float64{from[0], wire.Y, from[1]}, [3]float64{to[0], wire.Y, to[1]},
			wireRadius_m, wireRadius_m, crossWirePiece_m, piece)
	}
	return list
}

// castWood lays the solid pieces on the map of the sun as strips that face the sun. Wires and shoots
// are thinner than the blur of the sun's disc.
func castWood(list []woodPiece, m *sunMap, sun mgl32.Vec3, owner int32) {
	for i := range list {
		p := &list[i]
		if p.detail != nearPost && p.detail != closeBy {
			continue
		}
		axis := p.to.Sub(p.from)
		side := axis.Cross(sun)
		if side.Len() < 1e-6 {
			continue
		}
		side = side.Normalize().Mul((p.fromRadius + p.radius) / 2)
		middle, half := p.from.Add(p.to).Mul(0.5), axis.Mul(0.5)
		m.add(owner, &middle, &half, &side, nil)
	}
}

// lightWood finds how far the ends of each piece are in the sun.
func (next *lighting) lightWood(list []woodPiece, m *sunMap) {
	for i := range list {
		p := &list[i]
		next.woodLit[i] = [2]float32{
			litEnd(p.from, p.to, p.fromRadius, m, &next.light, woodOwner), litEnd(p.to, p.from, p.radius, m, &next.light, woodOwner),
		}
	}
}

// litEnd is how far the end of a piece is in the sun: the mean of places around it, so that pieces
// that meet have about the same light there.
func litEnd(end, other mgl32.Vec3, radius float32, m *sunMap, light *daylight, owner int32) (share float32) {
	outside := light.sun.Mul(radius + 0.02)
	for _, f := range [...]float32{-0.25, 0, 0.25} {
		share += m.sees(owner, end.Mul(1-f).Add(other.Mul(f)).Add(outside)) / 3
	}
	return share
}
