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
	lines := [3][]uint8{make([]uint8, mapAlong), make([]uint8, mapAlong), make([]uint8, mapAlong)}
	m.softened(mapAcross-1, lines[0])
	m.softened(0, lines[1])
	for v := range mapAcross {
		m.softened((v+1)&(mapAcross-1), lines[2])
		to := g.pixels.Pix[g.pixels.PixOffset(0, v):][:4*mapAlong]
		before, here, after := lines[0], lines[1], lines[2]
		for u := range before {
			lit := (int(before[u]) + 2*int(here[u]) + int(after[u])) * 255 / 16
			to[4*u], to[4*u+1], to[4*u+3] = uint8(lit), g.sky[v], 255
		}
		lines[0], lines[1], lines[2] = lines[1], lines[2], lines[0]
	}
	for level := 1; level < groundLevels; level++ {
		g.halve(level)
	}
}

// softened writes how clear each texel of a line is, in quarters, its neighbours in the line counted in.
func (m *sunMap) softened(line int, to []uint8) {
	owners := m.owner[line*mapAlong:][:mapAlong]
	clear := func(owner int32) uint8 {
		if m.lit && owner == noOwner {
			return 1
		}
		return 0
	}
	before, here := clear(owners[mapAlong-1]), clear(owners[0])
	for u := range owners {
		after := clear(owners[(u+1)&(mapAlong-1)])
		to[u] = before + 2*here + after
		before, here = here, after
	}
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
