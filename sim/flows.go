package sim

import (
	"fmt"

	"rowlight/sim/growth"
	"rowlight/sim/heat"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// Flows runs one option of a scenario through its day and reads out the heat flows of the berries of one bunch face, at
// every instant; the face is that of Explain. Option and bunch must exist.
func (e *Engine) Flows(s scenario.Scenario, at Where, pace func() error) (result.Flows, error) {
	chain, err := e.Explain(s, at, pace)
	if err != nil {
		return result.Flows{}, err
	}
	s = growth.Grown(s)
	course, err := weather.Course(s, instants())
	if err != nil {
		return result.Flows{}, fmt.Errorf("weather: %w", err)
	}
	d, err := e.prepare(s, s.Options[at.Option], course, pace, func(string, float64) {})
	if err != nil {
		return result.Flows{}, err
	}
	if err := d.settle(pace); err != nil {
		return result.Flows{}, err
	}
	flows := result.Flows{Option: chain.Option, Side: chain.Side, Bunch: chain.Bunch, Bunches: chain.Bunches}
	face := 2*(chain.Bunch-1) + int(at.Side)
	var load heat.Load
	for k := range course.Instants {
		if err := pace(); err != nil {
			return result.Flows{}, err
		}
		n, dt_s := d.enter(k)
		d.loadOn(k, face, &n, &load)
		skin := d.berry.Step(d.mean[face], &load, &n.fruit[face%2], dt_s)
		flows.Sunlight_Wm2 = append(flows.Sunlight_Wm2, skin.FluxAbsorbed)
		flows.Longwave_Wm2 = append(flows.Longwave_Wm2, skin.FluxLongwave)
		flows.Air_Wm2 = append(flows.Air_Wm2, skin.FluxConvection)
		flows.Evaporation_Wm2 = append(flows.Evaporation_Wm2, skin.FluxTranspiration)
		flows.Stored_Wm2 = append(flows.Stored_Wm2, skin.FluxStored)
		d.stepFaces(k, n, dt_s)
	}
	return flows, nil
}
