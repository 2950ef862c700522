package heat

import "math"

// threadDiameter_m is the thickness of the threads of a net: 0.3 mm is a usual monofilament. Assumption; flat tapes of
// 2 mm would stay a degree or two warmer in the sun.
const threadDiameter_m = 0.0003

// Thread_C is the temperature of a thread at rest that takes in net_Wm2 of sunlight, and of longwave beyond what it would
// send out as warm as the air, per area of its skin. It is black to longwave.
//
// Convection of a cylinder across the wind: Churchill & Bernstein 1977, J. Heat Transfer 99:300, from memory, within
// 20 % for Re·Pr over 0.2. Free convection adds nothing to so thin a thread outdoors.
func Thread_C(net_Wm2 float64, around Around) float64 {
	air := AirAt(around.Air_C, around.Pressure_Pa)
	re := math.Max(around.Wind_ms, StillWind_ms) * threadDiameter_m / air.KinematicViscosity
	nusselt := churchillBernstein(re, air.Prandtl)
	return around.Air_C + net_Wm2/(nusselt*air.Conductivity/threadDiameter_m+radiativeCoefficient(1, around.Air_C, around.Air_C))
}

// churchillBernstein is the mean Nusselt number of a cylinder across a stream.
func churchillBernstein(re, pr float64) float64 {
	bracket := math.Pow(1+math.Pow(0.4/pr, 2.0/3), 0.25)
	return 0.3 + 0.62*math.Sqrt(re)*math.Cbrt(pr)/bracket*math.Pow(1+math.Pow(re/282000, 0.625), 0.8)
}
