//go:build !js

package sim_test

import "testing"

// misses are the published facts that the chain misses, with what it gives instead. A miss that grows, or is cured,
// fails its test: then it must be looked at.
var misses = map[string]struct {
	given, margin float64
	why           string
}{
	"single curtain: daylight heat sum, west over east": {
		0.990, 0.012,
		"wind rises through a design day and cools the west side more; the abstract names no wind",
	},
	"E–W rows: south over north at noon": {
		1.2, 0.5,
		"the source compares fruit at equal PAR, whose physics alone give about 1 K; here all fruit of either side is compared",
	},
	"ripening, south: E–W over the better diagonal": {
		1.112, 0.05,
		"the sun stands lower in the last weeks and reaches the equator side of E–W rows; the trial measured one season, and the two lie within the draw of the bunches",
	},
	"net of 0.8: skins in the sun": {
		-9.47, 0.5,
		"the pole of a skin feels all of the beam that a net stops; whole berries fall by 5.8 K, and the sources do not say where they measured",
	},
	"exposed early: cut of the fruit at risk": {
		0.81, 0.08,
		"a fixed shift of T50 by hardening spares nearly all fruit on days that only just burn; on days of 34 °C it is 46 %",
	},
}

// published holds a number to what was published, or to the known miss.
func published(t *testing.T, fact string, got, low, high float64) {
	t.Helper()
	inside := got >= low && got <= high
	miss, known := misses[fact]
	switch {
	case !known && !inside:
		t.Errorf("%s: %.3f, published %g to %g", fact, got, low, high)
	case known && inside:
		t.Errorf("%s: %.3f, published %g to %g: a known miss is cured, take it off the table", fact, got, low, high)
	case known && (got < miss.given-miss.margin || got > miss.given+miss.margin):
		t.Errorf("%s: %.3f, published %g to %g: the known miss of %.3f has moved", fact, got, low, high, miss.given)
	default:
		t.Logf("%s: %.3f, published %g to %g", fact, got, low, high)
	}
}
