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

// Pulled is the Stand of an option, which may differ from that of the vines in the pulling of leaves alone: they are taken out of the
// fruit zone of each fruiting wire, or out of the band of heights that is given, side by side of that wire, and the leaf area falls
// by what is pulled. Stands of the same vines share all but their leaves.
func (v *Vines) Pulled(o scenario.Option, latitude_deg float64) *Stand {
	g := v.grown
	var share [2]float64
	for _, side := range scenario.Sides {
		share[side] = o.Removed(side, latitude_deg)
	}
	zones := g.fruit
	if l := o.Leaves; l.RemovedTo_m > 0 {
		zones = slices.Repeat([]zone{{l.RemovedFrom_m, l.RemovedTo_m}}, len(g.cordons))
	}
	stand := *g.stand
	stand.Leaves = make([]Leaf, 0, len(g.stand.Leaves))
	for i := range g.stand.Leaves {
		leaf := g.stand.Leaves[i]
		cordon := g.arms[g.plans[leaf.Shoot].arm].cordon
		side := scenario.Left
		if leaf.Centre.X() >= g.cordons[cordon].Offset_m {
			side = scenario.Right
		}
		z := leaf.Centre.Z()
		inZone := z >= zones[cordon].bottom && z <= zones[cordon].top
		if !inZone || g.pulled[i] >= share[side] {
			leaf.finish()
			stand.Leaves = append(stand.Leaves, leaf)
			stand.Top = max(stand.Top, leaf.Centre.Z()+bladeReach(&leaf))
		}
	}
	stand.Top = round(stand.Top, 1e4)
	return &stand
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
