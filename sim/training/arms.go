package training

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/draw"
	"rowlight/sim/scenario"
)

// arm is one cordon arm or cane that leaves the head: it runs along fruiting wire `cordon`, or spreads
// from the head.
type arm struct {
	vine, cordon int
	head         float64    // y of the head [m]
	direction    float64    // +1 or -1 along the row
	outward      mgl64.Vec3 // horizontal unit vector of a spread arm; zero along a wire
	length       float64    // on a full-grown vine [m]
	grown        float64    // part of its length that is there, 0 where the arm is missing
	covers       float64    // length of canopy whose shoots it carries [m]
	lane         int        // arms that share a wire in one direction lie beside each other
	source       draw.Source
}

// armTurnSpread is the standard deviation of the direction of spread arms [deg], assumption.
const armTurnSpread = 8.0

const (
	drawArmTurn draw.Purpose = iota + 700
	drawArmRise
)

// layArms shares the wire out among the vines that have arms on it. One arm runs to the next head,
// two and more run half way to both sides; spread arms leave the head in equal angles.
func (g *grower) layArms(cordon, vines int, states []vineState) {
	spacing := g.option.Rows.VineSpacing_m
	onWire := g.armsOn(cordon)
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
				a.length, a.covers = reach, reach
			} else {
				a.length = reach / 2
				a.covers = a.length / float64((onWire+1-j%2)/2)
			}
			if g.option.Training.ArmLayout == scenario.ArmsSpread {
				g.spreadArm(&a, j, onWire, spacing*float64(vinesToNext(heads, i, vines, true)))
			}
			a.grown = states[vine].grown(cordon == 0 && j == 0)
			g.arms = append(g.arms, a)
		}
	}
}

// armsOn is the number of arms of one vine on a wire.
func (g *grower) armsOn(cordon int) int {
	perVine, wires := g.option.Training.ArmsPerVine, len(g.cordons)
	if perVine < wires {
		return 1
	}
	onWire := perVine / wires
	if cordon < perVine%wires {
		onWire++
	}
	return onWire
}

// spreadArm points arm j of n away from the head: all around, or to one side under a roof that lies
// on that side alone. Together they carry the shoots of the wire as far as the next head.
func (g *grower) spreadArm(a *arm, j, n int, reach float64) {
	t := g.option.Training
	from, round := 0.0, 2*math.Pi
	if side := g.roof.oneSide(g.cordons[a.cordon].Offset_m, t.ArmLength_m); side != 0 {
		from, round = -math.Pi*(1+side)/2, math.Pi
	}
	turn := from + round*(float64(j)+0.5)/float64(n) + radians(armTurnSpread)*a.source.Normal(drawArmTurn)
	sin, cos := math.Sincos(turn)
	// Counted from the row line, so that four arms on a full round part the row into quarters.
	a.outward = mgl64.Vec3{-sin, cos, 0}
	a.lane = 0
	a.length, a.covers = t.ArmLength_m, reach/float64(n)
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

// armAt is the axis of the arm at a distance from its head along the row, or along a spread arm [m]: up
// from the head, then on its wire with slight waves.
func (g *grower) armAt(a *arm, along float64) mgl64.Vec3 {
	wire := g.cordons[a.cordon]
	base, _ := g.armRadii()
	settled := 1 - math.Exp(-along/armTurn)
	wave := armWave * min(1, base/cordonBase+0.3) * settled
	k := 2 * math.Pi / (0.5 + 0.4*a.source.Uniform(drawWaveLength))
	x := wave * math.Sin(k*along+2*math.Pi*a.source.Uniform(drawWaveX))
	z := wave * math.Sin(k*along*0.8+2*math.Pi*a.source.Uniform(drawWaveZ))
	if a.outward != (mgl64.Vec3{}) {
		return g.spreadAt(a, along, settled).Add(mgl64.Vec3{x * a.outward.Y(), -x * a.outward.X(), z})
	}
	lane := laneSpacing * float64(a.lane) * settled
	return mgl64.Vec3{
		wire.Offset_m + x + lane,
		a.head + a.direction*along,
		wire.Height_m - headDrop*(1-settled) + z + lane/2,
	}
}

// spreadAt is the axis of a spread arm without its waves: on the roof where there is one, else it rises
// like the side of a bowl.
func (g *grower) spreadAt(a *arm, along, settled float64) mgl64.Vec3 {
	wire := g.cordons[a.cordon]
	rise := radians(g.option.Training.ArmRise_deg)
	if z, _, ok := g.roof.at(wire.Offset_m + along*a.outward.X()); ok {
		p := mgl64.Vec3{wire.Offset_m, a.head, z - headDrop*(1-settled)}
		return p.Add(a.outward.Mul(along))
	}
	rise += radians(armTurnSpread) * a.source.Normal(drawArmRise)
	sin, cos := math.Sincos(rise)
	u := along / a.length
	p := mgl64.Vec3{wire.Offset_m, a.head, wire.Height_m - headDrop + along*sin*(0.6+0.4*u)}
	return p.Add(a.outward.Mul(along * cos))
}
