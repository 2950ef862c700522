package heat

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Surface is the skin of a berry at the end of a step, and its heat flows, averaged over its
// surface and over the step. FluxAbsorbed + FluxLongwave − FluxConvection − FluxTranspiration −
// FluxStored is zero to rounding.
type Surface struct {
	Mean_C    float64 // of the surface and, the sphere conducting, of the whole berry
	Lit_C     float64 // at the pole under the sun; the hottest point when unlit
	Shaded_C  float64 // at the opposite pole; the coolest point when unlit
	Hottest_C float64 // over the whole surface

	FluxAbsorbed      float64 // sunlight taken in [W/m²]
	FluxLongwave      float64 // longwave taken in minus given off [W/m²]
	FluxConvection    float64 // given to the air [W/m²]
	FluxTranspiration float64 // latent heat given off [W/m²]
	FluxStored        float64 // warming the berry [W/m²]
}

// Step carries a berry through dt_s seconds of constant load: mean_C is its mean temperature before
// (absolute, not over air), Surface.Mean_C the one after.
//
// The mean follows dT/dt = (inflow − (h+h_r)(T−Tair))/C exactly, with C of the berry or its bunch;
// h and h_r are taken at the temperature before the step. Everything that varies over the surface is
// steady: the slowest of it settles in R²/(4.3 k/ρc), 80 s for a 14 mm berry, against 5 min steps.
// A step of no length returns the state as it is.
func (b *Berry) Step(mean_C float64, load *Load, around *Around, dt_s float64) Surface {
	convective, radiative := b.exchange(mean_C, around)
	total := convective + radiative
	a := b.approach(mean_C, b.inflow(load), total, around.Air_C, dt_s)
	average := mean_C
	stored := (a.balance - mean_C) * total
	if a.turned > 0 {
		average = a.balance + (mean_C-a.balance)*a.gone/a.turned
		stored *= a.gone / a.turned
	}
	s := b.skin(a.end, load, total)
	b.flows(&s, load, average-around.Air_C, convective, radiative)
	s.FluxStored = stored
	return s
}

// approach is how the mean goes towards its balance over a step.
type approach struct {
	capacity float64 // that the mean takes up per surface [J/m²/K]
	balance  float64 // where it would come to rest [°C]
	turned   float64 // the step in time constants [1]
	gone     float64 // share of the way to the balance that is gone [0–1]
	end      float64 // mean after the step [°C]
}

// approach carries the mean through a step.
func (b *Berry) approach(mean_C, inflow, total, air_C, dt_s float64) approach {
	a := approach{capacity: b.capacity(), balance: air_C + inflow/total}
	a.turned = math.Max(dt_s, 0) * total / a.capacity
	a.gone = -math.Expm1(-a.turned)
	a.end = mean_C + (a.balance-mean_C)*a.gone
	return a
}

// inflow is the heat that the mean receives when it is at air temperature [W/m²].
func (b *Berry) inflow(load *Load) float64 {
	return b.Absorptance*(load.Beam_Wm2/4+load.Short.Mean) + load.LongNet.Mean - load.Transpiration_Wm2
}

// flows fills in the heat flows of a mean rise over air.
func (b *Berry) flows(s *Surface, load *Load, rise, convective, radiative float64) {
	s.FluxAbsorbed = b.Absorptance * (load.Beam_Wm2/4 + load.Short.Mean)
	s.FluxLongwave = load.LongNet.Mean - radiative*rise
	s.FluxConvection = convective * rise
	s.FluxTranspiration = load.Transpiration_Wm2
}

// skin lays the steady pattern over the mean. The broad fields and the first term of the beam are
// one vector; the even rest of the beam is known at its poles by value and slope. As that rest bends
// upward away from the equator, value minus slope·(1−|cosθ|) never exceeds it, and the largest of
// that plus the vector has a closed form: exact where the axes agree or one field
// vanishes, and low by at most 0.05 K between.
func (b *Berry) skin(mean_C float64, load *Load, total float64) Surface {
	p := b.pattern(load, total)
	tilt := p.vector.Len()
	if !(load.Beam_Wm2 > 0) {
		return Surface{Mean_C: mean_C, Lit_C: mean_C + tilt, Shaded_C: mean_C - tilt, Hottest_C: mean_C + tilt}
	}
	along := p.vector.Dot(load.Sun)
	return Surface{
		Mean_C:    mean_C,
		Lit_C:     mean_C + p.even + along,
		Shaded_C:  mean_C + p.even - along,
		Hottest_C: mean_C + p.even - p.slope + p.vector.Add(load.Sun.Mul(math.Copysign(p.slope, along))).Len(),
	}
}

// pattern is what lies over the mean [K].
type pattern struct {
	vector mgl64.Vec3 // rise on an element per cosine to it
	even   float64    // rise of the even rest of the beam at its poles
	slope  float64    // of that rest there by cosθ
}

// pattern finds what the load lays over the mean.
func (b *Berry) pattern(load *Load, total float64) pattern {
	inward := b.Conductivity / b.radius()
	p := pattern{vector: load.Short.Vector.Mul(b.Absorptance).Add(load.LongNet.Vector).Mul(1 / (total + inward))}
	if !(load.Beam_Wm2 > 0) {
		return p
	}
	q0 := b.Absorptance * load.Beam_Wm2
	p.vector = p.vector.Add(load.Sun.Mul(q0 / 2 / (total + inward)))
	p.even, p.slope = evenPole(inward / total)
	p.even = (p.even - 0.25) * q0 / total
	p.slope *= q0 / total
	return p
}

// Steady is a berry that has come to rest under a constant load, with what made it so.
type Steady struct {
	Surface
	FluxBeam     float64    // direct sun taken in, part of FluxAbsorbed [W/m²]
	FluxDiffuse  float64    // diffuse sun taken in, the other part [W/m²]
	FluxFrom     float64    // longwave of the surroundings over that at air temperature [W/m²]
	FluxEmission float64    // longwave given off for being warmer than the air [W/m²]
	Convection   Convection // of the sphere alone
	Factor       float64    // of the bunch on it: ConvectionFactor
	Convective   float64    // coefficient that acts [W/m²/K]
	Radiative    float64    // h_r [W/m²/K]
}

// steadyTolerance ends the search for the steady mean [K].
const steadyTolerance = 1e-10

// Steady finds the temperature at which nothing changes any more. The mean converges by itself: h
// grows with the fifth root of the rise at most, so each round cuts the error to about a quarter.
func (b Berry) Steady(load Load, around Around) Steady {
	mean := around.Air_C
	inflow := b.inflow(&load)
	for range 100 {
		convective, radiative := b.exchange(mean, &around)
		next := around.Air_C + inflow/(convective+radiative)
		moved := math.Abs(next - mean)
		mean = next
		if moved < steadyTolerance {
			break
		}
	}
	convective, radiative := b.exchange(mean, &around)
	s := Steady{
		Surface:    b.skin(mean, &load, convective+radiative),
		FluxBeam:   b.Absorptance * load.Beam_Wm2 / 4,
		FluxFrom:   load.LongNet.Mean,
		Convection: SphereConvection(b.Diameter_m, around, mean),
		Factor:     b.ConvectionFactor(),
		Convective: convective,
		Radiative:  radiative,
	}
	b.flows(&s.Surface, &load, mean-around.Air_C, convective, radiative)
	s.FluxDiffuse = s.FluxAbsorbed - s.FluxBeam
	s.FluxEmission = radiative * (mean - around.Air_C)
	return s
}
