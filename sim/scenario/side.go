package scenario

import (
	"math"
	"slices"
)

// Side is a side of a row in the row frame: Left is negative x, Right is positive x, where x points
// across the row, clockwise of the row azimuth. The right side of a north-south row is its east side.
type Side int

// The two sides of a row.
const (
	Left  Side = 0
	Right Side = 1
)

// Sides lists both sides in the order in which results give them.
var Sides = [2]Side{Left, Right}

// Sign is -1 for Left and +1 for Right.
func (s Side) Sign() float64 { return float64(2*s - 1) }

// SideAzimuth is the compass direction that a side of the row faces [deg, 0–360, from true north].
func (r Rows) SideAzimuth(s Side) float64 {
	azimuth := math.Mod(r.Azimuth_deg+90*s.Sign()+360, 360)
	return azimuth
}

// SunSide names a side of the row by the half of the day in which the sun is on it.
type SunSide string

// The sun sides. A row that runs exactly east-west has no morning and afternoon side: its sides are
// the ones that face the equator and the pole.
const (
	Morning   SunSide = "morning"
	Afternoon SunSide = "afternoon"
	Equator   SunSide = "equator"
	Pole      SunSide = "pole"
)

// SunSideOf names a side of the row on a site at the given latitude [deg]. Rows within 0.5° of
// east-west have an equator and a pole side.
func (r Rows) SunSideOf(s Side, latitude_deg float64) SunSide {
	azimuth := r.SideAzimuth(s)
	switch east := math.Sin(azimuth * math.Pi / 180); {
	case east > math.Sin(0.5*math.Pi/180):
		return Morning
	case east < -math.Sin(0.5*math.Pi/180):
		return Afternoon
	case (math.Cos(azimuth*math.Pi/180) < 0) == (latitude_deg >= 0):
		return Equator
	default:
		return Pole
	}
}

// Removed is the share of fruit-zone leaves pulled on a side of the row. On east-west rows the side
// that faces away from the equator counts as the morning side, since it sees the low early sun.
func (o Option) Removed(s Side, latitude_deg float64) float64 {
	if o.Rows.countsAsMorning(s, latitude_deg) {
		return o.Leaves.RemovedMorning
	}
	return o.Leaves.RemovedAfternoon
}

// WithAfternoonWire is the option with the extra foliage wire of its afternoon side among its wires.
func (o Option) WithAfternoonWire(latitude_deg float64) Option {
	if o.Trellis.AfternoonWire_m <= 0 {
		o.Trellis.AfternoonOut_m = 0
		return o
	}
	side := Left
	if o.Rows.countsAsMorning(side, latitude_deg) {
		side = Right
	}
	wire := Wire{Height_m: o.Trellis.AfternoonWire_m, Offset_m: side.Sign() * o.Trellis.AfternoonOut_m, Role: Foliage}
	o.Trellis.Wires = append(slices.Clone(o.Trellis.Wires), wire)
	o.Trellis.AfternoonWire_m, o.Trellis.AfternoonOut_m = 0, 0
	return o
}

// countsAsMorning tells whether a side is meant where a job names the morning side.
func (r Rows) countsAsMorning(s Side, latitude_deg float64) bool {
	of := r.SunSideOf(s, latitude_deg)
	return of == Morning || of == Pole
}

// compass names the sixteen points, clockwise from north.
var compass = [16]string{
	"north", "north-north-east", "north-east", "east-north-east",
	"east", "east-south-east", "south-east", "south-south-east",
	"south", "south-south-west", "south-west", "west-south-west",
	"west", "west-north-west", "north-west", "north-north-west",
}

// Compass names the nearest of the sixteen compass points of a direction [deg, from true north].
func Compass(azimuth_deg float64) string {
	point := int(math.Round(math.Mod(azimuth_deg, 360)/22.5)+16) % 16
	return compass[point]
}
