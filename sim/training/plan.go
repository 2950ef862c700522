package training

import (
	"math"

	"rowlight/sim/internal/draw"
	"rowlight/sim/scenario"
)

// arm is one cordon arm or cane: it lies on fruiting wire `cordon` and runs from its head along the row.
type arm struct {
	vine, cordon int
	head         float64 // y of the head [m]
	direction    float64 // +1 or -1 along the row
	length       float64 // [m]
	lane         int     // arms that share a wire in one direction lie beside each other
	share        float64 // part of the shoots of its length of wire that it carries
	source       draw.Source
}

// shootPlan is a shoot before it grows: where it sits and what it will carry.
type shootPlan struct {
	arm     int
	along   float64 // distance from the head along the arm [m]
	even    float64 // the same if the shoots of the arm stood at equal distances [m]
	spur    draw.Source
	onSpur  int // from 0 at the base of the spur
	bunches int
	source  draw.Source

	// Set when it grows.
	first, count int     // its nodes in grower.nodes
	full         float64 // nodes that it would have if nothing had cut it

	rankSin, rankCos float64 // turn of its two ranks of leaves about the shoot
}

const (
	drawBunchCount draw.Purpose = iota + 100
	drawSpurJitter
	drawSpurBudget
)

// planPeriod chooses the number of vines and plans their arms and shoots.
func (g *grower) planPeriod() {
	perVine := g.option.Bunches.PerShoot * g.option.Shoots.PerMetre * g.option.Rows.VineSpacing_m * float64(len(g.cordons))
	step := g.vineStep()
	vines := max(fewestVines, int(fewestBunches/perVine))
	for {
		vines = (vines + step - 1) / step * step
		g.planVines(vines)
		bunches := 0
		for i := range g.plans {
			bunches += g.plans[i].bunches
		}
		if bunches >= fewestBunches {
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
	g.arms, g.plans = g.arms[:0], g.plans[:0]
	for cordon := range g.cordons {
		g.layArms(cordon, vines)
	}
	planned := make([]float64, len(g.cordons)) // shoots due so far on each wire
	for i := range g.arms {
		g.planArm(i, &planned[g.arms[i].cordon])
	}
}

// layArms shares the wire out among the vines that have arms on it. One arm runs to the next head,
// two and more run half way to both sides.
func (g *grower) layArms(cordon, vines int) {
	spacing := g.option.Rows.VineSpacing_m
	perVine := g.option.Training.ArmsPerVine
	wires := len(g.cordons)
	onWire := perVine / wires
	if cordon < perVine%wires {
		onWire++
	}
	if perVine < wires {
		onWire = 1
	}

	heads := g.headsOn(cordon, vines)
	for i, vine := range heads {
		for j := range onWire {
			a := arm{vine: vine, cordon: cordon, head: spacing * (float64(vine) + 0.5), lane: j / 2}
			a.source = g.source.Of(vine).Of(cordon).Of(j)
			forward := (j+cordon)%2 == 0
			a.direction = -1
			if forward {
				a.direction = 1
			}
			reach := spacing * float64(vinesToNext(heads, i, vines, forward))
			if onWire == 1 {
				a.length, a.share = reach, 1
			} else {
				a.length = reach / 2
				a.share = 1 / float64((onWire+1-j%2)/2)
			}
			g.arms = append(g.arms, a)
		}
	}
}

// vinesToNext counts the vines from head i to the next head along the row, around the period.
func vinesToNext(heads []int, i, vines int, forward bool) int {
	if len(heads) == 1 {
		return vines
	}
	if forward {
		return (heads[(i+1)%len(heads)] - heads[i] + vines) % vines
	}
	return (heads[i] - heads[(i-1+len(heads))%len(heads)] + vines) % vines
}

// headsOn lists the vines that have an arm on the wire.
func (g *grower) headsOn(cordon, vines int) []int {
	perVine, wires := g.option.Training.ArmsPerVine, len(g.cordons)
	var heads []int
	for vine := range vines {
		first := vine * perVine % wires
		if perVine >= wires || (cordon-first+wires)%wires < perVine {
			heads = append(heads, vine)
		}
	}
	return heads
}

// planArm places the shoots of an arm: along a cane one by one, along a cordon on its spurs. due
// counts the shoots of the wire so far, so that rounding never adds up.
func (g *grower) planArm(index int, due *float64) {
	a := g.arms[index]
	before := math.Round(*due)
	*due += g.option.Shoots.PerMetre * a.length * a.share
	shoots := int(math.Round(*due) - before)
	if shoots == 0 {
		return
	}
	places := shoots
	if g.option.Training.Wood == scenario.Spurs {
		places = max(1, int(math.Round(a.length/g.option.Training.SpurSpacing_m)))
	}
	step := a.length / float64(places)
	offset := a.source.Uniform(drawSpurBudget)
	perPlace := float64(shoots) / float64(places)
	planned := 0.5
	for place := range places {
		spur := a.source.Of(place)
		along := step * (float64(place) + 0.5 + 0.18*spur.Normal(drawSpurJitter))
		from := math.Floor(perPlace*float64(place) + offset)
		to := math.Floor(perPlace*float64(place+1) + offset)
		for k := range int(to - from) {
			shoot := spur.Of(k)
			g.plans = append(g.plans, shootPlan{
				arm: index, along: min(max(along, 0.02), a.length), even: a.length * planned / float64(shoots),
				spur: spur, onSpur: k, source: shoot,
				bunches: shoot.Count(drawBunchCount, g.option.Bunches.PerShoot),
			})
			planned++
		}
	}
}
