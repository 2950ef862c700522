package heat

import "math"

// Whitaker is the mean Nusselt number of a sphere in a stream: Re by diameter, properties at air
// temperature, viscosityRatio the dynamic viscosity of the air over that at the surface.
// Whitaker 1972, AIChE J. 18:361, valid for 3.5 < Re < 7.6e4 and 0.71 < Pr < 380; in still air
// (Re = 0) it gives the conduction limit 2. Turbulence of the wind is not in it.
func Whitaker(re, pr, viscosityRatio float64) float64 {
	return whitaker(re, whitakerPrandtl(pr), viscosityRatio)
}

// whitaker takes Pr^0.4 worked out.
func whitaker(re, prandtl, viscosityRatio float64) float64 {
	if !(re > 0) {
		return 2
	}
	twoThirds := math.Cbrt(re)
	twoThirds *= twoThirds
	return 2 + (0.4*math.Sqrt(re)+0.06*twoThirds)*prandtl*math.Sqrt(math.Sqrt(viscosityRatio))
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

// sphereRow is the Prandtl factors of both correlations at one temperature of the air table.
type sphereRow struct{ whitaker, churchill float64 }

// sphereRows are read by interpolation, which is within 1e-6 of the powers and saves most of their time.
var sphereRows = newSphereRows()

func newSphereRows() (rows [len(airRows)]sphereRow) {
	for i, row := range airRows {
		rows[i] = sphereRow{whitakerPrandtl(row.prandtl), churchillPrandtl(row.prandtl)}
	}
	return rows
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
	i, f := airPlace(around.Air_C)
	film_C := (around.Air_C + surface_C) / 2
	j, g := airPlace(film_C)
	scale := pressureScale(around.Pressure_Pa)
	conductivity := mix(airRows[i].conductivity, airRows[i+1].conductivity, f)
	filmConductivity := mix(airRows[j].conductivity, airRows[j+1].conductivity, g)
	filmKinematic := mix(airRows[j].kinematic, airRows[j+1].kinematic, g) / scale
	c := Convection{
		Reynolds:       math.Max(around.Wind_ms, 0) * diameter_m * scale / mix(airRows[i].kinematic, airRows[i+1].kinematic, f),
		Prandtl:        mix(airRows[i].prandtl, airRows[i+1].prandtl, f),
		ViscosityRatio: mix(airRows[i].viscosity, airRows[i+1].viscosity, f) / viscosityAt(surface_C),
		PrandtlFilm:    mix(airRows[j].prandtl, airRows[j+1].prandtl, g),
	}
	c.Rayleigh = gravity / (film_C + kelvin) * math.Abs(surface_C-around.Air_C) * cube(diameter_m) *
		c.PrandtlFilm / (filmKinematic * filmKinematic)
	c.NusseltForced = whitaker(c.Reynolds, mix(sphereRows[i].whitaker, sphereRows[i+1].whitaker, f), c.ViscosityRatio)
	c.NusseltFree = churchill(c.Rayleigh, mix(sphereRows[j].churchill, sphereRows[j+1].churchill, g))
	c.Nusselt = math.Cbrt(cube(c.NusseltForced) + cube(c.NusseltFree))
	c.Forced = c.NusseltForced * conductivity / diameter_m
	c.Free = c.NusseltFree * filmConductivity / diameter_m
	c.Mixed = c.Nusselt * conductivity / diameter_m
	return c
}

// cube is x³.
func cube(x float64) float64 { return x * x * x }
