package heat

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
)

// Berry is one berry on the outside of its bunch: a sphere that conducts.
type Berry struct {
	Diameter_m    float64 // > 0 [m]
	Absorptance   float64 // share of sunlight that the skin absorbs [0–1]
	NearInfrared  float64 // share of the near infrared that leaves scatter, which it absorbs [0–1]
	Emissivity    float64 // of the skin in the longwave [0–1]
	Conductivity  float64 // of the pulp [W/m/K]
	Density       float64 // [kg/m³]
	HeatCapacity  float64 // [J/kg/K]
	Compactness   float64 // of the bunch: 0 loose, 1 tight
	Convection    float64 // factor on convection for what the model leaves out, as the turbulence of open air; 0 means 1
	BunchRadius_m float64 // of a sphere of the bunch's mass, which a tight bunch lends to its berries; 0 lends none [m]
}

// What a berry is made of. ASHRAE Handbook, Refrigeration, thermal properties of foods: from memory.
const (
	BerryEmissivity   = 0.96 // range 0.95–0.98
	BerryConductivity = 0.55 // [W/m/K]
	BerryDensity      = 1065 // [kg/m³], range 1050–1080
	BerryHeatCapacity = 3700 // [J/kg/K], range 3600–3800
)

// Shares of sunlight that a skin absorbs, from memory: green and white ripe 0.60–0.70, red to
// black ripe 0.70–0.80 (0.90–0.95 in the visible, 0.4–0.6 in the near infrared).
const (
	GreenAbsorptance = 0.65
	WhiteAbsorptance = 0.65
	RedAbsorptance   = 0.78
)

// NearInfraredAbsorptance is the share of near infrared from leaves that a skin of any colour absorbs, from
// memory: 0.4 to 0.6 between 700 and 1100 nm, where most of the light lies that leaves scatter.
const NearInfraredAbsorptance = 0.5

// tightConvection is the convection of a berry in the face of a tight bunch over that of a sphere
// alone. Assumption: the middle of a range of 0.5 to 0.8; neighbours take part of its surface and slow the air. It
// scales h once and nothing else.
const tightConvection = 0.65

// NewBerry is the berry of a fruit in bunches of the given mass, with the properties above.
func NewBerry(fruit scenario.Fruit, bunchMass_g float64) Berry {
	absorptance := absorptanceOf(fruit)
	return Berry{
		Diameter_m:    fruit.Diameter_mm / 1000,
		Absorptance:   absorptance,
		NearInfrared:  NearInfraredAbsorptance * absorptance / ofColour(fruit.Colour), // a film whitens both alike
		Emissivity:    BerryEmissivity,
		Conductivity:  BerryConductivity,
		Density:       BerryDensity,
		HeatCapacity:  BerryHeatCapacity,
		Compactness:   fruit.Compactness,
		BunchRadius_m: math.Cbrt(3 * bunchMass_g / 1000 / (4 * math.Pi * BerryDensity)),
	}
}

// absorptanceOf is the value that the user gave, or that of the colour.
func absorptanceOf(fruit scenario.Fruit) float64 {
	if fruit.Absorptance > 0 {
		return fruit.Absorptance
	}
	return ofColour(fruit.Colour)
}

// ofColour is the share of sunlight that a bare skin absorbs.
func ofColour(colour scenario.Colour) float64 {
	switch colour {
	case scenario.Red:
		return RedAbsorptance
	case scenario.White:
		return WhiteAbsorptance
	}
	return GreenAbsorptance
}

// Load is the radiation on a berry and the heat that evaporation takes.
type Load struct {
	Beam_Wm2          float64    // direct sun on a plane that faces it; 0 when the berry is unlit
	Sun               mgl64.Vec3 // unit vector to the sun; only read when Beam_Wm2 > 0
	Short             Broad      // incident diffuse sunlight: sky, floor, leaves
	LongNet           Broad      // absorbed longwave minus what the skin emits at air temperature: see Longwave
	Transpiration_Wm2 float64    // latent heat that leaves the skin, mean over it; 0–10 is an assumption
}

// Around is the air about a surface.
type Around struct {
	Air_C       float64
	Dew_C       float64 // read by floor and leaf only
	Wind_ms     float64 // at the surface; see WindProfile
	Pressure_Pa float64 // 0 means 1 atm
}

// ConvectionFactor is what the bunch leaves of the convection of a sphere alone: 1 loose, 0.6
// tight, in a straight line between, times Convection. Assumption.
func (b Berry) ConvectionFactor() float64 {
	factor := 1 - (1-tightConvection)*b.Compactness
	if b.Convection > 0 {
		factor *= b.Convection
	}
	return factor
}

// radius is half the diameter [m].
func (b *Berry) radius() float64 { return b.Diameter_m / 2 }

// capacity is the heat that the mean takes up per surface [J/m²/K]: ρcR/3 for a berry alone. A
// berry in a tight bunch shares heat with the bunch: then R is the radius of a sphere of its mass.
// Between, the square of compactness weighs them, because berries of an open bunch hardly touch.
// Assumption.
func (b *Berry) capacity() float64 { return b.Density * b.HeatCapacity * b.capacityRadius() / 3 }

// capacityRadius is that R [m].
func (b *Berry) capacityRadius() float64 {
	radius := b.radius()
	return radius + b.Compactness*b.Compactness*math.Max(b.BunchRadius_m-radius, 0)
}

// BerryIn is a berry in the air of one instant. What does not depend on how warm the berry is, is worked out once for
// all berries of a kind.
type BerryIn struct {
	*Berry
	around    Around
	air       sphereAir
	factor    float64 // ConvectionFactor
	heats     float64 // capacity
	inward    float64 // conduction through the berry, k/R [W/m²/K]
	radiation float64 // 4εσ [W/m²/K⁴]
}

// In puts berries into the air of an instant.
func (b *Berry) In(around *Around) BerryIn {
	return BerryIn{
		Berry: b, around: *around, air: newSphereAir(b.Diameter_m, around), factor: b.ConvectionFactor(), heats: b.capacity(),
		inward: b.Conductivity / b.radius(), radiation: 4 * b.Emissivity * stefanBoltzmann,
	}
}

// exchange is the convection and radiation coefficients [W/m²/K] of a berry that is on average at
// mean_C.
func (b *BerryIn) exchange(mean_C float64) (convective, radiative float64) {
	t := (mean_C+b.air.air_C)/2 + kelvin
	return b.air.mixed(mean_C) * b.factor, b.radiation * t * t * t
}
