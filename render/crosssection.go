package render

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/training"
)

// CrossSection is a stand seen end-on, looking along the row: a slice of it with its wires, wood, shoots,
// leaves and bunches, and heights beside it.
type CrossSection struct {
	Title string
	Note  string // a line below the title; may be empty
	Stand *training.Stand
}

// What of a stand a cross-section shows: enough shoots to see their habit, few enough to see through them.
const (
	sectionShoots = 15.0 // in the slice, about
	thinnestSlice = 0.30 // [m]
)

// sectionCut is what of a stand a cross-section shows, as indices.
type sectionCut struct {
	trunks, arms []int
	shoots       []int
	leaves       []int
	bunches      []int
}

// cut takes a slice around the trunk of one vine in the middle of the stand: all of the wood of that vine and the
// shoots, from whichever vine, that spring from the slice.
func (c *CrossSection) cut() sectionCut {
	s := c.Stand
	vine, middle := c.vine()
	thick := s.VineSpacing
	if perMetre := float64(len(s.Shoots)) / s.Length; perMetre > 0 {
		thick = min(max(sectionShoots/perMetre, thinnestSlice), s.VineSpacing)
	}
	var out sectionCut
	for i := range s.Trunks {
		if s.Trunks[i].Vine == vine {
			out.trunks = append(out.trunks, i)
		}
	}
	for i := range s.Arms {
		if s.Arms[i].Vine == vine {
			out.arms = append(out.arms, i)
		}
	}
	drawn := make([]bool, len(s.Shoots))
	for i := range s.Shoots {
		apart := s.Shoots[i].Points[0].Y() - middle
		apart -= s.Length * math.Round(apart/s.Length)
		if drawn[i] = math.Abs(apart) <= thick/2; drawn[i] {
			out.shoots = append(out.shoots, i)
		}
	}
	for i := range s.Leaves {
		if drawn[s.Leaves[i].Shoot] {
			out.leaves = append(out.leaves, i)
		}
	}
	for i := range s.Bunches {
		if drawn[s.Bunches[i].Shoot] {
			out.bunches = append(out.bunches, i)
		}
	}
	return out
}

// vine picks the vine with the most shoots, the first of equals, and the place of its trunk along the row [m].
func (c *CrossSection) vine() (vine int32, y float64) {
	s := c.Stand
	count := map[int32]int{}
	for i := range s.Shoots {
		count[s.Shoots[i].Vine]++
	}
	most := -1
	for i := range s.Trunks {
		if n := count[s.Trunks[i].Vine]; n > most {
			most, vine = n, s.Trunks[i].Vine
			top := s.Trunks[i].Points[len(s.Trunks[i].Points)-1]
			y = top.Y()
		}
	}
	return vine, y
}

// fruit is the range of heights from the tips to the shoulders of nine bunches in ten [m]; ok is false
// without bunches.
func (c *CrossSection) fruit() (bottom, top float64, ok bool) {
	var tips, shoulders []float64
	for i := range c.Stand.Bunches {
		b := &c.Stand.Bunches[i]
		tips = append(tips, b.Centre.Z()-b.Length/2)
		shoulders = append(shoulders, b.Centre.Z()+b.Length/2)
	}
	if len(tips) == 0 {
		return 0, 0, false
	}
	slices.Sort(tips)
	slices.Sort(shoulders)
	last := float64(len(tips) - 1)
	return tips[int(0.05*last)], shoulders[int(0.95*last)], true
}

// bladePoints is the outline of a leaf in units of the radius of a disc of its area, along the midrib and across
// it: five lobes, coarsely.
var bladePoints = [...][2]float64{
	{1.15, 0}, {0.55, 0.42}, {0.62, 0.95}, {0.02, 0.72}, {-0.45, 0.95}, {-0.80, 0.38}, {-0.62, 0},
	{-0.80, -0.38}, {-0.45, -0.95}, {0.02, -0.72}, {0.62, -0.95}, {0.55, -0.42},
}

// bladeOutline is the outline of a leaf in the row frame [m].
func bladeOutline(leaf *training.Leaf) []mgl64.Vec3 {
	r := math.Sqrt(leaf.Area / math.Pi)
	across := leaf.Normal.Cross(leaf.Tip)
	points := make([]mgl64.Vec3, len(bladePoints))
	for i, p := range bladePoints {
		points[i] = leaf.Centre.Add(leaf.Tip.Mul(r * p[0])).Add(across.Mul(r * p[1]))
	}
	return points
}

// heightLabel is one height at which wires lie, and what they do.
type heightLabel struct {
	height float64 // [m]
	roles  []string
}

// wireHeights lists the heights of the wires from above, those within a few centimetres of each other as one.
func (c *CrossSection) wireHeights() []heightLabel {
	wires := slices.Clone(c.Stand.Wires)
	slices.SortStableFunc(wires, func(a, b training.Strand) int { return compareDown(a.Z, b.Z) })
	var labels []heightLabel
	for _, wire := range wires {
		last := len(labels) - 1
		if last < 0 || labels[last].height-wire.Z > sameHeight_m {
			labels = append(labels, heightLabel{height: wire.Z})
			last++
		}
		if !slices.Contains(labels[last].roles, wire.Role) {
			labels[last].roles = append(labels[last].roles, wire.Role)
		}
	}
	return labels
}

// sameHeight_m is the difference in height within which wires share a label.
const sameHeight_m = 0.03

func compareDown(a, b float64) int {
	switch {
	case a > b:
		return -1
	case a < b:
		return 1
	}
	return 0
}
