package sim

import (
	"fmt"

	"rowlight/sim/growth"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/spread"
)

// leastDraws are needed for a band that has a lowest and a highest tenth.
const leastDraws = 10

// Drawing finds how far the numbers of a run may be off, from draws of the inputs of package spread, the same for all
// options. It can be told to go on drawing: more draws make surer ranges.
//
// The central numbers stay those of the run. Draws are lived through by a part of the bunches in steps of 15
// minutes; what a draw changes there is added to the central number, so that the coarser day shifts nothing.
type Drawing struct {
	inputs  []spread.Input
	sample  []spread.Draw
	compare int
	weather *coarse
	thin    []*thinOption
	options []drawnOption
}

// Drawing prepares up to so many draws (at least 10) for a run of the same scenario. Pace is as for Day.
func (e *Engine) Drawing(s scenario.Scenario, run *Run, most int, pace func() error) (*Drawing, error) {
	return e.drawing(s, run, spread.Inputs(), most, pace)
}

// drawing draws the given inputs.
func (e *Engine) drawing(s scenario.Scenario, run *Run, inputs []spread.Input, most int, pace func() error) (*Drawing, error) {
	if most < leastDraws {
		return nil, fmt.Errorf("ranges: %d draws, at least %d are needed", most, leastDraws)
	}
	s = growth.Grown(s)
	d := &Drawing{inputs: inputs, sample: spread.Draws(inputs, s.Seed, most), compare: s.Compare}
	var err error
	if d.weather, err = newCoarse(s, inputs, d.sample, pace); err != nil {
		return nil, err
	}
	for i, option := range s.Options {
		thin, err := e.thin(s, option, inputs, d.weather, pace)
		if err != nil {
			return nil, err
		}
		drawn, err := thin.begin(&run.Result, i, d.weather, pace)
		if err != nil {
			return nil, err
		}
		d.thin, d.options = append(d.thin, thin), append(d.options, drawn)
	}
	return d, nil
}

// To lives through the draws up to number n, those that it has not yet. Pace and progress are as for Day.
func (d *Drawing) To(n int, pace func() error, progress Progress) error {
	if progress == nil {
		progress = func(string, float64) {}
	}
	n = min(n, len(d.sample))
	for i := range d.options {
		drawn := &d.options[i]
		for k := len(drawn.values); k < n; k++ {
			if err := d.thin[i].draw(drawn, d.weather.courses[k], d.sample[k], pace); err != nil {
				return err
			}
			progress("ranges", (float64(i)+float64(k+1)/float64(n))/float64(len(d.options)))
		}
	}
	return nil
}

// Ranges sums up the draws so far, of which there must be at least 10.
func (d *Drawing) Ranges() *result.Ranges {
	ranges := &result.Ranges{Draws: len(d.options[0].values), Differences: differences(d.options, d.compare)}
	for _, in := range d.inputs {
		ranges.Inputs = append(ranges.Inputs, in.Input)
	}
	ranges.Options = d.bands()
	return ranges
}

// Ranges is how far the numbers of a run may be off by so many draws, at least 10.
func (e *Engine) Ranges(s scenario.Scenario, run *Run, draws int, pace func() error, progress Progress) (*result.Ranges, error) {
	return e.ranges(s, run, spread.Inputs(), draws, pace, progress)
}

// ranges draws the given inputs.
func (e *Engine) ranges(s scenario.Scenario, run *Run, inputs []spread.Input, draws int, pace func() error, progress Progress) (*result.Ranges, error) {
	d, err := e.drawing(s, run, inputs, draws, pace)
	if err != nil {
		return nil, err
	}
	if err := d.To(draws, pace, progress); err != nil {
		return nil, err
	}
	return d.Ranges(), nil
}
