package heat

import (
	"math"

	"rowlight/sim/internal/cbrt"
)

// Whitaker is the mean Nusselt number of a sphere in a stream: Re by diameter, properties at air
// temperature, viscosityRatio the dynamic viscosity of the air over that at the surface.
// Whitaker 1972, AIChE J. 18:361, valid for 3.5 < Re < 7.6e4 and 0.71 < Pr < 380; in still air
// (Re = 0) it gives the conduction limit 2. Turbulence of the wind is not in it.
func Whitaker(re, pr, viscosityRatio float64) float64 {
	return whitaker(re, whitakerPrandtl(pr), viscosityRatio)
}

// whitaker takes Pr^0.4 worked out.
func whitaker(re, prandtl, viscosityRatio float64) float64 {
	return 2 + whitakerStream(re)*prandtl*math.Sqrt(math.Sqrt(viscosityRatio))
}

// whitakerStream is what the stream adds to conduction, without the properties of the air.
func whitakerStream(re float64) float64 {
	if !(re > 0) {
		return 0
	}
	twoThirds := math.Cbrt(re)
	return 0.4*math.Sqrt(re) + 0.06*twoThirds*twoThirds
}

// whitakerPrandtl is Pr^0.4.
func whitakerPrandtl(pr float64) float64 { return math.Pow(pr, 0.4) }

// Churchill is the mean Nusselt number of a sphere in free convection, properties at film
// temperature. Churchill 1983 (Heat Exchanger Design Handbook, 2.5.7) in the form of the laminar
// range; at the Rayleigh numbers of berries (below 3e4) the full form differs by less than 0.02 %.
// With no temperature difference (Ra = 0) it gives the conduction limit 2.
func Churchill(ra, pr float64) float64 { return churchill(ra, churchillPrandtl(pr)) }

// churchill takes the divisor that depends on Pr worked out.
func churchill(ra, prandtl float64) float64 {
	if !(ra > 0) {
		return 2
	}
	return 2 + 0.589*math.Sqrt(math.Sqrt(ra))/prandtl
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
	a := newSphereAir(diameter_m, &around)
	i, f := airPlace(a.air_C)
	film_C := (a.air_C + surface_C) / 2
	j, g := airPlace(film_C)
	c := Convection{
		Reynolds:       a.reynolds,
		Prandtl:        mix(evenRows[i].prandtl, evenRows[i+1].prandtl, f),
		ViscosityRatio: a.viscosityRatio(surface_C),
		PrandtlFilm:    mix(evenRows[j].prandtl, evenRows[j+1].prandtl, g),
	}
	c.NusseltForced, c.NusseltFree, c.Rayleigh = a.nusselts(surface_C)
	c.Nusselt = cbrt.Of(cube(c.NusseltForced) + cube(c.NusseltFree))
	c.Forced = c.NusseltForced * a.conductance
	c.Free = c.NusseltFree * mix(evenRows[j].conductivity, evenRows[j+1].conductivity, g) / diameter_m
	c.Mixed = c.Nusselt * a.conductance
	return c
}

// sphereAir is the air of one instant about spheres of one size: all of their convection that does not depend on how
// warm they are.
type sphereAir struct {
	air_C       float64
	reynolds    float64
	stream      float64 // of Whitaker, without the viscosities
	viscosity   float64 // [kg/m/s]
	conductance float64 // conductivity over diameter [W/m²/K]
	buoyancy    float64 // g·d³·(pressure over 1 atm)² [m⁴/s²]
}

func newSphereAir(diameter_m float64, around *Around) sphereAir {
	i, f := airPlace(around.Air_C)
	low, high := &evenRows[i], &evenRows[i+1]
	scale := pressureScale(around.Pressure_Pa)
	a := sphereAir{
		air_C:       around.Air_C,
		reynolds:    math.Max(around.Wind_ms, 0) * diameter_m * scale / mix(low.kinematic, high.kinematic, f),
		viscosity:   mix(low.viscosity, high.viscosity, f),
		conductance: mix(low.conductivity, high.conductivity, f) / diameter_m,
		buoyancy:    gravity * cube(diameter_m) * scale * scale,
	}
	a.stream = whitakerStream(a.reynolds) * mix(low.whitaker, high.whitaker, f)
	return a
}

// mixed is SphereConvection's coefficient alone [W/m²/K].
func (a *sphereAir) mixed(surface_C float64) float64 {
	forced, free, _ := a.nusselts(surface_C)
	return cbrt.Of(cube(forced)+cube(free)) * a.conductance
}

// viscosityRatio is that of the air over that at the surface.
func (a *sphereAir) viscosityRatio(surface_C float64) float64 {
	i, f := airPlace(surface_C)
	return a.viscosity / mix(evenRows[i].viscosity, evenRows[i+1].viscosity, f)
}

// nusselts are the Nusselt numbers of the wind and of rising air, and the Rayleigh number of that. They are found
// together since every step of a berry passes here, and a call takes a browser long.
func (a *sphereAir) nusselts(surface_C float64) (forced, free, rayleigh float64) {
	forced = 2 + a.stream*math.Sqrt(math.Sqrt(a.viscosityRatio(surface_C)))
	film_C := (a.air_C + surface_C) / 2
	j, g := airPlace(film_C)
	low, high := &evenRows[j], &evenRows[j+1]
	kinematic := mix(low.kinematic, high.kinematic, g)
	rayleigh = a.buoyancy * math.Abs(surface_C-a.air_C) * mix(low.prandtl, high.prandtl, g) /
		((film_C + kelvin) * kinematic * kinematic)
	return forced, churchill(rayleigh, mix(low.churchill, high.churchill, g)), rayleigh
}

// cube is x³.
func cube(x float64) float64 { return x * x * x }
