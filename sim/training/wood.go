package training

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/draw"
)

// Sizes of the permanent wood of a grown vine, common practice.
const (
	trunkFoot   = 0.034 // radius of the trunk at the ground [m]
	trunkHead   = 0.024 // radius of the trunk at the head [m]
	headDrop    = 0.10  // the head lies this far below its fruiting wire [m]
	cordonBase  = 0.020 // radius of a cordon at the head [m]
	cordonEnd   = 0.012 // radius of a cordon at its end [m]
	caneBase    = 0.007 // radius of a cane at the head [m]
	caneEnd     = 0.005 // radius of a cane at its end [m]
	armTurn     = 0.07  // distance over which an arm rises from the head onto its wire [m]
	armWave     = 0.008 // amplitude of the waves of a cordon [m]
	laneSpacing = 0.03  // arms side by side on one wire [m]
	woodStep    = 0.09  // distance between points of wood [m]
)

const (
	drawLeanX draw.Purpose = iota + 200
	drawLeanY
	drawBendX
	drawBendY
	drawWaveX
	drawWaveZ
	drawWaveLength
)

// growWood builds trunks and arms.
func (g *grower) growWood() {
	for i := range g.arms {
		if g.arms[i].grown > 0 {
			g.stand.Arms = append(g.stand.Arms, g.armLimb(&g.arms[i]))
		}
	}
	g.growCanes()
	byVine := map[int][]int{} // fruiting wires that each vine reaches
	vines := 0
	for _, a := range g.arms {
		vines = max(vines, a.vine+1)
		if a.grown == 0 {
			continue
		}
		cordons := byVine[a.vine]
		if len(cordons) == 0 || cordons[len(cordons)-1] != a.cordon {
			byVine[a.vine] = append(cordons, a.cordon)
		}
	}
	for vine := range vines {
		g.growTrunk(vine, byVine[vine])
	}
}

// growTrunk raises the trunk of one vine to the head below its fruiting wire. Where the vine has
// arms on wires apart, the trunk forks below them.
func (g *grower) growTrunk(vine int, cordons []int) {
	if len(cordons) == 0 {
		return
	}
	y := g.option.Rows.VineSpacing_m * (float64(vine) + 0.5)
	low, left, right := math.Inf(1), math.Inf(1), math.Inf(-1)
	for _, c := range cordons {
		wire := g.cordons[c]
		low, left, right = min(low, wire.Height_m-headDrop), min(left, wire.Offset_m), max(right, wire.Offset_m)
	}
	fork := mgl64.Vec3{(left + right) / 2, y, max(0.4*low, low-0.55*(right-left))}
	g.stand.Trunks = append(g.stand.Trunks, g.trunkLimb(vine, fork))
	for _, c := range cordons {
		wire := g.cordons[c]
		head := mgl64.Vec3{wire.Offset_m, y, wire.Height_m - headDrop}
		if head.Sub(fork).Len() > 0.01 {
			g.stand.Trunks = append(g.stand.Trunks, branchLimb(vine, fork, head))
		}
	}
}

// trunkLimb is planted a little off the line and bends on its way up, as vines do.
func (g *grower) trunkLimb(vine int, top mgl64.Vec3) Limb {
	const points = 9
	source := g.source.Of(vine)
	foot := mgl64.Vec3{0.03 * source.Normal(drawLeanX), top.Y() + 0.05*source.Normal(drawLeanY), 0}
	bend := mgl64.Vec3{0.025 * source.Normal(drawBendX), 0.035 * source.Normal(drawBendY), 0}
	limb := newLimb(vine, points)
	for i := range points {
		u := float64(i) / (points - 1)
		p := foot.Mul(1 - u).Add(top.Mul(u)).Add(bend.Mul(math.Sin(math.Pi * u * u)))
		limb.add(p, trunkFoot+(trunkHead-trunkFoot)*u+0.010*math.Exp(-12*u))
	}
	return limb
}

// branchLimb leads from the fork of a trunk to a head, upright at its end.
func branchLimb(vine int, fork, head mgl64.Vec3) Limb {
	const points = 7
	corner := mgl64.Vec3{head.X(), head.Y(), fork.Z() + 0.6*(head.Z()-fork.Z())}
	limb := newLimb(vine, points)
	for i := range points {
		u := float64(i) / (points - 1)
		p := fork.Mul((1 - u) * (1 - u)).Add(corner.Mul(2 * u * (1 - u))).Add(head.Mul(u * u))
		limb.add(p, trunkHead+(cordonBase-trunkHead)*u)
	}
	return limb
}

// armLimb runs from its head as far as the arm has grown.
func (g *grower) armLimb(a *arm) Limb {
	base, end := g.armRadii()
	length := a.grown * a.length
	count := max(2, int(math.Ceil(length/woodStep))+1)
	limb := newLimb(a.vine, count)
	for i := range count {
		u := float64(i) / float64(count-1)
		limb.add(g.armAt(a, u*length), base+(end-base)*u)
	}
	return limb
}

func (g *grower) armRadii() (base, end float64) {
	if g.armsAreCanes() {
		return caneBase, caneEnd
	}
	return cordonBase, cordonEnd
}

func newLimb(vine, points int) Limb {
	return Limb{Vine: int32(vine), Points: make([]mgl64.Vec3, 0, points), Radius: make([]float64, 0, points)}
}

func (l *Limb) add(p mgl64.Vec3, radius float64) {
	l.Points = append(l.Points, p)
	l.Radius = append(l.Radius, radius)
}
