package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"
)

// List is the picture of one pane without its ground and sky: quads in painter's order, four vertices
// each (upper left, upper right, lower left, lower right of the texture). A list is reused from frame
// to frame; it holds no state between them.
type List struct {
	Vertices []Vertex
	quads    int
	slices   []visibleSlice
	items    []item
	order    []uint32
	sorted   []uint32
	keys     []uint16
}

// Quads is the number of quads of the list.
func (l *List) Quads() int { return l.quads }

// visibleSlice is one slice of one copy of the stand in front of the eye.
type visibleSlice struct {
	slice    int
	offset   mgl32.Vec3 // of the copy
	distance float32    // to the middle of the slice [m]
	fade     float32    // 0 gone, 1 wholly there
	kept     float32    // share of the leaves drawn
	scale    float32    // how much larger than life, so that their area stays that of all leaves
	clumps   bool       // each stands for several leaves
	cover    cover
	inPane   float32 // rough share of the slice that falls into the pane
	level    int     // fineness of the bunches; bunchLevels stands for whole bunches as one sphere each
	bunches  []int32 // those drawn
	haze     float32 // share of haze over the slice
}

// item is one thing to be drawn, before sorting.
type item struct {
	index int32 // into leaves, berries or wood
	place int32 // into slices
	kind  itemKind
	level uint8
}

type itemKind uint8

const (
	leafItem itemKind = iota
	clumpItem
	berryItem
	woodItem
	farBunchItem
)

const (
	drawnFar_m  = 44.0 // nothing beyond is drawn; haze and the far rows of the ground take over
	fadeFrom_m  = 30.0
	finestLeaf  = 5.0 // a leaf is never merged while it is this wide [px]
	finestBerry = 2.2 // nor a berry [px]
	coarserStep = 1.12
	// berryBudget is the share of the quads that bunches may take.
	berryBudget = 0.34
	// clumpFrom is the side of an enlarged leaf, against its own, from which clumps are drawn.
	clumpFrom = 1.9
)

// Compose fills the list with what the camera sees of the scene, in no more than budget quads.
func (s *Scene) Compose(list *List, view *View, budget int) {
	list.findSlices(s, view)
	list.fit(s, view, budget)
	list.gather(s, view)
	list.sort()
	list.order = list.order[max(len(list.order)-budget, 0):] // the farthest go first
	list.emit(s, view)
}

// findSlices lists the slices of all copies of the stand that may be seen.
func (l *List) findSlices(s *Scene, view *View) {
	l.slices = l.slices[:0]
	rows := int(drawnFar_m/s.planting.Stand.RowSpacing) + 1
	for row := -rows; row <= rows; row++ {
		if present := s.rowPresence(row, view); present > 0 {
			l.findInRow(s, view, row, present)
		}
	}
}

func (l *List) findInRow(s *Scene, view *View, row int, present float32) {
	stand := s.planting.Stand
	piece, height := float32(stand.Length)/float32(s.slices), float32(stand.Top)
	x := float32(row) * float32(stand.RowSpacing)
	cover := s.coverOf(row, view)
	reach := float32(math.Sqrt(float64(piece*piece+height*height)+stand.RowSpacing*stand.RowSpacing)) / 2 // of a slice
	first := int(math.Floor(float64((view.Eye[1] - drawnFar_m) / piece)))
	last := int(math.Ceil(float64((view.Eye[1] + drawnFar_m) / piece)))
	for at := first; at <= last; at++ {
		middle := mgl32.Vec3{x, (float32(at) + 0.5) * piece, height / 2}
		distance := middle.Sub(view.Eye).Len()
		fade := present * (1 - smooth32(fadeFrom_m, drawnFar_m, distance))
		if fade <= 0 || !view.mayContain(middle, reach) {
			continue
		}
		slice := ((at % s.slices) + s.slices) % s.slices
		l.slices = append(l.slices, visibleSlice{
			inPane: view.shareInPane(middle, reach), haze: thickness(distance),
			slice: slice, distance: max(distance, 0.5), fade: fade, cover: cover,
			offset: mgl32.Vec3{x, float32(at-slice) * piece, 0},
		})
	}
}

// rowPresence is 0 for a row that would stand between the eye and the middle row and hide it, 1 for
// all others, with a soft change between.
func (s *Scene) rowPresence(row int, view *View) float32 {
	x := float32(row) * float32(s.planting.Stand.RowSpacing)
	eyeX := view.Eye[0]
	half := 0.6 * float32(s.planting.Stand.RowSpacing)
	if row == 0 || x*eyeX <= 0 || abs(eyeX) < half || abs(x) > abs(eyeX)+half {
		return 1
	}
	// Height of the line from the eye to the foot of the leaves of the middle row where it crosses the row.
	foot := float32(0.55 * s.planting.Stand.Top)
	height := foot + (view.Eye[2]-foot)*min(x/eyeX, 1)
	top := float32(s.planting.Stand.Top)
	return float32(smooth(float64(top), float64(top)+0.5, float64(height)))
}

// mayContain reports whether a ball may be seen in the pane.
func (v *View) mayContain(middle mgl32.Vec3, radius float32) bool {
	d := middle.Sub(v.Eye)
	depth := d.Dot(v.Forward)
	if depth < -radius {
		return false
	}
	// Distance to the side planes of the view, counted from inside.
	side, high := v.Width/2/v.Focal, v.Height/2/v.Focal
	right, up := abs(d.Dot(v.Right)), abs(d.Dot(v.Up))
	return right-side*depth < radius*float32(math.Sqrt(float64(1+side*side))) &&
		up-high*depth < radius*float32(math.Sqrt(float64(1+high*high)))
}

// fit chooses how fine each slice is drawn so that the list stays inside the budget: first bunches in
// their share of it, then leaves in what is left.
func (l *List) fit(s *Scene, view *View, budget int) {
	smallest, count := float32(finestBerry), 0
	for range 40 {
		count = 0
		for i := range l.slices {
			v := &l.slices[i]
			count += v.chooseBunches(s, view, smallest)
		}
		if float64(count) <= berryBudget*float64(budget) {
			break
		}
		smallest *= coarserStep
	}
	left := int(0.93*float64(budget)) - count // the counts are estimates
	for i := range l.slices {
		left -= l.slices[i].woodPieces(s)
	}
	smallest = finestLeaf
	for range 40 {
		count = 0
		for i := range l.slices {
			v := &l.slices[i]
			v.thin(s.leaves.mean*view.Focal/v.distance, smallest)
			seen := v.cover.share(s.leaves.bottom, s.leaves.top) * v.inPane
			count += int(v.kept * seen * float32(s.leafStarts[v.slice+1]-s.leafStarts[v.slice]))
		}
		if count <= left {
			break
		}
		smallest *= coarserStep
	}
}

// thin chooses how many leaves of a slice are drawn: as many as are at least quad wide [px] when
// enlarged to keep the leaf area, and clumps where leaves would have to be enlarged much.
func (v *visibleSlice) thin(leaf, quad float32) {
	share := min(leaf*leaf/(quad*quad), 1)
	v.clumps = share < 1/(clumpFrom*clumpFrom)
	if v.clumps {
		share = min(share, 1.0/clumpCovers)
	}
	v.kept = share * v.fade
	v.scale = float32(math.Sqrt(float64(1 / share)))
	if v.clumps {
		v.scale = float32(math.Sqrt(float64(1 / (share * clumpCovers))))
	}
}

// chooseBunches sets how fine the bunches of a slice are drawn, with no sphere smaller than given
// [px], and how many; it returns about how many spheres that makes.
func (v *visibleSlice) chooseBunches(s *Scene, view *View, smallest float32) int {
	scale := view.Focal / v.distance
	v.level = 0
	for v.level < bunchLevels && 2*s.bunches.radius[v.level]*scale < smallest {
		v.level++
	}
	// Far away a fair sample of the bunches is enough.
	all := s.bunchOf[v.slice]
	pixels := 2 * s.bunches.halfWidth * scale
	share := min(pixels*pixels/(4*smallest*smallest), 1) * v.fade
	v.bunches = all[:int(share*float32(len(all))+0.5)]
	if v.level == bunchLevels {
		return int(v.inPane * float32(len(v.bunches)))
	}
	_, starts := s.bunches.level(v.level)
	spheres := 0
	for _, b := range v.bunches {
		spheres += starts[b+1] - starts[b]
	}
	return int(v.inPane * float32(spheres) * facingShare)
}

// woodPieces is about how many pieces of wood and wire a slice draws.
func (v *visibleSlice) woodPieces(s *Scene) int {
	count := 0
	for _, i := range s.woodOf[v.slice] {
		if s.wood[i].shows(v.distance) {
			count++
		}
	}
	return int(v.inPane * float32(count))
}

// shows reports whether a piece is drawn at a distance [m].
func (p *woodPiece) shows(distance float32) bool {
	reach := &seenFrom[p.detail]
	return distance >= reach[0] && distance < reach[1]
}

// shareInPane is about how much of a ball falls into the pane.
func (v *View) shareInPane(middle mgl32.Vec3, radius float32) float32 {
	x, y, depth := v.Project(middle)
	if depth < radius {
		return 1
	}
	r := radius * v.Focal / depth
	x, y = abs(x-v.CentreX), abs(y-v.CentreY)
	wide := min(x+r, v.Width/2) - max(x-r, -v.Width/2)
	high := min(y+r, v.Height/2) - max(y-r, -v.Height/2)
	return min(max(wide, 0)*max(high, 0)/(4*r*r), 1)
}
