package light

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/canopy/yardstick"
	"rowlight/sim/training"
)

// Lattices of what other leaves change of the ways to the sky, where some leaves change and where most do [deg]: with 5°
// previews are no nearer to the run.
const (
	sketchStep = 7.5
	roughStep  = 10.0
	roughDown  = 15.0 // to the floor, from bunches that have moved
)

// Before is a stand before changes, and what those that moved its bunches have needed to look at in it. It is not safe for concurrent
// use.
type Before struct {
	stand *training.Stand
	slope canopy.Slope
	grid  *canopy.Grid  // of its leaves; nil until it is needed
	of    *Model        // whose faces have looked at them last, nil before any
	rough *canopy.Domes // what they saw
}

// NewBefore is that of a stand.
func NewBefore(stand *training.Stand, slope canopy.Slope) *Before {
	return &Before{stand: stand, slope: slope}
}

// Change is what tells the leaves of a stand from those that it had before, and where its bunches hang.
type Change struct {
	before *Before
	come   *canopy.Grid    // all leaves where most differ, else those that do
	gone   *canopy.Grid    // of those that differ; nil where come is all
	moved  *training.Stand // nil where the bunches hang as before
}

// Moves says whether bunches of a stand hang elsewhere than before.
func (b *Before) Moves(after *training.Stand) bool {
	return !slices.Equal(b.stand.Bunches, after.Bunches)
}

// Change compares the leaves of a stand with those before. Its bunches must be the same, in the same order; they may hang
// elsewhere.
func (b *Before) Change(after *training.Stand) *Change {
	if b.Moves(after) {
		return &Change{before: b, come: canopy.FromStand(after, b.slope), moved: after}
	}
	come, gone := without(after.Leaves, b.stand.Leaves), without(b.stand.Leaves, after.Leaves)
	if len(come)+len(gone) > len(after.Leaves) {
		return &Change{before: b, come: canopy.FromStand(after, b.slope)}
	}
	return &Change{before: b, come: canopy.FromLeaves(b.stand, come, b.slope), gone: canopy.FromLeaves(b.stand, gone, b.slope)}
}

// lattice is that of the ways to the sky along which a change is looked at.
func (c *Change) lattice() canopy.Lattice {
	if c.gone == nil {
		return canopy.Half(roughStep)
	}
	return canopy.Half(sketchStep)
}

// shift is what a change makes of the ways to the sky of a model whose faces hang as in now, in the directions that are wanted;
// nil wants all.
func (c *Change) shift(m, now *Model, wanted []bool, pace func() error) (*canopy.Domes, error) {
	if c.moved == nil {
		return m.domes.Shift(c.lattice(), c.come, c.gone, wanted, pace)
	}
	sees, err := canopy.Seen(c.come, c.lattice(), now.domes.Points, wanted, pace)
	if err != nil {
		return nil, err
	}
	// Not taken from what the domes hold about these directions: that is evened out, and even depth lets less light through.
	saw, err := c.before.seen(m, wanted, pace)
	if err != nil {
		return nil, err
	}
	return sees.Less(saw), nil
}

// downFrom is the ways to the floor of a model whose faces hang where they do by now.
func (c *Change) downFrom(now *Model, pace func() error) (*canopy.Domes, error) {
	if c.moved != nil {
		return canopy.Seen(c.come, canopy.HalfDown(roughDown), now.down.Points, nil, pace)
	}
	shift, err := now.down.Shift(now.down.Lattice, c.come, c.gone, nil, pace)
	if err != nil {
		return nil, err
	}
	return now.down.Shifted(shift), nil
}

// seen is what the faces of a model saw of all leaves before.
func (b *Before) seen(m *Model, wanted []bool, pace func() error) (*canopy.Domes, error) {
	if b.grid == nil {
		b.grid = canopy.FromStand(b.stand, b.slope)
	}
	if wanted == nil && b.of == m {
		return b.rough, nil
	}
	saw, err := canopy.Seen(b.grid, canopy.Half(roughStep), m.domes.Points, wanted, pace)
	if err == nil && wanted == nil {
		b.of, b.rough = m, saw
	}
	return saw, err
}

// hung is a copy of the model with its faces where they are after a change, but for what they see from there.
func (m *Model) hung(by *Change) *Model {
	other := *m
	if by.moved == nil {
		return &other
	}
	all, places := by.moved.Faces(), yardstick.Places(by.moved)
	faces, points := make([]training.Face, len(m.Faces)), make([]canopy.Point, len(m.Faces))
	for f, face := range m.Faces {
		now := 2*face.Bunch + int32(f%2)
		faces[f], points[f] = all[now], places[now]
	}
	other.Faces, other.domes, other.down, other.top = faces, m.domes.At(points), m.down.At(points), by.moved.Top
	return &other
}

// SketchBeam is nearly the model of the same faces after the leaves of its stand have changed as far as the beam of some suns
// goes; all other light stays that of m. Pace is as for New.
func (m *Model) SketchBeam(by *Change, suns []mgl64.Vec3, pace func() error) (*Model, error) {
	lattice := by.lattice()
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
	other := m.hung(by)
	var err error
	other.shift, err = by.shift(m, other, wanted, pace)
	return other, err
}

// Sketch is nearly the model of the same faces after the leaves of its stand have changed: the ways to the sky are looked at
// in few directions, and only for what leaves stop that have come or gone, or for all where the faces have moved, while clumping
// and fields stay those of m. Pace is as for New.
func (m *Model) Sketch(by *Change, pace func() error) (*Model, error) {
	other := m.hung(by)
	var err error
	if other.shift, err = by.shift(m, other, nil, pace); err != nil {
		return nil, err
	}
	if other.down, err = by.downFrom(other, pace); err != nil {
		return nil, err
	}
	other.viewGround()
	if err := pace(); err != nil {
		return nil, err
	}
	other.shiftSky()
	other.netted = m.netted.among(m, other)
	return other, pace()
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
