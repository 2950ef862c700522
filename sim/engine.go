// Package sim is the chain from a scenario to its result: stand, domes, light, heat, sunburn. It keeps
// what a change of input does not touch, and touches neither files nor clock nor page.
package sim

import (
	"fmt"

	"rowlight/sim/crop"
	"rowlight/sim/growth"
	"rowlight/sim/light"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
	"rowlight/sim/weather"
	"rowlight/sim/words"
)

// Engine runs scenarios and remembers their stages, so that a change reruns only what it touches. It
// is not safe for concurrent use: give every goroutine its own.
type Engine struct {
	stands      cache[*measured]
	lights      cache[*light.Model]
	netted      cache[*light.Model] // of lights, behind nets
	scatterings cache[*scattering]
	days        cache[*daylight]
	last        lastDay
	thins       cache[*thinLight]
	leans       cache[*lean]
}

// NewEngine makes an engine that remembers nothing yet.
func NewEngine() *Engine { return &Engine{leans: cache[*lean]{most: leansKept}} }

// Fork is an engine that remembers the stands and the light that e does now. Both may be used at the same time: what
// one of them could change under the other, Fork leaves behind.
func (e *Engine) Fork() *Engine {
	return &Engine{stands: e.stands.fork(), lights: e.lights.fork(), netted: e.netted.fork(), days: e.days.fork()}
}

// Run is the answer to a scenario with the courses of all bunch faces, from which pictures are drawn.
type Run struct {
	Result  result.Day
	Options []OptionRun
}

// OptionRun is the courses of one option's faces.
type OptionRun struct {
	Stand     *training.Stand
	Faces     []training.Face
	Surface_C []float32 // hottest point of the berry [instant*faces + face]
	Berry_C   []float32 // whole berry, same index
	Lit       []uint8   // 1 when in the direct sun, same index
}

// Progress is told the stage that begins and the share of the run that is done [0–1].
type Progress func(stage string, done float64)

// Day runs a scenario over its day. The scenario must be valid. Pace is called at least every few
// milliseconds of work; its error abandons the run and is returned. Progress may be nil.
func (e *Engine) Day(s scenario.Scenario, pace func() error, progress Progress) (*Run, error) {
	if progress == nil {
		progress = func(string, float64) {}
	}
	hours := instants()
	course, err := weather.Course(s, hours)
	if err != nil {
		return nil, fmt.Errorf("weather: %w", err)
	}
	run := &Run{Result: newDay(s, hours, course)}
	keys, err := optionKeys(s)
	if err != nil {
		return nil, err
	}
	if err := e.options(s, keys, course, run, pace, progress); err != nil {
		return nil, err
	}
	judge(&run.Result, s)
	if run.Result.Weighing, err = e.weigh(s, &run.Result, course, pace); err != nil {
		return nil, err
	}
	for i := range s.Options {
		if err := e.notice(&run.Result, s, i); err != nil {
			return nil, err
		}
	}
	e.last = lastDay{keys, run}
	return run, nil
}

// options runs the options of a scenario through the day, or takes those of the last day that are the same.
func (e *Engine) options(s scenario.Scenario, keys []string, course weather.Series, run *Run, pace func() error, progress Progress) error {
	s = growth.Grown(s)
	for i, option := range s.Options {
		report := func(stage string, done float64) {
			progress(stage, (float64(i)+done)/float64(len(s.Options)))
		}
		if e.last.recall(keys[i], run) {
			// What the option stands on is asked for, lest changes of the others drive it out.
			if _, err := e.prepare(s, option, course, pace, report); err != nil {
				return err
			}
			report("done", 1)
			continue
		}
		optionResult, optionRun, err := e.option(s, option, course, pace, report)
		if err != nil {
			return err
		}
		run.Result.Options = append(run.Result.Options, optionResult)
		run.Options = append(run.Options, optionRun)
	}
	return nil
}

// notice tells what a grower would find wrong with the design of an option, after its crop has been weighed.
func (e *Engine) notice(day *result.Day, s scenario.Scenario, option int) error {
	o, path := s.Options[option], fmt.Sprintf("/options/%d", option)
	stand, _, err := e.stand(s, o)
	if err != nil {
		return err
	}
	notices := append(stand.Notices(o, stand.measures, path), o.RemovalNotices(s.Weather.Date, path)...)
	notices = append(notices, growth.Notices(s)...)
	day.Options[option].Notices = append(notices, crop.Notices(day.Weighing.Options[option].Crop, path)...)
	return nil
}

// judge puts the result into sentences.
func judge(day *result.Day, s scenario.Scenario) {
	day.Comparison = []result.Sentence{}
	for i := range day.Options {
		day.Options[i].Verdict = words.Verdict(day.Options[i], s)
	}
	for i := range day.Options {
		if i != s.Compare && s.Compare < len(day.Options) {
			day.Comparison = append(day.Comparison, words.Compare(day.Options[i], day.Options[s.Compare], s))
		}
	}
}

// step_min is the time between two instants [min]. A 14 mm berry follows its surroundings with a time
// constant of 3 to 10 minutes, and its mean is carried from instant to instant exactly.
const step_min = 5.0

// instants are the clock hours of a day, both midnights included.
func instants() []float64 {
	hours := make([]float64, 0, 289)
	for k := range 289 {
		hours = append(hours, float64(k)*step_min/60)
	}
	return hours
}
