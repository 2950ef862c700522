// Package crew lets several engines share the work of many days: one of them plans it, each does parts of it, and any
// puts the parts together. It has no browser in it.
package crew

import (
	"time"

	"rowlight/sim"
	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
	"rowlight/sim/weather"
)

// Asked is what the page wants to know.
type Asked struct {
	What string // Rows or Season
	Over string // Day, Ripening or the whole Season, if from and to do not say otherwise
	// From and To are the first and last day, as month-day; empty where Over says it.
	From, To string
}

// The words of Asked.
const (
	Rows     = "rows"
	Season   = "season"
	Day      = "day"
	Ripening = "ripening"
)

// How the work is cut: azimuths so far apart, of the weeks of ripening one day in so many, and of a season so many days to a part.
const (
	step_deg      = 5
	ripeningEvery = 9
	daysToAPart   = 6
)

// faultsShown is how many days are named that a file lacks.
const faultsShown = 3

// Plan is work that is cut into parts. It holds all that a part needs.
type Plan struct {
	What     string            `json:"what"`
	Scenario scenario.Scenario `json:"scenario"`
	Days     []sim.SpanDay     `json:"days"`
	Parts    []sim.Part        `json:"parts"`
}

// NewPlan plans the work for a document, on the days of a weather file or, where there is none, on its design day. Without
// a plan there are faults.
func NewPlan(raw []byte, asked Asked, file func(scenario.Scenario) *weather.File) (*Plan, []scenario.Fault) {
	s, faults := document.Parse(raw)
	if len(faults) > 0 {
		return nil, faults
	}
	sweep, told := sweepOf(&s, asked, file(s))
	if weather.Blocked(told) {
		for _, fault := range told[:min(len(told), faultsShown)] {
			faults = append(faults, fault.Fault)
		}
		return nil, faults
	}
	plan := &Plan{What: asked.What, Scenario: s, Days: sweep.Days}
	if asked.What == Season {
		plan.Parts = sweep.Courses(s, daysToAPart)
	} else {
		plan.Parts = sweep.Turns(s, step_deg)
	}
	return plan, nil
}

// sweepOf finds the days.
func sweepOf(s *scenario.Scenario, asked Asked, file *weather.File) (sim.Sweep, []weather.Fault) {
	if asked.Over == Day {
		return sim.OneDay(*s), nil
	}
	dates := sim.SeasonOf(*s)
	from, to, every := dates.FruitSet, dates.Harvest, 1
	if asked.Over == Ripening {
		from, every = dates.Veraison, ripeningEvery
	}
	return sim.Stretch(s, file, monthDay(asked.From, from), monthDay(asked.To, to), every)
}

// monthDay is a day of the year as the page writes it, or another where it writes none.
func monthDay(text string, otherwise time.Time) time.Time {
	if day, err := time.Parse("2006-01-02", "2004-"+text); err == nil {
		return day
	}
	return otherwise
}
