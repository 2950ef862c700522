package light

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/training"
)

// Lattices of what other leaves change of the ways to the sky, where some leaves change and where most do [deg]: with 5°
// previews are no nearer to the run.
const (
	sketchStep = 7.5
	roughStep  = 10.0
)

// Change is what tells the leaves of a stand from those that it had before.
type Change struct {
	step_deg   float64
	come, gone *canopy.Grid // without those that have gone, those that have come are all there are
}

// NewChange compares the leaves of a stand with those that it had before.
func NewChange(before, after *training.Stand, slope canopy.Slope) *Change {
	come, gone := without(after.Leaves, before.Leaves), without(before.Leaves, after.Leaves)
	if len(come)+len(gone) > len(after.Leaves) {
		return &Change{step_deg: roughStep, come: canopy.FromLeaves(before, after.Leaves, slope)} // domes know what all stopped
	}
	return &Change{sketchStep, canopy.FromLeaves(before, come, slope), canopy.FromLeaves(before, gone, slope)}
}

// SketchBeam is nearly the model of the same faces after the leaves of its stand have changed as far as the beam of some suns
// goes; all other light stays that of m. Pace is as for New.
func (m *Model) SketchBeam(by *Change, suns []mgl64.Vec3, pace func() error) (*Model, error) {
	lattice := canopy.Half(by.step_deg)
	wanted := make([]bool, lattice.Size())
	for _, sun := range suns {
		for _, side := range m.domes.Points[:2] { // the faces of a side look at the sun alike
			sample, _ := lattice.Sample(side.InFrame(sun))
			directions, weights := sample.Parts()
			for k, direction := range directions {
				wanted[direction] = wanted[direction] || weights[k] > 0
			}
		}
	}
	other := *m
	var err error
	other.shift, err = m.domes.Shift(lattice, by.come, by.gone, wanted, pace)
	return &other, err
}

// Sketch is nearly the model of the same faces after the leaves of its stand have changed: the ways to the sky are looked at
// in few directions, and only for what leaves stop that have come or gone, while clumping and fields stay those of m. Pace is
// as for New.
func (m *Model) Sketch(by *Change, pace func() error) (*Model, error) {
	other := *m
	var err error
	if other.shift, err = m.domes.Shift(canopy.Half(by.step_deg), by.come, by.gone, nil, pace); err != nil {
		return nil, err
	}
	down, err := m.down.Shift(m.down.Lattice, by.come, by.gone, nil, pace)
	if err != nil {
		return nil, err
	}
	other.down = m.down.Shifted(down)
	other.viewGround()
	if err := pace(); err != nil {
		return nil, err
	}
	other.shiftSky()
	other.netted = m.netted.among(m, &other)
	return &other, pace()
}

// without is the leaves that are not among others. Both come node after node.
func without(leaves, others []training.Leaf) (rest []training.Leaf) {
	node := func(leaf *training.Leaf) int { return int(leaf.Shoot)<<16 + int(leaf.Node) }
	for i := range leaves {
		leaf := &leaves[i]
		for len(others) > 0 && node(&others[0]) < node(leaf) {
			others = others[1:]
		}
		there := false
		for k := 0; !there && k < len(others) && node(&others[k]) == node(leaf); k++ {
			there = others[k] == *leaf
		}
		if !there {
			rest = append(rest, *leaf)
		}
	}
	return rest
}

// shiftSky adds to the views of the sky what the shift makes of them.
func (m *Model) shiftSky() {
	m.sky = slices.Clone(m.sky)
	lattice := m.shift.Lattice
	for i := range lattice.Size() {
		local, weight := lattice.Direction(i), lattice.SolidAngle(i)*Shown(lattice.Direction(i)[0])
		if weight == 0 {
			continue
		}
		before, _ := m.domes.Lattice.Sample(local) // what the faces are shown lies well within both
		from, omega := m.fromSides(local, weight), [2]float64{m.omega(0, local), m.omega(1, local)}
		for f, shift := range m.shift.Depth(i) {
			if shift == 0 {
				continue
			}
			depth, omega := m.domes.Along(f, &before), omega[f%2]
			after := math.Max(depth+float64(shift), 0)
			m.sky[f].AddScaled(&from[f%2], canopy.Gap(omega, after)-canopy.Gap(omega, depth))
		}
	}
}

// among is what nets let through of the views of a model among other leaves. What they make of the beam stays as it is.
func (n *netted) among(before, after *Model) *netted {
	if n == nil {
		return nil
	}
	other := *n
	other.sky, other.openSky = through(n.sky, before.sky, after.sky), through(n.openSky, before.sky, after.sky)
	other.ground, other.openGround = through(n.ground, before.ground, after.ground), through(n.openGround, before.ground, after.ground)
	return &other
}

// through is what is left of views: of what they gain or lose, the share that was left of them before.
func through(left, before, after []Broad) []Broad {
	views := slices.Clone(left)
	for i := range views {
		share := 1.0
		if before[i].Mean > 0 {
			share = left[i].Mean / before[i].Mean
		}
		views[i].AddScaled(&after[i], share)
		views[i].AddScaled(&before[i], -share)
	}
	return views
}

// shiftAt is the shift of the ways to the sky in one direction.
type shiftAt struct {
	domes  *canopy.Domes // nil for none
	sample canopy.Sample
}

// shiftToward is the shift in a direction of the frame of the faces.
func (m *Model) shiftToward(local mgl64.Vec3) (s shiftAt) {
	if m.shift != nil {
		if sample, ok := m.shift.Lattice.Sample(local); ok {
			s = shiftAt{m.shift, sample}
		}
	}
	return s
}

// of is what the shift makes of the optical depth of a face.
func (s *shiftAt) of(face int, depth float64) float64 {
	if s.domes == nil {
		return depth
	}
	return math.Max(depth+s.domes.Along(face, &s.sample), 0)
}
