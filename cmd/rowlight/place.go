package main

import (
	"time"

	"github.com/spf13/cobra"

	"rowlight/sim/scenario"
	"rowlight/sim/sun"
)

// shortestStep and longestStep bound the time between rows.
const shortestStep, longestStep = time.Second, 24 * time.Hour

// place is the flags of a place, a date and the moments of it.
type place struct {
	numbers
	latitude_deg, longitude_deg, utcOffset_h float64
	date                                     string
	step                                     time.Duration
}

// addFlags gives a command the flags of a place and date.
func (p *place) addFlags(command *cobra.Command) {
	p.command = command
	p.like(&p.latitude_deg, "lat", "/site/latitude_deg", 0)
	p.like(&p.longitude_deg, "lon", "/site/longitude_deg", 0)
	p.like(&p.utcOffset_h, "utc-offset", "/site/utcOffset_h", 0)
	command.Flags().StringVar(&p.date, "date", "", "day, as year-month-day, on the clock of the offset")
	command.Flags().DurationVar(&p.step, "step", time.Hour, "time between rows, which run from 00:00 to 24:00")
	for _, name := range []string{"lat", "lon", "date"} {
		if err := command.MarkFlagRequired(name); err != nil {
			panic(err)
		}
	}
}

// checkPlace names every flag that cannot be used.
func (p *place) checkPlace() []scenario.Fault {
	faults := p.check()
	if date, err := time.Parse(time.DateOnly, p.date); err != nil {
		faults = append(faults, scenario.Fault{Code: "fault.date", Path: "/--date", Values: map[string]any{"value": p.date}})
	} else if date.Year() < scenario.FirstYear || date.Year() > scenario.LastYear {
		faults = append(faults, scenario.Fault{Code: "fault.year", Path: "/--date", Values: map[string]any{
			"value": p.date, "min": scenario.FirstYear, "max": scenario.LastYear}})
	}
	if p.step < shortestStep || p.step > longestStep {
		faults = append(faults, scenario.Fault{Code: "fault.step", Path: "/--step", Values: map[string]any{
			"value": p.step.String(), "min": shortestStep.String(), "max": longestStep.String()}})
	}
	return faults
}

// day is the date; the flags must be checked.
func (p *place) day() time.Time {
	date, err := time.Parse(time.DateOnly, p.date)
	if err != nil {
		panic(err)
	}
	return date
}

// moments are the times of the rows, both midnights included where the step meets them.
func (p *place) moments() []time.Time {
	midnight := sun.Midnight(p.day(), p.utcOffset_h)
	var moments []time.Time
	for after := time.Duration(0); after <= 24*time.Hour; after += p.step {
		moments = append(moments, midnight.Add(after))
	}
	return moments
}
