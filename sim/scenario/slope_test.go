package scenario

import (
	"math"
	"testing"
)

// Geometry of a plane: a slope of 45° rises one metre per metre against its aspect and not at all across that.
func TestRiseIsThatOfThePlane(t *testing.T) {
	for _, c := range []struct{ slope, aspect, rows, across, along float64 }{
		{0, 90, 30, 0, 0},
		{45, 180, 0, 0, 1},   // falls to the south: up along rows to the north
		{45, 90, 0, -1, 0},   // falls to the east, which is right of rows to the north
		{45, 270, 0, 1, 0},   // falls to the west
		{45, 180, 90, -1, 0}, // right of rows to the east is south, downhill
	} {
		across, along := Site{Slope_deg: c.slope, Aspect_deg: c.aspect}.Rise(Rows{Azimuth_deg: c.rows})
		if math.Abs(across-c.across) > 1e-12 || math.Abs(along-c.along) > 1e-12 {
			t.Errorf("%+v: %g across, %g along", c, across, along)
		}
	}
}
