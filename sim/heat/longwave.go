package heat

// stefanBoltzmann is σ [W/m²/K⁴], CODATA 2018 (exact).
const stefanBoltzmann = 5.670374419e-8

// Emitted is the longwave of a black surface, σT⁴ [W/m²].
func Emitted(temperature_C float64) float64 {
	t := temperature_C + kelvin
	return stefanBoltzmann * t * t * t * t
}

// radiativeCoefficient is h_r = 4εσT³ [W/m²/K] at the mean of two temperatures: the longwave that
// a body at one loses over the one at the other is h_r times their difference, within (ΔT/2T)².
func radiativeCoefficient(emissivity, a_C, b_C float64) float64 {
	t := (a_C+b_C)/2 + kelvin
	return 4 * emissivity * stefanBoltzmann * t * t * t
}

// Longwave is the longwave that a skin absorbs from its surroundings minus what it would emit at
// air temperature [W/m²]: ε(Σ view·flux − σT⁴).
//
// The views are the shares of what an element sees that are sky, floor and leaves; in a full
// surrounding they sum to 1 on every element (Mean 1, Vector 0). The fluxes are those leaving a
// plane of each surrounding; for the sky it is the downward longwave. The result is zero where
// everything is black and at air temperature. What the skin emits for being warmer than the air is
// not in it: Berry adds that.
func Longwave(skyView, floorView, leafView Broad, sky_Wm2, floor_Wm2, leaf_Wm2, air_C, emissivity float64) Broad {
	incoming := skyView.Scale(sky_Wm2).Add(floorView.Scale(floor_Wm2)).Add(leafView.Scale(leaf_Wm2))
	incoming.Mean -= Emitted(air_C)
	return incoming.Scale(emissivity)
}
