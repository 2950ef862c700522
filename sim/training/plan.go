package training

import (
	"math"

	"rowlight/sim/internal/draw"
	"rowlight/sim/scenario"
)

// shootPlan is a shoot before it grows: where it sits and what it will carry.
type shootPlan struct {
	arm      int
	along    float64 // distance from the head along the arm, of the shoot or of its cane [m]
	even     float64 // the same if the shoots of the arm stood at equal distances [m]
	cane     int     // cane that bears it, or onArm
	spur     draw.Source
	onSpur   int // from 0 at the base of the spur or cane
	siblings int // shoots planned on that spur or cane
	bunches  int
	source   draw.Source

	// Set when it grows.
	first, count int     // its nodes in grower.nodes
	carried      bool    // by the roof wires
	full         float64 // nodes that it would have if nothing had cut it
	lostPrimary  float64 // what the nodes cut off would have carried, as bladeAt
	lostLateral  float64 // and as lateralAt

	rankSin, rankCos float64 // turn of its two ranks of leaves about the shoot
}

// onArm marks a shoot that sits on the arm itself or on a spur of it.
const onArm = -1

const (
	drawBunchCount draw.Purpose = iota + 100
	drawSpurJitter
	drawSpurBudget
	drawBlind
	drawThinned
)

// planPeriod chooses the number of vines and plans their arms and shoots.
func (g *grower) planPeriod() {
	perVine := g.option.Bunches.PerShoot * g.option.Shoots.PerMetre * g.option.Rows.VineSpacing_m * float64(len(g.cordons))
	perVine *= g.shareBearing()
	step := g.vineStep()
	vines := max(g.fewestVines(perVine), int(fewestBunches/perVine))
	for {
		vines = min((vines+step-1)/step*step, mostVines/step*step)
		g.planVines(vines)
		bunches := 0
		for i := range g.plans {
			bunches += g.plans[i].bunches
		}
		if bunches >= fewestBunches || vines+step > mostVines {
			return
		}
		vines += max(1, int(float64(fewestBunches-bunches)/perVine))
	}
}

// vineStep is the number of vines after which arms and wires meet in the same way again: where a
// vine has fewer arms than there are fruiting wires, neighbours take turns.
func (g *grower) vineStep() int {
	arms, wires := g.option.Training.ArmsPerVine, len(g.cordons)
	if arms >= wires {
		return 1
	}
	return wires / gcd(arms, wires)
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func (g *grower) planVines(vines int) {
	g.stand.Length = float64(vines) * g.option.Rows.VineSpacing_m
	g.arms, g.canes, g.plans, g.complete = g.arms[:0], g.canes[:0], g.plans[:0], 0
	states := g.statesOf(vines)
	for cordon := range g.cordons {
		g.layArms(cordon, vines, states)
	}
	planned := make([]float64, len(g.cordons)) // shoots due so far on each wire
	for i := range g.arms {
		g.planArm(i, &planned[g.arms[i].cordon])
	}
}

// planArm places the shoots of an arm: along a cane one by one, along a cordon on its spurs or on the
// canes that leave it. due counts the shoots of the wire so far, so that rounding never adds up.
func (g *grower) planArm(index int, due *float64) {
	a := &g.arms[index]
	before := math.Round(*due)
	*due += g.option.Shoots.PerMetre * a.covers
	shoots := int(math.Round(*due) - before)
	g.complete += shoots
	if shoots == 0 || a.grown == 0 {
		return
	}
	places := shoots
	if !g.armsAreCanes() {
		places = max(1, int(math.Round(a.length/g.option.Training.SpurSpacing_m)))
	}
	step := a.length / float64(places)
	offset := a.source.Uniform(drawSpurBudget)
	perPlace := float64(shoots) / float64(places)
	planned := 0
	for place := range places {
		spur := a.source.Of(place)
		along := step * (float64(place) + 0.5 + 0.18*spur.Normal(drawSpurJitter))
		along = g.beyondBare(a, min(max(along, 0.02), a.length))
		from := math.Floor(perPlace*float64(place) + offset)
		to := math.Floor(perPlace*float64(place+1) + offset)
		bearer := onArm
		if g.canesLeaveCordon() && to > from && along <= a.grown*a.length {
			bearer = len(g.canes)
			g.canes = append(g.canes, cane{arm: index, along: along, source: spur})
		}
		for k := range int(to - from) {
			plan := shootPlan{
				arm: index, along: along, even: a.length * (float64(planned) + 0.5) / float64(shoots),
				cane: bearer, spur: spur, onSpur: k, siblings: int(to - from), source: spur.Of(k),
			}
			plan.bunches = plan.source.Count(drawBunchCount, g.option.Bunches.PerShoot)
			if along <= a.grown*a.length && g.bears(&plan, planned) {
				g.plans = append(g.plans, plan)
			}
			planned++
		}
	}
}

// beyondBare moves a place on a spread arm out of its bare base [m].
func (g *grower) beyondBare(a *arm, along float64) float64 {
	bare := g.option.Training.BareBase
	if g.option.Training.ArmLayout != scenario.ArmsSpread || g.canesLeaveCordon() {
		return along
	}
	return a.length*bare + (1-bare)*along
}

// armsAreCanes tells whether the arms are canes that leave the head, renewed every year.
func (g *grower) armsAreCanes() bool {
	return g.option.Training.Wood == scenario.Canes && !g.canesLeaveCordon()
}

// canesLeaveCordon tells whether canes leave permanent arms.
func (g *grower) canesLeaveCordon() bool {
	t := g.option.Training
	return t.Wood == scenario.Canes && t.CaneLayout != scenario.CanesAlong
}
