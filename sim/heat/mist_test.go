package heat

import (
	"math"
	"testing"

	"rowlight/sim/sky"
)

// The wet bulb of air at 35 °C and 40 % humidity is 24.0 °C (psychrometric chart at 1 atm, from memory, within 0.5 K); saturated
// air is its own wet bulb.
func TestWetBulb(t *testing.T) {
	dew := sky.DewPoint(0.4 * sky.SaturationPressure(35))
	if got := WetBulb_C(Around{Air_C: 35, Dew_C: dew}); math.Abs(got-24) > 0.5 {
		t.Errorf("%.2f °C, by the chart 24.0", got)
	}
	if got := WetBulb_C(Around{Air_C: 18, Dew_C: 18}); math.Abs(got-18) > 1e-6 {
		t.Errorf("saturated air of 18 °C has a wet bulb of %.4f", got)
	}
}

// What air loses in heat it gains in vapour, so that its wet bulb stays, and it never goes below that.
func TestMoistenedAirKeepsItsHeat(t *testing.T) {
	air := Around{Air_C: 41, Dew_C: 11}
	bulb := WetBulb_C(air)
	for _, to := range []float64{41, 38, 33, 25, 5} {
		got := Moistened(air, to)
		if math.Abs(got.Air_C-math.Max(to, bulb)) > 1e-9 || math.Abs(WetBulb_C(got)-bulb) > 0.01 || got.Dew_C > got.Air_C {
			t.Errorf("to %.0f °C: air %.3f °C with a dew point of %.3f and a wet bulb of %.3f, before %.3f", to, got.Air_C, got.Dew_C, WetBulb_C(got), bulb)
		}
	}
}

// All water of a mist is accounted for: what the air and the ground area get is the latent heat of the rate. 1 mm/h is 1 kg of
// water on a square metre in an hour: 2.43 MJ over 3600 s, 675 W/m².
func TestMistSpendsItsWater(t *testing.T) {
	m := MistOf(1)
	if total := m.Air + m.Skin/caughtByBerry; math.Abs(total-675) > 0.5 {
		t.Errorf("%.2f W/m² of latent heat, by hand 675", total)
	}
	if (MistOf(0) != Mist{}) {
		t.Error("no water cools")
	}
}

// wetSkin puts a single berry into the air.
func wetSkin(b Berry, lands_Wm2, mean_C float64, load Load, around Around) float64 {
	in := b.In(&around)
	return in.WetSkin(lands_Wm2, mean_C, &load)
}

// A wet skin gives off what lands on it in dry air and less in damp air, and steps of five minutes do not swing about the
// wet bulb.
func TestWetSkin(t *testing.T) {
	b := Berry{Diameter_m: 0.014, Absorptance: 0.7, Emissivity: 0.96, Conductivity: 0.55, Density: 1065, HeatCapacity: 3700}
	dry := Around{Air_C: 38, Dew_C: 10, Wind_ms: 0.5}
	sun := Load{Beam_Wm2: 700}
	if got := wetSkin(b, 60, 42, sun, dry); got != 60 {
		t.Errorf("in dry air %.2f W/m² leave, 60 land", got)
	}
	if got := wetSkin(b, 0, 42, sun, dry); got != 0 {
		t.Errorf("%.2f W/m² leave a dry skin", got)
	}
	damp, mean := Around{Air_C: 30, Dew_C: 29.5, Wind_ms: 0.5}, 35.0
	var steps []float64
	for range 30 {
		load := Load{Transpiration_Wm2: wetSkin(b, 500, mean, Load{}, damp)}
		mean = b.Step(mean, &load, &damp, 300).Mean_C
		steps = append(steps, mean)
	}
	bulb := WetBulb_C(damp)
	if mean < bulb-0.05 || mean > damp.Air_C || math.Abs(steps[29]-steps[28]) > 0.01 {
		t.Errorf("a wet berry in damp air ends at %.3f °C after %.3f, wet bulb %.3f", mean, steps[28], bulb)
	}
}

// A cylinder across the wind at Re 40 has a Nusselt number of 3.4 (Hilpert 1933: 0.911·Re^0.385·Pr^⅓, from memory) within 15 %,
// and a thread without load is as warm as the air.
func TestThread(t *testing.T) {
	hilpert := 0.911 * math.Pow(39, 0.385) * math.Cbrt(0.71)
	if got := churchillBernstein(39, 0.71); math.Abs(got/hilpert-1) > 0.15 {
		t.Errorf("Nu %.3f, Hilpert %.3f", got, hilpert)
	}
	air := Around{Air_C: 30, Wind_ms: 1}
	if got := Thread_C(0, air); got != 30 {
		t.Errorf("a thread in balance stands at %.3f °C", got)
	}
	if still, windy := Thread_C(200, Around{Air_C: 30, Wind_ms: 0.2}), Thread_C(200, Around{Air_C: 30, Wind_ms: 3}); windy >= still || windy <= 30 || still > 34 {
		t.Errorf("under 200 W/m² threads stand at %.2f °C in calm and %.2f in wind", still, windy)
	}
}
