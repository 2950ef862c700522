//go:build js

package main

import (
	"errors"
	"syscall/js"

	"rowlight/sim"
	"rowlight/sim/scenario"
	"rowlight/wasm/engine/queue"
)

// shown is the scenario of the newest result.
type shown struct {
	generation int
	scenario   scenario.Scenario
}

// explain answers {kind: "explain", generation, option, side, hour} with {kind: "explanation", generation, chain:
// JSON}: how the hottest bunch face of a side of an option comes to its temperature at an hour. What is not of the
// newest result gets no answer. It runs beside what the engine computes, on a fork.
func (b *bridge) explain(generation int, message js.Value) {
	b.lookAt(generation, message, func(fork *sim.Engine, s scenario.Scenario, at sim.Where, pace func() error) (map[string]any, error) {
		chain, err := fork.Explain(s, at, pace)
		return map[string]any{"kind": "explanation", "generation": generation, "chain": text(chain)}, err
	})
}

// flows answers {kind: "flows", generation, option, side, hour} with {kind: "flows", generation, flows: JSON}: the heat
// flows over the day of the bunch face that explain would explain.
func (b *bridge) flows(generation int, message js.Value) {
	b.lookAt(generation, message, func(fork *sim.Engine, s scenario.Scenario, at sim.Where, pace func() error) (map[string]any, error) {
		flows, err := fork.Flows(s, at, pace)
		return map[string]any{"kind": "flows", "generation": generation, "flows": text(flows)}, err
	})
}

// lookAt posts what a look at one bunch face of the newest result finds.
func (b *bridge) lookAt(generation int, message js.Value, find func(*sim.Engine, scenario.Scenario, sim.Where, func() error) (map[string]any, error)) {
	if generation != b.shown.generation {
		return
	}
	s, fork := b.shown.scenario, b.engine.Fork()
	where := sim.Where{
		Option: message.Get("option").Int(), Side: scenario.Side(message.Get("side").Int()), Bunch: -1, Hour_h: message.Get("hour").Float(),
	}
	if where.Option >= len(s.Options) {
		return
	}
	go func() {
		found, err := find(fork, s, where, b.slices.Pace(generation))
		switch {
		case errors.Is(err, queue.ErrSuperseded):
		case err != nil:
			b.post(map[string]any{"kind": "crashed", "generation": generation, "reason": err.Error()})
		default:
			b.post(found)
		}
	}()
}
