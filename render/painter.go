package render

import (
	"image"
	"math"
)

// Vertex is one corner of a quad as both back ends take it: pixel of the pane, pixel of the atlas,
// and a colour whose factors are straight (not premultiplied). The layout is the one that the screen
// library uses, so that lists pass to it without a copy.
type Vertex struct {
	X, Y       float32 // [px of the pane]
	U, V       float32 // [px of the atlas]
	R, G, B, A float32
	_          [4]float32
}

// paintQuad blends one textured quad into a picture. Corners come as upper left, upper right, lower
// left, lower right of the texture; texture and colour run straight across each of the two triangles,
// as on the screen.
func paintQuad(to, atlas *image.RGBA, q [4]Vertex) {
	paintTriangle(to, atlas, &q[0], &q[1], &q[2])
	paintTriangle(to, atlas, &q[1], &q[3], &q[2])
}

func paintTriangle(to, atlas *image.RGBA, a, b, c *Vertex) {
	scan(to.Rect, a, b, c, func(x, y int, wa, wb, wc float32) {
		texel := filtered(atlas, a.U*wa+b.U*wb+c.U*wc, a.V*wa+b.V*wb+c.V*wc)
		alpha := a.A*wa + b.A*wb + c.A*wc
		blend(to.Pix[to.PixOffset(x, y):], texel, [4]float32{
			alpha * (a.R*wa + b.R*wb + c.R*wc), alpha * (a.G*wa + b.G*wb + c.G*wc), alpha * (a.B*wa + b.B*wb + c.B*wc), alpha,
		})
	})
}

// scan visits the pixels of a triangle inside a rectangle with the weights of its corners.
func scan(inside image.Rectangle, a, b, c *Vertex, visit func(x, y int, wa, wb, wc float32)) {
	area := (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
	if area == 0 || area != area {
		return
	}
	left := max(int(math.Floor(float64(min(a.X, b.X, c.X)))), inside.Min.X)
	right := min(int(math.Ceil(float64(max(a.X, b.X, c.X)))), inside.Max.X-1)
	top := max(int(math.Floor(float64(min(a.Y, b.Y, c.Y)))), inside.Min.Y)
	bottom := min(int(math.Ceil(float64(max(a.Y, b.Y, c.Y)))), inside.Max.Y-1)
	for y := top; y <= bottom; y++ {
		for x := left; x <= right; x++ {
			px, py := float32(x)+0.5, float32(y)+0.5
			wb := ((px-a.X)*(c.Y-a.Y) - (py-a.Y)*(c.X-a.X)) / area
			wc := ((b.X-a.X)*(py-a.Y) - (b.Y-a.Y)*(px-a.X)) / area
			wa := 1 - wb - wc
			if owns(wa, b, c, area) && owns(wb, c, a, area) && owns(wc, a, b, area) {
				visit(x, y, wa, wb, wc)
			}
		}
	}
}

// owns decides for a pixel by its weight against one edge; a pixel right on the edge belongs to one
// side only, so that neighbours neither overlap nor leave a seam.
func owns(weight float32, from, to *Vertex, area float32) bool {
	if weight != 0 {
		return weight > 0
	}
	dx, dy := to.X-from.X, to.Y-from.Y
	if area < 0 {
		dx, dy = -dx, -dy
	}
	return dy < 0 || dy == 0 && dx > 0
}

// filtered is the linear blend of the four texels around a place, 0–255 and premultiplied.
func filtered(p *image.RGBA, u, v float32) [4]float32 {
	u, v = u-0.5, v-0.5
	x, y := math.Floor(float64(u)), math.Floor(float64(v))
	fx, fy := u-float32(x), v-float32(y)
	x0, x1 := clampInt(int(x), p.Rect.Dx()), clampInt(int(x)+1, p.Rect.Dx())
	y0, y1 := clampInt(int(y), p.Rect.Dy()), clampInt(int(y)+1, p.Rect.Dy())
	a, b := p.Pix[p.PixOffset(x0, y0):], p.Pix[p.PixOffset(x1, y0):]
	c, d := p.Pix[p.PixOffset(x0, y1):], p.Pix[p.PixOffset(x1, y1):]
	var out [4]float32
	for i := range 4 {
		upper := float32(a[i])*(1-fx) + float32(b[i])*fx
		lower := float32(c[i])*(1-fx) + float32(d[i])*fx
		out[i] = upper*(1-fy) + lower*fy
	}
	return out
}

func clampInt(i, size int) int { return min(max(i, 0), size-1) }

// blend lays a texel times a premultiplied colour over a pixel.
func blend(pixel []uint8, texel, colour [4]float32) {
	keep := 1 - texel[3]/255*colour[3]
	for i := range 4 {
		pixel[i] = uint8(min(max(texel[i]*colour[i]+float32(pixel[i])*keep+0.5, 0), 255))
	}
}
