package heat

import (
	"math"

	"rowlight/sim/sky"
)

// skinConductance is how fast water vapour passes the skin of a berry [m/s]: some 20 mg of water leave a ripe
// berry of 14 mm a day in air that lacks 2 kPa, from memory. Skins leak more before veraison.
const skinConductance = 6e-5

// SkinLatent is the latent heat that leaves the skin of a berry at a mean temperature [W/m²], at least 0. Between
// 0 and 10 W/m² in the day is the range that the energy balances of berries allow (Millar 1972, AJEV 23:173: latent
// heat is a small part).
func SkinLatent(mean_C float64, around Around) float64 {
	air := AirAt(around.Air_C, around.Pressure_Pa)
	lacking := sky.SaturationPressure(mean_C) - sky.SaturationPressure(math.Min(around.Dew_C, around.Air_C))
	gamma := sky.Psychrometric(pressureScale(around.Pressure_Pa) * atmosphere)
	return math.Max(air.Density*air.HeatCapacity_JkgK/gamma*skinConductance*lacking, 0)
}
