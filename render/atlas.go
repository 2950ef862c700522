package render

import (
	"cmp"
	"image"
	"slices"
)

// Atlas is the one texture that all quads are cut from. Colours are premultiplied; brightness is a
// factor on the colour of the quad, 0.8 standing for an even surface.
type Atlas struct {
	Image *image.RGBA
	tiles [tileCount]tile
	shape [leafShapes]*leafShape
	mask  [leafShapes][maskSide * maskSide]bool // where a blade covers its square, for shadows
	noise *image.RGBA
}

const (
	atlasWidth  = 1024
	atlasHeight = 512
	leafSide    = 256 // of the largest picture of a leaf [px]
	maskSide    = 48
	evenTexel   = 0.8 // brightness of an even surface in the atlas
)

// tileID names a picture of the atlas.
type tileID uint8

const (
	leafTile    tileID = 0 // and the following leafShapes-1
	clumpTile          = tileID(leafShapes)
	berryTile          = clumpTile + clumpKinds // lit berries, light from behind the viewer first
	shadedBerry        = berryTile + berryLights
	barkTile           = shadedBerry + 1
	roundTile          = barkTile + 1 // smooth round wood: shoots, wires
	postTile           = roundTile + 1
	solidTile          = postTile + 1 // even, for fields and lines
	netTile            = solidTile + 1
	meshTile           = netTile + 1  // of a bird net
	dustTile           = meshTile + 1 // of a particle film on a bunch
	tileCount          = dustTile + 1
)

// tile is one picture in several sizes, made by hand from the largest: the back ends have no mips.
type tile struct{ levels []box }

// box is a part of the atlas [px].
type box struct{ x, y, w, h float32 }

// level is the smallest size that still has at least 0.8 texels for each pixel across a quad.
func (t *tile) level(pixels float32) *box {
	for i := len(t.levels) - 1; i > 0; i-- {
		if t.levels[i].w >= 0.8*pixels {
			return &t.levels[i]
		}
	}
	return &t.levels[0]
}

// NewAtlas draws the atlas.
func NewAtlas() *Atlas {
	a, _ := newAtlas(unhurried) // a pace without errors leaves no others
	return a
}

// newAtlas draws the atlas. It calls pace often; an error of pace abandons it.
func newAtlas(pace func() error) (*Atlas, error) {
	a := &Atlas{Image: image.NewRGBA(image.Rect(0, 0, atlasWidth, atlasHeight))}
	var err error
	if a.noise, err = drawGroundNoise(pace); err != nil {
		return nil, err
	}
	var pictures []picture
	for i := range leafShapes {
		a.shape[i] = newLeafShape(lobings[i])
		if err := pace(); err != nil {
			return nil, err
		}
		a.mask[i] = maskOf(a.shape[i])
		leaf, err := drawLeaf(a.shape[i], leafSide, pace)
		if err != nil {
			return nil, err
		}
		pictures = appendMips(pictures, leafTile+tileID(i), leaf, 6)
	}
	for i := range clumpKinds {
		if err := pace(); err != nil {
			return nil, err
		}
		pictures = appendMips(pictures, clumpTile+tileID(i), drawClump(i, pictures[:6*leafShapes]), 5)
	}
	for i := range berryLights {
		if err := pace(); err != nil {
			return nil, err
		}
		pictures = appendMips(pictures, berryTile+tileID(i), drawBerry(64, berryLight(i)), 4)
	}
	for _, tile := range smallTiles {
		if err := pace(); err != nil {
			return nil, err
		}
		pictures = appendMips(pictures, tile.id, tile.draw(), tile.levels)
	}
	return a, a.pack(pictures, pace)
}

// smallTiles are the tiles that there is one of: how each is drawn, and in how many sizes.
var smallTiles = []struct {
	id     tileID
	levels int
	draw   func() *image.RGBA
}{
	{shadedBerry, 4, func() *image.RGBA { return drawShadedBerry(64) }},
	{barkTile, 4, func() *image.RGBA { return drawStrip(bark) }},
	{roundTile, 4, func() *image.RGBA { return drawStrip(smoothWood) }},
	{postTile, 4, func() *image.RGBA { return drawStrip(sawnWood) }},
	{netTile, 4, func() *image.RGBA { return drawWeave(128) }},
	{meshTile, 4, func() *image.RGBA { return drawMesh(128) }},
	{dustTile, 3, func() *image.RGBA { return drawDust(64) }},
	{solidTile, 1, func() *image.RGBA { return drawEven(8) }},
}

// picture is one size of one tile on its way into the atlas.
type picture struct {
	id     tileID
	pixels *image.RGBA
}

func appendMips(list []picture, id tileID, largest *image.RGBA, levels int) []picture {
	for range levels {
		list = append(list, picture{id, largest})
		largest = halved(largest)
	}
	return list
}

// pack lays the pictures out in shelves, tallest first, with a free texel around each.
func (a *Atlas) pack(pictures []picture, pace func() error) error {
	slices.SortStableFunc(pictures, func(p, q picture) int {
		return cmp.Compare(q.pixels.Rect.Dy(), p.pixels.Rect.Dy())
	})
	x, y, shelf := 0, 0, 0
	for _, p := range pictures {
		if err := pace(); err != nil {
			return err
		}
		w, h := p.pixels.Rect.Dx(), p.pixels.Rect.Dy()
		if x+w > atlasWidth {
			x, y, shelf = 0, y+shelf, 0
		}
		if y+h > atlasHeight {
			panic("render: the pictures do not fit into the atlas")
		}
		for row := range h {
			from := p.pixels.Pix[p.pixels.PixOffset(0, row):][:4*w]
			copy(a.Image.Pix[a.Image.PixOffset(x, y+row):], from)
		}
		// Half a texel inside, so that linear filtering stays off the neighbours.
		a.tiles[p.id].levels = append(a.tiles[p.id].levels, box{float32(x) + 0.5, float32(y) + 0.5, float32(w) - 1, float32(h) - 1})
		x, shelf = x+w, max(shelf, h)
	}
	return pace()
}

func maskOf(s *leafShape) (mask [maskSide * maskSide]bool) {
	for j := range maskSide {
		for i := range maskSide {
			x, y := s.fromSquare((float64(i)+0.5)/maskSide, (float64(j)+0.5)/maskSide)
			mask[j*maskSide+i] = s.inside(x, y) > 0
		}
	}
	return mask
}

// halved is a picture at half size; premultiplied colours may be averaged as they are.
func halved(p *image.RGBA) *image.RGBA {
	w, h := max(p.Rect.Dx()/2, 1), max(p.Rect.Dy()/2, 1)
	half := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			a, b := p.Pix[p.PixOffset(2*x, 2*y):], p.Pix[p.PixOffset(2*x, 2*y+1):]
			to := half.Pix[half.PixOffset(x, y):]
			for c := range 4 {
				to[c] = uint8((int(a[c]) + int(a[c+4]) + int(b[c]) + int(b[c+4]) + 2) / 4)
			}
		}
	}
	return half
}
