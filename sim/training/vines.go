package training

import (
	"cmp"
	"math"
	"slices"

	"rowlight/sim/internal/draw"
)

// vineState is how far a vine of the row has come.
type vineState uint8

const (
	fullGrown vineState = iota
	missing
	young
	singleArm
)

// youngArms is the part of their length to which the arms of a young vine have grown: half way in the third
// year, common practice.
const youngArms = 0.5

// mostForShares bounds the vines of the period that shares of vines ask for.
const mostForShares = 20

const (
	drawMissing draw.Purpose = iota + 750
	drawYoung
	drawSingleArm
)

// grown is the part of an arm that a vine has; first is the arm that a vine with one arm keeps.
func (s vineState) grown(first bool) float64 {
	switch {
	case s == missing || s == singleArm && !first:
		return 0
	case s == young:
		return youngArms
	}
	return 1
}

// statesOf picks the vines that are missing, young, or keep a single arm, each kind by the rank of its own
// frozen draw: a larger share adds vines and takes none back.
func (g *grower) statesOf(vines int) []vineState {
	t := g.option.Training
	states := make([]vineState, vines)
	for _, kind := range []struct {
		state   vineState
		share   float64
		purpose draw.Purpose
	}{{missing, t.MissingVines, drawMissing}, {young, t.YoungVines, drawYoung}, {singleArm, t.SingleArmVines, drawSingleArm}} {
		if kind.share == 0 {
			continue
		}
		order := make([]int, vines)
		for vine := range order {
			order[vine] = vine
		}
		slices.SortStableFunc(order, func(a, b int) int {
			return cmp.Compare(g.source.Of(a).Uniform(kind.purpose), g.source.Of(b).Uniform(kind.purpose))
		})
		wanted := int(math.Round(kind.share * float64(vines)))
		for _, vine := range order {
			if wanted > 0 && states[vine] == fullGrown {
				states[vine] = kind.state
				wanted--
			}
		}
	}
	return states
}

// fewestVines is the least number of vines in the period: few where one vine bears most of the bunches that
// are wanted, more where a share of the vines is meant.
func (g *grower) fewestVines(bunchesPerVine float64) int {
	vines := fewestVines
	if bunchesPerVine >= 0.75*fewestBunches {
		vines = fewestLargeVines
	}
	t := g.option.Training
	for _, share := range []float64{t.MissingVines, t.YoungVines, t.SingleArmVines} {
		if share > 0 {
			vines = max(vines, min(int(math.Ceil(1/share)), mostForShares))
		}
	}
	return vines
}

// shareBearing is about the share of the shoots of complete vines that are there.
func (g *grower) shareBearing() float64 {
	t := g.option.Training
	arms := float64(t.ArmsPerVine)
	vines := 1 - t.MissingVines - (1-youngArms)*t.YoungVines - t.SingleArmVines*(1-1/arms)
	return max(vines, 0.05) * (1 - t.BlindNodes) * (1 - g.option.Shoots.Thinned)
}

// evenly spread marks along the wood: multiples of the golden ratio fill a round as evenly as can be.
const goldenRatio = 0.6180339887498949

// bears tells whether a shoot comes of its node and is not taken out. Thinning goes evenly along the arm,
// and a larger share takes the same shoots and more.
func (g *grower) bears(plan *shootPlan, nth int) bool {
	if plan.source.Uniform(drawBlind) < g.option.Training.BlindNodes {
		return false
	}
	_, mark := math.Modf(g.arms[plan.arm].source.Uniform(drawThinned) + goldenRatio*float64(nth))
	return mark >= g.option.Shoots.Thinned
}
