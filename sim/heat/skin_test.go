package heat

import (
	"testing"

	"rowlight/sim/sky"
)

// A berry of 14 mm that loses 20 mg of water a day (from memory) gives off 20e-6 kg · 2.45e6 J/kg over 86,400 s
// and 6.16e-4 m²: 0.92 W/m² on average, in air that lacks 2 kPa in the day and little at night: about 2 W/m².
func TestSkinLatentIsSmall(t *testing.T) {
	dew := sky.DewPoint(sky.SaturationPressure(25) - 2000)
	within(t, "latent heat in air that lacks 2 kPa", NewEvaporation(Around{Air_C: 25, Dew_C: dew}).SkinLatent(25), 1, 3)
	within(t, "latent heat on a hot dry day", NewEvaporation(Around{Air_C: 41, Dew_C: 11}).SkinLatent(48), 3, 15)
}

func TestSkinInDampAirKeepsItsWater(t *testing.T) {
	if got := NewEvaporation(Around{Air_C: 20, Dew_C: 20}).SkinLatent(15); got != 0 {
		t.Errorf("a cool berry in damp air gives off %.3f W/m², want 0: dew is left out", got)
	}
}
