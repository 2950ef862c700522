package heat

import (
	"math"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
)

// gasConstant is R [J/mol/K] (CODATA 2018, exact).
const gasConstant = 8.314462618

// LeafEmissivity of vine leaves, from memory; plant leaves lie at 0.94–0.99.
const LeafEmissivity = 0.96

// Stomatal conductance to water vapour of vine leaves in full light [mol/m²/s]: over 0.15 in vines with mild stress or
// none, 0.05 to 0.15 under moderate and below 0.05 under severe stress (Medrano et al. 2002, Ann. Bot. 89:895,
// from memory). The values are the middles, by ratio, of 0.15–0.40, 0.06–0.16 and 0.025–0.065.
const (
	WateredStomata = 0.25
	ShortStomata   = 0.10
	ThirstyStomata = 0.04
	closedStomata  = 0.02 // at night and in deep shade; assumption
)

// Stomata also close as the air dries: the conductance falls as 1/(1 + (D − D1)/D0) beyond a vapour deficit D1 of
// 1 kPa (the hyperbola of Leuning 1995, Plant Cell Environ. 18:339, from memory; D0 for vines is an assumption).
const (
	dryFrom_Pa  = 1000.0
	dryScale_Pa = 3000.0
)

// Leaf is one vine leaf whose stomata are on the lower side alone.
type Leaf struct {
	Width_m    float64 // along the wind, > 0 [m]
	Emissivity float64 // [0–1]
	Stomata    float64 // conductance in full light [mol/m²/s]
}

// NewLeaf is a leaf of a blade area [cm²] on a vine so watered; a state that is not named has water. Its width is
// the side of a square of that area.
func NewLeaf(blade_cm2 float64, water scenario.Water) Leaf {
	l := Leaf{Width_m: math.Sqrt(blade_cm2) / 100, Emissivity: LeafEmissivity, Stomata: WateredStomata}
	switch water {
	case scenario.Short:
		l.Stomata = ShortStomata
	case scenario.Thirsty:
		l.Stomata = ThirstyStomata
	}
	return l
}

// LeafBalance is the temperature of a leaf and its heat flows per one-sided area [W/m²]; Absorbed + Longwave −
// Sensible − Latent is zero to rounding.
type LeafBalance struct {
	Temperature_C float64
	Absorbed      float64 // sunlight taken in by both sides
	Longwave      float64 // longwave taken in minus given off by both sides
	Sensible      float64 // given to the air
	Latent        float64 // evaporated
}

// Balance is the leaf at rest: absorbed sunlight by both sides and longwave that both sides absorb minus what
// they emit at air temperature, per one-sided area [W/m²].
//
// It is the Penman–Monteith form for one leaf (Monteith 1965, Symp. Soc. Exp. Biol. 19:205; Campbell & Norman
// 1998, eq. 14.6), taken twice: the slope of vapour pressure and the radiation first at air temperature, then half-way
// to the leaf, which brings a leaf 10 K from the air within 0.1 K. Free convection is left out: outdoors it
// is a few per cent of the rest.
func (l Leaf) Balance(absorbed_Wm2, longNet_Wm2 float64, around Around) LeafBalance {
	air := AirAt(around.Air_C, around.Pressure_Pa)
	capacity := air.Density * air.HeatCapacity_JkgK
	pressure := pressureScale(around.Pressure_Pa) * atmosphere
	deficit := sky.SaturationPressure(around.Air_C) - sky.SaturationPressure(math.Min(around.Dew_C, around.Air_C))
	heat, vapour := l.conductances(absorbed_Wm2, deficit, around.Wind_ms, pressure/(gasConstant*air.AbsoluteTemperature))
	wet := capacity / sky.Psychrometric(pressure) * vapour // [W/m²/Pa]
	var rise, slope, radiative float64
	for range 2 {
		slope = sky.SaturationSlope(around.Air_C + rise/2)
		radiative = 2 * radiativeCoefficient(l.Emissivity, around.Air_C+rise, around.Air_C)
		rise = (absorbed_Wm2 + longNet_Wm2 - wet*deficit) / (capacity*heat + radiative + wet*slope)
	}
	return LeafBalance{
		Temperature_C: around.Air_C + rise,
		Absorbed:      absorbed_Wm2,
		Longwave:      longNet_Wm2 - radiative*rise,
		Sensible:      capacity * heat * rise,
		Latent:        wet * (deficit + slope*rise),
	}
}

// conductances are those of both sides to heat and of the lower side to vapour [m/s]. Boundary layer: 0.135·√(u/d)
// mol/m²/s for a side, d = 0.72 widths, 1.4 times that in the turbulence outdoors, 0.147 for vapour (Campbell & Norman
// 1998, table 7.6, from memory). Stomata open with light as those of the floor cover do.
func (l Leaf) conductances(absorbed_Wm2, deficit_Pa, wind_ms, molarDensity float64) (heat, vapour float64) {
	flow := 1.4 * math.Sqrt(math.Max(wind_ms, StillWind_ms)/(0.72*l.Width_m))
	open := math.Min(math.Max(absorbed_Wm2, 0)/(fullyOpen_Wm2/2), 1) // a leaf absorbs about half of the sunlight
	stomata := mix(math.Min(closedStomata, l.Stomata), l.Stomata, open)
	stomata /= 1 + math.Max(deficit_Pa-dryFrom_Pa, 0)/dryScale_Pa
	layer := 0.147 * flow
	return 2 * 0.135 * flow / molarDensity, stomata * layer / (stomata + layer) / molarDensity
}
