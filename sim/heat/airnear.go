package heat

import "math"

// screenHeight_m is where the air temperature of the weather holds.
const screenHeight_m = 2.0

// nearLimit_K bounds AirNear: air in the bunch zone is up to 5 K warmer than at a weather station in the hottest
// hours (Phytoma, a French field note), and profiles over open ground say nothing useful beyond.
const nearLimit_K = 5.0

// leastFriction_ms keeps the profile defined in still air, where thermals stir it. Assumption.
const leastFriction_ms = 0.05

// AirProfile is the air temperature by height over a floor that warms or cools it, at one instant.
//
// It is the flux–profile relation of the surface layer (Businger et al. 1971, J. Atmos. Sci. 28:181; Dyer
// 1974, Boundary-Layer Meteorol. 7:363), between a height and the screen: θ*/κ·[ln(2/z) − ψ(2/L) + ψ(z/L)].
// It holds over open ground; between rows it is an estimate, bounded to ±5 K.
type AirProfile struct {
	Screen_C      float64 // at screen height (2 m) and above
	Friction_ms   float64 // u*, held to a least value
	Capacity_Jm3K float64 // ρc of the air
	Scale_K       float64 // −θ*, positive when the floor warms the air
	Inverse_perm  float64 // 1/L by Obukhov, negative when the floor warms the air [1/m]
}

// NewAirProfile makes the profile over a floor that gives the air sensible_Wm2 [W/m²], under a friction
// velocity [m/s], when the air at screen height is as around says.
func NewAirProfile(around Around, sensible_Wm2, friction_ms float64) AirProfile {
	air := AirAt(around.Air_C, around.Pressure_Pa)
	p := AirProfile{
		Screen_C:      around.Air_C,
		Friction_ms:   math.Max(friction_ms, leastFriction_ms),
		Capacity_Jm3K: air.Density * air.HeatCapacity_JkgK,
	}
	p.Scale_K = sensible_Wm2 / (p.Capacity_Jm3K * p.Friction_ms)
	p.Inverse_perm = -karman * gravity * p.Scale_K / (p.Friction_ms * p.Friction_ms * air.AbsoluteTemperature)
	return p
}

// At is the air temperature at a height [°C]; below 0.05 m the value of that height.
func (p AirProfile) At(z_m float64) float64 {
	if z_m >= screenHeight_m || p.Scale_K == 0 {
		return p.Screen_C
	}
	z := math.Max(z_m, 0.05)
	rise := p.Scale_K / karman * (math.Log(screenHeight_m/z) - p.Stability(screenHeight_m) + p.Stability(z))
	return p.Screen_C + math.Max(-nearLimit_K, math.Min(rise, nearLimit_K))
}

// Stability is ψ for heat at a height.
func (p AirProfile) Stability(z_m float64) float64 { return heatStability(z_m * p.Inverse_perm) }

// AirNear is the air temperature [°C] at a height above the floor: see AirProfile.
func AirNear(around Around, sensible_Wm2, friction_ms, z_m float64) float64 {
	return NewAirProfile(around, sensible_Wm2, friction_ms).At(z_m)
}

// heatStability is the integrated stability function ψ for heat by z/L: Paulson 1970, J. Appl. Meteorol. 9:857,
// with Dyer's coefficients 16 and 5; in stable air no further than z/L = 1.
func heatStability(x float64) float64 {
	if x < 0 {
		return 2 * math.Log((1+math.Sqrt(1-16*x))/2)
	}
	return -5 * math.Min(x, 1)
}
