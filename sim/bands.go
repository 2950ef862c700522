package sim

import (
	"fmt"
	"math"

	"rowlight/sim/internal/draw"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/spread"
)

// leastDraws are needed for a band that has a lowest and a highest tenth.
const leastDraws = 10

// Bands finds how far the numbers of a run of the same scenario may be off, from some draws (at least 10) of the
// inputs of package spread, the same for all options: bands for every option, and how each differs from the
// compared one. Pace and progress are as for Day.
//
// The central numbers stay those of the run. Draws are lived through by a part of the bunches in steps of 15
// minutes; what a draw changes there is added to the central number, so that the coarser day shifts nothing.
func (e *Engine) Bands(s scenario.Scenario, run *Run, draws int, pace func() error, progress Progress) ([]result.OptionBands, []result.Difference, error) {
	return e.bands(s, run, spread.Inputs(), draws, pace, progress)
}

// Ranges is Bands with the inputs that were drawn, as a result holds them.
func (e *Engine) Ranges(s scenario.Scenario, run *Run, draws int, pace func() error, progress Progress) (*result.Ranges, error) {
	options, differences, err := e.Bands(s, run, draws, pace, progress)
	if err != nil {
		return nil, err
	}
	ranges := &result.Ranges{Draws: draws, Options: options, Differences: differences}
	for _, in := range spread.Inputs() {
		ranges.Inputs = append(ranges.Inputs, in.Input)
	}
	return ranges, nil
}

// bands draws the given inputs.
func (e *Engine) bands(s scenario.Scenario, run *Run, inputs []spread.Input, draws int, pace func() error, progress Progress) ([]result.OptionBands, []result.Difference, error) {
	if draws < leastDraws {
		return nil, nil, fmt.Errorf("ranges: %d draws, at least %d are needed", draws, leastDraws)
	}
	if progress == nil {
		progress = func(string, float64) {}
	}
	sample := spread.Draws(inputs, s.Seed, draws)
	courses, err := newCoarse(s, inputs, sample, pace)
	if err != nil {
		return nil, nil, err
	}
	options := make([]drawnOption, len(s.Options))
	for i, option := range s.Options {
		report := func(done float64) { progress("ranges", (float64(i)+done)/float64(len(s.Options))) }
		thin, err := e.thin(s, option, inputs, courses, pace)
		if err != nil {
			return nil, nil, err
		}
		if options[i], err = thin.drawn(run.Result.Options[i], courses, sample, pace, report); err != nil {
			return nil, nil, err
		}
	}
	return bandsOf(options, inputs, sample), differences(options, s.Compare), nil
}

// numbers are those of both sides of an option.
type numbers [2][result.SummaryNumbers]float64

// drawnOption is what the draws make of an option.
type drawnOption struct {
	central numbers
	noise   []numbers // what the light field of each draw adds
	values  []numbers // of each draw
}

// drawn lives through all draws. What the light field adds is found once for a few fields with everything
// else as it is, and made as small as it is for all bunches.
func (t *thinOption) drawn(o result.Option, c *coarse, sample []spread.Draw, pace func() error, report func(float64)) (drawnOption, error) {
	var out drawnOption
	for side := range o.Sides {
		out.central[side] = o.Sides[side].Summary.Numbers()
	}
	usual, err := t.live(c.usual, c.inputs, t.between.At(1), pace)
	if err != nil {
		return out, err
	}
	fields, err := t.fields(c, pace)
	if err != nil {
		return out, err
	}
	for k, values := range sample {
		model := t.between.At(values[spread.LeafArea] * values[spread.Clumping])
		lived, err := t.live(c.courses[k], values, model, pace)
		if err != nil {
			return out, err
		}
		field := numbers{}
		if len(fields) > 0 {
			field = fields[min(int(values[spread.Field]*float64(len(fields))), len(fields)-1)]
		}
		out.noise = append(out.noise, field)
		out.values = append(out.values, shifted(out.central, lived, usual, field))
		report(float64(k+1) / float64(len(sample)))
	}
	return out, nil
}

// fieldsDrawn is the number of light fields that are looked at: their standard deviation is then known within a fifth.
const fieldsDrawn = 12

// fields are what other light fields add to each number, with mean zero and the deviation of all bunches.
func (t *thinOption) fields(c *coarse, pace func() error) ([]numbers, error) {
	if c.inputs[spread.Field] == c.fieldHigh {
		return nil, nil
	}
	model, all := t.between.At(1), make([]numbers, fieldsDrawn)
	var mean numbers
	for k := range all {
		const seedOf draw.Purpose = 31
		seed := int(draw.New(t.scenario.Seed).Of(k).Bits(seedOf) >> 33)
		lived, err := t.live(c.usual, c.inputs, model.Reseeded(seed), pace)
		if err != nil {
			return nil, err
		}
		all[k] = lived
		each(&mean, func(side, i int, to *float64) { *to += lived[side][i] / fieldsDrawn })
	}
	// The mean of n bunches deviates √(N/n) times as far as that of N; and the mean was taken of the same draws.
	scale := math.Sqrt(t.kept) * math.Sqrt(fieldsDrawn/(fieldsDrawn-1.0))
	for k := range all {
		each(&all[k], func(side, i int, value *float64) { *value = scale * (*value - mean[side][i]) })
	}
	return all, nil
}

// shifted adds to the central numbers what a draw changes, within what each number can be.
func shifted(central, lived, usual, field numbers) numbers {
	each(&central, func(side, i int, value *float64) {
		moved := *value + (lived[side][i] - usual[side][i]) + field[side][i]
		*value = math.Min(math.Max(moved, math.Min(possible[i].low, *value)), math.Max(possible[i].high, *value))
	})
	return central
}

// possible are the bounds of each number of a summary, in its order.
var possible = func() [result.SummaryNumbers]struct{ low, high float64 } {
	low := result.Summary{Hottest_C: math.Inf(-1), MeanMax_C: math.Inf(-1)}
	high := result.Summary{
		Lit_h: 24, Light_MJm2: math.Inf(1), Hottest_C: math.Inf(1), HottestAt_h: 24, MeanMax_C: math.Inf(1),
		OverWatch_h: 24, OverHot_h: 24, OverBurn_h: 24, HottestOverBurn_h: 24, AtRisk: 1, Browning: math.Inf(1),
	}
	var bounds [result.SummaryNumbers]struct{ low, high float64 }
	for i, value := range low.Numbers() {
		bounds[i].low, bounds[i].high = value, high.Numbers()[i]
	}
	return bounds
}()

// each goes through the numbers of both sides.
func each(n *numbers, do func(side, i int, value *float64)) {
	for side := range n {
		for i := range n[side] {
			do(side, i, &n[side][i])
		}
	}
}
