package training

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/draw"
	"rowlight/sim/scenario"
)

// How shoots grow. The rates are assumptions, set so that the canopies of the catalogue get the
// published widths and heights; they are the same for every form.
const (
	stepLength = 0.04 // shoots grow in steps of this length [m]

	droopRate   = 6.0 // bending down by own weight, per length beyond the last support [rad m⁻²]
	uprightRate = 3.2 // bending up of a fully upright variety [rad m⁻¹]
	drapedShare = 0.2 // part of the bending up that is left where a shoot lies over a wire
	combedRate  = 9.0 // bending down of shoots that were combed [rad m⁻¹]
	wanderRate  = 0.9 // shoots are never quite straight [rad m⁻¹]
	wanderWave  = 0.6 // length of their waves [m]

	leanSpread    = 12.0 // standard deviation of the inclination at the start [deg]
	headingSpread = 42.0 // standard deviation of the heading about straight across the row [deg]
	lengthSpread  = 0.18 // standard deviation of shoot length over its mean, common in even vines, from memory
	combedApart   = 0.75 // share of combed shoots that fall to the side away from the row line
	offLine       = 0.2  // a fruiting wire farther out than this has such a side [m]
	fanTurn       = 60.0 // shoots leave wood that points away from the row to both sides by this angle [deg], assumption
	turnedStart   = 20.0 // crews turn down the shoots that leave their spur no steeper than this [deg], assumption

	spurLength  = 0.03  // wood left below the first node of a spur [m]
	spurNode    = 0.025 // distance between shoots on one spur [m]
	spurRadius  = 0.007 // [m]
	shootBase   = 0.0045
	shootTip    = 0.0015
	groundClear = 0.2  // a shoot that comes this near to the ground grows along it [m]
	lowestPoint = 0.16 // and is never below this [m]
	fewestNodes = 2    // hedging leaves at least these
)

const (
	drawLength draw.Purpose = iota + 300
	drawLean
	drawHeading
	drawSide
	drawSpurSide
	drawPositioned
	drawCombed
	drawPlace
	drawRow
	drawOver
	drawWanderX
	drawWanderY
	drawTrim
	drawInternode
	drawTurned
	drawOnCane
	drawSkirt
	drawTrimSide
)

// node is one node of a grown shoot.
type node struct {
	at      mgl64.Vec3 // [m]
	along   mgl64.Vec3 // unit vector of the shoot
	fromTip float64    // nodes between this one and the tip of the uncut shoot
}

// growShoot grows one shoot node by node into the stand.
func (g *grower) growShoot(plan *shootPlan) {
	s := g.option.Shoots
	length := s.Length_m * (1 + lengthSpread*plan.source.Normal(drawLength))
	plan.full = length / (s.Internode_cm / 100)
	plan.first = len(g.nodes)
	plan.rankSin, plan.rankCos = math.Sincos(2 * math.Pi * plan.source.Uniform(drawRank))
	base := g.bearerAt(plan)
	tip := g.start(plan, base)

	limb := newLimb(g.arms[plan.arm].vine, int(plan.full)+4)
	limb.add(base, spurRadius)
	limb.add(tip.at, shootBase)
	spacing := newSpacing(plan, s, length)
	planes := g.cutsOf(plan)
	next := spacing.after(0)
	for tip.length < length && !(planes.cut(&tip) && plan.count >= fewestNodes) {
		before := tip
		g.advance(&tip, min(stepLength, length-tip.length))
		for ; next <= tip.length; next = spacing.after(next) {
			u := (next - before.length) / (tip.length - before.length)
			n := node{
				at:      mix(before.at, tip.at, u),
				along:   mix(before.along, tip.along, u).Normalize(),
				fromTip: (length - next) / spacing.mean,
			}
			g.nodes = append(g.nodes, n)
			plan.count++
			limb.add(n.at, shootBase+(shootTip-shootBase)*next/length)
		}
	}
	limb.add(tip.at, shootBase+(shootTip-shootBase)*tip.length/length)
	g.stand.Shoots = append(g.stand.Shoots, limb)

	// What was cut off.
	for k := plan.count; next <= length; k++ {
		fromTip := (length - next) / spacing.mean
		plan.lostPrimary += bladeAt(k, fromTip)
		plan.lostLateral += lateralAt(fromTip, plan.full)
		next = spacing.after(next)
	}
}

// bearerAt is the place on arm or cane from which a shoot grows, or its spur.
func (g *grower) bearerAt(plan *shootPlan) mgl64.Vec3 {
	if plan.cane == onArm {
		return g.armAt(&g.arms[plan.arm], plan.along)
	}
	bare := g.option.Training.BareBase
	place := (float64(plan.onSpur) + 0.5 + 0.25*plan.source.Normal(drawOnCane)) / float64(plan.siblings)
	return g.canes[plan.cane].at(bare + (1-bare)*min(max(place, 0.02), 1))
}

// awayFrom is the horizontal direction away from the row line or the head in which the wood of a shoot
// runs; zero for wood along the row, whose shoots lean to either side.
func (g *grower) awayFrom(plan *shootPlan) mgl64.Vec3 {
	if plan.cane != onArm {
		return g.canes[plan.cane].outward
	}
	return g.arms[plan.arm].outward
}

// start sets the tip on its spur, or on the cane itself, in the direction in which it leaves.
func (g *grower) start(plan *shootPlan, base mgl64.Vec3) apex {
	s := g.option.Shoots
	a := g.arms[plan.arm]
	wire := g.cordons[a.cordon]
	turned := g.turnedDown(plan)
	combed := turned || plan.source.Uniform(drawCombed) < s.CombedDown

	right := 0.5
	if combed && math.Abs(wire.Offset_m) > offLine {
		right = 0.5 + math.Copysign(combedApart-0.5, wire.Offset_m)
	}
	side := plan.source.Sign(drawSide, right)
	turn := radians(headingSpread) * plan.source.Normal(drawHeading)
	heading := mgl64.Vec3{side * math.Cos(turn), math.Sin(turn), 0}
	if out := g.awayFrom(plan); out != (mgl64.Vec3{}) {
		sin, cos := math.Sincos(side*radians(fanTurn) + turn)
		heading = mgl64.Vec3{out.X()*cos - out.Y()*sin, out.Y()*cos + out.X()*sin, 0}
	}
	start := s.Start_deg
	if turned {
		start = min(start, turnedStart)
	}
	lean := radians(90 - start + leanSpread*plan.source.Normal(drawLean))

	tip := apex{at: base, along: leaning(heading, lean), heading: heading, combed: combed, turned: turned}
	for i, purpose := range [2]draw.Purpose{drawWanderX, drawWanderY} {
		sin, cos := math.Sincos(2 * math.Pi * plan.source.Uniform(purpose))
		tip.wander[0][i], tip.wander[1][i] = wanderRate*cos, wanderRate*sin
	}
	tip.place = plan.source.Uniform(drawPlace)
	tip.over = radians(max(0, overLean+overSpread*plan.source.Normal(drawOver)))
	tip.row = a.head + a.direction*(evenly*plan.even+(1-evenly)*plan.along+placeSpread*plan.source.Normal(drawRow))
	if plan.cane != onArm || a.outward != (mgl64.Vec3{}) {
		tip.row = base.Y() + placeSpread*plan.source.Normal(drawRow)
	}
	if g.option.Training.Wood == scenario.Spurs {
		spurSide := mgl64.Vec3{plan.spur.Sign(drawSpurSide, 0.5), 0, 0}
		spur := leaning(spurSide, radians(90-s.Start_deg)*0.6)
		tip.at = base.Add(spur.Mul(spurLength + spurNode*float64(plan.onSpur)))
	}
	tip.at[2] = max(tip.at[2], lowestPoint)
	tip.next = len(g.supports)
	// On a cane the crew takes the shoots at its base first: they renew it.
	chance := plan.source.Uniform(drawPositioned)
	if plan.cane != onArm {
		chance = (float64(plan.onSpur) + chance) / float64(plan.siblings)
	}
	if !combed && chance < s.Positioning {
		tip.next = g.supportAbove(&tip, 0)
		tip.carried = len(g.roof.wires) > 0
		plan.carried = tip.carried
	}
	return tip
}

// turnedDown tells whether a shoot is turned down. The lowest fruiting wires take the share first: with two
// wires and one half, all shoots of the lower wire and none of the upper.
func (g *grower) turnedDown(plan *shootPlan) bool {
	share := g.option.Shoots.TurnedDown
	if share == 0 {
		return false
	}
	height := g.cordons[g.arms[plan.arm].cordon].Height_m
	lower, same := 0.0, 0.0
	for _, wire := range g.cordons {
		switch {
		case wire.Height_m < height:
			lower++
		case wire.Height_m == height:
			same++
		}
	}
	return plan.source.Uniform(drawTurned) < (share*float64(len(g.cordons))-lower)/same
}

// leaning is the unit vector at an angle from the vertical towards a horizontal heading [rad].
func leaning(heading mgl64.Vec3, angle float64) mgl64.Vec3 {
	sin, cos := math.Sincos(angle)
	return mgl64.Vec3{heading.X() * sin, heading.Y() * sin, cos}
}
