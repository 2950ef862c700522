package training

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// How wires take hold of shoots: assumptions, the same for every form.
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
	overGrip      = 0.06  // length over which two thirds of that turn happen [m]
	leanAside     = 0.1   // wires at one height are told apart this far on the side of the lean [m]
	turnedGrip    = 0.25  // length over which shoots turned down go to their wires [m]
	downFrom      = 0.5   // part of the turn downwards after which the wires below take hold, as -cos of the inclination
)

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
	combed    bool          // hangs down, by its own weight or
	turned    bool          // brought between wires below
	draped    bool
	carried   bool // by the roof wires
}

// supportAbove finds the lowest support from index `from` on that the crew can bring a shoot to; of those
// at one height the nearest, by the side to which the shoot leans.
func (g *grower) supportAbove(tip *apex, from int) int {
	x := tip.at.X() + leanAside*tip.heading.X()
	found, nearest := len(g.supports), math.Inf(1)
	for i := from; i < len(g.supports); i++ {
		s := g.supports[i]
		if found < len(g.supports) && s.z > g.supports[found].z+pairHeight {
			break
		}
		rise := s.z - tip.at.Z()
		if rise > 0.05 && rise <= supportReach && s.aside(tip.at.X()) <= supportAside && s.aside(x) < nearest {
			found, nearest = i, s.aside(x)
		}
	}
	return found
}

// supportBelow finds the highest pair of catch wires below, between which the crew can bring a shoot that
// is turned down.
func (g *grower) supportBelow(tip *apex) (support, bool) {
	x := tip.at.X() + leanAside*tip.heading.X()
	var found support
	nearest, ok := math.Inf(1), false
	for _, s := range slices.Backward(g.supports) {
		if ok && s.z < found.z-pairHeight {
			break
		}
		drop := tip.at.Z() - s.z
		if !s.over && drop > 0.05 && drop <= supportReach && s.aside(tip.at.X()) <= supportAside && s.aside(x) < nearest {
			found, nearest, ok = s, s.aside(x), true
		}
	}
	return found, ok
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
	case tip.combed && tip.along.Z() < -downFrom:
		g.steerDown(tip, step)
	case tip.next < len(g.supports):
		g.steer(tip, step)
	case tip.draped && tip.length-tip.held < overTurn:
		tip.along = mix(tip.along, leaning(tip.heading, tip.over), min(1, step/overGrip))
	}
	tip.along = tip.along.Normalize()
	if tip.carried {
		g.roof.carry(tip)
	}

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
	left, right := s.between()
	target := left + tip.place*(right-left)
	rise := max(s.z-tip.at.Z(), 0.02)
	wanted := mgl64.Vec3{target - tip.at.X(), tip.row - tip.at.Y(), rise}.Normalize()
	tip.along = mix(tip.along, wanted, min(1, step/max(0.08, supportGrip*rise)))
}

// steerDown brings the tip of a shoot turned down between the wires below it; one without such wires hangs.
func (g *grower) steerDown(tip *apex, step float64) {
	s, ok := g.supportBelow(tip)
	if !ok || !tip.turned {
		return
	}
	left, right := s.between()
	target := left + tip.place*(right-left)
	wanted := mgl64.Vec3{target - tip.at.X(), tip.row - tip.at.Y(), s.z - tip.at.Z()}.Normalize()
	tip.along = mix(tip.along, wanted, min(1, step/turnedGrip))
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
	tip.next = g.supportAbove(tip, tip.next+1)
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
