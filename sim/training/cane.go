package training

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/draw"
	"rowlight/sim/scenario"
)

// Canes that leave a cordon.
const (
	caneInternode  = 0.075 // canes of 0.5-0.7 m have 6-10 buds (trade pages on free arched canes) [m]
	caneSpread     = 0.15  // standard deviation of their length over its mean, assumption
	caneSteps      = 24    // straight pieces of one cane
	archRise       = 0.30  // an arched cane first rises this part of its length, assumption
	bendRise       = 0.06  // and one bent straight down this part, assumption
	freeStart      = 75.0  // inclination from the vertical at which free canes leave the cordon [deg], assumption
	freeSpread     = 32.0  // its standard deviation [deg], assumption
	freeDroop      = 26.0  // bending of free canes under leaves and crop, per length from the base [rad m⁻²], assumption
	freeUpright    = 4.0   // bending up of a fully upright variety [rad m⁻¹], assumption
	lowestCane     = 0.25  // canes are kept this far above the ground [m]
	besideTie      = 0.02  // standard deviation of the place of a cane's end beside its tie wire [m]
	tightestTurns  = 24    // halvings by which the reach of a bent cane is found
	caneEndRadius  = 0.004 // [m]
	caneBaseRadius = 0.008 // [m]
)

const (
	drawCaneLength draw.Purpose = iota + 800
	drawCaneLean
	drawCaneHeading
	drawCaneSide
	drawCaneEnd
)

// cane is last year's wood on a cordon.
type cane struct {
	arm     int
	along   float64      // where it leaves the arm, from the head [m]
	outward mgl64.Vec3   // horizontal unit vector where it hangs away from its cordon; zero for a bent one
	points  []mgl64.Vec3 // equal distances apart, set when it grows
	source  draw.Source
}

// growCanes bends or hangs every cane from its cordon.
func (g *grower) growCanes() {
	t := g.option.Training
	for i := range g.canes {
		c := &g.canes[i]
		a := &g.arms[c.arm]
		base := g.armAt(a, c.along)
		length := caneInternode * float64(t.CaneNodes) * (1 + caneSpread*c.source.Normal(drawCaneLength))
		tie, tied := g.tieBelow(base)
		switch {
		case t.CaneLayout == scenario.CanesArched && tied:
			c.points = bent(base, tie, a.direction, length, archRise*length, c.source)
		case t.CaneLayout == scenario.CanesTiedDown && tied:
			c.points = bent(base, tie, a.direction, length, bendRise*length, c.source)
		default:
			c.hang(base, length, g.option.Shoots.Habit)
		}
		limb := newLimb(a.vine, len(c.points))
		for k, p := range c.points {
			c.points[k] = rounded(p, 1e7) // for the shoots that start there
			u := float64(k) / float64(len(c.points)-1)
			limb.add(p, caneBaseRadius+(caneEndRadius-caneBaseRadius)*u)
		}
		g.stand.Arms = append(g.stand.Arms, limb)
	}
}

// tieBelow finds the nearest tie wire below a point.
func (g *grower) tieBelow(base mgl64.Vec3) (tie scenario.Wire, found bool) {
	nearest := math.Inf(1)
	for _, wire := range g.option.Trellis.Wires {
		apart := math.Hypot(wire.Offset_m-base.X(), wire.Height_m-base.Z())
		if wire.Role == scenario.Tie && wire.Height_m < base.Z() && apart < nearest {
			tie, nearest, found = wire, apart, true
		}
	}
	return tie, found
}

// bent is a cane of the given length that leaves its cordon upward, bends over along the row and ends on
// the tie wire. One too short to get there ends above the wire.
func bent(base mgl64.Vec3, tie scenario.Wire, direction, length, rise float64, source draw.Source) []mgl64.Vec3 {
	drop := mgl64.Vec3{tie.Offset_m - base.X() + besideTie*source.Normal(drawCaneEnd), 0, tie.Height_m - base.Z()}
	if most := 0.97 * length; drop.Len() > most {
		drop = drop.Mul(most / drop.Len())
	}
	curve := func(reach, rise float64) []mgl64.Vec3 {
		along := mgl64.Vec3{0, direction * reach, 0}
		up := mgl64.Vec3{0, 0, rise}
		return bezier(base, base.Add(up).Add(along.Mul(0.25)), base.Add(up).Add(along).Add(drop.Mul(0.25)), base.Add(along).Add(drop))
	}
	for pathLength(curve(0, rise)) > length && rise > 0.01 {
		rise *= 0.7
	}
	near, far := 0.0, length
	for range tightestTurns {
		if middle := (near + far) / 2; pathLength(curve(middle, rise)) > length {
			far = middle
		} else {
			near = middle
		}
	}
	return resampled(curve(near, rise), caneSteps)
}

// hang lets a cane fall to one side of its cordon under the weight of leaves and fruit.
func (c *cane) hang(base mgl64.Vec3, length, habit float64) {
	turn := radians(headingSpread) * c.source.Normal(drawCaneHeading)
	c.outward = mgl64.Vec3{c.source.Sign(drawCaneSide, 0.5) * math.Cos(turn), math.Sin(turn), 0}
	lean := radians(min(max(freeStart+freeSpread*c.source.Normal(drawCaneLean), 3), 110))
	at, step := base, length/caneSteps
	c.points = append(c.points, at)
	along := leaning(c.outward, lean)
	for k := range caneSteps {
		s := step * (float64(k) + 0.5)
		along = rounded(tilt(along, c.outward, (freeDroop*s-freeUpright*habit)*step), 1e7)
		at = rounded(at.Add(along.Mul(step)), 1e7)
		at[2] = max(at[2], lowestCane)
		c.points = append(c.points, at)
	}
}

// at is the point of the cane at a part of its length.
func (c *cane) at(u float64) mgl64.Vec3 {
	place := min(max(u, 0), 1) * float64(len(c.points)-1)
	k := min(int(place), len(c.points)-2)
	return mix(c.points[k], c.points[k+1], place-float64(k))
}

// bezier is the cubic curve of four points in fine steps.
func bezier(p0, p1, p2, p3 mgl64.Vec3) []mgl64.Vec3 {
	points := make([]mgl64.Vec3, 0, caneSteps+1)
	for k := range caneSteps + 1 {
		u := float64(k) / caneSteps
		v := 1 - u
		p := p0.Mul(v * v * v).Add(p1.Mul(3 * v * v * u)).Add(p2.Mul(3 * v * u * u)).Add(p3.Mul(u * u * u))
		points = append(points, p)
	}
	return points
}

func pathLength(points []mgl64.Vec3) float64 {
	length := 0.0
	for k := range points[1:] {
		length += points[k+1].Sub(points[k]).Len()
	}
	return length
}

// resampled is the path in pieces of equal length.
func resampled(points []mgl64.Vec3, pieces int) []mgl64.Vec3 {
	step := pathLength(points) / float64(pieces)
	out := append(make([]mgl64.Vec3, 0, pieces+1), points[0])
	walked := 0.0
	for k := range points[1:] {
		piece := points[k+1].Sub(points[k]).Len()
		for piece > 0 && len(out) < pieces && walked+piece >= step*float64(len(out)) {
			out = append(out, mix(points[k], points[k+1], (step*float64(len(out))-walked)/piece))
		}
		walked += piece
	}
	for len(out) <= pieces {
		out = append(out, points[len(points)-1])
	}
	return out
}
