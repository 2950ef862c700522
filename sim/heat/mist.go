package heat

import (
	"math"

	"rowlight/sim/sky"
)

// latentHeat_Jkg is what water takes to evaporate at 30 °C (FAO-56 uses 2.45e6 at 20 °C; it falls by 2361 per kelvin,
// Harrison 1963).
const latentHeat_Jkg = 2.43e6

// mistInAir is the share of a mist that evaporates before it lands. Assumption: droplets of 50 to 100 µm in dry air over
// the few metres that they fall; a coarse spray wets more and cools the air less.
const mistInAir = 0.5

// caughtByBerry is the share of what lands on the ground area that wets a skin, per area of skin: a sphere catches
// what falls straight on a quarter of its skin (geometry). That leaves keep some off is left out.
const caughtByBerry = 0.25

// Mist is what a mist takes out of air and fruit when all of it evaporates [W/m²].
type Mist struct {
	Air  float64 // per ground area, in the air between floor and screen
	Skin float64 // per area of berry skin
}

// MistOf is the mist of a rate of water over the ground area [mm/h]; 1 mm/h is 1 kg/m²/h.
func MistOf(rate_mmh float64) Mist {
	latent := rate_mmh / 3600 * latentHeat_Jkg
	return Mist{Air: mistInAir * latent, Skin: (1 - mistInAir) * latent * caughtByBerry}
}

// WetBulb_C is the temperature of air that has taken up all the water that it can evaporate by its own heat: e_s(T) +
// γ·T is that of the air. Dew points above the air are read as the air.
func WetBulb_C(around Around) float64 {
	gamma := sky.Psychrometric(pressureScale(around.Pressure_Pa) * atmosphere)
	whole := sky.SaturationPressure(math.Min(around.Dew_C, around.Air_C)) + gamma*around.Air_C
	t := around.Air_C
	for range 8 { // Newton; the curve bends one way only
		t -= (sky.SaturationPressure(t) + gamma*t - whole) / (sky.SaturationSlope(t) + gamma)
	}
	return t
}

// Moistened is air at a lower temperature that it has reached by evaporating water into it, no lower than its wet bulb;
// what it loses in heat it gains in vapour.
func Moistened(around Around, air_C float64) Around {
	gamma := sky.Psychrometric(pressureScale(around.Pressure_Pa) * atmosphere)
	lower := math.Min(math.Max(air_C, WetBulb_C(around)), around.Air_C)
	vapour := sky.SaturationPressure(math.Min(around.Dew_C, around.Air_C)) + gamma*(around.Air_C-lower)
	around.Air_C, around.Dew_C = lower, math.Min(sky.DewPoint(vapour), lower)
	return around
}

// WetSkin is the latent heat that a wet skin gives off, mean over it [W/m²], at least 0: as much as lands on it
// [W/m²], or as the air takes up. Vapour leaves a wet sphere as heat does (Lewis number taken as 1).
//
// Where the air is the limit it is taken at the temperature toward which the berry goes, so that a step of minutes
// does not overshoot.
func (b *BerryIn) WetSkin(lands_Wm2, mean_C float64, load *Load) float64 {
	if lands_Wm2 <= 0 {
		return 0
	}
	around := b.around
	gamma := sky.Psychrometric(pressureScale(around.Pressure_Pa) * atmosphere)
	convective, radiative := b.exchange(mean_C)
	total, wet := convective+radiative, convective/gamma
	lacking := sky.SaturationPressure(mean_C) - sky.SaturationPressure(math.Min(around.Dew_C, around.Air_C))
	slope := wet * sky.SaturationSlope(mean_C)
	toward := around.Air_C + b.inflow(load)/total
	takes := (wet*lacking + slope*(toward-mean_C)) / (1 + slope/total)
	return math.Min(math.Max(takes, 0), lands_Wm2)
}
