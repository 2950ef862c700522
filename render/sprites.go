package render

import (
	"image"
	"math"
)

// fromSquare turns a place in the square picture of a leaf (0–1 right and down) into a place on the
// blade; the tip points up and the centroid is in the middle.
func (s *leafShape) fromSquare(u, v float64) (x, y float64) {
	return (2*u - 1) * float64(s.reach), (1-2*v)*float64(s.reach) + float64(s.centroid)
}

// drawLeaf draws the brightness of one blade with a soft margin. Both halves are alike.
func drawLeaf(s *leafShape, side int, pace func() error) (*image.RGBA, error) {
	picture := image.NewRGBA(image.Rect(0, 0, side, side))
	texel := 2 * float64(s.reach) / float64(side)
	for j := range side {
		if err := pace(); err != nil {
			return nil, err
		}
		for i := range side / 2 {
			x, y := s.fromSquare((float64(i)+0.5)/float64(side), (float64(j)+0.5)/float64(side))
			cover := coverage(s, x, y, texel)
			if cover == 0 {
				continue
			}
			// The margin curls away from the light.
			rim := 1 - 0.16*(1-smooth(0, 0.06, s.inside(x, y)))
			mottle := 0.05 * (latticeNoise(x*9, y*9, 64, 64, 31) - 0.5)
			put(picture, i, j, (s.relief(x, y)+mottle)*rim, cover)
			copy(picture.Pix[picture.PixOffset(side-1-i, j):], picture.Pix[picture.PixOffset(i, j):][:4])
		}
	}
	return picture, nil
}

// coverage is the share of a texel inside the margin, from 3 × 3 samples where the margin is near.
func coverage(s *leafShape, x, y, texel float64) float64 {
	if d := s.inside(x, y); d > 3*texel {
		return 1
	} else if d < -3*texel && x*x+y*y > 9*texel*texel {
		return 0
	}
	hits := 0
	for j := range 3 {
		for i := range 3 {
			if s.inside(x+(float64(i)-1)*texel/3, y+(float64(j)-1)*texel/3) > 0 {
				hits++
			}
		}
	}
	return float64(hits) / 9
}

// put writes a grey texel, premultiplied.
func put(p *image.RGBA, x, y int, brightness, alpha float64) {
	to := p.Pix[p.PixOffset(x, y):]
	alpha = min(max(alpha, 0), 1)
	grey := uint8(min(max(brightness, 0), 1)*alpha*255 + 0.5)
	to[0], to[1], to[2], to[3] = grey, grey, grey, uint8(alpha*255+0.5)
}

const (
	clumpKinds  = 2
	clumpLeaves = 10
	// clumpSide is the side of a clump in sides of one of its leaves.
	clumpSide = 2.9
	// clumpCovers is how many leaves of the stand one clump stands for: it covers as much of the view
	// as they would, overlap included.
	clumpCovers = 7.5
)

// drawClump lays several leaves over each other: far away one quad stands for them all.
func drawClump(kind int, leaves []picture) *image.RGBA {
	const side = 128
	clump := image.NewRGBA(image.Rect(0, 0, side, side))
	half := float32(side / clumpSide / 2)
	for i := range clumpLeaves {
		angle := 2 * math.Pi * hashUnit(uint64(kind), uint64(i), 1)
		away := (side/2 - float64(half)*1.1) * math.Sqrt(float64(i)+0.5) / math.Sqrt(clumpLeaves)
		turn := float64(i)*2.4 + 1.3*float64(kind) // golden angle: the clump is round and even
		sin, cos := math.Sincos(angle)
		shine := float32(0.62 + 0.5*hashUnit(uint64(kind), uint64(i), 2))
		leaf := leaves[6*(i%leafShapes)+2].pixels // the 64 px size
		corner := func(a, b float64) Vertex {
			return Vertex{
				X: side/2 + float32(away*math.Cos(turn)) + half*float32(a*cos-b*sin),
				Y: side/2 + float32(away*math.Sin(turn)) + half*float32(a*sin+b*cos),
				U: float32(leaf.Rect.Dx()) * float32(a+1) / 2, V: float32(leaf.Rect.Dy()) * float32(b+1) / 2,
				R: shine, G: shine, B: shine, A: 1,
			}
		}
		paintQuad(clump, leaf, [4]Vertex{corner(-1, -1), corner(1, -1), corner(-1, 1), corner(1, 1)})
	}
	return clump
}

// berryLights is the number of pictures of a lit berry, by the angle between the sun and the view.
// In all of them the light comes from the top of the picture; the quad is turned to the sun.
const berryLights = 5

// berryLight is the part of the direction to the sun that points at the viewer, for one picture.
func berryLight(i int) float64 { return 0.95 - 1.75*float64(i)/(berryLights-1) }

// drawBerry draws a sphere under the sun with its bloom and a small highlight.
func drawBerry(side int, toViewer float64) *image.RGBA {
	up := math.Sqrt(1 - toViewer*toViewer)
	return drawSphere(side, func(x, y, z float64) float64 {
		cos := y*up + z*toViewer
		light := 0.56 + 0.34*max((cos+0.25)/1.25, 0) + 0.03*z
		shine := max(2*cos*z-toViewer, 0) // towards the viewer of the mirrored sun
		if cos <= 0 {
			shine = 0
		}
		return light + 0.3*math.Pow(shine, 24)
	})
}

// drawShadedBerry draws a sphere under an even sky.
func drawShadedBerry(side int) *image.RGBA {
	return drawSphere(side, func(x, y, z float64) float64 { return 0.58 + 0.2*z })
}

func drawSphere(side int, brightness func(x, y, z float64) float64) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, side, side))
	radius := float64(side)/2 - 1
	for j := range side {
		for i := range side {
			x, y := (float64(i)+0.5-float64(side)/2)/radius, (float64(side)/2-float64(j)-0.5)/radius
			r := math.Sqrt(x*x + y*y)
			if alpha := (1-r)*radius + 0.5; alpha > 0 {
				z := math.Sqrt(max(1-r*r, 0))
				rim := 0.86 + 0.14*smooth(0, 0.45, z)
				put(picture, i, j, brightness(x, y, z)*rim, alpha)
			}
		}
	}
	return picture
}

// drawStrip draws a piece of round wood seen from the side, lit evenly: across is −1 … 1, along 0 … 1.
func drawStrip(surface func(across, along float64) float64) *image.RGBA {
	const w, h = 32, 64
	picture := image.NewRGBA(image.Rect(0, 0, w, h))
	for j := range h {
		for i := range w {
			across := (float64(i) + 0.5 - w/2) / (w/2 - 1)
			alpha := (1-math.Abs(across))*(w/2-1) + 0.5
			put(picture, i, j, surface(across, (float64(j)+0.5)/h), alpha)
		}
	}
	return picture
}

// roundness darkens the rims of a round piece of wood.
func roundness(across float64) float64 { return 0.72 + 0.28*math.Sqrt(max(1-across*across, 0)) }

// bark has long shreds that run along the wood.
func bark(across, along float64) float64 {
	bend := math.Asin(min(max(across, -1), 1)) / math.Pi // shreds crowd at the rims
	shreds := latticeNoise(bend*26, along*4, 64, 4, 32)
	fibres := latticeNoise(bend*60, along*16, 128, 16, 33)
	return roundness(across) * (0.42 + 0.5*shreds*(0.6+0.4*fibres) + 0.1*fibres)
}

func smoothWood(across, along float64) float64 {
	return roundness(across) * (0.86 + 0.05*latticeNoise(across*4, along*8, 16, 8, 34))
}

// sawnWood has fine grain and a few checks.
func sawnWood(across, along float64) float64 {
	grain := latticeNoise(across*14, along*2, 64, 2, 35)
	return (0.9 + 0.1*roundness(across)) * (0.66 + 0.2*grain + 0.08*latticeNoise(across*40, along*8, 128, 8, 36))
}

// drawEven is an even opaque surface.
func drawEven(side int) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, side, side))
	for j := range side {
		for i := range side {
			put(picture, i, j, evenTexel, 1)
		}
	}
	return picture
}
