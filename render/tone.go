package render

import "math"

// rgb is a colour: linear light before the tone curve, display values 0–1 after it.
type rgb [3]float32

func (c rgb) times(d rgb) rgb          { return rgb{c[0] * d[0], c[1] * d[1], c[2] * d[2]} }
func (c rgb) scaled(f float32) rgb     { return rgb{c[0] * f, c[1] * f, c[2] * f} }
func (c rgb) plus(d rgb) rgb           { return rgb{c[0] + d[0], c[1] + d[1], c[2] + d[2]} }
func (c rgb) mix(d rgb, f float32) rgb { return c.scaled(1 - f).plus(d.scaled(f)) }

// luminance is the brightness of linear light by ITU-R BT.709.
func (c rgb) luminance() float32 { return 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2] }

// displayGamma stands for the sRGB transfer curve; the shader of the screen uses the same power.
const displayGamma = 2.2

// filmic bends linear light into 0–1 with a soft shoulder and a short toe: the curve of Narkowicz
// 2015, "ACES filmic tone mapping curve" (a fit published for free use).
func filmic(x float32) float32 {
	x = max(x, 0)
	return min(x*(2.51*x+0.03)/(x*(2.43*x+0.59)+0.14), 1)
}

const (
	toneTop    = 8          // brighter light is white
	toneBottom = 1.0 / 2048 // darker light goes evenly to black
	toneShift  = 23 - 8     // each doubling of light has 256 steps
	toneFirst  = 0x3a000000 >> toneShift
	toneSteps  = 14<<8 + 1
)

// toneTable holds display values at steps of light that follow its number: the exponent and the leading
// bits. A step is under a hundredth of the light, half a step of 8 bits on the display.
type toneTable [toneSteps]float32

func newToneTable() *toneTable {
	var t toneTable
	for i := range t {
		x := math.Float32frombits(uint32(toneFirst+i)<<toneShift | 1<<(toneShift-1))
		t[i] = float32(math.Pow(float64(filmic(x)), 1/displayGamma))
	}
	t[toneSteps-1] = 1
	return &t
}

// at is the display value of linear light.
func (t *toneTable) at(x float32) float32 {
	if !(x > toneBottom) {
		if x > 0 {
			return t[0] * x / toneBottom
		}
		return 0
	}
	return t[min(math.Float32bits(x)>>toneShift-toneFirst, toneSteps-1)]
}

func (t *toneTable) colour(c rgb) rgb { return rgb{t.at(c[0]), t.at(c[1]), t.at(c[2])} }
