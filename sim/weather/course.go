// Package weather gives the course of one day at a site: air temperature, dew point, wind, sunlight,
// sky longwave and the sun, from the extremes of a design day or from 24 measured hours; and it
// reads the weather files that such hours come from.
package weather

import (
	"math"
	"time"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
	"rowlight/sim/sun"
)

// regionalAlbedo is the share of sunlight that the land around sends back to the sky [1]: a vineyard
// measured 0.20, bare soil 0.17, crops 0.25 (MESOKLIP radiation study; Monteith 1959). The sky
// returns a tenth of it at most, so that the floor of the vineyard itself changes nothing here.
const regionalAlbedo = 0.20

// Instant is the weather at one moment.
type Instant struct {
	Hour_h               float64      // clock hour of local standard time [h]
	Air_C                float64      // at screen height [°C]
	Dew_C                float64      // dew point at screen height, never above Air_C [°C]
	Wind_ms              float64      // at 10 m above open ground [m/s]
	WindFrom_deg         float64      // clockwise from true north [deg, 0 ≤ direction < 360]
	sky.Irradiance                    // GHI, DNI, DHI [W/m²]; 0 with the sun below the horizon
	Longwave_Wm2         float64      // from the sky on the horizontal [W/m²]
	Sun                  sun.Position // true and geometric
	Extraterrestrial_Wm2 float64      // outside the atmosphere, on a plane that faces the sun [W/m²]
}

// Series is the weather of one day.
type Series struct {
	Instants []Instant  // in the order of the hours asked for
	Events   sun.Events // rise, transit and set
	Midnight time.Time  // 00:00 of the day on the clock of the site; hour h is h hours later
	// Unplaced_Wh is the sunlight of the measured hours that stands where the sun is down or too
	// low for it, beam and diffuse together [W h/m²]. A few are twilight; many tell of a wrong clock
	// or place.
	Unplaced_Wh float64
}

// ClockHour is the hour of a moment on the clock of the day [h]; below 0 or above 24 on a
// neighbouring day.
func (s Series) ClockHour(t time.Time) float64 { return t.Sub(s.Midnight).Hours() }

// Course gives the weather of the scenario's day at clock hours 0 to 24, the same day repeating
// before and after, so that hour 24 joins hour 0. An error is always a Fault: of the date, the
// number of hours, or, on a design day, of a sun that does not both rise and set
// ("fault.polar-day", "fault.polar-night", "fault.short-day").
func Course(s scenario.Scenario, hours []float64) (Series, error) {
	d, err := newDay(s)
	if err != nil {
		return Series{}, err
	}
	curve, err := d.curve(s.Weather)
	if err != nil {
		return Series{}, err
	}
	series := Series{Instants: make([]Instant, len(hours)), Events: d.events, Midnight: d.midnight}
	if rows, ok := curve.(*measured); ok {
		series.Unplaced_Wh = rows.unplaced_Wh
	}
	for i, hour := range hours {
		series.Instants[i] = d.instant(curve, hour)
	}
	return series, nil
}

// curve gives what changes with the kind of the day.
type curve interface {
	air(hour float64) (air_C, dew_C float64)
	wind(hour float64) (speed_ms, from_deg float64)
	light(hour float64, at sun.Position) sky.Irradiance
	longwave(hour, air_C, dew_C float64) float64
}

func (d day) instant(c curve, hour float64) Instant {
	at := d.sunAt(hour)
	air, dew := c.air(hour)
	dew = math.Min(dew, air) // air holds no more than saturation
	speed, from := c.wind(hour)
	return Instant{
		Hour_h:               hour,
		Air_C:                air,
		Dew_C:                dew,
		Wind_ms:              speed,
		WindFrom_deg:         from,
		Irradiance:           c.light(hour, at),
		Longwave_Wm2:         c.longwave(hour, air, dew),
		Sun:                  at,
		Extraterrestrial_Wm2: d.extraterrestrial_Wm2,
	}
}

// day is a date at a site.
type day struct {
	site                 scenario.Site
	midnight             time.Time
	events               sun.Events
	extraterrestrial_Wm2 float64
}

func newDay(s scenario.Scenario) (day, error) {
	date, err := time.Parse(time.DateOnly, s.Weather.Date)
	if err != nil {
		return day{}, scenarioFault("fault.date", "/weather/date", map[string]any{"value": s.Weather.Date})
	}
	if year := date.Year(); year < scenario.FirstYear || year > scenario.LastYear {
		return day{}, scenarioFault("fault.year", "/weather/date", map[string]any{
			"value": s.Weather.Date, "min": scenario.FirstYear, "max": scenario.LastYear})
	}
	return day{
		site:                 s.Site,
		midnight:             sun.Midnight(date, s.Site.UTCOffset_h),
		events:               sun.DayOf(s.Site.Latitude_deg, s.Site.Longitude_deg, date, s.Site.UTCOffset_h),
		extraterrestrial_Wm2: sun.ExtraterrestrialNormal(date.YearDay()),
	}, nil
}

// curve chooses the measured hours where there are any, else the design day.
func (d day) curve(w scenario.Weather) (curve, error) {
	if len(w.Hours) == 0 {
		return d.newDesign(w)
	}
	return d.newMeasured(w)
}

func (d day) sunAt(hour float64) sun.Position {
	return sun.At(d.site.Latitude_deg, d.site.Longitude_deg, d.midnight.Add(time.Duration(hour*float64(time.Hour))))
}

// clearSky is the light of a cloudless sky under a sun.
func (d day) clearSky(at sun.Position, a sky.Atmosphere) sky.Irradiance {
	return sky.Bird(90-at.Elevation_deg, d.extraterrestrial_Wm2, a)
}

// wrap brings an hour into 0 ≤ hour < 24.
func wrap(hour float64) float64 {
	wrapped := math.Mod(hour, 24)
	if wrapped < 0 {
		wrapped += 24
	}
	if wrapped >= 24 { // a tiny negative hour rounds up
		return 0
	}
	return wrapped
}
