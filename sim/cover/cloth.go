// Package cover holds what is hung or sprayed against the sun: nets as surfaces with angle-dependent transmission,
// diffuse light and wind behind them, and particle films. It knows no weather.
package cover

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
)

// Cloth is a net, seen as two sets of round threads that cross at right angles. The zero value is no cloth.
type Cloth struct {
	Shade    float64 // share of light that the threads stop where it comes straight on [0–1]
	Forward  float64 // share of what they stop that goes on as diffuse light, even over the hemisphere behind [0–1]
	Absorbed float64 // share of what they stop that they take in; the rest goes back [0–1]
}

// threads are what a colour makes of the sunlight that it stops: shares that go on and that it takes in. Assumptions:
// 0.3 sent on is the usual one for light cloth; black threads send little on, pearl ones are made to scatter. What
// is taken in warms the threads by a degree or two and no more.
var threads = map[scenario.ClothColour]struct{ forward, absorbed float64 }{
	scenario.BlackCloth: {0.05, 0.90}, scenario.GreenCloth: {0.15, 0.65},
	scenario.WhiteCloth: {0.30, 0.15}, scenario.PearlCloth: {0.40, 0.10},
}

// Of is the cloth of a shade factor and colour.
func Of(shade float64, colour scenario.ClothColour) Cloth {
	of := threads[colour]
	return Cloth{shade, of.forward, of.absorbed}
}

// ThreadArea is the skin of the threads per area of cloth [m²/m²]: π times what both sets cover, crossings and all.
func (c Cloth) ThreadArea() float64 { return 2 * math.Pi * c.Cover() }

// Cover is the share of a line across one set of threads that lies on them: both sets leave (1−cover)² open.
func (c Cloth) Cover() float64 { return 1 - math.Sqrt(1-c.Shade) }

// Direct is the share of light that goes through between the threads, from the components of its unit direction: along
// the normal of the cloth, and along either set of threads. Seen at an angle threads stand closer together but are as
// thick as before: in the plane across a set, light at the angle a from the normal finds 1 − cover/cos a open. For
// crossed round threads that is exact. Knitted cloth, whose threads run every way, is taken alike [assumption].
// It is 1 − Shade straight on and 0 along the cloth.
func (c Cloth) Direct(normal, first, second float64) float64 {
	if c.Shade <= 0 {
		return 1
	}
	if normal == 0 {
		return 0
	}
	cover := c.Cover()
	across := func(along float64) float64 {
		return math.Max(1-cover*math.Hypot(normal, along)/math.Abs(normal), 0) // a quotient of squares would overflow
	}
	return across(first) * across(second)
}

// Scattered is the share of the same light, on the cloth, that leaves its other side as diffuse light.
func (c Cloth) Scattered(normal, first, second float64) float64 {
	return c.Forward * (1 - c.Direct(normal, first, second))
}

// evenRings and evenSectors are the directions over which Even takes means; the error is below 0.002.
const evenRings, evenSectors = 40, 16

// Even is what becomes of light that falls evenly from a whole hemisphere: the shares that go through between the
// threads and that go on as diffuse light.
func (c Cloth) Even() (direct, scattered float64) {
	for ring := range evenRings {
		// Rings of equal flux: cos² of the angle is even in 0–1.
		square := (float64(ring) + 0.5) / evenRings
		normal, side := math.Sqrt(square), math.Sqrt(1-square)
		for sector := range evenSectors {
			sin, cos := math.Sincos((float64(sector) + 0.5) * math.Pi / 2 / evenSectors)
			direct += c.Direct(normal, side*cos, side*sin) / (evenRings * evenSectors)
		}
	}
	return direct, c.Forward * (1 - direct)
}

// The wind behind a net. Assumption: 0.7 of it is left behind a cloth of shade factor 0.4, in a straight line through
// 1 without cloth, and never less than 0.3.
const (
	windPerShade = 0.75
	leastWind    = 0.3
)

// Wind is the share of the wind that is left behind the cloth.
func (c Cloth) Wind() float64 { return math.Max(1-windPerShade*c.Shade, leastWind) }

// Overhead is the share of light toward a unit vector that goes through a level cloth, in a frame with z up, whose
// threads run along x and y, and the share that goes on as diffuse light. Nothing comes from below.
func (c Cloth) Overhead(toSun mgl64.Vec3) (direct, scattered float64) {
	if toSun[2] <= 0 {
		return 0, 0
	}
	return c.Direct(toSun[2], toSun[0], toSun[1]), c.Scattered(toSun[2], toSun[0], toSun[1])
}
