package render

import "image"

// groundImage holds what the ground needs per place, for one period along the row (x of the image)
// and one row spacing across (y), at full size and in smaller sizes below each other, and beside them
// a tile of noise for grass and soil. Red is the share in the sun, green the share of the sky.
type groundImage struct {
	pixels *image.RGBA
	sky    [mapAcross]uint8
}

const (
	groundWidth  = mapAlong
	groundHeight = 2 * mapAcross
	groundLevels = 6
	noiseSide    = 256
	noiseX       = mapAlong / 2 // upper left corner of the noise in the image
	noiseY       = mapAcross
)

func newGroundImage(open *openness, noise *image.RGBA) *groundImage {
	g := &groundImage{pixels: image.NewRGBA(image.Rect(0, 0, groundWidth, groundHeight))}
	for row := range mapAcross {
		share := open.at((float64(row)+0.5)/mapAcross*open.spacing, 0)
		g.sky[row] = uint8(min(share, 1)*255 + 0.5)
	}
	for y := range noiseSide {
		copy(g.pixels.Pix[g.pixels.PixOffset(noiseX, noiseY+y):], noise.Pix[noise.PixOffset(0, y):][:4*noiseSide])
	}
	return g
}

// groundLevel is the corner and size of one size of the shadow map in the image.
func groundLevel(level int) (y, w, h int) {
	y, w, h = 0, mapAlong, mapAcross
	for range level {
		y, w, h = y+h, w/2, h/2
	}
	return y, w, h
}

// shade writes the shadows that the sun throws on the ground, softened by one texel as the disc of
// the sun softens them.
func (g *groundImage) shade(m *sunMap) {
	for v := range mapAcross {
		above, below := (v-1)&(mapAcross-1), (v+1)&(mapAcross-1)
		to := g.pixels.Pix[g.pixels.PixOffset(0, v):]
		for u := range mapAlong {
			before, after := (u-1)&(mapAlong-1), (u+1)&(mapAlong-1)
			var sum int
			if m.lit {
				sum = 4*m.clear(v, u) + 2*(m.clear(v, before)+m.clear(v, after)+m.clear(above, u)+m.clear(below, u)) +
					m.clear(above, before) + m.clear(above, after) + m.clear(below, before) + m.clear(below, after)
			}
			to[4*u], to[4*u+1], to[4*u+2], to[4*u+3] = uint8(sum*255/16), g.sky[v], 0, 255
		}
	}
	for level := 1; level < groundLevels; level++ {
		g.halve(level)
	}
}

// clear is 1 where nothing stands between the sun and a texel of the ground.
func (m *sunMap) clear(v, u int) int {
	if m.owner[v*mapAlong+u] == noOwner {
		return 1
	}
	return 0
}

func (g *groundImage) halve(level int) {
	fromY, _, _ := groundLevel(level - 1)
	toY, w, h := groundLevel(level)
	for y := range h {
		a := g.pixels.Pix[g.pixels.PixOffset(0, fromY+2*y):]
		b := g.pixels.Pix[g.pixels.PixOffset(0, fromY+2*y+1):]
		to := g.pixels.Pix[g.pixels.PixOffset(0, toY+y):]
		for x := range w {
			for c := range 4 {
				to[4*x+c] = uint8((int(a[8*x+c]) + int(a[8*x+4+c]) + int(b[8*x+c]) + int(b[8*x+4+c]) + 2) / 4)
			}
		}
	}
}
