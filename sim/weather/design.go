package weather

import (
	"math"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
	"rowlight/sim/sun"
)

// The parameters of Parton & Logan 1981 for air at 150 cm; their a, the lag of the warmest moment
// behind the middle of the day curve, is the scenario's (1.86 h with them).
const (
	nightDecay = 2.20  // b: how fast the night cools [1]
	minLag_h   = -0.17 // c: lag of the coldest moment behind sunrise [h]
)

// The daily course of the wind is an assumption: one cosine about the mean of the day. Its size is
// that of summer days at an inland station, where afternoons blow some 1.3 times and nights some
// 0.7 times the mean.
const (
	windSwing = 0.35 // amplitude against the mean [1]
	windLag_h = 3    // strongest wind after the transit of the sun [h]
)

// design is a clear day by its extremes.
type design struct {
	day        day
	weather    scenario.Weather
	atmosphere sky.Atmosphere
	coldest_h  float64 // clock hour of the coldest moment [h]
	daylight_h float64 // from sunrise to sunset [h]
	toSunset_h float64 // from the coldest moment to sunset [h]
	sunset_C   float64 // air temperature at sunset [°C]
	windiest_h float64 // clock hour of the strongest wind [h]
}

// newDesign lays the curves of a design day over the true rise and set of the sun. They need a sun
// that rises and sets, and a day long enough for the warmest moment to come before sunset.
func (d day) newDesign(w scenario.Weather) (*design, error) {
	if d.events.Polar != "" {
		return nil, d.siteFault("fault.polar-"+d.events.Polar, nil)
	}
	daylight_h := d.events.Set.Sub(d.events.Rise).Hours()
	// On the shortest day the warmest moment would fall on sunset.
	if shortest_h := 2 * (w.AirMaxLag_h + minLag_h); daylight_h < shortest_h {
		return nil, d.siteFault("fault.short-day", map[string]any{"daylight_h": daylight_h, "min": shortest_h})
	}
	c := &design{
		day:     d,
		weather: w,
		atmosphere: sky.Atmosphere{
			Ozone_cm: w.Ozone_cm, Water_cm: w.Water_cm, AOD380: w.AOD380, AOD500: w.AOD500,
			Pressure_Pa: sky.Pressure(d.site.Elevation_m), Albedo: regionalAlbedo,
		},
		coldest_h:  d.events.Rise.Sub(d.midnight).Hours() + minLag_h,
		daylight_h: daylight_h,
		toSunset_h: daylight_h - minLag_h,
		windiest_h: d.events.Transit.Sub(d.midnight).Hours() + windLag_h,
	}
	c.sunset_C = c.dayCurve(c.toSunset_h)
	return c, nil
}

// siteFault is a fault of a site and date at which the sun does not make a day.
func (d day) siteFault(code string, values map[string]any) Fault {
	if values == nil {
		values = map[string]any{}
	}
	values["latitude_deg"] = d.site.Latitude_deg
	values["date"] = d.midnight.Format("2006-01-02")
	return scenarioFault(code, "/site/latitude_deg", values)
}

// dayCurve is the air temperature [°C] some hours after the coldest moment, until sunset: Parton &
// Logan 1981, the truncated sine of the day.
func (c *design) dayCurve(after_h float64) float64 {
	swing := c.weather.AirMax_C - c.weather.AirMin_C
	return c.weather.AirMin_C + swing*math.Sin(math.Pi*after_h/(c.daylight_h+2*c.weather.AirMaxLag_h))
}

// nightCurve is the air temperature [°C] some hours after sunset, until the next coldest moment:
// the exponential of Parton & Logan 1981, drawn out so that it ends at the minimum (Goudriaan & van
// Laar 1994), where the published one stops a tenth of the fall above it.
func (c *design) nightCurve(after_h float64) float64 {
	night_h := 24 - c.toSunset_h
	end := math.Exp(-nightDecay)
	left := (math.Exp(-nightDecay*after_h/night_h) - end) / (1 - end)
	return c.weather.AirMin_C + (c.sunset_C-c.weather.AirMin_C)*left
}

func (c *design) air(hour float64) (air_C, dew_C float64) {
	after_h := wrap(hour - c.coldest_h)
	if after_h <= c.toSunset_h {
		return c.dayCurve(after_h), c.weather.DewPoint_C
	}
	return c.nightCurve(after_h - c.toSunset_h), c.weather.DewPoint_C
}

func (c *design) wind(hour float64) (speed_ms, from_deg float64) {
	swing := windSwing * math.Cos(2*math.Pi*(hour-c.windiest_h)/24)
	return c.weather.Wind_ms * (1 + swing), math.Mod(c.weather.WindFrom_deg, 360)
}

func (c *design) light(_ float64, at sun.Position) sky.Irradiance {
	return c.day.clearSky(at, c.atmosphere)
}

func (c *design) longwave(_, air_C, dew_C float64) float64 { return sky.Brutsaert(air_C, dew_C) }
