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
		chain, err := fork.Explain(s, where, b.slices.Pace(generation))
		switch {
		case errors.Is(err, queue.ErrSuperseded):
		case err != nil:
			b.post(map[string]any{"kind": "crashed", "generation": generation, "reason": err.Error()})
		default:
			b.post(map[string]any{"kind": "explanation", "generation": generation, "chain": text(chain)})
		}
	}()
}
