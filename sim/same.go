package sim

import (
	"slices"

	"rowlight/sim/scenario"
)

// lastDay is the day that was run last: a change of one option leaves the light and heat of the others as they are, and
// what only weighs options those of all.
type lastDay struct {
	keys []string // of the options
	run  *Run
}

// optionKeys name all inputs of light and heat of each option: the scenario without frost, crop, weights and costs, and
// without what it is called. The name of an option goes into its result.
func optionKeys(s scenario.Scenario) ([]string, error) {
	s.Frost, s.Crop, s.Weights = scenario.Frost{}, scenario.Crop{}, scenario.Weights{}
	s.Name, s.Note, s.Compare = "", "", 0
	options, keys := s.Options, make([]string, len(s.Options))
	for i, option := range options {
		option.Cost = scenario.Cost{}
		s.Options = []scenario.Option{option}
		var err error
		if keys[i], err = keyOf(s); err != nil {
			return nil, err
		}
	}
	return keys, nil
}

// recall puts an option of the last day into a run if its inputs were the same.
func (l *lastDay) recall(key string, into *Run) bool {
	i := slices.Index(l.keys, key)
	if i < 0 {
		return false
	}
	into.Result.Options = append(into.Result.Options, l.run.Result.Options[i])
	into.Options = append(into.Options, l.run.Options[i])
	return true
}
