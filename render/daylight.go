package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"
)

// Instant is the sun and the sky at one moment of the day.
type Instant struct {
	Hour             float64 // clock [h, 0–24]
	SunAzimuth_deg   float64 // true, clockwise from true north
	SunElevation_deg float64 // true, geometric
	DNI_Wm2          float64 // direct normal irradiance
	DHI_Wm2          float64 // diffuse horizontal irradiance
}

// daylight is the light of an instant in the row frame, in units in which full sun on a white surface
// is about 1 after exposure.
type daylight struct {
	sun      mgl32.Vec3 // unit vector to the sun
	beam     rgb        // irradiance square to the sun
	sky      rgb        // irradiance on the horizontal
	zenith   rgb        // radiance of the sky overhead
	horizon  rgb        // radiance of the sky at the horizon, away from the sun
	glow     rgb        // radiance added around the sun
	haze     rgb        // radiance of the air between eye and far things
	exposure float32    // already inside the colours above
	roof     roofLight  // what a net over all rows has left of beam and sky
}

// Looks, not measurements: they were set by eye on the pictures.
const (
	fullBeam_Wm2    = 850.0 // beam that counts as full sun
	fullSky_Wm2     = 110.0 // diffuse light that goes with it
	skyShare        = 0.30  // of the light on a level surface that comes from the sky then; the true 0.13 drowns the shade
	nightShare      = 0.018 // sky light that is left at night, so that the rows can still be made out
	darkestLevel    = 0.045 // light below which the exposure rises no more
	lowestSun_deg   = 2.0   // below it the sun makes no shadows that can be seen
	exposureSoft    = 0.62  // 1 would hide the difference between noon and evening, 0 would leave dusk black
	exposureAtFull  = 1.08
	beamAtZenithSun = 1.0
)

// newDaylight makes the light of an instant for rows of the given direction.
func newDaylight(now Instant, rowAzimuth_deg float64) daylight {
	sin, cos := math.Sincos(now.SunElevation_deg * math.Pi / 180)
	x, y := rowFromCompass(now.SunAzimuth_deg, rowAzimuth_deg)
	d := daylight{sun: mgl32.Vec3{float32(cos * x), float32(cos * y), float32(sin)}, roof: roofLight{direct: 1, even: 1}}

	// Strength
	beam := max(now.DNI_Wm2, 0) / fullBeam_Wm2
	if now.SunElevation_deg <= 0 {
		beam = 0
	}
	sky := max(now.DHI_Wm2, 0)/fullSky_Wm2*skyShare + nightShare
	level := beam*math.Max(sin, 0.35) + sky
	d.exposure = float32(exposureAtFull / math.Pow(max(level, darkestLevel), exposureSoft))

	// Colour
	warm := sunColour(now.SunElevation_deg)
	low := float32(math.Exp(-math.Max(now.SunElevation_deg, 0) / 9)) // 1 at the horizon
	day := float32(smooth(-7, 4, now.SunElevation_deg))
	d.beam = warm.scaled(float32(beam*beamAtZenithSun) * d.exposure)
	blue := rgb{0.72, 0.95, 1.33}.mix(rgb{1.02, 0.97, 1.05}, 0.5*low)
	d.sky = blue.scaled(float32(sky) * d.exposure)

	// Sky dome
	dome := float32(min(sky, 0.6)*0.9+0.004) * d.exposure * (0.14 + 0.86*day)
	d.zenith = rgb{0.26, 0.70, 2.05}.scaled(dome * 0.92)
	d.horizon = rgb{1.65, 2.15, 2.65}.mix(rgb{2.1, 1.5, 1.15}, 0.8*low*day).scaled(dome)
	d.glow = warm.scaled(float32(math.Sqrt(beam)) * 0.55 * d.exposure)
	d.haze = d.horizon.mix(warm.scaled(d.horizon.luminance()), 0.25)
	return d
}

// casts reports whether the sun stands high enough to throw shadows.
func (d *daylight) casts() bool {
	return d.beam.luminance() > 0 && d.sun[2] > float32(math.Sin(lowestSun_deg*math.Pi/180))
}

// sunColour is the colour of the beam with luminance 1: a longer way through the air takes the blue
// away. The optical depths are rounded means over the red, green and blue of a display (molecules and
// light haze), good for the look.
func sunColour(elevation_deg float64) rgb {
	e := max(elevation_deg, 0)
	mass := 1 / (math.Sin(e*math.Pi/180) + 0.50572*math.Pow(e+6.07995, -1.6364)) // Kasten & Young 1989
	c := rgb{
		float32(math.Exp(-0.050 * mass)), float32(math.Exp(-0.095 * mass)), float32(math.Exp(-0.190 * mass)),
	}
	c = c.plus(rgb{0.02, 0.012, 0.004})
	return c.scaled(1 / c.luminance())
}

// smooth goes from 0 at a to 1 at b without corners.
func smooth(a, b, x float64) float64 {
	t := min(max((x-a)/(b-a), 0), 1)
	return t * t * (3 - 2*t)
}
