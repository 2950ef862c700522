package training

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/draw"
)

// How leaves sit and face.
const (
	petioleLength   = 0.08 // of a full-grown leaf, 6-9 cm, from memory [m]
	petioleSpread   = 0.2  // standard deviation of its length over its mean, assumption
	lateralPetiole  = 0.04 // [m]
	lateralFirst    = 0.04 // distance of the first leaf of a lateral from the axil [m]
	lateralStep     = 0.04 // and between its leaves [m]
	lateralBlade    = 0.4  // area of its leaves relative to full-grown primary leaves, assumption
	lateralMost     = 12   // leaves on one lateral
	bladeSpread     = 0.12 // standard deviation of blade area over its mean, assumption
	bladeOffset     = 0.5  // from petiole to centre of the blade, in radii of the disc of its area
	outwardWidth    = 0.15 // a leaf this far from the middle of its curtain faces that side alone [m]
	steepNormal     = 60.0 // inclination of leaves on upright or hanging shoots: 50-60°, from memory [deg]
	flatNormal      = 34.0 // and on shoots that lie flat: 35-45° on the top of canopies that are not shoot-positioned, from memory [deg]
	normalSpread    = 15.0 // standard deviation of the inclination, assumption [deg]
	facingSpread    = 0.5  // standard deviation of the direction faced, as a tangent: 27°, assumption
	lateralFacing   = 0.8  // of leaves on laterals
	lowestLeaf      = 0.08 // [m]
	basalBlade      = 0.5  // area of the lowest leaf relative to full-grown ones, from memory
	basalNodes      = 4.0  // nodes over which leaves reach full size
	growingLeaves   = 6.0  // nodes from the tip over which they grow
	smallestLeaf    = 0.12 // the last one at the tip
	lateralFrom     = 0.10 // laterals stand between these parts of the shoot
	lateralTo       = 0.85
	lateralPeak     = 0.4
	smallestAllowed = 0.3 // no blade is smaller than this part of its nominal size by chance
)

const (
	drawRank draw.Purpose = iota + 500
	drawKept
	drawPetiole
	drawVigour
	drawBlade
	drawFacing
	drawTilt
	drawLateralCount
	drawLateralTurn
	drawPulled
)

// unfoldLeaves puts a leaf at every node and more on laterals, and scales the blades so that the
// leaf area per metre of canopy is the one given, less the shoots that are not there and the parts cut off.
// Where nodes are more than enough for that area, leaves are missing rather than small: they have been lost
// to shade, wind and age.
func (g *grower) unfoldLeaves(pace func() error) error {
	l := g.option.Leaves
	total := l.Area_m2_per_m * g.canopyLength() * (float64(len(g.plans)) / float64(g.complete))
	if total <= 0 || len(g.nodes) == 0 {
		return nil
	}
	blade := l.Blade_cm2 * 1e-4

	// What the nodes can carry.
	primary, lateral, lostPrimary, lostLateral := 0.0, 0.0, 0.0, 0.0
	for i := range g.plans {
		if err := pace(); err != nil {
			return err
		}
		for k := range g.plans[i].count {
			primary += blade * g.bladeAt(&g.plans[i], k)
			lateral += g.lateralAt(&g.plans[i], k)
		}
		lostPrimary += blade * g.plans[i].lostPrimary
		lostLateral += g.plans[i].lostLateral
	}
	// What the given area leaves of that.
	areas := [2]float64{total * (1 - l.Laterals), total * l.Laterals}
	areas[0] *= primary / (primary + lostPrimary)
	if lateral > 0 {
		areas[1] *= lateral / (lateral + lostLateral)
	}
	kept := areas[0] / primary
	perWeight := 0.0
	if lateral > 0 {
		perWeight = areas[1] / (lateralBlade * blade) / lateral
	}

	// Unfold and scale.
	count := int(total * (1 - l.Laterals + l.Laterals/lateralBlade) / blade * 1.4)
	count = min(count, len(g.nodes)*(1+lateralMost))
	g.stand.Leaves = make([]Leaf, 0, count)
	g.pulled = make([]float64, 0, count)
	for i := range g.plans {
		if err := pace(); err != nil {
			return err
		}
		for k := range g.plans[i].count {
			g.unfoldNode(i, k, kept, perWeight*g.lateralAt(&g.plans[i], k))
		}
	}
	if len(g.stand.Leaves) == 0 {
		g.unfoldNode(0, 0, 1, 0)
	}
	scaleAreas(g.stand.Leaves, areas)
	return nil
}

// unfoldNode unfolds the leaf of one node and those of its lateral.
func (g *grower) unfoldNode(shoot, k int, kept, laterals float64) {
	plan := &g.plans[shoot]
	n := g.nodes[plan.first+k]
	source := plan.source.Of(k)
	rank := g.rank(plan, k)
	blade := g.option.Leaves.Blade_cm2 * 1e-4
	if source.Uniform(drawKept) < kept {
		area := blade * g.bladeAt(plan, k) * max(smallestAllowed, 1+bladeSpread*source.Normal(drawBlade))
		petiole := petioleLength * math.Sqrt(area/blade) * (1 + petioleSpread*source.Normal(drawPetiole))
		leaf := g.pose(plan, n, n.at, rank, petiole, area, source, facingSpread)
		leaf.Shoot, leaf.Node = int32(shoot), int16(k)
		g.addLeaf(leaf, source)
	}
	// Few laterals grow long and many stay short: the square of an even draw has a mean of 1/3.
	vigour := source.Uniform(drawVigour)
	count := min(source.Count(drawLateralCount, 3*vigour*vigour*laterals), lateralMost)
	for j := range count {
		g.unfoldLateral(shoot, k, j, rank, source.Of(j))
	}
}

// unfoldLateral unfolds leaf j of the lateral in the axil of node k: it grows out beside the leaf,
// its own leaves to both sides of it.
func (g *grower) unfoldLateral(shoot, k, j int, rank mgl64.Vec3, source draw.Source) {
	plan := &g.plans[shoot]
	n := g.nodes[plan.first+k]
	lateral := plan.source.Of(k)
	across := n.along.Cross(rank)
	axis := rank.Mul(0.7).Add(n.along.Mul(0.5)).Add(across.Mul(0.6 * lateral.Normal(drawLateralTurn)))
	axis[2] += 0.2
	axis = axis.Normalize()
	from := n.at.Add(axis.Mul(lateralFirst + lateralStep*float64(j)))
	side := across.Mul(1 - 2*float64(j%2)).Add(rank.Mul(0.3)).Normalize()

	area := lateralBlade * g.option.Leaves.Blade_cm2 * 1e-4 * max(smallestAllowed, 1+2*bladeSpread*source.Normal(drawBlade))
	leaf := g.pose(plan, n, from, side, lateralPetiole, area, source, lateralFacing)
	leaf.Shoot, leaf.Node, leaf.Lateral = int32(shoot), int16(k), true
	g.addLeaf(leaf, source)
}

// addLeaf notes with each leaf the draw that decides whether it is pulled.
func (g *grower) addLeaf(leaf Leaf, source draw.Source) {
	g.stand.Leaves = append(g.stand.Leaves, leaf)
	g.pulled = append(g.pulled, source.Uniform(drawPulled))
}

// bladeAt is the area of the leaf at node k relative to a full-grown one: small at the base and
// towards the tip.
func (g *grower) bladeAt(plan *shootPlan, k int) float64 {
	return bladeAt(k, g.nodes[plan.first+k].fromTip)
}

func bladeAt(k int, fromTip float64) float64 {
	basal := basalBlade + (1-basalBlade)*min(float64(k)/basalNodes, 1)
	growing := smallestLeaf + (1-smallestLeaf)*min(fromTip/growingLeaves, 1)
	return basal * growing
}

// lateralAt is the weight of node k in the leaf area on laterals: the middle nodes carry most.
func (g *grower) lateralAt(plan *shootPlan, k int) float64 {
	return lateralAt(g.nodes[plan.first+k].fromTip, plan.full)
}

func lateralAt(fromTip, full float64) float64 {
	place := 1 - fromTip/full
	rise := (place - lateralFrom) / (lateralPeak - lateralFrom)
	fall := (lateralTo - place) / (lateralTo - lateralPeak)
	return max(0, min(rise, fall, 1))
}

// rank is the unit vector from the shoot towards the leaf of node k: leaves stand in two ranks,
// alternately on either side (distichous).
func (g *grower) rank(plan *shootPlan, k int) mgl64.Vec3 {
	sin, cos := plan.rankSin, plan.rankCos
	if k%2 == 1 {
		sin, cos = -sin, -cos
	}
	along := g.nodes[plan.first+k].along
	// Two vectors across the shoot, free of poles for shoots that stand or hang.
	first := mgl64.Vec3{1, 0, 0}.Sub(along.Mul(along.X()))
	if first.Len() < 0.2 {
		first = mgl64.Vec3{0, 0, 1}.Sub(along.Mul(along.Z()))
	}
	first = first.Normalize()
	return first.Mul(cos).Add(along.Cross(first).Mul(sin))
}

// pose holds a blade into the light: a leaf faces out of its curtain and up, steeply where the shoot
// stands or hangs, flatter where it lies, and hangs from its petiole.
func (g *grower) pose(plan *shootPlan, n node, from, rank mgl64.Vec3, petiole, area float64, source draw.Source, spread float64) Leaf {
	facing := g.facing(plan, n, from, rank)
	turn := spread * source.Normal(drawFacing)
	facing = mgl64.Vec3{facing.X() - turn*facing.Y(), facing.Y() + turn*facing.X(), 0}.Normalize()

	upright := n.along.Z() * n.along.Z()
	tilt := flatNormal + (steepNormal-flatNormal)*upright + normalSpread*source.Normal(drawTilt)
	normal := leaning(facing, radians(min(max(math.Abs(tilt), 2), 92)))

	stalk := rank.Mul(0.55).Add(mgl64.Vec3{0.5 * facing.X(), 0.5 * facing.Y(), 0.1}).Add(n.along.Mul(0.15)).Normalize()
	hang := stalk.Mul(0.4).Sub(mgl64.Vec3{0, 0, 1})
	tip := hang.Sub(normal.Mul(hang.Dot(normal)))
	if tip.Len() < 1e-3 {
		tip = normal.Cross(mgl64.Vec3{0, 1, 0})
	}
	tip = tip.Normalize()
	centre := from.Add(stalk.Mul(petiole)).Add(tip.Mul(bladeOffset * math.Sqrt(area/math.Pi)))
	centre[2] = max(centre[2], lowestLeaf)
	return Leaf{Centre: centre, Normal: normal, Tip: tip, Area: area}
}

// facing is the horizontal direction in which a leaf looks: out of its curtain, or away from the head of a
// vine whose arms spread; on shoots that lie flat, to its own side of the shoot.
func (g *grower) facing(plan *shootPlan, n node, from, rank mgl64.Vec3) mgl64.Vec3 {
	a := &g.arms[plan.arm]
	offset := g.cordons[a.cordon].Offset_m
	if a.outward == (mgl64.Vec3{}) {
		aside := (from.X() - offset) / outwardWidth
		outward := rank.X() + 1.2*min(max(aside, -1), 1)
		return mgl64.Vec3{0.5*rank.X() + 1.3*math.Copysign(min(1, 0.3+math.Abs(outward)), outward), 0.4 * rank.Y(), 0}.Normalize()
	}
	away := mgl64.Vec3{from.X() - offset, from.Y() - a.head, 0}
	away = away.Mul(n.along.Z() * n.along.Z() / max(away.Len(), outwardWidth))
	sum := mgl64.Vec3{rank.X() + 1.3*away.X(), rank.Y() + 1.3*away.Y(), 0}
	if sum.Len() < 1e-3 {
		return a.outward
	}
	return sum.Normalize()
}

// scaleAreas makes the areas of primary leaves and of laterals exact. Leaves of one kind take it all where
// there are none of the other.
func scaleAreas(leaves []Leaf, areas [2]float64) {
	var sum [2]float64
	for i := range leaves {
		sum[kind(&leaves[i])] += leaves[i].Area
	}
	for k := range sum {
		if sum[k] == 0 {
			areas[1-k], areas[k] = areas[1-k]+areas[k], 0
		}
	}
	for i := range leaves {
		k := kind(&leaves[i])
		leaves[i].Area *= areas[k] / sum[k]
	}
}

func kind(leaf *Leaf) int {
	if leaf.Lateral {
		return 1
	}
	return 0
}
