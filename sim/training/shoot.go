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

	spurLength  = 0.03  // wood left below the first node of a spur [m]
	spurNode    = 0.025 // distance between shoots on one spur [m]
	spurRadius  = 0.007 // [m]
	shootBase   = 0.0045
	shootTip    = 0.0015
	groundClear = 0.2  // a shoot that comes this near to the ground grows along it [m]
	lowestPoint = 0.16 // and is never below this [m]
	hedgeSpread = 0.02 // standard deviation of the height of the cut [m], assumption
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
	base := g.armAt(&g.arms[plan.arm], plan.along)
	tip := g.start(plan, base)

	limb := newLimb(g.arms[plan.arm].vine, int(plan.full)+4)
	limb.add(base, spurRadius)
	limb.add(tip.at, shootBase)
	spacing := newSpacing(plan, s, length)
	top := g.hedgedAt(plan)
	for next := spacing.after(0); tip.length < length && !(tip.at.Z() > top && plan.count >= fewestNodes); {
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
}

// hedgedAt is the height at which one shoot is cut [m]: the blades leave a slightly uneven top.
func (g *grower) hedgedAt(plan *shootPlan) float64 {
	if g.option.Shoots.TrimTop_m <= 0 {
		return math.Inf(1)
	}
	return g.option.Shoots.TrimTop_m + hedgeSpread*plan.source.Normal(drawTrim)
}

// start sets the tip on its spur, or on the cane itself, in the direction in which it leaves.
func (g *grower) start(plan *shootPlan, base mgl64.Vec3) apex {
	s := g.option.Shoots
	a := g.arms[plan.arm]
	wire := g.cordons[a.cordon]
	combed := plan.source.Uniform(drawCombed) < s.CombedDown

	right := 0.5
	if combed && math.Abs(wire.Offset_m) > offLine {
		right = 0.5 + math.Copysign(combedApart-0.5, wire.Offset_m)
	}
	side := plan.source.Sign(drawSide, right)
	turn := radians(headingSpread) * plan.source.Normal(drawHeading)
	heading := mgl64.Vec3{side * math.Cos(turn), math.Sin(turn), 0}
	lean := radians(90 - s.Start_deg + leanSpread*plan.source.Normal(drawLean))

	tip := apex{at: base, along: leaning(heading, lean), heading: heading, combed: combed}
	for i, purpose := range [2]draw.Purpose{drawWanderX, drawWanderY} {
		sin, cos := math.Sincos(2 * math.Pi * plan.source.Uniform(purpose))
		tip.wander[0][i], tip.wander[1][i] = wanderRate*cos, wanderRate*sin
	}
	tip.place = plan.source.Uniform(drawPlace)
	tip.over = radians(max(0, overLean+overSpread*plan.source.Normal(drawOver)))
	tip.row = a.head + a.direction*(evenly*plan.even+(1-evenly)*plan.along+placeSpread*plan.source.Normal(drawRow))
	if g.option.Training.Wood == scenario.Spurs {
		spurSide := mgl64.Vec3{plan.spur.Sign(drawSpurSide, 0.5), 0, 0}
		spur := leaning(spurSide, radians(90-s.Start_deg)*0.6)
		tip.at = base.Add(spur.Mul(spurLength + spurNode*float64(plan.onSpur)))
	}
	tip.at[2] = max(tip.at[2], lowestPoint)
	tip.next = len(g.supports)
	if !combed && plan.source.Uniform(drawPositioned) < s.Positioning {
		tip.next = g.supportAbove(tip.at, 0)
	}
	return tip
}

// leaning is the unit vector at an angle from the vertical towards a horizontal heading [rad].
func leaning(heading mgl64.Vec3, angle float64) mgl64.Vec3 {
	sin, cos := math.Sincos(angle)
	return mgl64.Vec3{heading.X() * sin, heading.Y() * sin, cos}
}
