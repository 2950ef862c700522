package render

import (
	"math"
	"testing"
)

// lightness is CIE L* of a display colour (CIE 1976, through the sRGB curve of IEC 61966-2-1).
func lightness(r, g, b float32) float64 {
	linear := func(c float32) float64 {
		if c <= 0.04045 {
			return float64(c) / 12.92
		}
		return math.Pow((float64(c)+0.055)/1.055, 2.4)
	}
	y := 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
	if y > 216.0/24389 {
		return 116*math.Cbrt(y) - 16
	}
	return y * 24389 / 27
}

func TestPalettesGrowLighter(t *testing.T) {
	for name, p := range map[string]Palette{"temperature": TemperaturePalette(), "light": LightPalette()} {
		last := -1.0
		for i := range 201 {
			l := lightness(p.At(float64(i) / 200))
			if l <= last {
				t.Errorf("%s: lightness falls from %g to %g at %d of 200", name, last, l, i)
			}
			last = l
		}
	}
}

// The published colours 0, 128 and 255 of both scales (matplotlib _cm_listed.py, CC0).
func TestPalettesAreThePublishedOnes(t *testing.T) {
	for _, c := range []struct {
		palette Palette
		index   float64
		want    rgb
	}{
		{newPalette(infernoHex[:]), 0, rgb{0.001462, 0.000466, 0.013866}},
		{newPalette(infernoHex[:]), 128, rgb{0.735683, 0.215906, 0.330245}},
		{newPalette(viridisHex[:]), 0, rgb{0.267004, 0.004874, 0.329415}},
		{newPalette(viridisHex[:]), 128, rgb{0.127568, 0.566949, 0.550556}},
		{newPalette(viridisHex[:]), 255, rgb{0.993248, 0.906157, 0.143936}},
	} {
		got := c.palette.at(c.index / 255)
		for k := range 3 {
			if math.Abs(float64(got[k]-c.want[k])) > 6.0/255 {
				t.Errorf("colour %g is %v, published %v", c.index, got, c.want)
			}
		}
	}
}

func TestPaletteKeepsToItsEnds(t *testing.T) {
	p := TemperaturePalette()
	if p.at(-3) != p.at(0) || p.at(7) != p.at(1) {
		t.Error("shares beyond the ends must take the end colours")
	}
	full := newPalette(infernoHex[:])
	for k := range 3 {
		if math.Abs(float64(p.at(0)[k]-full.at(TemperatureFrom)[k])) > 1e-6 || math.Abs(float64(p.at(1)[k]-full.at(TemperatureTo)[k])) > 1e-6 {
			t.Error("the cut does not keep its ends")
		}
	}
}

func TestScale(t *testing.T) {
	s := Scale{Min_C: 20, Max_C: 60}
	if s.Share(20) != 0 || s.Share(60) != 1 || s.Share(30) != 0.25 {
		t.Error("shares of the scale")
	}
	if !math.IsNaN(s.Share(math.NaN())) || !math.IsNaN(Scale{}.Share(math.NaN())) || (Scale{}).Share(30) != 0.5 {
		t.Error("unknown temperatures and empty scales")
	}
}

func TestToneCurve(t *testing.T) {
	tone := newToneTable()
	last := float32(-1)
	for i := range 400 {
		x := float32(i) * 0.02
		y := tone.at(x)
		if y < last || y < 0 || y > 1 {
			t.Fatalf("tone of %g is %g after %g", x, y, last)
		}
		exact := float32(math.Pow(float64(filmic(x)), 1/displayGamma))
		if abs(y-exact) > 0.004 {
			t.Errorf("tone of %g is %g, by its formula %g", x, y, exact)
		}
		last = y
	}
	nan := float32(math.NaN())
	if tone.at(0) != 0 || tone.at(-1) != 0 || tone.at(nan) != 0 || tone.at(1e9) != 1 {
		t.Error("the ends of the tone curve")
	}
}
