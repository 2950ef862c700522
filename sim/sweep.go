package sim

import (
	"fmt"
	"time"

	"rowlight/sim/growth"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// SpanDay is one day of a span: its weather and how far vines and fruit have grown.
type SpanDay struct {
	Weather scenario.Weather `json:"weather"`
	Stage   growth.Stage     `json:"stage"`
}

// Sweep is how a run over many days goes about its work.
type Sweep struct {
	Days []SpanDay // in their order, one at least
	// Jobs is the number of days that are worked on at once, at least 1. Answers are the same for any number. Above 1
	// pace is called from several goroutines.
	Jobs int
}

// OneDay is the sweep over the day of a scenario.
func OneDay(s scenario.Scenario) Sweep {
	return Sweep{Days: []SpanDay{{s.Weather, growth.Of(s)}}, Jobs: 1}
}

// Part is a part of the work of a sweep that stands alone: an option, with its rows at an azimuth, over a run of its days.
type Part struct {
	Option      int     `json:"option"`
	Azimuth_deg float64 `json:"azimuth_deg"`
	From        int     `json:"from"` // first day, by its index
	To          int     `json:"to"`   // day after the last
}

// Turns lists the parts of a turn of the rows: every option at every azimuth from 0, so many degrees apart, and at its
// own, over all days.
func (w *Sweep) Turns(s scenario.Scenario, step_deg float64) []Part {
	var parts []Part
	for i, o := range s.Options {
		for _, azimuth := range azimuths(step_deg, o.Rows.Azimuth_deg) {
			parts = append(parts, Part{i, azimuth, 0, len(w.Days)})
		}
	}
	return parts
}

// Courses lists the parts of a season: every option with its rows as planned, in runs of at most so many days of one stage.
func (w *Sweep) Courses(s scenario.Scenario, most int) []Part {
	var parts []Part
	for i, o := range s.Options {
		for from := 0; from < len(w.Days); {
			to := from + 1
			for to < len(w.Days) && to-from < most && w.Days[to].Stage == w.Days[from].Stage {
				to++
			}
			parts = append(parts, Part{i, o.Rows.Azimuth_deg, from, to})
			from = to
		}
	}
	return parts
}

// Shard is the i-th of n runs of things that are as long as one another, to one: 0 ≤ i < n. All of them in their order are
// the things.
func Shard[T any](things []T, i, n int) []T {
	return things[len(things)*i/n : len(things)*(i+1)/n]
}

// Sweeping is a sweep under way: it keeps the weather of its days.
type Sweeping struct {
	engine   *Engine
	scenario scenario.Scenario
	sweep    Sweep
	courses  []*weather.Series // by day, nil until it is wanted
}

// Sweep begins a sweep of a scenario, which must be valid.
func (e *Engine) Sweep(s scenario.Scenario, sweep Sweep) *Sweeping {
	return &Sweeping{e, s, sweep, make([]*weather.Series, len(sweep.Days))}
}

// course is the weather of a day, the same for all options and azimuths.
func (w *Sweeping) course(day int) (*weather.Series, error) {
	if w.courses[day] == nil {
		s := w.scenario
		s.Weather = w.sweep.Days[day].Weather
		course, err := weather.Course(s, leanHours())
		if err != nil {
			return nil, fmt.Errorf("weather of %s: %w", s.Weather.Date, err)
		}
		w.courses[day] = &course
	}
	return w.courses[day], nil
}

// dateOf reads the date of a day of a sweep.
func dateOf(day SpanDay) (time.Time, error) { return time.Parse(time.DateOnly, day.Weather.Date) }
