package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/training"
)

// Looks of a slice of the row seen end-on.
const (
	sliceFar_m   = 60.0 // the eye stands so far off that near and far look alike
	sliceAbove_m = 0.55 // shown above the leaves
	sliceBelow_m = 0.16 // and below the ground
	sliceWide    = 1.05 // row spacings shown at least
	fieldShare   = 0.22 // of the quads for the field of light
	raysApart_m  = 0.17
	rayPiece_m   = 0.12
	rayAlpha     = 0.85
	mostRayQuads = 2000
	mostDotQuads = 1000 // of the wires and the sun
	mostRows     = 3    // drawn to each side
	dotSides     = 8
	sunSides     = 24
	floorThick_m = 0.05 // of what covers the soil, so that it is seen
	netDash_m    = 0.07 // of the lines that stand for nets
	mostNetQuads = 600
)

// sliceView is the view of a slice in a pane: looking along the row, the left side of the row on the left.
// A larger distance of the camera shows more of the rows beside it.
func (s *Scene) sliceView(distance_m float64, pane Pane) View {
	stand := s.stand
	scale := s.SliceScale(distance_m, pane)
	focal := scale * sliceFar_m
	cut := float32(sliceMiddle(stand))
	// What is high enough stands on the lower edge of the pane.
	middle := s.terrain.at(0, cut) + float32(max(s.sliceTop()-sliceBelow_m, pane.Height/scale-2*sliceBelow_m)/2)
	return View{
		Eye:   mgl32.Vec3{0, cut - sliceFar_m, middle},
		Right: mgl32.Vec3{1, 0, 0}, Up: mgl32.Vec3{0, 0, 1}, Forward: mgl32.Vec3{0, 1, 0},
		Focal: float32(focal), Width: float32(pane.Width), Height: float32(pane.Height), Far: 2 * sliceFar_m,
		CentreX: float32(pane.X + pane.Width/2), CentreY: float32(pane.Y + pane.Height/2),
		First: float32(math.Inf(-1)), Last: float32(math.Inf(1)), Way: Slice,
	}
}

// SliceScale is the scale of a slice [px/m]: the whole row fits into the pane from the distance of the look at first, and a
// larger distance makes it smaller.
func (s *Scene) SliceScale(distance_m float64, pane Pane) float64 {
	fits := min(pane.Height/(s.sliceTop()+sliceBelow_m), pane.Width/(sliceWide*s.stand.RowSpacing))
	return fits * min(max(defaultMetres/distance_m, 0.3), 3)
}

// sliceTop is the height up to which a slice is shown [m].
func (s *Scene) sliceTop() float64 {
	top := s.stand.Top + sliceAbove_m
	if net := s.roof(); net != nil {
		top = max(top, net.Edges[0][1]+sliceAbove_m/2)
	}
	return top
}

// sliceMiddle is the place along the row that is cut: at the trunk of the vine with the most shoots.
func sliceMiddle(stand *training.Stand) float64 {
	cut := CrossSection{Stand: stand}
	_, y := cut.vine()
	return y
}

// composeSlice fills the list with the field of light, the rays of the sun and the slice before them.
func (l *List) composeSlice(s *Scene, view *View, budget int) {
	fieldQuads := int(fieldShare * float64(budget))
	if l.layOut(s, view, budget) {
		l.findSliceCopies(s, view)
		l.gather(s, view)
		l.fruitFirst()
		l.sort()
		l.order = l.order[max(len(l.order)-max(budget-fieldQuads-mostRayQuads-mostDotQuads-mostNetQuads, 0), 0):]
	}
	e := l.emitter(s, view, fieldQuads+mostRayQuads+mostDotQuads+mostNetQuads)
	e.field(fieldQuads)
	e.soil()
	e.rays()
	e.own(Object{})
	e.items(l)
	e.netLines()
	e.wireDots()
	e.sunMark()
	e.own(Object{})
	e.finish(l)
}

// fruitFirst brings the fruit of a slice before its leaves, as drawings show what matters: the eye is far off, so that all
// depths lie between the same two.
func (l *List) fruitFirst() {
	near := depthKey(sliceFar_m / 2)
	for i := range l.items {
		if kind := l.items[i].kind; kind == berryItem || kind == farBunchItem {
			l.keys[i] -= near
		}
	}
}

// findSliceCopies lists the slice of every row in the pane, and behind it the post that stands nearest.
func (l *List) findSliceCopies(s *Scene, view *View) {
	l.slices = l.slices[:0]
	stand := s.planting.Stand
	cut := sliceMiddle(stand)
	here := sliceOf(cut, stand.Length, s.slices)
	half := view.Width / 2 / (view.Focal / sliceFar_m)
	rows := min(int(half/float32(stand.RowSpacing)+0.7), mostRows)
	for row := -rows; row <= rows; row++ {
		v := visibleSlice{
			slice: here, distance: 1, fade: 1, kept: 1, scale: 1, hidden: hidden{seen: 1},
			offset: s.terrain.lifted(float32(row)*float32(stand.RowSpacing), 0), rise: s.terrain.along, bunches: s.bunchOf[here],
		}
		if row != 0 && half > 2.5*float32(stand.RowSpacing) {
			v.level = 2
		}
		l.slices = append(l.slices, v)
		l.addFrame(s, v.offset, here, cut)
	}
}

// addFrame lists the trunks and arms that reach into the slice from beside it, and behind it the nearest post.
func (l *List) addFrame(s *Scene, offset mgl32.Vec3, here int, cut float64) {
	for _, beside := range [2]int{here - 1, here + 1} {
		l.slices = append(l.slices, visibleSlice{
			slice: (beside + s.slices) % s.slices, offset: offset, rise: s.terrain.along, distance: 1, fade: 1, scale: 1, only: []detail{closeBy},
		})
	}
	if post, found := nearestPost(s.stand, cut); found {
		offset = offset.Add(s.terrain.lifted(0, float32(cut-post)+sliceLength_m))
		l.slices = append(l.slices, visibleSlice{
			slice: sliceOf(post, s.stand.Length, s.slices), offset: offset, rise: s.terrain.along, distance: 1, fade: 1, scale: 1, only: []detail{nearPost},
		})
	}
}

func nearestPost(stand *training.Stand, y float64) (at float64, found bool) {
	for _, post := range stand.Posts {
		if !found || math.Abs(post.Y-y) < math.Abs(at-y) {
			at, found = post.Y, true
		}
	}
	return at, found
}

// field draws the field of light behind everything in no more quads than given: sunlight on a surface that
// faces the sun. The quads are cut along the rays, so that edges of shade stay smooth.
func (e *emitter) field(quads int) {
	s, v := e.scene, e.view
	wide, high := v.Width/v.sliceScale(), e.sliceTop()
	cell := float32(math.Sqrt(float64(wide * high / float32(quads))))
	columns, rows := max(int(wide/cell), 1), max(int(high/cell), 1)
	at := func(i, j int) (float32, float32, rgb) {
		x, z := wide*(float32(i)/float32(columns)-0.5), high*float32(j)/float32(rows)
		px, py := e.inSlice(x, z)
		return px, py, s.lightColour(s.lightAt(x, z))
	}
	flip := 0
	if s.light.sun[0] < 0 {
		flip = 1
	}
	for j := range rows {
		for i := range columns {
			e.patch(func(k int) (float32, float32, rgb) { return at(i+(k&1^flip), j+1-k>>1) }, 1)
		}
	}
}

// lightAt is the sunlight on a surface that faces the sun at a height above the ground, as the mean along the row [W/m²].
func (s *Scene) lightAt(x, z float32) float32 {
	if net := s.roof(); net != nil && z > float32(net.Edges[0][1]) {
		return s.openBeam() + float32(max(s.instant.DHI_Wm2, 0))
	}
	stand := s.planting.Stand
	spacing := float32(stand.RowSpacing)
	share := s.field.at(x, z, spacing, float32(stand.Top))
	fromRow := x - floor32(x/spacing+0.5)*spacing
	return s.beam()*share + s.diffuse()*s.open.at(float64(x), float64(z+s.terrain.across*fromRow))
}

// sliceScale is how large a slice is shown [px/m].
func (v *View) sliceScale() float32 { return v.Focal / sliceFar_m }

// inSlice is the pixel of a place of the slice at a height above the ground there.
func (e *emitter) inSlice(x, z float32) (px, py float32) {
	v, ground := e.view, e.scene.terrain.at(x, e.view.Eye[1]+sliceFar_m)
	return v.CentreX + x*v.sliceScale(), v.CentreY - (ground+z-v.Eye[2])*v.sliceScale()
}

// sliceTop is the height above the ground that the slice has to be drawn to, to fill the pane.
func (e *emitter) sliceTop() float32 {
	v, ground := e.view, &e.scene.terrain
	return v.Eye[2] - ground.at(0, v.Eye[1]+sliceFar_m) + (v.Height+v.Width*abs(ground.across))/2/v.sliceScale()
}

// patch draws an even quad; corner gives place and colour of the corners: upper left, upper right, lower left,
// lower right.
func (e *emitter) patch(corner func(k int) (x, y float32, c rgb), alpha float32) {
	if len(e.vertices)+4 > cap(e.vertices) {
		return
	}
	q := e.quad(&e.scene.atlas.tiles[solidTile].levels[0])
	for k := range q {
		x, y, c := corner(k)
		q[k].X, q[k].Y = x, y
		q[k].R, q[k].G, q[k].B, q[k].A = c[0]*atlasGain, c[1]*atlasGain, c[2]*atlasGain, alpha
	}
}

// line draws a straight line [px].
func (e *emitter) line(x0, y0, x1, y1, width float32, c rgb, alpha float32) {
	dx, dy := x1-x0, y1-y0
	length := float32(math.Hypot(float64(dx), float64(dy)))
	if length < 1e-4 {
		return
	}
	nx, ny := -dy/length*width/2, dx/length*width/2
	e.patch(func(k int) (float32, float32, rgb) {
		x, y := x0, y0
		if k >= 2 {
			x, y = x1, y1
		}
		sign := float32(2*(k&1) - 1)
		return x + sign*nx, y + sign*ny, c
	}, alpha)
}

// disc draws a round spot in an even colour.
func (e *emitter) disc(x, y, radius float32, sides int, c rgb, alpha float32) {
	for k := range sides / 2 {
		point := func(i int) (float32, float32) {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(sides))
			return x + radius*float32(sin), y + radius*float32(cos)
		}
		e.patch(func(i int) (float32, float32, rgb) {
			px, py := x, y
			if i > 0 {
				px, py = point(2*k + [4]int{0, 0, 2, 1}[i])
			}
			return px, py, c
		}, alpha)
	}
}

// soil draws the ground below its line.
func (e *emitter) soil() {
	v := e.view
	floor := lookOf(e.scene.planting.Floor)
	soil, cover := e.scene.tone.colour(floor.strip).scaled(0.7), e.scene.tone.colour(floor.cover.scaled(1.6))
	half := v.Width / 2 / v.sliceScale()
	below := func(top, bottom float32, c rgb) {
		e.patch(func(k int) (float32, float32, rgb) {
			x, y := e.inSlice([2]float32{-half, half}[k&1], 0)
			return x, y + [2]float32{top, bottom}[k>>1], c
		}, 1)
	}
	below(0, v.Height, soil)
	below(0, max(floorThick_m*v.sliceScale(), 2), cover)
}

// rays draws the rays of the sun, each as strong as the share of them that comes so far.
func (e *emitter) rays() {
	s, v := e.scene, e.view
	if s.beam() <= 0 {
		return
	}
	stand, sun, roof := s.planting.Stand, s.terrain.tilted(s.light.sun), float32(math.Inf(1))
	if net := s.roof(); net != nil {
		roof = float32(net.Edges[0][1])
	}
	drift := -sun[0] / max(sun[2], leastFall) // sideways for each metre that they come nearer to the ground
	top := e.sliceTop()
	half := v.Width / 2 / v.sliceScale()
	apart := raysApart_m * float32(math.Sqrt(float64(1+drift*drift)))
	steps := max(int(top/rayPiece_m*float32(math.Sqrt(float64(1+drift*drift)))), 1)
	reach := abs(drift) * top
	pieces := 0
	for x := -half - reach; x <= half+reach; x += apart {
		for k := range steps {
			z0, z1 := top*(1-float32(k)/float32(steps)), top*(1-float32(k+1)/float32(steps))
			x0, x1 := x+drift*(top-z0), x+drift*(top-z1)
			if max(x0, x1) < -half || min(x0, x1) > half {
				continue
			}
			share := s.field.at((x0+x1)/2, (z0+z1)/2, float32(stand.RowSpacing), float32(stand.Top))
			if z1 < roof {
				share *= s.light.roof.direct
			}
			if share < 0.02 || pieces >= mostRayQuads-64 {
				continue
			}
			pieces++
			px0, py0 := e.inSlice(x0, z0)
			px1, py1 := e.inSlice(x1, z1)
			e.line(px0, py0, px1, py1, max(v.Height/420, 1), rgb{1, 1, 0.94}, rayAlpha*share)
		}
	}
}

// wireDots draws the wires as one sees them end-on.
func (e *emitter) wireDots() {
	v := e.view
	radius := max(v.Height/170, 1.8)
	spacing := float32(e.scene.planting.Stand.RowSpacing)
	rows, most := min(int(v.Width/2/v.sliceScale()/spacing+0.7), mostRows), len(e.vertices)/4+mostDotQuads-64
	for row := -rows; row <= rows; row++ {
		for i := range e.scene.planting.Stand.Wires {
			if len(e.vertices)/4 >= most {
				return
			}
			wire := &e.scene.planting.Stand.Wires[i]
			x, y := e.acrossRow(row, float32(wire.X), float32(wire.Z))
			e.disc(x, y, radius, dotSides, rgb{0.07, 0.08, 0.08}, 1)
			e.disc(x, y, 0.6*radius, dotSides, rgb{0.93, 0.94, 0.95}, 1)
		}
	}
}

// acrossRow is the pixel of a place of the cross-section of a row.
func (e *emitter) acrossRow(row int, x, z float32) (px, py float32) {
	foot := float32(row) * float32(e.scene.stand.RowSpacing)
	return e.inSlice(foot+x, z-e.scene.terrain.across*x)
}

// sunMark draws the sun at the edge of the pane on the side that its rays come from.
func (e *emitter) sunMark() {
	if x, y, up := e.view.sunSide(e.scene); up {
		size := max(e.view.Height/22, 7)
		e.disc(x, y, 1.25*size, sunSides, rgb{1, 1, 1}, 0.85)
		e.disc(x, y, size, sunSides, amber, 1)
	}
}

// sunSide is the place near the edge of the pane of a slice toward the sun [px]; up is false at night.
func (v *View) sunSide(s *Scene) (x, y float32, up bool) {
	sun := s.light.sun
	if s.beam() <= 0 {
		return 0, 0, false
	}
	inset := max(v.Height/6, 32) // below the names of the sides
	w, h := v.Width/2-inset, v.Height/2-inset
	t := min(w/max(abs(sun[0]), 1e-4), h/max(sun[2], 1e-4))
	return v.CentreX + t*sun[0], v.CentreY - t*sun[2], true
}
