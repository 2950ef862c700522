package training

import (
	"rowlight/sim/internal/draw"
	"rowlight/sim/scenario"
)

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
