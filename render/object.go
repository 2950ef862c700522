package render

import (
	"image"
	"image/color"
)

// Kind says what an object of a picture is.
type Kind uint8

// The kinds of objects.
const (
	NoObject Kind = iota // ground, sky or paper
	LeafObject
	BunchObject
	WoodObject
)

// Object is what a part of a picture shows, by its place in the stand: the index of a bunch; of leaves and
// wood the place in the lists of the scene.
type Object struct {
	Kind  Kind
	Index int32
}

// colour is the even colour of an object, another one for each.
func (o Object) colour() rgb {
	code := uint32(o.Kind)<<20 | uint32(o.Index)
	return rgb{float32(code>>16&255) / 255, float32(code>>8&255) / 255, float32(code&255) / 255}
}

// dye gives all quads the colours of their objects. What one sees through and is no object, as lines on a drawing, goes.
func (l *List) dye() {
	for i, o := range l.objects {
		c, alpha := o.colour(), float32(1)
		if o.Kind == NoObject && l.Vertices[4*i].A < 1 {
			alpha = 0
		}
		for k := range 4 {
			v := &l.Vertices[4*i+k]
			v.R, v.G, v.B, v.A = c[0], c[1], c[2], alpha
		}
	}
}

// paintObject lays an even quad over a picture wherever the nearest texel is opaque.
func paintObject(to, atlas *image.RGBA, q *[4]Vertex) {
	if q[0].A == 0 {
		return
	}
	colour := color.RGBA{uint8(q[0].R*255 + 0.5), uint8(q[0].G*255 + 0.5), uint8(q[0].B*255 + 0.5), 255}
	for _, t := range [2][3]*Vertex{{&q[0], &q[1], &q[2]}, {&q[1], &q[3], &q[2]}} {
		scan(to.Rect, t[0], t[1], t[2], func(x, y int, wa, wb, wc float32) {
			u := clampInt(int(t[0].U*wa+t[1].U*wb+t[2].U*wc), atlas.Rect.Dx())
			v := clampInt(int(t[0].V*wa+t[1].V*wb+t[2].V*wc), atlas.Rect.Dy())
			if atlas.Pix[atlas.PixOffset(u, v)+3] >= opaqueTexel {
				to.SetRGBA(x, y, colour)
			}
		})
	}
}

// objectOf is the object that an item shows.
func (s *Scene) objectOf(it *item) Object {
	switch it.kind {
	case berryItem:
		return Object{BunchObject, s.bunches.berry[it.level][it.index].face / 2}
	case farBunchItem, dustItem:
		return Object{BunchObject, it.index}
	case woodItem:
		return Object{WoodObject, it.index}
	case netItem:
		return Object{} // one sees through it
	default:
		return Object{LeafObject, it.index}
	}
}

// own says whose the quads are that were written last.
func (e *emitter) own(o Object) {
	for len(e.objects) < len(e.vertices)/4 {
		e.objects = append(e.objects, o)
	}
}

// opaque is the share of cover from which a texel hides what is behind it.
const opaque = 0.5

// opaqueTexel is the least such cover as texels hold it.
const opaqueTexel = 128

// Bunch is the bunch at a pixel of the list that was composed last, or near it, and −1 where none is. Leaves
// that are drawn solid hide it.
func (l *List) Bunch(x, y float32, atlas *Atlas) int {
	var near []int // quads around the place, the nearest to the eye first
	for i := l.quads - 1; i >= 0; i-- {
		if q := (*[4]Vertex)(l.Vertices[4*i:]); l.objects[i].Kind != NoObject && q[0].A >= opaque && touches(q, x, y, tapReach) {
			near = append(near, i)
		}
	}
	for _, by := range tapNear {
		for _, i := range near {
			if !covers((*[4]Vertex)(l.Vertices[4*i:]), x+by[0], y+by[1], atlas) {
				continue
			} else if o := l.objects[i]; o.Kind == BunchObject {
				return int(o.Index)
			}
			break
		}
	}
	return -1
}

// touches reports whether the box around a quad comes nearer to a place than so many pixels.
func touches(q *[4]Vertex, x, y, reach float32) bool {
	return min(q[0].X, q[1].X, q[2].X, q[3].X) <= x+reach && max(q[0].X, q[1].X, q[2].X, q[3].X) >= x-reach &&
		min(q[0].Y, q[1].Y, q[2].Y, q[3].Y) <= y+reach && max(q[0].Y, q[1].Y, q[2].Y, q[3].Y) >= y-reach
}

const tapReach = 12 // [px]

// tapNear are the places around a tap that are looked at, nearest first [px]: a finger is wider than a berry.
var tapNear = [...][2]float32{{0, 0}, {4, 0}, {-4, 0}, {0, 4}, {0, -4}, {7, 7}, {-7, 7}, {7, -7}, {-7, -7}, {12, 0}, {-12, 0}, {0, 12}, {0, -12}}

// covers reports whether a quad hides what is behind it at a place.
func covers(q *[4]Vertex, x, y float32, atlas *Atlas) bool {
	left, right := min(q[0].X, q[1].X, q[2].X, q[3].X), max(q[0].X, q[1].X, q[2].X, q[3].X)
	if x < left || x > right {
		return false
	}
	for _, t := range [2][3]*Vertex{{&q[0], &q[1], &q[2]}, {&q[1], &q[3], &q[2]}} {
		a, b, c := t[0], t[1], t[2]
		area := (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
		if area == 0 {
			continue
		}
		wb := ((x-a.X)*(c.Y-a.Y) - (y-a.Y)*(c.X-a.X)) / area
		wc := ((b.X-a.X)*(y-a.Y) - (b.Y-a.Y)*(x-a.X)) / area
		wa := 1 - wb - wc
		if wa < 0 || wb < 0 || wc < 0 {
			continue
		}
		texel := filtered(atlas.Image, a.U*wa+b.U*wb+c.U*wc, a.V*wa+b.V*wb+c.V*wc)
		return texel[3] >= opaque*255
	}
	return false
}
