// Package sun gives the place of the sun in the sky, its rising and setting, and the sunlight that
// reaches the top of the atmosphere.
//
// Directions are in the world frame: x east, y north, z up. Azimuths run clockwise from true north.
// Elevations are true and geometric: without refraction, which lifts a sun on the horizon by about 0.57°.
package sun

import (
	"math"
	"time"

	"github.com/go-gl/mathgl/mgl64"
	"github.com/sixdouglas/suncalc"
)

// Position is a place in the sky.
type Position struct {
	Elevation_deg float64 // above the horizontal, true and geometric [deg, -90 – 90]
	Azimuth_deg   float64 // clockwise from true north [deg, 0 ≤ azimuth < 360]; any value where the sun stands in the zenith
}

// At is the position of the sun at an instant, seen from a latitude [deg, positive north] and
// longitude [deg, positive east].
//
// Accuracy: within 0.03° of NREL's SPA (Reda & Andreas 2008) in elevation and in azimuth·cos(elevation)
// for the years 2020 to 2030; the error grows slowly outside. Years 1678 to 2262 only, the range of
// nanoseconds in 64 bits.
func At(latitude_deg, longitude_deg float64, t time.Time) Position {
	shift_d, turn_deg := correction(daysSinceJ2000(t))
	low := suncalc.GetPosition(t.Add(time.Duration(shift_d*float64(day))), latitude_deg, longitude_deg+turn_deg)
	// The library counts azimuth from south, positive to the west, in radians.
	return Position{
		Elevation_deg: low.Altitude * degPerRad,
		Azimuth_deg:   math.Mod(low.Azimuth*degPerRad+180+360, 360),
	}
}

const (
	day       = 24 * time.Hour
	degPerRad = 180 / math.Pi
)

// j2000 is the standard epoch J2000.0, 2000-01-01 12:00; taken in UTC, 64 s from dynamical time,
// in which the sun moves 0.0007°.
var j2000 = time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)

func daysSinceJ2000(t time.Time) float64 { return t.Sub(j2000).Hours() / 24 }

// correction makes up for the precession, aberration and sidereal time that suncalc leaves out, by
// asking it for another moment and another meridian. At d days since J2000.0 it gives the shift of
// the moment [d] that brings the library's ecliptic longitude to the apparent one of date, and the
// turn of the meridian [deg] that brings its sidereal angle to the true one.
func correction(d float64) (shift_d, turn_deg float64) {
	const (
		motion = 0.98560028 // mean motion in anomaly that suncalc uses [deg/d]
		// Constant of aberration of the sun, Meeus 1998, ch. 25 [deg].
		aberration = 0.00569
	)
	// Mean longitude of date, Meeus 1998, eq. 25.2 (36000.76983°/century), against
	// 357.5291° + 102.9372° + 180° of suncalc.
	meanLongitude := 280.46646 + 0.98564736*d - aberration
	shift_d = (meanLongitude - (280.4663 + motion*d)) / motion
	// Sidereal time at Greenwich, Meeus 1998, eq. 12.4, against the one of suncalc.
	turn_deg = (280.46062 + 360.98564737*d) - (280.16 + 360.9856235*(d+shift_d))
	return shift_d, turn_deg
}

// Vector is the unit vector to the position in the world frame: x east, y north, z up.
func (p Position) Vector() mgl64.Vec3 {
	sinE, cosE := sinCosDeg(p.Elevation_deg)
	sinA, cosA := sinCosDeg(p.Azimuth_deg)
	return mgl64.Vec3{cosE * sinA, cosE * cosA, sinE}
}

// InRow turns a world vector into the row frame of rows with the given azimuth [deg]: y along the
// row to that azimuth, x across it to azimuth + 90°, z up.
func InRow(world mgl64.Vec3, rowAzimuth_deg float64) mgl64.Vec3 {
	sin, cos := sinCosDeg(rowAzimuth_deg)
	return mgl64.Vec3{
		world[0]*cos - world[1]*sin,
		world[0]*sin + world[1]*cos,
		world[2],
	}
}

// sinCosDeg are sine and cosine of an angle [deg], exact at multiples of 90° and symmetric about
// them to the last digit, so that a vineyard mirrored about north stays an exact mirror image.
func sinCosDeg(angle_deg float64) (sin, cos float64) {
	// Half way between, the even quarter is the same on both sides of north.
	quarter := math.RoundToEven(angle_deg / 90)
	sin, cos = math.Sincos((angle_deg - 90*quarter) / degPerRad)
	switch int(math.Mod(quarter, 4)+4) % 4 {
	case 1:
		return cos, -sin
	case 2:
		return -sin, -cos
	case 3:
		return -cos, sin
	default:
		return sin, cos
	}
}
