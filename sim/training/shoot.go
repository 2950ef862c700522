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

// How wires take hold of shoots.
const (
	supportReach  = 1.0   // a shoot this far below a wire can be brought to it [m]
	supportAside  = 0.5   // and this far beside it [m]
	supportGrip   = 0.45  // part of the remaining height over which a shoot turns to its wire
	evenly        = 0.6   // how far crews even out the distances between shoots, assumption
	placeSpread   = 0.015 // standard deviation of where a shoot ends up along the wire [m]
	wireClearance = 0.01  // shoots between wires keep this far from them [m]
	overLean      = 66.0  // inclination from the vertical at which shoots lie over a wire [deg]
	overSpread    = 24.0  // its standard deviation [deg]
	overTurn      = 0.15  // length over which they turn to it [m]
	overGrip      = 0.06  // [m]
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

// apex is the growing tip of one shoot.
type apex struct {
	at, along mgl64.Vec3
	heading   mgl64.Vec3    // horizontal unit vector: where it leans when it has to lean
	length    float64       // grown so far [m]
	held      float64       // length at which a wire last took hold of it [m]
	place     float64       // where the crew puts it between a pair of wires, 0 left to 1 right
	row       float64       // and along the row [m]
	wander    [2]mgl64.Vec3 // in and out of phase [rad m⁻¹]
	over      float64       // its inclination from the vertical where it lies over a wire [rad]
	next      int           // support that it is brought to; none from len(supports) on
	combed    bool
	draped    bool
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

// supportAbove finds the lowest support from index `from` on that the crew can bring a shoot to.
func (g *grower) supportAbove(at mgl64.Vec3, from int) int {
	for i := from; i < len(g.supports); i++ {
		s := g.supports[i]
		rise := s.z - at.Z()
		aside := max(s.left-at.X(), at.X()-s.right, 0)
		if rise > 0.05 && rise <= supportReach && aside <= supportAside {
			return i
		}
	}
	return len(g.supports)
}

// advance grows the tip by one step: habit and weight, wandering, wires, ground.
func (g *grower) advance(tip *apex, step float64) {
	s := g.option.Shoots
	// Habit bends up, weight bends down, more so the more shoot hangs beyond the last support.
	bend := droopRate*(tip.length-tip.held) - uprightRate*s.Habit
	switch {
	case tip.combed:
		bend = combedRate
	case tip.draped:
		bend = droopRate*(tip.length-tip.held) - drapedShare*uprightRate*s.Habit
	}
	tip.along = tilt(tip.along, tip.heading, bend*step)

	// Wandering.
	sin, cos := math.Sincos(2 * math.Pi / wanderWave * tip.length)
	tip.along = tip.along.Add(tip.wander[0].Mul(sin * step)).Add(tip.wander[1].Mul(cos * step))

	// Wires.
	switch {
	case tip.next < len(g.supports):
		g.steer(tip, step)
	case tip.draped && tip.length-tip.held < overTurn:
		tip.along = mix(tip.along, leaning(tip.heading, tip.over), min(1, step/overGrip))
	}
	tip.along = tip.along.Normalize()

	// Ground.
	if tip.at.Z() < groundClear && tip.along.Z() < 0 {
		tip.along = mgl64.Vec3{tip.along.X(), tip.along.Y(), 0}.Add(tip.heading.Mul(0.05)).Normalize()
	}
	before := tip.at.Z()
	tip.at = tip.at.Add(tip.along.Mul(step))
	tip.at[2] = max(tip.at[2], lowestPoint)
	tip.length += step
	g.takeHold(tip, before, step)
	tip.settle()
}

// tilt turns a direction away from the vertical by the rate e of tan(θ/2), which is what a bending
// moment in proportion to the lean does: dθ/ds = κ sin θ. A shoot that stands or hangs plumb stays so.
func tilt(along, heading mgl64.Vec3, e float64) mgl64.Vec3 {
	lean := math.Hypot(along.X(), along.Y())
	if lean > 1e-4 {
		heading = mgl64.Vec3{along.X() / lean, along.Y() / lean, 0}
	}
	t := max(lean, 1e-4) / max(1+along.Z(), 1e-4)
	e = min(max(e, -1.5), 1.5) / 2
	t = min(t*(1+e)/(1-e), 1e3) // exp by its first Padé approximant
	sin, cos := 2*t/(1+t*t), (1-t*t)/(1+t*t)
	return mgl64.Vec3{heading.X() * sin, heading.Y() * sin, cos}
}

// steer turns the tip towards its place on the next support.
func (g *grower) steer(tip *apex, step float64) {
	s := g.supports[tip.next]
	left, right := s.left+wireClearance, s.right-wireClearance
	if left > right {
		left, right = s.middle(), s.middle()
	}
	target := left + tip.place*(right-left)
	rise := max(s.z-tip.at.Z(), 0.02)
	wanted := mgl64.Vec3{target - tip.at.X(), tip.row - tip.at.Y(), rise}.Normalize()
	tip.along = mix(tip.along, wanted, min(1, step/max(0.08, supportGrip*rise)))
}

// takeHold notes that a support was reached in the last step and looks for the next one.
func (g *grower) takeHold(tip *apex, before, step float64) {
	if tip.next >= len(g.supports) {
		return
	}
	s := g.supports[tip.next]
	if tip.at.Z() < s.z {
		return
	}
	past := 0.0
	if rise := tip.at.Z() - before; rise > 0 {
		past = min(max((tip.at.Z()-s.z)/rise, 0), 1) * step
	}
	tip.held = tip.length - past
	tip.next = g.supportAbove(tip.at, tip.next+1)
	tip.draped = s.over && tip.next == len(g.supports)
}

// settle rounds the state, so that the last bits of exp and sin, which differ between native and
// wasm, never add up.
func (t *apex) settle() {
	for i := range 3 {
		t.at[i] = round(t.at[i], 1e7)
		t.along[i] = round(t.along[i], 1e7)
	}
}

// spacing gives the distances between the nodes of one shoot: short at the base and at the tip, with
// the given mean over the whole shoot.
type spacing struct {
	source draw.Source
	count  int
	length float64 // of the shoot [m]
	mean   float64 // between nodes [m]
	middle float64 // of the full-grown internodes, relative to the mean
}

// Basal internodes are short, from memory; those near the tip were still growing.
var basalInternode = [...]float64{0.5, 0.65, 0.8, 0.9}

const (
	growingNodes  = 5.0  // internodes near the tip that are not full-grown
	tipInternode  = 0.35 // the last one relative to a full-grown one
	missingLength = 2.8  // length that short internodes lack, in full-grown internodes
)

func newSpacing(plan *shootPlan, s scenario.Shoots, length float64) *spacing {
	mean := s.Internode_cm / 100
	count := max(length/mean, 8)
	return &spacing{source: plan.source, length: length, mean: mean, middle: 1 / (1 - missingLength/count)}
}

// after is the place of the node that follows the one at s [m from the base].
func (p *spacing) after(s float64) float64 {
	relative := 1.0
	if p.count < len(basalInternode) {
		relative = basalInternode[p.count]
	}
	fromTip := (p.length - s) / p.mean
	relative *= tipInternode + (1-tipInternode)*min(max(fromTip/growingNodes, 0), 1)
	jitter := 1 + 0.12*p.source.Of(p.count).Normal(drawInternode)
	p.count++
	return s + p.mean*p.middle*relative*jitter
}

func mix(a, b mgl64.Vec3, u float64) mgl64.Vec3 { return a.Mul(1 - u).Add(b.Mul(u)) }

func radians(deg float64) float64 { return deg * math.Pi / 180 }

func round(x, perUnit float64) float64 { return math.RoundToEven(x*perUnit) / perUnit }
