package render

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// CrossSection is a stand seen end-on, looking along the row: a slice of it with its wires, wood, shoots,
// leaves and bunches, and heights beside it.
type CrossSection struct {
	Key   string // tells the ids of this drawing from those of others on a page
	Title string
	Note  string // a line below the title; may be empty
	Stand *training.Stand
	Feet  bool // lengths in feet instead of metres
}

// What of a stand a cross-section shows: enough leaves to see the shape, few enough to see through them. A wide or tall
// canopy needs more.
const (
	sectionLeaves  = 3.0  // leaf area in the slice [m²]
	leavesPerShape = 2.5  // and for each m² of its outline in the cross-section [m²]
	thinnestSlice  = 0.30 // [m]
)

// sectionCut is what of a stand a cross-section shows, as indices.
type sectionCut struct {
	trunks, arms []int
	shoots       []int
	leaves       []int
	bunches      []int
}

// cut takes a slice around the trunk of one vine: the trunk, and the arms, canes and shoots that begin in the slice.
func (c *CrossSection) cut() sectionCut {
	s := c.Stand
	vine, middle := c.vine()
	thick := min(max(c.thickness(), thinnestSlice), s.VineSpacing)
	inside := func(limb *training.Limb) bool {
		apart := limb.Points[0].Y() - middle
		apart -= s.Length * math.Round(apart/s.Length)
		return math.Abs(apart) <= thick/2
	}
	var out sectionCut
	for i := range s.Trunks {
		if s.Trunks[i].Vine == vine {
			out.trunks = append(out.trunks, i)
		}
	}
	for i := range s.Arms {
		if inside(&s.Arms[i]) {
			out.arms = append(out.arms, i)
		}
	}
	drawn := make([]bool, len(s.Shoots))
	for i := range s.Shoots {
		if drawn[i] = inside(&s.Shoots[i]); drawn[i] {
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

// thickness is the length of row that carries the leaves to show [m].
func (c *CrossSection) thickness() float64 {
	perMetre := 0.0
	for i := range c.Stand.Leaves {
		perMetre += c.Stand.Leaves[i].Area / c.Stand.Length
	}
	if perMetre <= 0 {
		return c.Stand.VineSpacing
	}
	m := c.Stand.MeasureLeaves()
	width := min(m.Width_m, 2*m.Curtain_m) // of two curtains without what is between them
	return (sectionLeaves + leavesPerShape*width*(m.Top_m-m.Bottom_m)) / perMetre
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

// bladePoints is the outline of a leaf in units of the radius of a disc of its area, along the midrib and across
// it: five lobes, coarsely.
var bladePoints = [...][2]float64{
	{1.28, 0}, {0.58, 0.50}, {0.55, 1.06}, {-0.50, 1.00}, {-0.88, 0.28},
	{-0.88, -0.28}, {-0.50, -1.00}, {0.55, -1.06}, {0.58, -0.50},
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
	wires  []int // of each role
}

// wireHeights lists the heights of the wires from above, those within a few centimetres of each other as one; of
// a roof its highest and its lowest wire.
func (c *CrossSection) wireHeights() []heightLabel {
	low, high := c.roofHeights()
	wires := slices.DeleteFunc(slices.Clone(c.Stand.Wires), func(w training.Strand) bool {
		return w.Role == string(scenario.Roof) && w.Z > low && w.Z < high
	})
	slices.SortStableFunc(wires, func(a, b training.Strand) int { return compareDown(a.Z, b.Z) })
	var labels []heightLabel
	for _, wire := range wires {
		last := len(labels) - 1
		if last < 0 || labels[last].height-wire.Z > sameHeight_m {
			labels = append(labels, heightLabel{height: wire.Z})
			last++
		}
		role := slices.Index(labels[last].roles, wire.Role)
		if role < 0 {
			role = len(labels[last].roles)
			labels[last].roles, labels[last].wires = append(labels[last].roles, wire.Role), append(labels[last].wires, 0)
		}
		labels[last].wires[role]++
	}
	return labels
}

// roofHeights are the heights of the lowest and the highest roof wire [m].
func (c *CrossSection) roofHeights() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, wire := range c.Stand.Wires {
		if wire.Role == string(scenario.Roof) {
			low, high = min(low, wire.Z), max(high, wire.Z)
		}
	}
	return low, high
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
