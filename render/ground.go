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
	soft := m.softened()
	column := func(u int) (low, high, share int) { return between(u, mapAlong, m.along) }
	for v := range mapAcross {
		lowLine, highLine, down := between(v, mapAcross, m.across)
		upper, lower := soft[lowLine*m.along:][:m.along], soft[highLine*m.along:][:m.along]
		to := g.pixels.Pix[g.pixels.PixOffset(0, v):][:4*mapAlong]
		for u := range mapAlong {
			low, high, right := column(u)
			above := int(upper[low])*(16-right) + int(upper[high])*right
			below := int(lower[low])*(16-right) + int(lower[high])*right
			to[4*u], to[4*u+1], to[4*u+3] = uint8((above*(16-down)+below*down)>>8), g.sky[v], 255
		}
	}
	for level := 1; level < groundLevels; level++ {
		g.halve(level)
	}
}

// between finds the two texels of a coarser line around the middle of a finer texel, and the weight
// of the second in sixteenths.
func between(fine, fineCount, count int) (low, high, share int) {
	// Places in units of half a fine texel of the coarser line, 16 parts each.
	place := (2*fine+1)*count*8/fineCount - 8
	low = place >> 4
	return low & (count - 1), (low + 1) & (count - 1), place & 15
}

// softened is how far each texel of the ground is in the sun, 0–255, blurred over its neighbours.
func (m *sunMap) softened() []uint8 {
	soft := make([]uint8, len(m.owner))
	if !m.lit {
		return soft
	}
	clear := func(i int) uint8 {
		if m.owner[i] == noOwner {
			return 1
		}
		return 0
	}
	lines := make([]uint8, len(m.owner)) // blurred along, 0–4
	for line := 0; line < len(soft); line += m.along {
		before, here := clear(line+m.along-1), clear(line)
		for u := range m.along {
			after := clear(line + (u+1)&(m.along-1))
			lines[line+u] = before + 2*here + after
			before, here = here, after
		}
	}
	last := len(soft) - 1
	for i := range soft {
		before, after := lines[(i-m.along)&last], lines[(i+m.along)&last]
		soft[i] = uint8(int(before+2*lines[i]+after) * 255 / 16)
	}
	return soft
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
