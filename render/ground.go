package render

import "image"

// groundImage holds what the ground needs per place, for one period along the row (x of the image)
// and one row spacing across (y), at full size and in smaller sizes below each other, and beside them
// a tile of noise for grass and soil. Red is the share in the sun, green the share of the sky.
type groundImage struct{ pixels *image.RGBA }

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
		to := g.pixels.Pix[g.pixels.PixOffset(0, row):][:4*mapAlong]
		for u := range mapAlong {
			to[4*u+1], to[4*u+3] = uint8(min(share, 1)*255+0.5), 255
		}
	}
	for level := 1; level < groundLevels; level++ {
		g.halve(level, 4)
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
func (g *groundImage) shade(m *sunMap, pace func() error) error {
	soft := m.softened()
	var columns [mapAlong]struct{ low, high, share int }
	for u := range columns {
		c := &columns[u]
		c.low, c.high, c.share = between(u, mapAlong, m.along)
	}
	for v := range mapAcross {
		if v%32 == 0 {
			if err := pace(); err != nil {
				return err
			}
		}
		lowLine, highLine, down := between(v, mapAcross, m.across)
		upper, lower := soft[lowLine*m.along:][:m.along], soft[highLine*m.along:][:m.along]
		to := g.pixels.Pix[g.pixels.PixOffset(0, v):][:4*mapAlong]
		for u := range columns {
			c := &columns[u]
			above := int(upper[c.low])*(16-c.share) + int(upper[c.high])*c.share
			below := int(lower[c.low])*(16-c.share) + int(lower[c.high])*c.share
			to[4*u] = uint8((above*(16-down) + below*down) >> 8)
		}
	}
	for level := 1; level < groundLevels; level++ {
		if err := pace(); err != nil {
			return err
		}
		g.halve(level, 1)
	}
	return nil
}

// between finds the two texels of a coarser line around the middle of a finer texel, and the weight
// of the second in sixteenths.
func between(fine, fineCount, count int) (low, high, share int) {
	// Places in units of half a fine texel of the coarser line, 16 parts each.
	place := (2*fine+1)*count*8/fineCount - 8
	low = place >> 4
	return low & (count - 1), (low + 1) & (count - 1), place & 15
}

// softened is how far each texel of the ground is in the sun, 0–255, blurred over its neighbours. The map
// keeps the answer until it is asked again.
func (m *sunMap) softened() []uint8 {
	m.soft, m.blurred = resized(m.soft, len(m.owner)), resized(m.blurred, len(m.owner))
	if !m.lit {
		clear(m.soft)
		return m.soft
	}
	for line := 0; line < len(m.soft); line += m.along {
		owners, to := m.owner[line:line+m.along], m.blurred[line:line+m.along] // 0–4
		before, here := free(owners[m.along-1]), free(owners[0])
		for u := range to {
			after := free(owners[(u+1)&(len(owners)-1)])
			to[u] = before + 2*here + after
			before, here = here, after
		}
	}
	last := len(m.soft) - 1
	for i := range m.soft {
		before, after := m.blurred[(i-m.along)&last], m.blurred[(i+m.along)&last]
		m.soft[i] = uint8(int(before+2*m.blurred[i]+after) * 255 / 16)
	}
	return m.soft
}

// free is 1 for a texel with nothing over it.
func free(owner int32) uint8 {
	if owner == noOwner {
		return 1
	}
	return 0
}

// halve makes the first few colours of one size from the size above.
func (g *groundImage) halve(level, colours int) {
	fromY, _, _ := groundLevel(level - 1)
	toY, w, h := groundLevel(level)
	for y := range h {
		a := g.pixels.Pix[g.pixels.PixOffset(0, fromY+2*y):]
		b := g.pixels.Pix[g.pixels.PixOffset(0, fromY+2*y+1):]
		to := g.pixels.Pix[g.pixels.PixOffset(0, toY+y):]
		for x := range w {
			for c := range colours {
				to[4*x+c] = uint8((int(a[8*x+c]) + int(a[8*x+4+c]) + int(b[8*x+c]) + int(b[8*x+4+c]) + 2) / 4)
			}
		}
	}
}
