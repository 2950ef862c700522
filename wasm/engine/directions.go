//go:build js

package main

import (
	"errors"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
	"rowlight/wasm/engine/queue"
)

// How the rows are turned for the page: azimuths so far apart, and of the weeks of ripening one day in so many.
const (
	directionStep_deg = 5
	ripeningEvery     = 9
)

// directions posts what comes of every row azimuth as it is known, if the job wants it and stays the newest.
func (b *bridge) directions(job queue.Job, s scenario.Scenario) {
	if job.Directions == "" || b.jobs.Superseded(job.Generation) {
		return
	}
	sweep := sim.OneDay(s)
	if job.Directions == "ripening" {
		dates := sim.SeasonOf(s)
		days, faults := sim.Stretch(&s, b.almanac.FileOf(s), dates.Veraison, dates.Harvest, ripeningEvery)
		if weather.Blocked(faults) { // none of these weeks is in the file: the day of the scenario goes through them
			days, _ = sim.Stretch(&s, nil, dates.Veraison, dates.Harvest, ripeningEvery)
		}
		sweep = days
	}
	done := 0.0
	rows := make([][]result.Direction, len(s.Options))
	drawn := func(option int, d result.Direction) {
		rows[option] = append(rows[option], d)
		b.post(map[string]any{"kind": "direction", "generation": job.Generation, "option": option, "done": done, "direction": text(d)})
	}
	progress := func(_ string, share float64) { done = share }
	err := b.engine.Sweep(s, sweep).Turn(sweep.Turns(s, directionStep_deg), b.slices.Pace(job.Generation), drawn, progress)
	fault, ofWeather := weather.FaultIn(err)
	switch {
	case errors.Is(err, queue.ErrSuperseded):
	case ofWeather:
		b.faults(job, []scenario.Fault{fault})
	case err != nil:
		b.crashed(job, err.Error())
	default:
		b.post(map[string]any{"kind": "directions", "generation": job.Generation, "directions": text(sim.NewDirections(s, sweep, directionStep_deg, rows))})
	}
}
