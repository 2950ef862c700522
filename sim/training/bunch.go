package training

import (
	"cmp"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/draw"
)

// Sizes of bunches.
const (
	berryDiameter = 0.014  // the bunch is built of berries of this size, values of the fruit change it no more [m], assumption
	berryMass     = 0.0015 // of such a berry: a sphere of density 1.06 t m⁻³ [kg]
	bunchFill     = 0.35   // part of the outline of a bunch that is berries, from memory
	bunchAspect   = 1.6    // length over width, from memory
	bunchSpread   = 0.2    // standard deviation of bunch mass over its mean, assumption
	peduncleOut   = 0.025  // [m]
	peduncleDown  = 0.035  // [m]
	woodClear     = 0.008  // bunches hang at least this far from the arm [m]
	roofBunch     = 0.02   // crews draw bunches down through the wires of a roof, so that their shoulders hang this far below, common practice [m]
	bunchClear    = 0.03   // and this far above the ground [m]
	firstCluster  = 2      // first node with a bunch, from 0: nodes 3 to 5 carry the crop, common practice
	laterFirst    = 0.35   // share of shoots on which it is one node higher, assumption
)

const (
	drawBunchNode draw.Purpose = iota + 400
	drawBunchMass
	drawBunchSide
	drawBunchLook
)

// hangBunches hangs the crop of every shoot from its basal nodes, opposite the leaves.
func (g *grower) hangBunches() {
	for shoot := range g.plans {
		plan := &g.plans[shoot]
		first := firstCluster
		if plan.bunches < 3 && plan.source.Uniform(drawBunchNode) < laterFirst {
			first++
		}
		for j := range plan.bunches {
			g.hangBunch(plan, int32(shoot), first+j)
		}
	}
}

// hangBunch hangs one bunch from a node; a shoot too short for it bears at its last node.
func (g *grower) hangBunch(plan *shootPlan, shoot int32, at int) {
	source := plan.source.Of(-1 - at)
	mass := g.option.Bunches.Mass_g / 1000 * max(0.2, 1+bunchSpread*source.Normal(drawBunchMass))
	b := Bunch{Shoot: shoot, Seed: source.Bits(drawBunchLook)}
	b.Berries = max(1, int(math.Round(mass/berryMass)))
	b.Radius, b.Length = bunchSize(b.Berries)

	// A bunch grows opposite the leaf of its node and hangs plumb from its peduncle.
	index := min(at, plan.count-1)
	n := g.nodes[plan.first+index]
	out := g.rank(plan, index).Mul(-1)
	out[2] = 0
	if out.Len() < 0.3 {
		out = mgl64.Vec3{source.Sign(drawBunchSide, 0.5), 0, 0}
	}
	out = out.Normalize()
	b.Centre = n.at.Add(out.Mul(peduncleOut + 0.3*b.Radius))
	b.Centre[2] -= peduncleDown + b.Length/2
	if z, _, ok := g.roof.at(b.Centre.X()); ok && plan.carried {
		b.Centre[2] = min(b.Centre[2], z-roofBunch-b.Length/2)
	}
	g.clearOfWood(&b, plan, out)
	b.Centre[2] = max(b.Centre[2], b.Length/2+bunchClear)
	g.stand.Bunches = append(g.stand.Bunches, b)
}

// bunchSize is half width and length of an ellipsoid filled with so many berries [m].
func bunchSize(berries int) (radius, length float64) {
	berry := math.Pi / 6 * math.Pow(berryDiameter, 3)
	volume := float64(berries) * berry / bunchFill
	radius = math.Cbrt(volume / (4 * math.Pi / 3 * bunchAspect))
	return radius, 2 * radius * bunchAspect
}

// woodNear is the axis of the arm or cane of a shoot beside a point.
func (g *grower) woodNear(plan *shootPlan, p mgl64.Vec3) mgl64.Vec3 {
	a := &g.arms[plan.arm]
	if plan.cane == onArm && a.outward == (mgl64.Vec3{}) {
		return g.armAt(a, min(max((p.Y()-a.head)*a.direction, 0), a.length))
	}
	if plan.cane == onArm {
		head := mgl64.Vec3{g.cordons[a.cordon].Offset_m, a.head, 0}
		return g.armAt(a, min(max(p.Sub(head).Dot(a.outward), 0), a.length))
	}
	points := g.canes[plan.cane].points
	return slices.MinFunc(points, func(q, r mgl64.Vec3) int { return cmp.Compare(q.Sub(p).Len(), r.Sub(p).Len()) })
}

// woodThickness is the radius of the arm or cane that bears a shoot [m].
func (g *grower) woodThickness(plan *shootPlan) float64 {
	if plan.cane != onArm {
		return caneBaseRadius
	}
	thick, _ := g.armRadii()
	return thick
}

// clearOfWood moves a bunch sideways until it hangs beside its arm or cane, not through it: across the row off wood
// that runs along it, across the wood off a cane that hangs out.
func (g *grower) clearOfWood(b *Bunch, plan *shootPlan, out mgl64.Vec3) {
	thick := g.woodThickness(plan)
	axis := g.woodNear(plan, b.Centre)
	rise := (b.Centre.Z() - axis.Z()) / (b.Length/2 + thick + woodClear)
	free := (b.Radius + thick + woodClear) * math.Sqrt(max(0, 1-rise*rise))
	across := mgl64.Vec3{1, 0, 0}
	if away := g.awayFrom(plan); away != (mgl64.Vec3{}) {
		across = mgl64.Vec3{-away.Y(), away.X(), 0}
	}
	aside := b.Centre.Sub(axis).Dot(across)
	if math.Abs(aside) >= free {
		return
	}
	side := math.Copysign(1, out.Dot(across))
	if math.Abs(aside) > 0.02 {
		side = math.Copysign(1, aside)
	}
	b.Centre = b.Centre.Add(across.Mul(side*free - aside))
}
