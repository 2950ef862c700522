package heat

import "math"

// Whitaker is the mean Nusselt number of a sphere in a stream: Re by diameter, properties at air
// temperature, viscosityRatio the dynamic viscosity of the air over that at the surface.
// Whitaker 1972, AIChE J. 18:361, valid for 3.5 < Re < 7.6e4 and 0.71 < Pr < 380; in still air
// (Re = 0) it gives the conduction limit 2. Turbulence of the wind is not in it.
func Whitaker(re, pr, viscosityRatio float64) float64 {
	if !(re > 0) {
		return 2
	}
	root := math.Sqrt(re)
	twoThirds := math.Cbrt(re)
	twoThirds *= twoThirds
	return 2 + (0.4*root+0.06*twoThirds)*math.Pow(pr, 0.4)*math.Sqrt(math.Sqrt(viscosityRatio))
}

// Churchill is the mean Nusselt number of a sphere in free convection, properties at film
// temperature. Churchill 1983 (Heat Exchanger Design Handbook, 2.5.7) in the form of the laminar
// range; at the Rayleigh numbers of berries (below 1e5) the full form differs by less than 0.02 %.
// With no temperature difference (Ra = 0) it gives the conduction limit 2.
func Churchill(ra, pr float64) float64 {
	if !(ra > 0) {
		return 2
	}
	return 2 + 0.589*math.Sqrt(math.Sqrt(ra))/churchillPrandtl(pr)
}

// churchillPrandtl is [1+(0.469/Pr)^(9/16)]^(4/9) with the powers taken by roots.
func churchillPrandtl(pr float64) float64 {
	x := 0.469 / pr
	half := math.Sqrt(x)
	sixteenth := math.Sqrt(math.Sqrt(math.Sqrt(half)))
	y := 1 + half*sixteenth
	ninth := math.Cbrt(math.Cbrt(y))
	return ninth * ninth * ninth * ninth
}

// Convection is the exchange of a smooth dry sphere with the air, with what led to it.
type Convection struct {
	Reynolds, Prandtl float64 // at air temperature [1]
	ViscosityRatio    float64 // air over surface [1]
	NusseltForced     float64 // Whitaker [1]
	Forced            float64 // [W/m²/K]
	Rayleigh          float64 // at film temperature [1]
	PrandtlFilm       float64 // [1]
	NusseltFree       float64 // Churchill [1]
	Free              float64 // [W/m²/K]
	Nusselt           float64 // both, blended by cubes [1]
	Mixed             float64 // [W/m²/K]
}

// SphereConvection is the convection of a sphere whose surface is on average at surface_C.
//
// Forced (Whitaker, air properties at air temperature) and free (Churchill, air properties at film
// temperature, β = 1/T) are blended as (forced³ + free³)^(1/3): Churchill 1977, AIChE J. 23:10,
// from memory. Both hold the conduction limit, so still air with no temperature difference
// reads 2·2^(1/3) instead of 2; the mixed coefficient uses the conductivity of the forced side.
func SphereConvection(diameter_m float64, around Around, surface_C float64) Convection {
	air := AirAt(around.Air_C, around.Pressure_Pa)
	film := AirAt((around.Air_C+surface_C)/2, around.Pressure_Pa)
	c := Convection{
		Reynolds:       math.Max(around.Wind_ms, 0) * diameter_m / air.KinematicViscosity,
		Prandtl:        air.Prandtl,
		ViscosityRatio: air.Viscosity / viscosityAt(surface_C),
		PrandtlFilm:    film.Prandtl,
	}
	c.Rayleigh = gravity / film.AbsoluteTemperature * math.Abs(surface_C-around.Air_C) *
		diameter_m * diameter_m * diameter_m * film.Prandtl / (film.KinematicViscosity * film.KinematicViscosity)
	c.NusseltForced = Whitaker(c.Reynolds, c.Prandtl, c.ViscosityRatio)
	c.NusseltFree = Churchill(c.Rayleigh, c.PrandtlFilm)
	c.Nusselt = math.Cbrt(cube(c.NusseltForced) + cube(c.NusseltFree))
	c.Forced = c.NusseltForced * air.Conductivity / diameter_m
	c.Free = c.NusseltFree * film.Conductivity / diameter_m
	c.Mixed = c.Nusselt * air.Conductivity / diameter_m
	return c
}

// cube is x³.
func cube(x float64) float64 { return x * x * x }
