package heat

import "github.com/go-gl/mathgl/mgl64"

// Trace is a step of a berry with all that led to its end, by the very functions of Step.
type Trace struct {
	Surface
	Convection      Convection // of the sphere alone, at the mean before
	Factor          float64    // of the bunch on it
	Convective      float64    // h [W/m²/K]
	Radiative       float64    // h_r [W/m²/K]
	Inflow_Wm2      float64    // heat that the mean receives at air temperature
	Capacity_Jm2K   float64    // heat that the mean takes up per surface
	CapacityRadius  float64    // R of that capacity ρcR/3 [m]
	Balance_C       float64    // mean at which nothing would change any more
	Inward_Wm2K     float64    // k/R, conduction through the berry
	EvenPole        float64    // even part of h·rise/q0 at a pole of the beam: 1/4 is the mean; 0 when unlit
	EvenSlope       float64    // of it by cosθ; 0 when unlit
	Tilt            mgl64.Vec3 // rise on an element per cosine to it [K]
	Even_K, Slope_K float64    // rise of the even rest of the beam at its poles, and its slope there
}

// Trace is Step with what led to it.
func (b Berry) Trace(mean_C float64, load Load, around Around, dt_s float64) Trace {
	in := b.In(&around)
	t := Trace{
		Surface:       in.Step(mean_C, &load, dt_s),
		Convection:    SphereConvection(b.Diameter_m, around, mean_C),
		Factor:        in.factor,
		Inflow_Wm2:    b.inflow(&load),
		Inward_Wm2K:   in.inward,
		Capacity_Jm2K: in.heats,
	}
	t.Convective, t.Radiative = in.exchange(mean_C)
	total := t.Convective + t.Radiative
	t.Balance_C = in.approach(mean_C, t.Inflow_Wm2, total, dt_s).balance
	t.CapacityRadius = b.capacityRadius()
	p := in.pattern(&load, total)
	t.Tilt, t.Even_K, t.Slope_K = p.vector, p.even, p.slope
	if load.Beam_Wm2 > 0 {
		t.EvenPole, t.EvenSlope = evenPole(t.Inward_Wm2K / total)
	}
	return t
}
