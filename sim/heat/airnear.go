package heat

import "math"

// screenHeight_m is where the air temperature of the weather holds.
const screenHeight_m = 2.0

// nearLimit_K bounds AirNear: air in the bunch zone is up to 5 K warmer than at a weather station in the hottest
// hours (Phytoma, a French field note), and profiles over open ground say nothing useful beyond.
const nearLimit_K = 5.0

// leastFriction_ms keeps the profile defined in still air, where thermals stir it. Assumption.
const leastFriction_ms = 0.05

// AirNear is the air temperature [°C] at a height above the floor that gives the air sensible_Wm2 [W/m²], under a
// friction velocity [m/s], when the air at screen height (2 m) is as around says.
//
// It is the flux–profile relation of the surface layer (Businger et al. 1971, J. Atmos. Sci. 28:181; Dyer
// 1974, Boundary-Layer Meteorol. 7:363), between that height and the screen: θ*/κ·[ln(2/z) − ψ(2/L) + ψ(z/L)].
// It holds over open ground; between rows it is an estimate, bounded to ±5 K. At 2 m and above, the air of the
// weather; below 0.05 m the value of that height.
func AirNear(around Around, sensible_Wm2, friction_ms, z_m float64) float64 {
	if z_m >= screenHeight_m || sensible_Wm2 == 0 {
		return around.Air_C
	}
	z := math.Max(z_m, 0.05)
	air := AirAt(around.Air_C, around.Pressure_Pa)
	friction := math.Max(friction_ms, leastFriction_ms)
	scale := sensible_Wm2 / (air.Density * air.HeatCapacity_JkgK * friction) // −θ* [K]
	// 1/L by Obukhov, negative when the floor warms the air.
	inverse := -karman * gravity * scale / (friction * friction * air.AbsoluteTemperature)
	rise := scale / karman * (math.Log(screenHeight_m/z) - heatStability(screenHeight_m*inverse) + heatStability(z*inverse))
	return around.Air_C + math.Max(-nearLimit_K, math.Min(rise, nearLimit_K))
}

// heatStability is the integrated stability function ψ for heat by z/L: Paulson 1970, J. Appl. Meteorol. 9:857,
// with Dyer's coefficients 16 and 5; in stable air no further than z/L = 1.
func heatStability(x float64) float64 {
	if x < 0 {
		return 2 * math.Log((1+math.Sqrt(1-16*x))/2)
	}
	return -5 * math.Min(x, 1)
}
