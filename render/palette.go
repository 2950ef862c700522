package render

import "math"

// Palette is a perceptual colour scale: display colours at equal steps, read with linear interpolation.
type Palette struct{ stops []rgb }

// The stops are every 15th of the 256 colours of the scales "inferno" and "viridis" by S. van der
// Walt and N. Smith 2015 (matplotlib, released under CC0). Interpolation is within 6/255 of them.
var (
	infernoHex = [...]uint32{
		0x000004, 0x0a0722, 0x1e0c45, 0x380962, 0x510e6c, 0x69166e, 0x801f6c, 0x982766, 0xb0315b,
		0xc63d4d, 0xd94d3d, 0xe9612b, 0xf47918, 0xfa9407, 0xfcb014, 0xf8cd37, 0xf2ea69, 0xfcffa4,
	}
	viridisHex = [...]uint32{
		0x440154, 0x481769, 0x472a7a, 0x433d84, 0x3d4e8a, 0x355e8d, 0x2e6d8e, 0x297b8e, 0x23898e,
		0x1f978b, 0x21a585, 0x2eb37c, 0x46c06f, 0x65cb5e, 0x89d548, 0xb0dd2f, 0xd8e219, 0xfde725,
	}
)

// The readable part of inferno: its black end is lost in the shade of the canopy and its pale end in
// the highlights of the berries.
const (
	TemperatureFrom = 0.2
	TemperatureTo   = 0.95
)

// TemperaturePalette is inferno cut to its readable part.
func TemperaturePalette() Palette {
	return newPalette(infernoHex[:]).cut(TemperatureFrom, TemperatureTo)
}

// LightPalette is viridis.
func LightPalette() Palette { return newPalette(viridisHex[:]) }

func newPalette(hex []uint32) Palette {
	p := Palette{stops: make([]rgb, len(hex))}
	for i, h := range hex {
		p.stops[i] = rgb{float32(h>>16&255) / 255, float32(h>>8&255) / 255, float32(h&255) / 255}
	}
	return p
}

func (p Palette) cut(from, to float64) Palette {
	c := Palette{stops: make([]rgb, len(p.stops))}
	for i := range c.stops {
		c.stops[i] = p.at(from + (to-from)*float64(i)/float64(len(c.stops)-1))
	}
	return c
}

// At is the display colour at a share of the scale, each part 0–1. Shares outside 0–1 take the end colour.
func (p Palette) At(share float64) (r, g, b float32) {
	c := p.at(share)
	return c[0], c[1], c[2]
}

func (p Palette) at(share float64) rgb {
	last := float64(len(p.stops) - 1)
	place := min(max(share, 0), 1) * last
	i := min(int(place), len(p.stops)-2)
	return p.stops[i].mix(p.stops[i+1], float32(place-float64(i)))
}

// Scale maps temperatures to shares of a palette.
type Scale struct{ Min_C, Max_C float64 }

// Share is the place of a temperature on the scale; NaN stays NaN. A scale without width puts every
// temperature in its middle.
func (s Scale) Share(t_C float64) float64 {
	if s.Max_C <= s.Min_C {
		if math.IsNaN(t_C) {
			return t_C
		}
		return 0.5
	}
	return (t_C - s.Min_C) / (s.Max_C - s.Min_C)
}
