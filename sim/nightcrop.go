package sim

import (
	"rowlight/sim/crop"
	"rowlight/sim/frost"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// Frost is the night of a scenario and what it does to the buds of every option, without running a day.
func (e *Engine) Frost(s scenario.Scenario) (result.Night, []result.OptionFrost, error) {
	night, err := frost.NightOf(s)
	if err != nil {
		return result.Night{}, nil, err
	}
	critical := frost.CriticalOf(s.Frost)
	var options []result.OptionFrost
	for _, o := range s.Options {
		stand, _, err := e.stand(s, o)
		if err != nil {
			return result.Night{}, nil, err
		}
		options = append(options, frost.Of(stand.Stand, night, critical))
	}
	return frost.Told(night, critical), options, nil
}

// Crop is the crop and the work of every option, without running a day.
func (e *Engine) Crop(s scenario.Scenario) ([]result.OptionCrop, []result.OptionWork, error) {
	var crops []result.OptionCrop
	var works []result.OptionWork
	for _, o := range s.Options {
		stand, _, err := e.stand(s, o)
		if err != nil {
			return nil, nil, err
		}
		crops = append(crops, crop.Of(s, o, stand.leafAreaIndex()))
		works = append(works, crop.Work(s, o))
	}
	return crops, works, nil
}
