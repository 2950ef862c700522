package heat

import (
	"math"

	"rowlight/sim/scenario"
)

// FloorKind is what a vineyard floor is to sunlight, longwave, heat and water.
type FloorKind struct {
	Albedo            float64 // share of sunlight sent back, diffuse [0–1]
	Emissivity        float64 // in the longwave [0–1]
	ThermalInertia    float64 // √(conductivity·density·heat capacity) [J/m²/K/s½]
	SurfaceResistance float64 // to water vapour from its surface or leaves by day [s/m]; infinite where nothing evaporates
	Stomata           bool    // whether leaves govern it, and shut at night
}

// FloorOf is the kind by its name in the scenario; an unknown name is bare dry soil.
//
// Albedo: bare 0.17, MESOKLIP radiation study; grass 0.25, Monteith 1959, QJRMS 85; straw 0.30, from
// memory, and ETH Zürich 2014 for stubble; pale 0.48, the whitest mulch of Ham et al. 1993, JASHS
// 118:188; moist soil half-way to the 0.08 of wet dark soil (Oke 1987), assumption.
//
// Emissivity: 0.96 ± 0.02 for soils, dry or moist (Sailor et al. 2008, Energy Build. 40:1246); grass
// 0.97, straw 0.95, pale film or stone 0.92, from memory.
//
// Thermal inertia: dry sandy soil 620, soaked 2550 (Oke 1987, from memory), between them 1500 for moist soil and
// 800 for soil under film or stones; grass and straw insulate: 500 and 200. All but the first are assumptions.
//
// Resistance: 70 s/m is well-watered grass over a day (Allen et al. 1998, FAO-56, eq. 5); 100 for a green mown
// cover that shares its water with vines and 200 for moist soil are assumptions. A cover that has dried
// up is straw.
func FloorOf(name scenario.Floor) FloorKind {
	dry := math.Inf(1)
	switch name {
	case scenario.BareMoist:
		return FloorKind{Albedo: 0.125, Emissivity: 0.96, ThermalInertia: 1500, SurfaceResistance: 200}
	case scenario.MownCover:
		return FloorKind{Albedo: 0.25, Emissivity: 0.97, ThermalInertia: 500, SurfaceResistance: 100, Stomata: true}
	case scenario.Straw:
		return FloorKind{Albedo: 0.30, Emissivity: 0.95, ThermalInertia: 200, SurfaceResistance: dry}
	case scenario.Pale:
		return FloorKind{Albedo: 0.48, Emissivity: 0.92, ThermalInertia: 800, SurfaceResistance: dry}
	}
	return FloorKind{Albedo: 0.17, Emissivity: 0.96, ThermalInertia: 620, SurfaceResistance: dry}
}

// Leaves at night: four times the resistance of day (50 and 200 s/m in the hourly reference evaporation of Allen
// et al. 2006, Agric. Water Manage. 81:1), going over below this sunlight, an assumption.
const (
	nightResistance = 4
	fullyOpen_Wm2   = 200
)

// resistance is that to water vapour under some sunlight [s/m].
func (k FloorKind) resistance(short_Wm2 float64) float64 {
	if !k.Stomata {
		return k.SurfaceResistance
	}
	open := math.Min(math.Max(short_Wm2, 0)/fullyOpen_Wm2, 1)
	return k.SurfaceResistance / mix(1.0/nightResistance, 1, open)
}

// FloorWind_m is the height of the wind that Floor.Step takes: just above the roughness of the ground
// (0.05–0.2 m in Norman, Kustas & Humes 1995, Agric. For. Meteorol. 77:263).
const FloorWind_m = 0.2

// Exchange of a floor between rows with the air over it, g = b·u + c·ΔT^(1/3) [m/s]: Kustas & Norman
// 1999, Agric. For. Meteorol. 94:13, for soil under row crops; coefficients from memory. The second term is
// free convection and stops where the floor is the colder one.
const (
	floorForced = 0.012  // b [1]
	floorFree   = 0.0025 // c [m/s/K^(1/3)]
)

// floorExchange is that conductance, and how it grows with the temperature of the floor.
func floorExchange(over_K, wind_ms float64) (conductance, growth float64) {
	conductance = floorForced * math.Max(wind_ms, 0)
	if over_K > 1e-6 {
		free := floorFree * math.Cbrt(over_K)
		conductance += free
		growth = free / (3 * over_K)
	}
	return conductance, growth
}
