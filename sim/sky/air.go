package sky

import (
	"math"

	"rowlight/sim/internal/exp"
)

// The equations of this file are those of Allen, Pereira, Raes & Smith 1998, FAO Irrigation and
// Drainage Paper 56 (FAO-56), by their numbers.

// Pressure is the mean air pressure [Pa] at an elevation above sea level [m], FAO-56 eq. 7.
func Pressure(elevation_m float64) float64 {
	return 101300 * math.Pow((293-0.0065*elevation_m)/293, 5.26)
}

// SaturationPressure is the vapour pressure [Pa] over a flat water surface at a temperature [°C],
// FAO-56 eq. 11; within 0.15 % of Wagner & Pruss from 0 to 45 °C, undercooled water below 0 °C.
func SaturationPressure(air_C float64) float64 {
	return 610.8 * exp.Of(17.27*air_C/(air_C+237.3))
}

// DewPoint is the temperature [°C] at which a vapour pressure [Pa, above 0] saturates, FAO-56
// eq. 11 turned round.
func DewPoint(vapour_Pa float64) float64 {
	x := math.Log(vapour_Pa / 610.8)
	return 237.3 * x / (17.27 - x)
}

// SaturationSlope is the slope of the saturation vapour pressure [Pa/K] at a temperature
// [°C], FAO-56 eq. 13.
func SaturationSlope(air_C float64) float64 {
	return 4098 * SaturationPressure(air_C) / ((air_C + 237.3) * (air_C + 237.3))
}

// Psychrometric is the psychrometric constant [Pa/K] at an air pressure [Pa], FAO-56 eq. 8.
func Psychrometric(pressure_Pa float64) float64 {
	return 0.665e-3 * pressure_Pa
}

// DewPointFromHumidity is the dew point [°C] of air at a temperature [°C] and relative humidity
// [%, above 0], FAO-56 eq. 10 and 11.
func DewPointFromHumidity(air_C, humidity_pct float64) float64 {
	return DewPoint(SaturationPressure(air_C) * humidity_pct / 100)
}
