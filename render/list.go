package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"
)

// List is the picture of one pane without its ground and sky: quads in painter's order, four vertices
// each (upper left, upper right, lower left, lower right of the texture). A list is reused from frame
// to frame; what it keeps between them only saves time.
type List struct {
	Vertices []Vertex
	quads    int
	slices   []visibleSlice
	items    []item
	order    []uint32
	sorted   []uint32
	keys     []uint16
	objects  []Object // one for each quad
	laid     layout
	coloured coloured
	fruit    []placed // berries and bunches among the quads
}

// Quads is the number of quads of the list.
func (l *List) Quads() int { return l.quads }

// visibleSlice is one slice of one copy of the stand in front of the eye.
type visibleSlice struct {
	slice    int
	offset   mgl32.Vec3 // of the copy
	rise     float32    // of the ground along the row
	distance float32    // to the middle of the slice [m]
	fade     float32    // 0 gone, 1 wholly there
	kept     float32    // share of the leaves drawn
	scale    float32    // how much larger than life, so that their area stays that of all leaves
	clumps   bool       // each stands for several leaves
	hidden   hidden
	inPane   float32  // about the share of its things that fall into the pane
	seen     float32  // about the share of its leaves that the list will take
	level    int      // fineness of the bunches; bunchLevels stands for whole bunches as one sphere each
	bunches  []int32  // those drawn
	haze     float32  // share of haze over the slice
	only     []detail // of its things only wood of these details is drawn; nil draws all
}

// at is where a place of the stand lies in the copy.
func (v *visibleSlice) at(p mgl32.Vec3) mgl32.Vec3 {
	return mgl32.Vec3{p[0] + v.offset[0], p[1] + v.offset[1], p[2] + v.offset[2] + v.rise*p[1]}
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
	netItem
	dustItem
)

const (
	fadeOver_m  = 14.0 // the last rows fade away over this distance
	finestLeaf  = 5.0  // a leaf is never merged while it is this wide [px]
	finestBerry = 2.2  // nor a berry [px]
	coarserStep = 1.12
	seenSample  = 16 // leaves of a slice looked at to guess how many are in view
	// berryBudget is the share of the quads that bunches may take.
	berryBudget = 0.34
	// clumpFrom is the side of an enlarged leaf, against its own, from which clumps are drawn.
	clumpFrom = 1.9
)

// Compose fills the list with what the camera sees of the scene, in no more than budget quads.
func (s *Scene) Compose(list *List, view *View, budget int) {
	switch view.Way {
	case Slice:
		list.composeSlice(s, view, budget)
	case Outlook:
		list.composeOutlook(s, view, budget)
	default:
		list.composeRows(s, view, budget)
	}
	if view.Objects {
		list.dye()
	}
}

// composeRows fills the list with the rows as one sees them standing there.
func (l *List) composeRows(s *Scene, view *View, budget int) {
	roof := 0
	if s.roof() != nil && !view.Objects {
		roof = mostRoofQuads
	}
	switch {
	case l.layOut(s, view, budget):
		l.findSlices(s, view)
		l.fit(s, view, budget-roof)
		l.gather(s, view)
		l.sort()
		l.farthestGo(budget - roof)
		l.emit(s, view, roof)
	case l.coloured == coloured{s, s.version} && !view.Objects:
		l.recolour(s, view)
	default:
		l.emit(s, view, roof)
	}
}

// layout is all that decides which things a list shows and in which order; light and temperatures only colour them.
type layout struct {
	planting Planting
	view     View
	budget   int
}

// coloured is the light that the quads of a list show. What a run tells of the fruit colours berries and bunches alone.
type coloured struct {
	scene   *Scene
	version int // of its light
}

// placed is an item and its quad.
type placed struct {
	item uint32
	quad int
}

// layOut reports whether a list has to be laid out anew: it still has the things that it showed last.
func (l *List) layOut(s *Scene, view *View, budget int) bool {
	next := layout{s.planting, *view, budget}
	if next == l.laid {
		return false
	}
	l.laid = next
	return true
}

// count is the number of the sorted items of a kind.
func (l *List) count(kind itemKind) (count int) {
	for _, i := range l.order {
		if l.items[i].kind == kind {
			count++
		}
	}
	return count
}

// farthestGo leaves of the sorted items the nearest that take no more quads than given.
func (l *List) farthestGo(budget int) {
	first, left := len(l.order), budget
	for first > 0 {
		cost := 1
		if l.items[l.order[first-1]].kind == netItem {
			cost = netCost
		}
		if left -= cost; left < 0 {
			break
		}
		first--
	}
	l.order = l.order[first:]
}

// findSlices lists the slices of all copies of the stand that may be seen.
func (l *List) findSlices(s *Scene, view *View) {
	l.slices = l.slices[:0]
	rows := int(float64(view.Far)/s.planting.Stand.RowSpacing) + 1
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
	hiding := s.hiddenFrom(row, view)
	reach := float32(math.Sqrt(float64(piece*piece+height*height)+stand.RowSpacing*stand.RowSpacing)) / 2 // of a slice
	first := int(math.Floor(float64((view.Eye[1] - view.Far) / piece)))
	last := int(math.Ceil(float64((view.Eye[1] + view.Far) / piece)))
	for at := first; at <= last; at++ {
		middle := s.terrain.lifted(x, (float32(at)+0.5)*piece).Add(mgl32.Vec3{0, 0, height / 2})
		distance := middle.Sub(view.Eye).Len()
		fade := present * (1 - smooth32(view.Far-fadeOver_m, view.Far, distance))
		if fade <= 0 || middle[1] < view.First || middle[1] > view.Last || !view.mayContain(middle, reach) {
			continue
		}
		slice := ((at % s.slices) + s.slices) % s.slices
		v := visibleSlice{
			slice: slice, distance: max(distance, 0.5), fade: fade, hidden: hiding, haze: thickness(distance),
			offset: s.terrain.lifted(x, float32(at-slice)*piece), rise: s.terrain.along,
		}
		s.sampleSeen(&v, view)
		l.slices = append(l.slices, v)
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
	// Height above the ground of the line from the eye to the foot of the leaves of the middle row where it crosses the row.
	foot := float32(0.55 * s.planting.Stand.Top)
	ground := func(x float32) float32 { return s.terrain.at(x, view.Eye[1]) }
	height := foot + ground(0) + (view.Eye[2]-foot-ground(0))*min(x/eyeX, 1) - ground(x)
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
