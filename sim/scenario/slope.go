package scenario

import "math"

// Rise is how much the ground rises per metre across rows, toward their right side, and along them [m/m]. The aspect
// is the way downhill; on level ground both are 0.
func (s Site) Rise(rows Rows) (across, along float64) {
	rise := -math.Tan(s.Slope_deg * math.Pi / 180)
	sin, cos := math.Sincos((s.Aspect_deg - rows.Azimuth_deg) * math.Pi / 180)
	return rise * sin, rise * cos
}
