package training

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// Measures describe a Stand as a viticulturist does with rod, tape and leaf area meter.
type Measures struct {
	LeafArea_m2_per_m  float64 // per metre of canopy, that is of fruiting wire, or of the row without one
	LeafArea_m2_per_ha float64
	Canopy_m_per_ha    float64 // length of canopy on a hectare
	Leaves             int
	PrimaryLeaf_cm2    float64 // mean area of one primary leaf
	LateralShare       float64 // of the leaf area

	// Envelope: the middle 90 % of the leaf area across the row, the middle 95 % upwards.
	Width_m   float64 // of the whole row
	Curtain_m float64 // width about its own fruiting wire
	Top_m     float64
	Bottom_m  float64

	// HeightToGap is the height of the canopy over the free width between rows; about 1 is advised (Smart & Robinson
	// 1991, from memory). 0 where no alley of narrowestAlley is left.
	HeightToGap float64
	// ExposedLeaf_m2_per_ha is the leaf area on the outside of the canopy, by tape: both sides and the top of each
	// curtain, less the share of gaps in it.
	ExposedLeaf_m2_per_ha float64

	Density_m2_per_m3  float64 // leaf area over the volume of the envelopes of all curtains
	Inclination_deg    float64 // mean angle of blades from the horizontal
	TopInclination_deg float64 // of the highest tenth of the leaf area

	LeafLayers float64 // leaves met by a rod pushed through across a curtain at fruit height
	Gaps       float64 // share of such pushes that meet neither leaf nor bunch
	Exterior   float64 // share of bunches with no leaf of their curtain in front of at least one face

	FruitHeight_m         float64 // mean height of the middle of the bunches
	ShootsPerVine         float64
	ShootsPerMetre        float64 // of canopy
	BunchesPerVine        float64
	LeafToFruit_cm2_per_g float64 // leaf area over the mass of fruit, berries of 1.5 g
}

// probes is the number of pushes of the point quadrat: more than the 50 of the field method, since
// these cost nothing.
const probes = 400

const (
	outsideHeights = 10  // heights at which the gaps of a curtain are counted
	narrowestAlley = 0.5 // [m]
)

// squareMetresPerHectare is 100 m by 100 m.
const squareMetresPerHectare = 1e4

// Measure measures the Stand. Quantities of a stand without leaves or bunches are 0.
func (s *Stand) Measure() Measures {
	var m Measures
	vines, canopy := math.Round(s.Length/s.VineSpacing), s.canopy()
	m.ShootsPerVine = float64(len(s.Shoots)) / vines
	m.ShootsPerMetre = float64(len(s.Shoots)) / canopy
	m.BunchesPerVine = float64(len(s.Bunches)) / vines
	s.measureLeaves(&m, canopy)
	s.measureFruit(&m, canopy)
	if s.RowSpacing > 0 && len(s.Leaves) > 0 {
		s.measureGround(&m, canopy)
	}
	return m
}

// MeasureLeaves measures what leaves alone tell, in a third of the time: their areas, the envelope and how they are inclined. All else,
// and what relates them to the ground, is 0.
func (s *Stand) MeasureLeaves() (m Measures) {
	s.measureLeaves(&m, s.canopy())
	return m
}

// canopy is the length of canopy: of all fruiting wires, or of the row without one [m].
func (s *Stand) canopy() float64 { return s.Length * float64(max(1, len(s.fruiting()))) }

func (s *Stand) measureLeaves(m *Measures, canopy float64) {
	m.Leaves = len(s.Leaves)
	if len(s.Leaves) == 0 {
		return
	}
	total, lateral, tilt, primaries := 0.0, 0.0, 0.0, 0
	x, own, z, wires := newSpread(), newSpread(), newSpread(), s.fruiting()
	if len(wires) == 0 {
		wires = []Strand{{}}
	}
	heights := make([]*spread, len(wires))
	for k := range heights {
		heights[k] = newSpread()
	}
	carrier := make([]int, len(s.Shoots))
	for i := range s.Shoots {
		carrier[i] = max(slices.Index(wires, s.wireOf(int32(i))), 0)
	}
	for i := range s.Leaves {
		leaf := &s.Leaves[i]
		total += leaf.Area
		tilt += leaf.Area * leaf.inclination()
		if leaf.Lateral {
			lateral += leaf.Area
		} else {
			primaries++
		}
		k := carrier[leaf.Shoot]
		for _, p := range leaf.ring() {
			x.add(p.X(), leaf.Area)
			own.add(p.X()-wires[k].X, leaf.Area)
			z.add(p.Z(), leaf.Area)
			heights[k].add(p.Z(), leaf.Area)
		}
	}
	m.LeafArea_m2_per_m = total / canopy
	m.LateralShare = lateral / total
	m.Inclination_deg = tilt / total
	if primaries > 0 {
		m.PrimaryLeaf_cm2 = (total - lateral) / float64(primaries) * 1e4
	}
	m.Width_m, m.Curtain_m = x.between(0.05, 0.95), own.between(0.05, 0.95)
	m.Bottom_m, m.Top_m = z.quantile(0.025), z.quantile(0.975)
	height := 0.0
	for _, h := range heights {
		height += h.between(0.025, 0.975)
	}
	if volume := m.Curtain_m * height * s.Length; volume > 0 {
		m.Density_m2_per_m3 = total / volume
	}
	m.TopInclination_deg = s.inclinationAbove(z.quantile(0.9))
}

func (s *Stand) inclinationAbove(height float64) float64 {
	tilt, area := 0.0, 0.0
	for i := range s.Leaves {
		if leaf := &s.Leaves[i]; leaf.Centre.Z() >= height {
			tilt += leaf.Area * leaf.inclination()
			area += leaf.Area
		}
	}
	return tilt / area
}

// ring stands for the blade: four points at the radius that parts its disc into halves of equal area.
func (l *Leaf) ring() [4]mgl64.Vec3 {
	r := math.Sqrt(l.Area / math.Pi / 2)
	a, b := l.Tip.Mul(r), l.Normal.Cross(l.Tip).Mul(r)
	return [4]mgl64.Vec3{l.Centre.Add(a), l.Centre.Sub(a), l.Centre.Add(b), l.Centre.Sub(b)}
}

// inclination is the angle of the blade from the horizontal [deg, 0–90].
func (l *Leaf) inclination() float64 {
	return math.Acos(min(math.Abs(l.Normal.Z()), 1)) * 180 / math.Pi
}

// FruitHeight is the mean height of the middle of the bunches [m], 0 without any.
func (s *Stand) FruitHeight() (mean float64) {
	for i := range s.Bunches {
		mean += s.Bunches[i].Centre.Z() / float64(len(s.Bunches))
	}
	return mean
}

func (s *Stand) measureFruit(m *Measures, canopy float64) {
	if len(s.Bunches) == 0 {
		return
	}
	m.FruitHeight_m = s.FruitHeight()
	mass := 0.0
	for i := range s.Bunches {
		mass += float64(s.Bunches[i].Berries) * berryMass * 1000
	}
	m.LeafToFruit_cm2_per_g = m.LeafArea_m2_per_m * canopy * 1e4 / mass
	quadrat := s.PointQuadrat(probes)
	m.LeafLayers, m.Gaps = quadrat.LeafLayers, quadrat.Gaps

	rods, curtains := newRods(s), s.curtains()
	for i := range s.Bunches {
		b := &s.Bunches[i]
		own := slices.IndexFunc(curtains, func(c curtain) bool { return b.Centre.X() < c.right })
		left := rods.leaves(curtains[own].left, b.Centre.X()-b.Radius, b.Centre.Y(), b.Centre.Z())
		right := rods.leaves(b.Centre.X()+b.Radius, curtains[own].right, b.Centre.Y(), b.Centre.Z())
		if left == 0 || right == 0 {
			m.Exterior += 1 / float64(len(s.Bunches))
		}
	}
}

// measureGround relates the canopy to the ground that it stands on.
func (s *Stand) measureGround(m *Measures, canopy float64) {
	perHectare := squareMetresPerHectare / (s.Length * s.RowSpacing)
	m.Canopy_m_per_ha = canopy * perHectare
	m.LeafArea_m2_per_ha = m.LeafArea_m2_per_m * m.Canopy_m_per_ha
	if gap := s.RowSpacing - m.Width_m; gap >= narrowestAlley {
		m.HeightToGap = (m.Top_m - m.Bottom_m) / gap
	}
	rods := newRods(s)
	for _, part := range s.curtains() {
		m.ExposedLeaf_m2_per_ha += s.outside(rods, part) * s.Length * perHectare
	}
}

// outside is the length of the outline of a curtain in the cross-section, both sides and the top, less its gaps [m].
func (s *Stand) outside(rods *rods, part curtain) float64 {
	x, z := newSpread(), newSpread()
	for i := range s.Leaves {
		leaf := &s.Leaves[i]
		if leaf.Centre.X() < part.left || leaf.Centre.X() >= part.right {
			continue
		}
		for _, p := range leaf.ring() {
			x.add(p.X(), leaf.Area)
			z.add(p.Z(), leaf.Area)
		}
	}
	bottom, top := z.quantile(0.025), z.quantile(0.975)
	gaps := 0.0
	for i := range probes {
		height := bottom + (top-bottom)*(float64(i%outsideHeights)+0.5)/outsideHeights
		if rods.leaves(part.left, part.right, s.Length*(float64(i)+0.5)/probes, height) == 0 {
			gaps += 1.0 / probes
		}
	}
	return (2*(top-bottom) + x.between(0.05, 0.95)) * (1 - gaps)
}
