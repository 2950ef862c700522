package heat

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
)

// Each number of a trace follows from the ones before by the equation that its field names, and the end is that of Step.
func TestTraceLeadsToStep(t *testing.T) {
	around := Around{Air_C: 36, Wind_ms: 0.7, Pressure_Pa: 99000}
	berry := NewBerry(scenario.Fruit{Diameter_mm: 15, Compactness: 0.6, Colour: scenario.Red}, 160)
	for _, beam := range []float64{0, 820} {
		load := Load{
			Beam_Wm2: beam, Sun: mgl64.Vec3{0.6, 0, 0.8},
			Short: Broad{60, mgl64.Vec3{20, -4, 10}}, LongNet: Broad{-25, mgl64.Vec3{0, 3, -40}}, Transpiration_Wm2: 4,
		}
		got := berry.Trace(33, load, around, 300)
		if got.Surface != berry.Step(33, &load, &around, 300) {
			t.Errorf("beam %g: the trace ends otherwise than the step", beam)
		}
		total := got.Convective + got.Radiative
		near(t, "h", got.Convective, got.Convection.Mixed*got.Factor, 1e-12)
		near(t, "inflow", got.Inflow_Wm2, berry.Absorptance*(beam/4+60)-25-4, 1e-9)
		near(t, "balance", got.Balance_C, 36+got.Inflow_Wm2/total, 1e-9)
		near(t, "capacity", got.Capacity_Jm2K, berry.Density*berry.HeatCapacity*got.CapacityRadius/3, 1e-6)
		near(t, "mean", got.Mean_C, got.Balance_C+(33-got.Balance_C)*math.Exp(-300*total/got.Capacity_Jm2K), 1e-9)
		near(t, "even part", got.Even_K, (got.EvenPole-0.25)*berry.Absorptance*beam/total, 1e-9)
		lit := got.Mean_C + got.Even_K + got.Tilt.Dot(load.Sun)
		if beam == 0 {
			lit = got.Mean_C + got.Tilt.Len()
		}
		near(t, "sunlit pole", got.Lit_C, lit, 1e-9)
	}
}

// The parts of the air profile are those of its equation.
func TestAirProfileByItsEquation(t *testing.T) {
	p := NewAirProfile(midday, 220, 0.3)
	rise := p.Scale_K / karman * (math.Log(2/0.8) - p.Stability(2) + p.Stability(0.8))
	near(t, "air at 0.8 m", p.At(0.8), 38+rise, 1e-12)
	near(t, "scale", p.Scale_K*p.Capacity_Jm3K*p.Friction_ms, 220, 1e-9)
}
