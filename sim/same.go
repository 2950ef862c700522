package sim

import (
	"slices"

	"rowlight/sim/scenario"
)

// lastDay is the day that was run last: what only weighs the options leaves light and heat as they are.
type lastDay struct {
	key string
	run *Run
}

// dayKey names all inputs of light and heat: the scenario without frost, crop, weights and costs, and without what
// it and its options are called, except where the name of an option goes into the result.
func dayKey(s scenario.Scenario) (string, error) {
	s.Frost, s.Crop, s.Weights = scenario.Frost{}, scenario.Crop{}, scenario.Weights{}
	s.Name, s.Note, s.Compare = "", "", 0
	s.Options = slices.Clone(s.Options)
	for i := range s.Options {
		s.Options[i].Cost = scenario.Cost{}
	}
	return keyOf(s)
}

// recall takes the options of the last day into a run if its inputs were the same.
func (e *Engine) recall(key string, into *Run) bool {
	if e.last.run == nil || e.last.key != key {
		return false
	}
	into.Result.Options, into.Options = slices.Clone(e.last.run.Result.Options), e.last.run.Options
	return true
}
