package render

import (
	"cmp"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/training"
)

// leafSet is the leaves of a stand as the drawing needs them, cut into slices along the row. Inside a
// slice they stand in a frozen random order, so that the first part of a slice is a fair sample of it.
type leafSet struct {
	leaf []leafQuad
	// byHeight lists the leaves from the highest down: what is laid on the map of the sun early is on top.
	byHeight []int32
	mean     float32 // mean side of the squares [m]
	// halfWidth is the mean distance of leaves from the row line [m].
	halfWidth float32
	// bottom and top are the heights between which the middle 90 % of the leaves hang [m].
	bottom, top float32
}

// leafQuad is the square that holds one blade: centre ± tip ± side.
type leafQuad struct {
	centre, tip, side, normal mgl32.Vec3
	tile                      tileID
	green                     rgb     // what the upper face reflects
	open                      float32 // share of the sky that reaches it
}

// leafColour is the display colour of both faces of a leaf out of and in the sun, and how far each
// corner of the square is in the sun.
type leafColour struct {
	shade, sunlit [2]rgb // upper face, lower face
	lit           [4]float32
}

// shadeGain lifts the shaded leaves, whose many small sources of light are not counted one by one.
const shadeGain = 3.1

// leavesPerPace is the number of leaves between two calls of pace: well under a millisecond of work.
const leavesPerPace = 64

// Faces of a leaf.
const (
	upperFace = 0
	lowerFace = 1
)

// Reflectances and transmittances of vine leaves for red, green and blue, set by eye about the measured
// means over sunlight of PAR (reflected 0.10, passed 0.06): a display has no near infrared, in which
// leaves are bright, so greens are lifted.
var (
	oldGreen   = rgb{0.060, 0.165, 0.022}
	youngGreen = rgb{0.150, 0.285, 0.034}
	underside  = rgb{1.25, 1.22, 1.9} // against the upper face: paler and duller
	passedOn   = rgb{0.135, 0.260, 0.008}
	leafGlow   = rgb{0.30, 0.52, 0.10} // light that comes from other leaves
)

func newLeafSet(stand *training.Stand, atlas *Atlas, open *openness, count int, pace func() error) (*leafSet, []int, error) {
	set := &leafSet{leaf: make([]leafQuad, 0, len(stand.Leaves))}
	order := make([][]int, count)
	for i := range stand.Leaves {
		s := sliceOf(stand.Leaves[i].Centre[1], stand.Length, count)
		order[s] = append(order[s], i)
	}
	starts := make([]int, count+1)
	for s, members := range order {
		slices.SortFunc(members, func(a, b int) int { return cmp.Compare(hash(uint64(a), 11), hash(uint64(b), 11)) })
		for k, i := range members {
			if k%leavesPerPace == 0 {
				if err := pace(); err != nil {
					return nil, nil, err
				}
			}
			set.leaf = append(set.leaf, newLeafQuad(stand, i, atlas, open))
		}
		starts[s+1] = len(set.leaf)
	}
	for i := range set.leaf {
		set.mean += 2 * set.leaf[i].tip.Len() / float32(len(set.leaf))
		set.halfWidth += abs(set.leaf[i].centre[0]) / float32(len(set.leaf))
	}
	set.byHeight = make([]int32, len(set.leaf))
	for i := range set.byHeight {
		set.byHeight[i] = int32(i)
	}
	slices.SortFunc(set.byHeight, func(a, b int32) int { return cmp.Compare(set.leaf[b].centre[2], set.leaf[a].centre[2]) })
	if count := len(set.leaf); count > 0 {
		set.top = set.leaf[set.byHeight[count/20]].centre[2]
		set.bottom = set.leaf[set.byHeight[count-1-count/20]].centre[2]
	}
	return set, starts, nil
}

// sliceOf is the slice of the period in which a place along the row lies; the period repeats.
func sliceOf(y, length float64, count int) int {
	share := y / length
	share -= math.Floor(share)
	return min(int(share*float64(count)), count-1)
}

func newLeafQuad(stand *training.Stand, i int, atlas *Atlas, open *openness) leafQuad {
	leaf := &stand.Leaves[i]
	kind := int(hash(uint64(i), 5) % leafShapes)
	shape := atlas.shape[kind]
	// The blade fills only part of its square: with this half side its area is the area of the leaf.
	half := float32(math.Sqrt(leaf.Area/float64(shape.area))) * shape.reach
	tip, normal := vec32(leaf.Tip), vec32(leaf.Normal)
	side := tip.Cross(normal)
	if hash(uint64(i), 6)&1 == 0 {
		side = side.Mul(-1)
	}
	young := float32(0.12 + 0.5*hashUnit(uint64(i), 7)*hashUnit(uint64(i), 8))
	if leaf.Lateral {
		young += 0.18
	}
	if leaf.Node > 0 && int(leaf.Shoot) < len(stand.Shoots) {
		share := float64(leaf.Node) / float64(max(len(stand.Shoots[leaf.Shoot].Points), 8))
		young += float32(0.4 * smooth(0.7, 1.15, share))
	}
	return leafQuad{
		centre: vec32(leaf.Centre), tip: tip.Mul(half), side: side.Mul(half), normal: normal,
		tile:  leafTile + tileID(kind),
		green: oldGreen.mix(youngGreen, min(young, 1)).scaled(float32(0.88 + 0.24*hashUnit(uint64(i), 9))),
		open:  open.at(leaf.Centre[0], leaf.Centre[2]),
	}
}

func vec32(v [3]float64) mgl32.Vec3 {
	return mgl32.Vec3{float32(v[0]), float32(v[1]), float32(v[2])}
}

// cast lays the leaves on the map of the sun.
func (set *leafSet) cast(m *sunMap, atlas *Atlas, pace func() error) error {
	for k, i := range set.byHeight {
		if k%leavesPerPace == 0 {
			if err := pace(); err != nil {
				return err
			}
		}
		l := &set.leaf[i]
		m.add(i, &l.centre, &l.tip, &l.side, &atlas.mask[l.tile-leafTile])
	}
	return nil
}

// cornerSigns are the corners of a square in the order of the picture: tip left, tip right, base left,
// base right.
var cornerSigns = [4][2]float32{{1, -1}, {1, 1}, {-1, -1}, {-1, 1}}
