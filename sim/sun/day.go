package sun

import (
	"math"
	"time"
)

// RiseElevation_deg is the true elevation of the centre of the sun at rise and set: 34′ of
// refraction on the horizon and 16′ of radius, the convention of the almanacs.
const RiseElevation_deg = -50.0 / 60

// The values of Events.Polar.
const (
	PolarDay   = "day"   // the sun stays up at least until or since the lower culmination beside the transit
	PolarNight = "night" // the sun does not come up
)

// Events are the rise, transit and set of the sun on one day, in the clock of the site.
type Events struct {
	Rise    time.Time // before the transit; zero in polar day and night
	Transit time.Time // the sun crosses the meridian, always there
	Set     time.Time // after the transit; zero in polar day and night
	Polar   string    // PolarDay, PolarNight, or empty where the sun rises and sets
}

// DayOf gives the events of a date at a place. Only year, month and day of the date are read. The
// clock is local standard time, utcOffset_h hours ahead of UTC; the transit is the one nearest to
// noon on that clock, so that rise and set fall on neighbouring dates where the clock is far from
// the sun.
//
// Accuracy: 60 s against the root of SPA at -0.8333° for latitudes within 65°. A day on which the
// sun comes up or goes down only once counts as polar day.
func DayOf(latitude_deg, longitude_deg float64, date time.Time, utcOffset_h float64) Events {
	elevation := func(t time.Time) float64 {
		return At(latitude_deg, longitude_deg, t).Elevation_deg - RiseElevation_deg
	}
	transit := transitNear(latitude_deg, longitude_deg, Midnight(date, utcOffset_h).Add(day/2))
	before, after := transit.Add(-day/2), transit.Add(day/2)
	switch {
	case elevation(transit) <= 0:
		return Events{Transit: transit, Polar: PolarNight}
	case elevation(before) >= 0 || elevation(after) >= 0:
		return Events{Transit: transit, Polar: PolarDay}
	}
	return Events{
		Rise:    crossing(elevation, before, transit),
		Transit: transit,
		Set:     crossing(elevation, after, transit),
	}
}

// Midnight is 00:00 of a date on the clock that is utcOffset_h hours ahead of UTC. Hour h of the
// clock is Midnight plus h hours.
func Midnight(date time.Time, utcOffset_h float64) time.Time {
	zone := time.FixedZone("", int(math.Round(utcOffset_h*3600)))
	return time.Date(date.Year(), date.Month(), date.Day(), 0, 0, 0, 0, zone)
}

// HourAngle is the angle of the sun west of the meridian [deg, -180 – 180].
func HourAngle(latitude_deg, longitude_deg float64, t time.Time) float64 {
	v := At(latitude_deg, longitude_deg, t).Vector()
	sin, cos := sinCosDeg(latitude_deg)
	// Horizontal to equatorial coordinates: the axis of the Earth stands in the meridian at the
	// latitude above the northern horizon.
	return math.Atan2(-v[0], v[2]*cos-v[1]*sin) * degPerRad
}

// transitNear refines a moment to the nearest transit. The hour angle grows by 360° in a day within
// 0.02 %, so each step leaves at most that share of the last one.
func transitNear(latitude_deg, longitude_deg float64, t time.Time) time.Time {
	for range 4 {
		angle := HourAngle(latitude_deg, longitude_deg, t)
		t = t.Add(-time.Duration(angle / 360 * float64(day)))
	}
	return t
}

// crossing bisects for the moment at which f passes zero between a moment where it is negative and
// one where it is positive, to a hundredth of a second.
func crossing(f func(time.Time) float64, negative, positive time.Time) time.Time {
	for {
		middle := negative.Add(positive.Sub(negative) / 2)
		if positive.Sub(negative).Abs() < 10*time.Millisecond {
			return middle
		}
		if f(middle) < 0 {
			negative = middle
		} else {
			positive = middle
		}
	}
}
