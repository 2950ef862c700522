package training

import (
	"math"
	"slices"

	"rowlight/sim/scenario"
)

// Leaf removal.
const (
	aboveShoulder = 0.05 // crews clear this far above the shoulders of the bunches, assumption [m]
	belowTip      = 0.05 // and below their tips [m]
	ofBunches     = 0.95 // the zone holds this share of the shoulders, and of the tips
)

// zone is a range of heights [m].
type zone struct{ bottom, top float64 }

// pullLeaves takes leaves out of the fruit zone of each fruiting wire, or out of the band of heights that is
// given, side by side of that wire. The leaf area of the stand falls by what is pulled.
func (g *grower) pullLeaves() {
	var share [2]float64
	for _, side := range scenario.Sides {
		share[side] = g.option.Removed(side, g.latitude)
	}
	if share[scenario.Left] <= 0 && share[scenario.Right] <= 0 {
		return
	}
	zones := g.pullZones()
	g.keepLeaves(func(i int, leaf *Leaf) bool {
		cordon := g.arms[g.plans[leaf.Shoot].arm].cordon
		side := scenario.Left
		if leaf.Centre.X() >= g.cordons[cordon].Offset_m {
			side = scenario.Right
		}
		z := leaf.Centre.Z()
		inZone := z >= zones[cordon].bottom && z <= zones[cordon].top
		return !inZone || g.pulled[i] >= share[side]
	})
}

// pullZones gives the range of heights that crews clear along each fruiting wire.
func (g *grower) pullZones() []zone {
	l := g.option.Leaves
	if l.RemovedTo_m <= 0 {
		return g.fruitZones()
	}
	zones := make([]zone, len(g.cordons))
	for i := range zones {
		zones[i] = zone{l.RemovedFrom_m, l.RemovedTo_m}
	}
	return zones
}

// fruitZones gives the range of heights that crews clear along each fruiting wire: from just above the
// bunches down to just below them.
func (g *grower) fruitZones() []zone {
	shoulders := make([][]float64, len(g.cordons))
	tips := make([][]float64, len(g.cordons))
	for i := range g.stand.Bunches {
		b := &g.stand.Bunches[i]
		cordon := g.arms[g.plans[b.Shoot].arm].cordon
		shoulders[cordon] = append(shoulders[cordon], b.Centre.Z()+b.Length/2)
		tips[cordon] = append(tips[cordon], b.Centre.Z()-b.Length/2)
	}
	zones := make([]zone, len(g.cordons))
	for i := range zones {
		if len(tips[i]) == 0 {
			zones[i] = zone{math.Inf(1), math.Inf(-1)}
			continue
		}
		slices.Sort(shoulders[i])
		slices.Sort(tips[i])
		last := len(tips[i]) - 1
		zones[i].top = shoulders[i][int(ofBunches*float64(last))] + aboveShoulder
		zones[i].bottom = tips[i][int((1-ofBunches)*float64(last))] - belowTip
	}
	return zones
}
