package training

import (
	"cmp"
	"math"
	"slices"

	"rowlight/sim/scenario"
)

// Sizes of the trellis, common practice.
const (
	postOverWire = 0.08 // a post stands this far above its highest wire [m]
	besidePost   = 0.12 // wires nearer to the row line than this are fixed to the post itself [m]
	pairHeight   = 0.08 // two catch wires within this height of each other work as a pair [m]
	crossarmEnd  = 0.03 // a crossarm reaches this far beyond its outer wire [m]
)

// support is a height at which wires hold shoots: a pair of catch wires between which they stand,
// or one wire that they lean or lie on.
type support struct {
	z           float64
	left, right float64 // the wires of a pair; equal for a single wire [m]
	over        bool    // shoots that get no further support lie over it
}

// between is the room of shoots between the wires, clear of them [m].
func (s support) between() (left, right float64) {
	left, right = s.left+wireClearance, s.right-wireClearance
	if left > right {
		left, right = (s.left+s.right)/2, (s.left+s.right)/2
	}
	return left, right
}

// aside is the distance of an x from the room between the wires [m].
func (s support) aside(x float64) float64 { return max(s.left-x, x-s.right, 0) }

// supportsOf reads foliage and catch wires, from below. Catch wires of about the same height pair up
// with their neighbour across the row; one that stays alone holds shoots that are tied to it.
func supportsOf(wires []scenario.Wire) []support {
	var supports []support
	var single []scenario.Wire
	for _, wire := range wires {
		switch wire.Role {
		case scenario.Foliage:
			supports = append(supports, support{z: wire.Height_m, left: wire.Offset_m, right: wire.Offset_m, over: true})
		case scenario.Catch:
			single = append(single, wire)
		}
	}
	slices.SortStableFunc(single, func(a, b scenario.Wire) int {
		return cmp.Or(cmp.Compare(a.Height_m, b.Height_m), cmp.Compare(a.Offset_m, b.Offset_m))
	})
	for len(single) > 0 {
		pair := single[:1]
		if len(single) > 1 && single[1].Height_m-single[0].Height_m <= pairHeight {
			pair = single[:2]
		}
		last := pair[len(pair)-1]
		supports = append(supports, support{
			z:     (pair[0].Height_m + last.Height_m) / 2,
			left:  min(pair[0].Offset_m, last.Offset_m),
			right: max(pair[0].Offset_m, last.Offset_m),
		})
		single = single[len(pair):]
	}
	slices.SortStableFunc(supports, func(a, b support) int { return cmp.Compare(a.z, b.z) })
	return supports
}

// placePosts sets line posts at the spacing nearest to the one given that puts a whole number into
// the period, with a crossarm at every height where wires lie off the row line. Vines without wires stand free.
func (g *grower) placePosts() {
	wires := g.option.Trellis.Wires
	if len(wires) == 0 {
		return
	}
	crossarms := append(crossarmsOf(wires), g.roof.beams()...)
	top := 0.0
	for _, wire := range wires {
		if wire.Role != scenario.Roof {
			top = max(top, wire.Height_m)
		}
	}
	for _, bar := range crossarms {
		top = max(top, bar.Z)
	}
	count := max(1, int(math.Round(g.stand.Length/g.option.Trellis.PostSpacing_m)))
	for i := range count {
		g.stand.Posts = append(g.stand.Posts, Post{
			Y:         g.stand.Length * float64(i) / float64(count),
			Height:    top + postOverWire,
			Crossarms: crossarms,
		})
	}
	g.stand.CrossWires = g.roof.crossWires(g.stand.Length, g.option.Trellis.CrossWires_m)
}

// crossarmsOf gives one bar per height at which wires lie too far out to be fixed to the post.
func crossarmsOf(wires []scenario.Wire) []Crossarm {
	var bars []Crossarm
	for _, wire := range wires {
		if wire.Role == scenario.Roof || math.Abs(wire.Offset_m) <= besidePost {
			continue
		}
		i := slices.IndexFunc(bars, func(b Crossarm) bool { return math.Abs(b.Z-wire.Height_m) <= pairHeight })
		if i < 0 {
			bars = append(bars, Crossarm{Z: wire.Height_m})
			i = len(bars) - 1
		}
		end := wire.Offset_m + math.Copysign(crossarmEnd, wire.Offset_m)
		bars[i].Left, bars[i].Right = min(bars[i].Left, end), max(bars[i].Right, end)
	}
	return bars
}
