package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"
)

// emitter writes the quads of one frame.
type emitter struct {
	scene    *Scene
	view     *View
	haze     rgb
	vertices []Vertex
	objects  []Object // one for each quad
	fruit    []placed

	leafAlpha float32
	mutes     bool // wood loses its colour
}

const (
	hazeDepth_m = 95.0 // distance at which haze hides about two thirds; a dusty summer day, by eye
	// Quads carry brightness against an even surface of the atlas.
	atlasGain = 1 / evenTexel
)

// emit writes the vertices of all items in sorted order, and of the net over all rows, if there is one, as many more
// as given at most.
func (l *List) emit(s *Scene, view *View, roof int) {
	e := l.emitter(s, view, roof+(netCost-1)*l.count(netItem))
	below := roof > 0 && s.roofAbove(view.Eye) > 0
	if below {
		e.drawRoof()
		e.own(Object{})
	}
	e.items(l)
	if roof > 0 && !below {
		e.drawRoof()
		e.own(Object{})
	}
	e.finish(l)
	l.coloured = coloured{s, s.version}
}

// recolour writes the fruit anew where it stands among the quads.
func (l *List) recolour(s *Scene, view *View) {
	e := newEmitter(s, view)
	for _, p := range l.fruit {
		it := &l.items[p.item]
		e.vertices = l.Vertices[:4*p.quad]
		e.fruitOf(it, &l.slices[it.place])
	}
}

// emitter starts a frame with room for the items of the list and some quads more.
func (l *List) emitter(s *Scene, view *View, more int) *emitter {
	e := newEmitter(s, view)
	e.vertices = resized(l.Vertices, max(4*(len(l.items)+more), 0))[:0]
	e.objects, e.fruit = l.objects[:0], l.fruit[:0]
	l.coloured = coloured{}
	return e
}

func newEmitter(s *Scene, view *View) *emitter {
	e := &emitter{scene: s, view: view, haze: s.tone.colour(s.light.haze), leafAlpha: 1}
	switch view.Way {
	case Sunlight:
		e.haze, e.mutes = e.haze.muted(), true
	case Heat:
		e.haze, e.mutes, e.leafAlpha = e.haze.muted(), true, glassAlpha
	case Slice:
		e.leafAlpha = sliceAlpha
	}
	return e
}

// finish hands the quads to the list.
func (e *emitter) finish(l *List) {
	l.Vertices, l.objects, l.fruit = e.vertices, e.objects, e.fruit
	l.quads = len(e.vertices) / 4
}

// items writes the vertices of all items in sorted order.
func (e *emitter) items(l *List) {
	for _, i := range l.order {
		it := &l.items[i]
		v := &l.slices[it.place]
		switch it.kind {
		case leafItem:
			e.leaf(it, v)
		case clumpItem:
			e.clump(it, v)
		case berryItem, farBunchItem:
			quad := len(e.vertices) / 4
			if e.fruitOf(it, v); len(e.vertices) > 4*quad {
				e.fruit = append(e.fruit, placed{i, quad})
			}
		case woodItem:
			e.wood(it, v)
		case netItem:
			e.net(it, v)
		case dustItem:
			e.dust(it, v)
		}
		e.own(e.scene.objectOf(it))
	}
}

// thickness is the share of haze over a thing at a distance [m].
func thickness(distance float32) float32 {
	return 1 - float32(math.Exp(-math.Pow(float64(distance)/hazeDepth_m, 1.3)))
}

// inView is a vector in the frame of the eye: right, up, depth.
func (e *emitter) inView(d mgl32.Vec3) (x, y, z float32) {
	r, u, f := &e.view.Right, &e.view.Up, &e.view.Forward
	return d[0]*r[0] + d[1]*r[1] + d[2]*r[2], d[0]*u[0] + d[1]*u[1] + d[2]*u[2], d[0]*f[0] + d[1]*f[1] + d[2]*f[2]
}

// quad starts a quad with the corners of a box of the atlas.
func (e *emitter) quad(b *box) *[4]Vertex {
	n := len(e.vertices)
	e.vertices = e.vertices[:n+4]
	q := (*[4]Vertex)(e.vertices[n:])
	q[0].U, q[0].V = b.x, b.y
	q[1].U, q[1].V = b.x+b.w, b.y
	q[2].U, q[2].V = b.x, b.y+b.h
	q[3].U, q[3].V = b.x+b.w, b.y+b.h
	return q
}

func (e *emitter) leaf(it *item, v *visibleSlice) {
	leaf := &e.scene.leaves.leaf[it.index]
	rel := v.at(leaf.centre).Sub(e.view.Eye)
	cx, cy, cz := e.inView(rel)
	ax, ay, az := e.inView(leaf.tip)
	bx, by, bz := e.inView(leaf.side)
	k := v.scale
	ax, ay, az, bx, by, bz = ax*k, ay*k, az*k, bx*k, by*k, bz*k
	if cz-abs(az)-abs(bz) < nearestDepth {
		return
	}
	focal, midX, midY := e.view.Focal, e.view.CentreX, e.view.CentreY
	pixels := 2 * focal / cz * k * leaf.tip.Len()
	q := e.quad(e.scene.atlas.tiles[leaf.tile].level(pixels))
	for i, sign := range &cornerSigns {
		scale := focal / (cz + sign[0]*az + sign[1]*bz)
		q[i].X = midX + (cx+sign[0]*ax+sign[1]*bx)*scale
		q[i].Y = midY - (cy+sign[0]*ay+sign[1]*by)*scale
	}
	face := upperFace
	if leaf.normal.Dot(rel) > 0 {
		face = lowerFace
	}
	e.paintLeaf(q, it, face, v.haze)
}

// paintLeaf colours the corners of a leaf by how far they are in the sun.
func (e *emitter) paintLeaf(q *[4]Vertex, it *item, face int, h float32) {
	c := &e.scene.leafColour[it.index]
	clear := (1 - h) * atlasGain
	shade, sunlit := c.shade[face], c.sunlit[face]
	switch e.view.Way {
	case Sunlight:
		// One colour for the whole leaf: between two colours of the scale lie others that it does not have.
		low, high := e.scene.leafSunlight(&e.scene.leaves.leaf[it.index])
		shade = e.scene.lightColour(low + (high-low)*(c.lit[0]+c.lit[1]+c.lit[2]+c.lit[3])/4)
		sunlit = shade
	case Heat:
		shade, sunlit = shade.muted(), sunlit.muted()
	case Outlook:
		shade, sunlit = shade.scaled(skyGain), sunlit.scaled(skyGain)
	}
	for i := range q {
		lit := c.lit[i]
		q[i].R = (shade[0]+(sunlit[0]-shade[0])*lit)*clear + e.haze[0]*h
		q[i].G = (shade[1]+(sunlit[1]-shade[1])*lit)*clear + e.haze[1]*h
		q[i].B = (shade[2]+(sunlit[2]-shade[2])*lit)*clear + e.haze[2]*h
		q[i].A = e.leafAlpha
	}
}

func (e *emitter) clump(it *item, v *visibleSlice) {
	leaf := &e.scene.leaves.leaf[it.index]
	rel := v.at(leaf.centre).Sub(e.view.Eye)
	half := e.scene.leaves.mean / 2 * clumpSide * v.scale
	q := e.sprite(rel, half, 0, 1, clumpTile+tileID(it.index%clumpKinds))
	if q == nil {
		return
	}
	face := upperFace
	if leaf.normal.Dot(rel) > 0 {
		face = lowerFace
	}
	e.paintLeaf(q, it, face, v.haze)
}

// sprite places a square that faces the eye, its picture turned so that up points to (sin, cos).
func (e *emitter) sprite(rel mgl32.Vec3, half, sin, cos float32, id tileID) *[4]Vertex {
	cx, cy, cz := e.inView(rel)
	if cz < nearestDepth {
		return nil
	}
	scale := e.view.Focal / cz
	x, y, r := e.view.CentreX+cx*scale, e.view.CentreY-cy*scale, half*scale
	q := e.quad(e.scene.atlas.tiles[id].level(2 * r))
	for i, sign := range &cornerSigns {
		q[i].X = x + r*(sign[0]*sin+sign[1]*cos)
		q[i].Y = y - r*(sign[0]*cos-sign[1]*sin)
	}
	return q
}

// fruitOf draws a berry, or a bunch as one sphere.
func (e *emitter) fruitOf(it *item, v *visibleSlice) {
	if it.kind == berryItem {
		e.berry(it, v)
	} else {
		e.farBunch(it, v)
	}
}

func (e *emitter) berry(it *item, v *visibleSlice) {
	ball := &e.scene.bunches.berry[it.level][it.index]
	at, face := v.at(ball.centre), ball.face
	if ball.core && e.view.Eye[0] > at[0] {
		face++ // the inside takes the colour of the side that is seen
	}
	e.sphere(at, ball.outward, ball.radius, face, ball.shine, v.haze)
}

func (e *emitter) farBunch(it *item, v *visibleSlice) {
	body := &e.scene.bunches.bunch[it.index]
	at := v.at(body.centre)
	toEye := e.view.Eye.Sub(at)
	face, outward := 2*it.index, mgl32.Vec3{-1, 0, 0}
	if toEye[0] > 0 {
		face, outward = face+1, mgl32.Vec3{1, 0, 0}
	}
	e.sphere(at, outward, body.radius, face, 1, v.haze)
}

// Brightness of berries against the colour of the scale: sunlit ones show it as it is, the shaded
// ones keep their hue and are darker.
const (
	litBerryGain    = 1.16
	shadedBerryGain = 1.06
)

// sphere draws a berry in the colour of its face. It is in the sun if its face is and it does not
// lie behind its own bunch.
func (e *emitter) sphere(at, outward mgl32.Vec3, radius float32, face int32, shine, h float32) {
	rel := at.Sub(e.view.Eye)
	sun := e.scene.light.sun
	gain, id := float32(shadedBerryGain), shadedBerry
	sin, cos := float32(0), float32(1)
	if e.scene.faceLit[face] && outward.Len() > 0 && outward.Dot(sun) > -0.15 {
		gain = litBerryGain
		x, y, _ := e.inView(sun)
		if side := float32(math.Hypot(float64(x), float64(y))); side > 1e-3 {
			sin, cos = x/side, y/side
		}
		toViewer := -sun.Dot(rel) / rel.Len()
		id = berryTile + tileID(min(max(int((0.95-toViewer)/1.75*(berryLights-1)+0.5), 0), berryLights-1))
	}
	q := e.sprite(rel, radius*1.04, sin, cos, id)
	if q == nil {
		return
	}
	colour := e.scene.faceColour[face]
	if e.view.Way == Sunlight {
		colour = e.scene.lightColour(e.scene.faceSunlight(face))
	}
	colour = colour.scaled(gain * shine * (1 - h)).plus(e.haze.scaled(h))
	middle := (q[0].Y + q[1].Y + q[2].Y + q[3].Y) / 4
	for i := range q {
		// The sky is above: upper corners are a little brighter.
		tint := float32(1.06)
		if q[i].Y > middle {
			tint = 0.92
		}
		q[i].R, q[i].G, q[i].B, q[i].A = colour[0]*tint, colour[1]*tint, colour[2]*tint, 1
	}
}

// wood draws a piece as a ribbon that faces the eye, brighter on the side of the sun. A piece thinner
// than a pixel is drawn one pixel wide and more transparent.
func (e *emitter) wood(it *item, v *visibleSlice) {
	p := &e.scene.wood[it.index]
	from, to := v.at(p.from).Sub(e.view.Eye), v.at(p.to).Sub(e.view.Eye)
	x0, y0, z0 := e.inView(from)
	x1, y1, z1 := e.inView(to)
	if min(z0, z1) < nearestDepth {
		return
	}
	s0, s1 := e.view.Focal/z0, e.view.Focal/z1
	x0, y0, x1, y1 = e.view.CentreX+x0*s0, e.view.CentreY-y0*s0, e.view.CentreX+x1*s1, e.view.CentreY-y1*s1
	dx, dy := x1-x0, y1-y0
	length := float32(math.Hypot(float64(dx), float64(dy)))
	if length < 1e-3 {
		dx, dy, length = 0, 1, 1
	}
	nx, ny := -dy/length, dx/length // to the right of the direction of the piece, in pixels
	const least = 0.75
	r0, r1 := p.fromRadius*s0, p.radius*s1
	alpha := min((r0+r1)/(2*least), 1)
	r0, r1 = max(r0, least)*1.06, max(r1, least)*1.06
	// Pieces reach a little over each other, so that bends show no slits.
	lap := min(0.3*min(r0, r1), 0.2*length) / length
	x0, y0, x1, y1 = x0-dx*lap, y0-dy*lap, x1+dx*lap, y1+dy*lap
	q := e.quad(e.scene.atlas.tiles[p.tile].level(r0 + r1))
	q[0].X, q[0].Y = x0-nx*r0, y0-ny*r0
	q[1].X, q[1].Y = x0+nx*r0, y0+ny*r0
	q[2].X, q[2].Y = x1-nx*r1, y1-ny*r1
	q[3].X, q[3].Y = x1+nx*r1, y1+ny*r1
	side := e.view.Right.Mul(nx).Sub(e.view.Up.Mul(ny))
	e.paintWood(q, it.index, side, from, alpha*v.fade, v.haze)
}

func (e *emitter) paintWood(q *[4]Vertex, index int32, side, from mgl32.Vec3, alpha, h float32) {
	p, light := &e.scene.wood[index], &e.scene.light
	ambient := light.sky.scaled(woodAmbient * (0.25 + 0.75*p.open)).plus(light.beam.scaled(0.05))
	toEye := from.Mul(-1 / from.Len())
	lit := &e.scene.woodLit[index]
	for k, sign := range [2]float32{-1, 1} {
		normal := side.Mul(0.8 * sign).Add(toEye.Mul(0.6))
		strength := 1.25 * max(normal.Dot(light.sun), 0)
		for end := range lit {
			c := p.surface.times(ambient.plus(light.beam.scaled(lit[end] * strength)))
			c = e.scene.tone.colour(c)
			if e.mutes {
				c = c.muted()
			}
			c = c.scaled(atlasGain * (1 - h)).plus(e.haze.scaled(h))
			v := &q[2*end+k]
			v.R, v.G, v.B, v.A = c[0], c[1], c[2], alpha
		}
	}
}
