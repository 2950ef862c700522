package main

import (
	"fmt"
	"io"
	"runtime"
	"time"

	"github.com/spf13/cobra"

	"rowlight/sim"
	"rowlight/sim/growth"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// span is the flags of a run over days.
type span struct {
	weather            weatherFile
	from, to           string
	fruitSet, veraison string
	harvest            string
	every, jobs        int
	shard              shard
	grown              bool
	whole              bool // a span is wanted even where no flag asks for one
}

// addFlags gives a command the flags of a span.
func (p *span) addFlags(command *cobra.Command) {
	flags := command.Flags()
	p.weather.addFlags(flags, "whose days and place replace those of the scenario; without it the scenario's design day goes through the dates")
	flags.StringVar(&p.from, "from", "", "first day, as month-day; fruit set unless given")
	flags.StringVar(&p.to, "to", "", "last day, as month-day; harvest unless given")
	flags.IntVar(&p.every, "every", 1, "run every so many days only")
	flags.StringVar(&p.fruitSet, "fruit-set", "", "month-day of fruit set; 06-01, south of the equator 12-01, unless given")
	flags.StringVar(&p.veraison, "veraison", "", "month-day of first colour; 07-20 or 01-20 unless given")
	flags.StringVar(&p.harvest, "harvest", "", "month-day of harvest; 09-10 or 03-10 unless given")
	flags.BoolVar(&p.grown, "full-grown", false, "vines and fruit as the scenario has them on every day, without growth")
	flags.IntVar(&p.jobs, "jobs", runtime.NumCPU(), "days and directions worked on at once; the answer is the same for any number")
	flags.Var(&p.shard, "shard", "the i-th of n pieces of the csv, i from 0; one after the other they are the whole")
}

// asked tells whether a span is wanted, and not the one day of the scenario.
func (p *span) asked() bool { return p.whole || p.weather.file != "" || p.from != "" || p.to != "" }

// check names every flag that cannot be used.
func (p *span) check() error {
	var faults []scenario.Fault
	for flag, value := range map[string]string{"from": p.from, "to": p.to, "fruit-set": p.fruitSet, "veraison": p.veraison, "harvest": p.harvest} {
		if _, err := monthDay(value); value != "" && err != nil {
			faults = append(faults, scenario.Fault{Code: "fault.month-day", Path: "/--" + flag, Values: map[string]any{"value": value}})
		}
	}
	if p.every < 1 || p.jobs < 1 {
		return fmt.Errorf("--every and --jobs are whole numbers from 1")
	}
	return faultsOf("span", faults)
}

// monthDay reads a day of the year, in a leap year for 02-29.
func monthDay(text string) (time.Time, error) { return time.Parse("2006-01-02", "2004-"+text) }

// sweep makes the days of a span, and puts the place of a weather file into the scenario.
func (p *span) sweep(s *scenario.Scenario, stderr io.Writer) (sim.Sweep, error) {
	if !p.asked() {
		sweep := sim.OneDay(*s)
		sweep.Jobs = p.jobs
		return sweep, nil
	}
	file, err := p.open(s, stderr)
	if err != nil {
		return sim.Sweep{}, err
	}
	dates := p.dates(*s)
	from, to := p.ends(file, dates)
	sweep, faults := sim.Span(s, file, from, to, p.every)
	if len(faults) > 0 {
		return sweep, p.weather.tell(faults, stderr)
	}
	for i := range sweep.Days {
		if date, err := time.Parse(time.DateOnly, sweep.Days[i].Weather.Date); err == nil && !p.grown {
			sweep.Days[i].Stage = dates.On(date)
		}
	}
	sweep.Jobs = p.jobs
	return sweep, nil
}

// open opens the weather file, if one is named, and puts its place into the scenario.
func (p *span) open(s *scenario.Scenario, stderr io.Writer) (*weather.File, error) {
	if p.weather.file == "" {
		return nil, nil
	}
	file, err := p.weather.read(*s, stderr)
	if err != nil {
		return nil, err
	}
	file.PutPlace(s)
	return file, nil
}

// dates are those of the stages: of the flags, else of the scenario.
func (p *span) dates(s scenario.Scenario) growth.Dates {
	dates := growth.DatesOf(s)
	dates.FruitSet = p.first(p.fruitSet, dates.FruitSet)
	dates.Veraison = p.first(p.veraison, dates.Veraison)
	dates.Harvest = p.first(p.harvest, dates.Harvest)
	return dates
}

// ends are the first and last day: as given, else fruit set and harvest, or as much of that time as the file has.
func (p *span) ends(file *weather.File, dates growth.Dates) (from, to time.Time) {
	from, to = p.first(p.from, dates.FruitSet), p.first(p.to, dates.Harvest)
	if file == nil || p.from != "" || p.to != "" {
		return from, to
	}
	if first, last, ok := sim.Within(file, from, to); ok {
		return first, last
	}
	return from, to
}

// first is a flag's date, which was checked, or the usual one.
func (p *span) first(text string, usual time.Time) time.Time {
	if date, err := monthDay(text); err == nil {
		return date
	}
	return time.Date(2004, usual.Month(), usual.Day(), 0, 0, 0, 0, time.UTC)
}
