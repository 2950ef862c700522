package heat

import (
	"math"

	"rowlight/sim/sky"
)

// skinConductance is how fast water vapour passes the skin of a berry [m/s]: some 20 mg of water leave a ripe
// berry of 14 mm a day in air that lacks 2 kPa, from memory. Skins leak more before veraison.
const skinConductance = 6e-5

// Evaporation is how the air takes water from skins: what is the same for all berries of an instant.
type Evaporation struct {
	perPascal float64 // latent heat per vapour pressure lacking [W/m²/Pa]
	vapour_Pa float64 // in the air
}

// NewEvaporation is that of the air around berries.
func NewEvaporation(around Around) Evaporation {
	air := AirAt(around.Air_C, around.Pressure_Pa)
	gamma := sky.Psychrometric(pressureScale(around.Pressure_Pa) * atmosphere)
	return Evaporation{
		perPascal: air.Density * air.HeatCapacity_JkgK / gamma * skinConductance,
		vapour_Pa: sky.SaturationPressure(math.Min(around.Dew_C, around.Air_C)),
	}
}

// SkinLatent is the latent heat that leaves the skin of a berry at a mean temperature [W/m²], at least 0. Between
// 0 and 10 W/m² in the day is the range that the energy balances of berries allow (Millar 1972, AJEV 23:173: latent
// heat is a small part).
func (e Evaporation) SkinLatent(mean_C float64) float64 {
	if lacking := sky.SaturationPressure(mean_C) - e.vapour_Pa; lacking > 0 {
		return e.perPascal * lacking
	}
	return 0
}
