package sim

import (
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// newDay writes what all options share: the clock, the sun and the air.
func newDay(s scenario.Scenario, hours []float64, course weather.Series) result.Day {
	day := result.Day{
		ModelVersion: result.ModelVersion,
		Name:         s.Name,
		Date:         s.Weather.Date,
		UTCOffset_h:  s.Site.UTCOffset_h,
		Step_min:     step_min,
		Hour:         hours,
		Scenario:     s,
	}
	day.Sun.Polar = course.Events.Polar
	day.Sun.Transit_h = course.ClockHour(course.Events.Transit)
	if day.Sun.Polar == "" {
		day.Sun.Rise_h = course.ClockHour(course.Events.Rise)
		day.Sun.Set_h = course.ClockHour(course.Events.Set)
	}
	for i := range course.Instants {
		at := &course.Instants[i]
		day.Sun.Elevation_deg = append(day.Sun.Elevation_deg, at.Sun.Elevation_deg)
		day.Sun.Azimuth_deg = append(day.Sun.Azimuth_deg, at.Sun.Azimuth_deg)
		day.Air.Temperature_C = append(day.Air.Temperature_C, at.Air_C)
		day.Air.DewPoint_C = append(day.Air.DewPoint_C, at.Dew_C)
		day.Air.Wind_ms = append(day.Air.Wind_ms, at.Wind_ms)
		day.Air.GHI_Wm2 = append(day.Air.GHI_Wm2, at.GHI)
		day.Air.DNI_Wm2 = append(day.Air.DNI_Wm2, at.DNI)
		day.Air.DHI_Wm2 = append(day.Air.DHI_Wm2, at.DHI)
	}
	return day
}
