package training

import (
	"math"

	"rowlight/sim/internal/draw"
)

// hedgeSpread is the standard deviation of the place of a cut: blades leave a slightly uneven face [m], assumption.
const hedgeSpread = 0.02

// cuts are the planes at which one shoot is cut: hedged at the top and sides, skirted below.
type cuts struct{ top, bottom, side float64 }

// cutsOf sets the planes of one shoot; a plane that is not cut lies infinitely far away.
func (g *grower) cutsOf(plan *shootPlan) cuts {
	s := g.option.Shoots
	at := func(place, none float64, purpose draw.Purpose) float64 {
		if place <= 0 {
			return none
		}
		return place + hedgeSpread*plan.source.Normal(purpose)
	}
	return cuts{
		top:    at(s.TrimTop_m, math.Inf(1), drawTrim),
		bottom: at(s.Skirt_m, math.Inf(-1), drawSkirt),
		side:   at(s.TrimSide_m, math.Inf(1), drawTrimSide),
	}
}

// cut tells whether a tip has grown through a plane.
func (c cuts) cut(tip *apex) bool {
	return tip.at.Z() > c.top || tip.at.Z() < c.bottom && tip.along.Z() < 0 ||
		math.Abs(tip.at.X()) > c.side && tip.at.X()*tip.along.X() > 0
}

// clipLeaves takes off the leaves that stick out through the hedged sides and below the skirt.
func (g *grower) clipLeaves() {
	s := g.option.Shoots
	if s.TrimSide_m <= 0 && s.Skirt_m <= 0 {
		return
	}
	g.keepLeaves(func(i int, leaf *Leaf) bool {
		out := s.TrimSide_m > 0 && math.Abs(leaf.Centre.X()) > s.TrimSide_m
		return !out && leaf.Centre.Z() >= s.Skirt_m
	})
}

// keepLeaves drops the leaves that do not pass, and their draws with them.
func (g *grower) keepLeaves(pass func(i int, leaf *Leaf) bool) {
	leaves, pulled := g.stand.Leaves[:0], g.pulled[:0]
	for i := range g.stand.Leaves {
		if pass(i, &g.stand.Leaves[i]) {
			leaves, pulled = append(leaves, g.stand.Leaves[i]), append(pulled, g.pulled[i])
		}
	}
	g.stand.Leaves, g.pulled = leaves, pulled
}
