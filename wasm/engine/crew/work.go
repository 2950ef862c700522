package crew

import (
	"encoding/json"
	"fmt"

	"rowlight/sim"
	"rowlight/sim/result"
)

// Work is a plan in the hands of one engine.
type Work struct {
	plan     Plan
	sweep    sim.Sweep
	sweeping *sim.Sweeping
}

// NewWork takes a plan as its JSON.
func NewWork(engine *sim.Engine, raw []byte) (*Work, error) {
	w := &Work{}
	if err := json.Unmarshal(raw, &w.plan); err != nil {
		return nil, err
	}
	w.sweep = sim.Sweep{Days: w.plan.Days, Jobs: 1}
	w.sweeping = engine.Sweep(w.plan.Scenario, w.sweep)
	return w, nil
}

// Turned is the answer to a part of the row directions.
type Turned struct {
	Option    int              `json:"option"`
	Direction result.Direction `json:"direction"`
}

// Part does a part of the plan: its answer is Turned or result.SeasonPart.
func (w *Work) Part(i int, pace func() error) (answer any, err error) {
	if i < 0 || i >= len(w.plan.Parts) {
		return nil, fmt.Errorf("the plan has %d parts, not one of index %d", len(w.plan.Parts), i)
	}
	parts := w.plan.Parts[i : i+1]
	if w.plan.What == Season {
		err = w.sweeping.Course(parts, pace, func(part result.SeasonPart) { answer = part }, nil)
	} else {
		err = w.sweeping.Turn(parts, pace, func(option int, d result.Direction) { answer = Turned{option, d} }, nil)
	}
	return answer, err
}

// Whole puts the answers of all parts together, in the order of the plan: result.Directions or result.Season.
func (w *Work) Whole(raw []byte) (any, error) {
	if w.plan.What == Season {
		var parts []result.SeasonPart
		if err := json.Unmarshal(raw, &parts); err != nil {
			return nil, err
		}
		return w.sweeping.Season(parts)
	}
	var turned []Turned
	if err := json.Unmarshal(raw, &turned); err != nil {
		return nil, err
	}
	rows := make([][]result.Direction, len(w.plan.Scenario.Options))
	for _, of := range turned {
		rows[of.Option] = append(rows[of.Option], of.Direction)
	}
	return sim.NewDirections(w.plan.Scenario, w.sweep, step_deg, rows), nil
}
