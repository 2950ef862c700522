package cover

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rowlight/sim/scenario"
)

// More net never lets more of the direct sun through, from any side, and no net makes light.
func TestMoreNetNeverLetsMoreSunThrough(t *testing.T) { rapid.Check(t, netsKeepToPhysics) }

func netsKeepToPhysics(t *rapid.T) {
	colour := rapid.SampledFrom([]scenario.ClothColour{scenario.BlackCloth, scenario.WhiteCloth}).Draw(t, "colour")
	less := rapid.Float64Range(0, 0.9).Draw(t, "shade")
	more := rapid.Float64Range(less, 0.95).Draw(t, "more shade")
	height, turn := rapid.Float64Range(0, math.Pi/2).Draw(t, "height"), rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")
	normal, first, second := math.Sin(height), math.Cos(height)*math.Cos(turn), math.Cos(height)*math.Sin(turn)
	open, closed := Of(less, colour), Of(more, colour)
	if closed.Direct(normal, first, second) > open.Direct(normal, first, second)+1e-12 {
		t.Fatalf("a net of %g lets more sun through than one of %g", more, less)
	}
	for _, c := range []Cloth{open, closed} {
		direct, scattered := c.Direct(normal, first, second), c.Scattered(normal, first, second)
		if !(direct >= 0 && scattered >= 0 && direct+scattered <= 1+1e-12) {
			t.Fatalf("a net of %g: %g passes, %g is scattered", c.Shade, direct, scattered)
		}
	}
}
