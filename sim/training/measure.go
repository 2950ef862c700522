package training

import (
	"cmp"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
)

// Measures describe a Stand as a viticulturist does with rod, tape and leaf area meter.
type Measures struct {
	LeafArea_m2_per_m float64 // per metre of canopy, that is of fruiting wire
	Leaves            int
	PrimaryLeaf_cm2   float64 // mean area of one primary leaf
	LateralShare      float64 // of the leaf area

	// Envelope: the middle 90 % of the leaf area across the row, the middle 95 % upwards.
	Width_m   float64 // of the whole row
	Curtain_m float64 // width about its own fruiting wire
	Top_m     float64
	Bottom_m  float64

	Density_m2_per_m3  float64 // leaf area over the volume of the envelopes of all curtains
	Inclination_deg    float64 // mean angle of blades from the horizontal
	TopInclination_deg float64 // of the highest tenth of the leaf area

	LeafLayers float64 // leaves met by a rod pushed through across the row at fruit height
	Gaps       float64 // share of such pushes that meet neither leaf nor bunch
	Exterior   float64 // share of bunches with no leaf in front of at least one face

	FruitHeight_m         float64 // mean height of the middle of the bunches
	ShootsPerVine         float64
	ShootsPerMetre        float64 // of canopy
	BunchesPerVine        float64
	LeafToFruit_cm2_per_g float64 // leaf area over the mass of fruit, berries of 1.5 g
}

// probes is the number of pushes of the point quadrat: more than the 50 of the field method, since
// these cost nothing.
const probes = 400

// Measure measures the Stand. Quantities of a stand without leaves or bunches are 0.
func (s *Stand) Measure() Measures {
	var m Measures
	vines := math.Round(s.Length / s.VineSpacing)
	canopy := s.Length * float64(max(1, len(s.fruiting())))
	m.ShootsPerVine = float64(len(s.Shoots)) / vines
	m.ShootsPerMetre = float64(len(s.Shoots)) / canopy
	m.BunchesPerVine = float64(len(s.Bunches)) / vines
	s.measureLeaves(&m, canopy)
	s.measureFruit(&m, canopy)
	return m
}

func (s *Stand) measureLeaves(m *Measures, canopy float64) {
	m.Leaves = len(s.Leaves)
	if len(s.Leaves) == 0 {
		return
	}
	total, lateral, tilt, primaries := 0.0, 0.0, 0.0, 0
	var x, own, z []weighted
	for i := range s.Leaves {
		leaf := &s.Leaves[i]
		total += leaf.Area
		tilt += leaf.Area * leaf.inclination()
		if leaf.Lateral {
			lateral += leaf.Area
		} else {
			primaries++
		}
		wire := s.wireOf(leaf.Shoot)
		for _, p := range leaf.ring() {
			x = append(x, weighted{p.X(), leaf.Area})
			own = append(own, weighted{p.X() - wire.X, leaf.Area})
			z = append(z, weighted{p.Z(), leaf.Area})
		}
	}
	m.LeafArea_m2_per_m = total / canopy
	m.LateralShare = lateral / total
	m.Inclination_deg = tilt / total
	if primaries > 0 {
		m.PrimaryLeaf_cm2 = (total - lateral) / float64(primaries) * 1e4
	}
	m.Width_m = quantile(x, 0.95) - quantile(x, 0.05)
	m.Curtain_m = quantile(own, 0.95) - quantile(own, 0.05)
	m.Bottom_m, m.Top_m = quantile(z, 0.025), quantile(z, 0.975)
	if volume := m.Curtain_m * (m.Top_m - m.Bottom_m); volume > 0 {
		m.Density_m2_per_m3 = m.LeafArea_m2_per_m / volume
	}
	m.TopInclination_deg = s.inclinationAbove(quantile(z, 0.9))
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

func (s *Stand) measureFruit(m *Measures, canopy float64) {
	if len(s.Bunches) == 0 {
		return
	}
	mass := 0.0
	for i := range s.Bunches {
		m.FruitHeight_m += s.Bunches[i].Centre.Z() / float64(len(s.Bunches))
		mass += float64(s.Bunches[i].Berries) * berryMass * 1000
	}
	m.LeafToFruit_cm2_per_g = m.LeafArea_m2_per_m * canopy * 1e4 / mass

	rods := newRods(s)
	for i := range probes {
		y := s.Length * (float64(i) + 0.5) / probes
		leaves := rods.leaves(math.Inf(-1), math.Inf(1), y, m.FruitHeight_m)
		m.LeafLayers += float64(leaves) / probes
		if leaves == 0 && !rods.meetsBunch(y, m.FruitHeight_m) {
			m.Gaps += 1.0 / probes
		}
	}
	for i := range s.Bunches {
		b := &s.Bunches[i]
		left := rods.leaves(math.Inf(-1), b.Centre.X()-b.Radius, b.Centre.Y(), b.Centre.Z())
		right := rods.leaves(b.Centre.X()+b.Radius, math.Inf(1), b.Centre.Y(), b.Centre.Z())
		if left == 0 || right == 0 {
			m.Exterior += 1 / float64(len(s.Bunches))
		}
	}
}

// fruiting lists the wires that carry arms.
func (s *Stand) fruiting() []Strand {
	var wires []Strand
	for _, wire := range s.Wires {
		if wire.Role == string(scenario.Fruiting) {
			wires = append(wires, wire)
		}
	}
	return wires
}

// wireOf is the wire nearest to the base of a shoot, among those that carry arms.
func (s *Stand) wireOf(shoot int32) Strand {
	base := s.Shoots[shoot].Points[0]
	best, nearest := Strand{}, math.Inf(1)
	for _, wire := range s.Wires {
		if distance := math.Hypot(base.X()-wire.X, base.Z()-wire.Z); wire.Role == string(scenario.Fruiting) && distance < nearest {
			best, nearest = wire, distance
		}
	}
	return best
}

type weighted struct{ value, weight float64 }

// quantile is the value below which the share q of the weight lies.
func quantile(values []weighted, q float64) float64 {
	slices.SortFunc(values, func(a, b weighted) int { return cmp.Compare(a.value, b.value) })
	total := 0.0
	for _, v := range values {
		total += v.weight
	}
	sum := 0.0
	for _, v := range values {
		sum += v.weight
		if sum >= q*total {
			return v.value
		}
	}
	return values[len(values)-1].value
}
