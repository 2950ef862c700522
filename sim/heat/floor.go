package heat

import (
	"math"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
)

// day is the period of the forcing that the floor follows [s].
const day = 86400.0

// Floor is the ground between the rows as strips of one kind over one deep temperature.
//
// Each strip follows force–restore (Bhumralkar 1975, J. Appl. Meteorol. 14:1246; Deardorff 1978, J. Geophys.
// Res. 83:1889), written with thermal inertia Γ and the day τ:
//
//	dT/dt = 2√π/(Γ√τ)·G − 2π/τ·(T − Tdeep)
//
// G being the heat that goes into the ground. It answers a daily wave as a half-space does, in size and in time.
type Floor struct {
	FloorKind
	Surface_C  []float64 // one per strip
	Upward_Wm2 []float64 // longwave that leaves each strip, given off and reflected
	Deep_C     float64   // shared
	Flux       FloorFlux // of the last step

	seen      float64 // sum of mean surface temperature times time, since the last Settle
	seenFor_s float64
}

// FloorFlux is the heat flows of a floor, averaged over strips and step [W/m²]. Absorbed + Longwave −
// Sensible − Latent − Ground is zero to rounding.
type FloorFlux struct {
	Absorbed float64 // sunlight taken in
	Longwave float64 // longwave taken in minus given off
	Sensible float64 // warming the air
	Latent   float64 // evaporating water; dew is left out
	Ground   float64 // warming the ground
	Upward   float64 // longwave that leaves the floor, given off and reflected
}

// NewFloor is a floor of some strips (at least one) that is start_C everywhere.
func NewFloor(kind scenario.Floor, strips int, start_C float64) *Floor {
	strips = max(strips, 1)
	f := &Floor{FloorKind: FloorOf(kind), Surface_C: make([]float64, strips), Upward_Wm2: make([]float64, strips), Deep_C: start_C}
	for i := range f.Surface_C {
		f.Surface_C[i] = start_C
		f.Upward_Wm2[i] = Emitted(start_C) // as long as nothing is known of the sky: a cavity
	}
	return f
}

// Step carries the floor through dt_s seconds of constant weather: sunlight and longwave that come down
// on each strip [W/m²] (one value for all, or one per strip) and the air, with its wind at
// FloorWind_m and its dew point. The exchange is linear over a step, so that steps of minutes are
// stable and energy closes; use steps of 15 minutes at most.
func (f *Floor) Step(short_Wm2, long_Wm2 []float64, around Around, dt_s float64) {
	f.Flux = FloorFlux{}
	share := 1 / float64(len(f.Surface_C))
	air := newFloorAir(around)
	mean := 0.0
	for i := range f.Surface_C {
		long := ofStrip(long_Wm2, i)
		flux, slope := f.balance(f.Surface_C[i], ofStrip(short_Wm2, i), long, air)
		next, average := f.forceRestore(f.Surface_C[i], flux.Ground, slope.Ground, dt_s)
		moved := average - f.Surface_C[i]
		f.Flux.Absorbed += share * flux.Absorbed
		f.Flux.Longwave += share * (flux.Longwave + slope.Longwave*moved)
		f.Flux.Sensible += share * (flux.Sensible + slope.Sensible*moved)
		f.Flux.Latent += share * (flux.Latent + slope.Latent*moved)
		f.Flux.Ground += share * (flux.Ground + slope.Ground*moved)
		f.Flux.Upward += share * (long - flux.Longwave - slope.Longwave*moved)
		f.Surface_C[i] = next
		f.Upward_Wm2[i] = long + f.Emissivity*(Emitted(next)-long)
		mean += share * average
	}
	f.Deep_C += f.Flux.Ground * dt_s / (f.ThermalInertia * math.Sqrt(365*day)) // Deardorff 1978, its eq. for T2
	f.seen += mean * dt_s
	f.seenFor_s += dt_s
}

// Settle puts the deep temperature to the mean of the surface since the last Settle. Deardorff's deep
// temperature is that mean over some days; after each spin-up day it saves waiting for weeks.
func (f *Floor) Settle() {
	if f.seenFor_s > 0 {
		f.Deep_C = f.seen / f.seenFor_s
	}
	f.seen, f.seenFor_s = 0, 0
}

// ofStrip reads the value of a strip, or the one for all.
func ofStrip(values []float64, strip int) float64 {
	if len(values) == 1 {
		return values[0]
	}
	return values[strip]
}

// forceRestore is the temperature after dt_s and its average over that time, when the heat that
// enters the ground is flux + slope·(T − surface_C).
func (f *Floor) forceRestore(surface_C, flux, slope, dt_s float64) (next, average float64) {
	force := 2 * math.Sqrt(math.Pi) / (f.ThermalInertia * math.Sqrt(day))
	restore := 2 * math.Pi / day
	rate := force*flux - restore*(surface_C-f.Deep_C)
	decay := restore - force*slope
	x := decay * dt_s
	if math.Abs(x) < 1e-9 {
		return surface_C + rate*dt_s, surface_C + rate*dt_s/2
	}
	gone := -math.Expm1(-x)
	return surface_C + rate/decay*gone, surface_C + rate/decay*(1-gone/x)
}

// floorAir is what the strips share of the air.
type floorAir struct {
	around   Around
	capacity float64 // ρc_p [J/m³/K]
	gamma    float64 // [Pa/K]
	vapour   float64 // [Pa]
}

func newFloorAir(around Around) floorAir {
	air := AirAt(around.Air_C, around.Pressure_Pa)
	gamma := sky.Psychrometric(pressureScale(around.Pressure_Pa) * atmosphere)
	return floorAir{around, air.Density * air.HeatCapacity_JkgK, gamma, sky.SaturationPressure(around.Dew_C)}
}

// balance is the heat flows of one strip at a temperature, and how each grows with it. Ground is the rest.
func (f *Floor) balance(surface_C, short, long float64, air floorAir) (flux, slope FloorFlux) {
	over := surface_C - air.around.Air_C
	conductance, growth := floorExchange(over, air.around.Wind_ms)
	kelvins := surface_C + kelvin
	flux.Absorbed = (1 - f.Albedo) * short
	flux.Longwave = f.Emissivity * (long - Emitted(surface_C))
	slope.Longwave = -4 * f.Emissivity * stefanBoltzmann * kelvins * kelvins * kelvins
	flux.Sensible = air.capacity * conductance * over
	slope.Sensible = air.capacity * (conductance + growth*over)
	wetness := 1 / (1/conductance + f.resistance(short)) // [m/s]
	if deficit := sky.SaturationPressure(surface_C) - air.vapour; deficit > 0 && wetness > 0 {
		flux.Latent = air.capacity / air.gamma * wetness * deficit
		slope.Latent = air.capacity / air.gamma * wetness * sky.SaturationSlope(surface_C)
	}
	flux.Ground = flux.Absorbed + flux.Longwave - flux.Sensible - flux.Latent
	slope.Ground = slope.Longwave - slope.Sensible - slope.Latent
	return flux, slope
}
