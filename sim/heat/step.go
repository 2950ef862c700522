package heat

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/exp"
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
	in := b.In(around)
	return in.Step(mean_C, load, dt_s)
}

// Follow is Step without the heat flows: the mean after it and the hottest point, the same to the last digit.
func (b *BerryIn) Follow(mean_C float64, load *Load, dt_s float64) (end_C, hottest_C float64) {
	convective, radiative := b.exchange(mean_C)
	total := convective + radiative
	a := b.approach(mean_C, b.inflow(load), total, dt_s)
	p := b.pattern(load, total)
	return a.end, a.end + p.hottest(load)
}

// Step is that of Berry.
func (b *BerryIn) Step(mean_C float64, load *Load, dt_s float64) Surface {
	convective, radiative := b.exchange(mean_C)
	total := convective + radiative
	a := b.approach(mean_C, b.inflow(load), total, dt_s)
	average := mean_C
	stored := (a.balance - mean_C) * total
	if a.turned > 0 {
		average = a.balance + (mean_C-a.balance)*a.gone/a.turned
		stored *= a.gone / a.turned
	}
	s := b.skin(a.end, load, total)
	b.flows(&s, load, average-b.air.air_C, convective, radiative)
	s.FluxStored = stored
	return s
}

// approach is how the mean goes towards its balance over a step.
type approach struct {
	balance float64 // where it would come to rest [°C]
	turned  float64 // the step in time constants [1]
	gone    float64 // share of the way to the balance that is gone [0–1]
	end     float64 // mean after the step [°C]
}

// approach carries the mean through a step.
func (b *BerryIn) approach(mean_C, inflow, total, dt_s float64) approach {
	a := approach{balance: b.air.air_C + inflow/total}
	if dt_s > 0 {
		a.turned = dt_s * total / b.heats
	}
	a.gone = 1 - exp.Of(-a.turned)
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

// skin lays the steady pattern over the mean.
func (b *BerryIn) skin(mean_C float64, load *Load, total float64) Surface {
	p := b.pattern(load, total)
	hottest := mean_C + p.hottest(load)
	if !(load.Beam_Wm2 > 0) {
		return Surface{Mean_C: mean_C, Lit_C: hottest, Shaded_C: mean_C - p.vector.Len(), Hottest_C: hottest}
	}
	along := p.vector.Dot(load.Sun)
	return Surface{
		Mean_C: mean_C, Lit_C: mean_C + p.even + along, Shaded_C: mean_C + p.even - along, Hottest_C: hottest,
	}
}

// pattern is what lies over the mean [K]: the broad fields and the first term of the beam are one vector; the even rest
// of the beam is known at its poles by value and slope.
type pattern struct {
	vector mgl64.Vec3 // rise on an element per cosine to it
	even   float64    // rise of the even rest of the beam at its poles
	slope  float64    // of that rest there by cosθ
}

// pattern finds what the load lays over the mean.
func (b *BerryIn) pattern(load *Load, total float64) (p pattern) {
	share := 1 / (total + b.inward)
	short, long := b.Absorptance*share, share
	lit := load.Beam_Wm2 > 0
	beam := 0.0
	if lit {
		q0 := b.Absorptance * load.Beam_Wm2
		beam = q0 / 2 * share
		p.even, p.slope = evenPole(b.inward / total)
		p.even = (p.even - 0.25) * q0 / total
		p.slope *= q0 / total
	}
	for axis := range p.vector {
		p.vector[axis] = short*load.Short.Vector[axis] + long*load.LongNet.Vector[axis]
		if lit {
			p.vector[axis] += beam * load.Sun[axis]
		}
	}
	return p
}

// hottest is the largest rise over the mean. As the even rest of the beam bends upward away from the equator, value
// minus slope·(1−|cosθ|) never exceeds it, and the largest of that plus the vector has a closed form: exact where the
// axes agree or one field vanishes, and low by at most 0.05 K between.
func (p *pattern) hottest(load *Load) float64 {
	if !(load.Beam_Wm2 > 0) {
		return p.vector.Len()
	}
	slope := math.Copysign(p.slope, p.vector.Dot(load.Sun))
	return p.even - p.slope + p.vector.Add(load.Sun.Mul(slope)).Len()
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
	mean, in := around.Air_C, b.In(&around)
	inflow := b.inflow(&load)
	for range 100 {
		convective, radiative := in.exchange(mean)
		next := around.Air_C + inflow/(convective+radiative)
		moved := math.Abs(next - mean)
		mean = next
		if moved < steadyTolerance {
			break
		}
	}
	convective, radiative := in.exchange(mean)
	s := Steady{
		Surface:    in.skin(mean, &load, convective+radiative),
		FluxBeam:   b.Absorptance * load.Beam_Wm2 / 4,
		FluxFrom:   load.LongNet.Mean,
		Convection: SphereConvection(b.Diameter_m, around, mean),
		Factor:     in.factor,
		Convective: convective,
		Radiative:  radiative,
	}
	b.flows(&s.Surface, &load, mean-around.Air_C, convective, radiative)
	s.FluxDiffuse = s.FluxAbsorbed - s.FluxBeam
	s.FluxEmission = radiative * (mean - around.Air_C)
	return s
}
