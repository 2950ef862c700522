// Package heat turns light and weather into temperatures: air, wind and floor around the fruit,
// the convection of a sphere, and the energy balance of a berry with conduction inside it.
//
// It is pure functions and small structs in float64; nothing here allocates while time runs. All
// temperatures are °C unless the name says _K, all fluxes W/m² of surface.
package heat

import "sort"

// kelvin is 0 °C in K (exact, SI).
const kelvin = 273.15

// gravity is the acceleration of free fall [m/s²]; the value that the reference tables used.
const gravity = 9.81

// atmosphere is the standard atmosphere [Pa] that the air table holds for (exact, SI).
const atmosphere = 101325.0

// Air is dry air at one temperature and pressure.
type Air struct {
	Density             float64 // [kg/m³]
	Conductivity        float64 // [W/m/K]
	Viscosity           float64 // dynamic [kg/m/s]
	KinematicViscosity  float64 // [m²/s]
	Prandtl             float64 // [1]
	ThermalDiffusivity  float64 // [m²/s]
	HeatCapacity_JkgK   float64 // at constant pressure [J/kg/K]
	AbsoluteTemperature float64 // [K]
}

// airRow is one temperature of the air table at 1 atm.
type airRow struct{ density, heatCapacity, conductivity, viscosity, kinematic, diffusivity, prandtl float64 }

// The air table, −50 to 80 °C: Cengel & Ghajar, Heat and Mass Transfer, Table A-15 (1 atm).
// Conductivities of Incropera & DeWitt's table are 2.5 % higher; tests name their table.
var (
	airTemperatures = [19]float64{-50, -40, -30, -20, -10, 0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80}
	airRows         = [19]airRow{
		{1.5820, 999, 0.01979, 1.474e-5, 9.319e-6, 1.252e-5, 0.7440},
		{1.5140, 1002, 0.02057, 1.527e-5, 1.008e-5, 1.356e-5, 0.7436},
		{1.4510, 1004, 0.02134, 1.579e-5, 1.087e-5, 1.465e-5, 0.7425},
		{1.3940, 1005, 0.02211, 1.630e-5, 1.169e-5, 1.578e-5, 0.7408},
		{1.3410, 1006, 0.02288, 1.680e-5, 1.252e-5, 1.696e-5, 0.7387},
		{1.2920, 1006, 0.02364, 1.729e-5, 1.338e-5, 1.818e-5, 0.7362},
		{1.2690, 1006, 0.02401, 1.754e-5, 1.382e-5, 1.880e-5, 0.7350},
		{1.2460, 1006, 0.02439, 1.778e-5, 1.426e-5, 1.944e-5, 0.7336},
		{1.2250, 1007, 0.02476, 1.802e-5, 1.470e-5, 2.009e-5, 0.7323},
		{1.2040, 1007, 0.02514, 1.825e-5, 1.516e-5, 2.074e-5, 0.7309},
		{1.1840, 1007, 0.02551, 1.849e-5, 1.562e-5, 2.141e-5, 0.7296},
		{1.1640, 1007, 0.02588, 1.872e-5, 1.608e-5, 2.208e-5, 0.7282},
		{1.1450, 1007, 0.02625, 1.895e-5, 1.655e-5, 2.277e-5, 0.7268},
		{1.1270, 1007, 0.02662, 1.918e-5, 1.702e-5, 2.346e-5, 0.7255},
		{1.1090, 1007, 0.02699, 1.941e-5, 1.750e-5, 2.416e-5, 0.7241},
		{1.0920, 1007, 0.02735, 1.963e-5, 1.798e-5, 2.487e-5, 0.7228},
		{1.0590, 1007, 0.02808, 2.008e-5, 1.896e-5, 2.632e-5, 0.7202},
		{1.0280, 1007, 0.02881, 2.052e-5, 1.995e-5, 2.780e-5, 0.7177},
		{0.9994, 1008, 0.02953, 2.096e-5, 2.097e-5, 2.931e-5, 0.7154},
	}
)

// AirAt gives the properties of dry air at a temperature [°C] and pressure [Pa] by linear
// interpolation in temperature. Density goes with pressure and the diffusivities against it (ideal
// gas); the rest does not depend on pressure. Outside −50…80 °C the nearest end of the table
// holds, and a pressure that is not positive means 1 atm.
func AirAt(temperature_C, pressure_Pa float64) Air {
	i, f := airPlace(temperature_C)
	low, high := &evenRows[i], &evenRows[i+1]
	scale := pressureScale(pressure_Pa)
	return Air{
		Density:             mix(low.density, high.density, f) * scale,
		Conductivity:        mix(low.conductivity, high.conductivity, f),
		Viscosity:           mix(low.viscosity, high.viscosity, f),
		KinematicViscosity:  mix(low.kinematic, high.kinematic, f) / scale,
		Prandtl:             mix(low.prandtl, high.prandtl, f),
		ThermalDiffusivity:  mix(low.diffusivity, high.diffusivity, f) / scale,
		HeatCapacity_JkgK:   mix(low.heatCapacity, high.heatCapacity, f),
		AbsoluteTemperature: temperature_C + kelvin,
	}
}

// evenStep_K and evenRows are the air table in equal steps, in which a place is found by one multiplication.
const evenStep_K = 5.0

var evenRows = newEvenRows()

// evenRow is a row with what convection needs worked out.
type evenRow struct {
	airRow
	whitaker, churchill float64 // factors of the Prandtl number, within 1e-6 of the powers where interpolated
}

func newEvenRows() (rows [27]evenRow) {
	for i := range rows {
		t := airTemperatures[0] + evenStep_K*float64(i)
		k := min(sort.SearchFloat64s(airTemperatures[1:], t), len(airRows)-2)
		low, high := &airRows[k], &airRows[k+1]
		f := (t - airTemperatures[k]) / (airTemperatures[k+1] - airTemperatures[k])
		row := airRow{
			mix(low.density, high.density, f), mix(low.heatCapacity, high.heatCapacity, f), mix(low.conductivity, high.conductivity, f),
			mix(low.viscosity, high.viscosity, f), mix(low.kinematic, high.kinematic, f), mix(low.diffusivity, high.diffusivity, f),
			mix(low.prandtl, high.prandtl, f),
		}
		rows[i] = evenRow{row, whitakerPrandtl(row.prandtl), churchillPrandtl(row.prandtl)}
	}
	return rows
}

// airPlace finds the interval of evenRows that holds a temperature and the place in it [0–1].
func airPlace(temperature_C float64) (index int, fraction float64) {
	at := (temperature_C - airTemperatures[0]) * (1 / evenStep_K)
	if !(at > 0) {
		return 0, 0
	}
	if at >= float64(len(evenRows)-1) {
		return len(evenRows) - 2, 1
	}
	index = int(at)
	return index, at - float64(index)
}

// pressureScale is the pressure over 1 atm, 1 where no pressure is given.
func pressureScale(pressure_Pa float64) float64 {
	if !(pressure_Pa > 0) {
		return 1
	}
	return pressure_Pa / atmosphere
}

// mix goes from low to high in a straight line.
func mix(low, high, fraction float64) float64 { return low + (high-low)*fraction }
