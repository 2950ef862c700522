// Package growth changes an option with the date: how much of its canopy has grown, and how large and of which
// colour its berries are. A season is a few stages, so that a stand is built and looked at once for each.
package growth

import (
	"math"
	"slices"
	"time"

	"rowlight/sim/scenario"
)

// Stage is a part of the season over which canopy and berries are taken as the same.
type Stage string

// The stages, in their order. Full is the scenario as it is written, whatever the date.
const (
	Full     Stage = "full"
	FruitSet Stage = "fruit-set" // the three weeks after it
	Closing  Stage = "closing"   // bunches close, to veraison
	Veraison Stage = "veraison"  // two weeks from its beginning
	Ripening Stage = "ripening"  // to harvest
)

// Dates are when the stages of a season begin, as month and day of a year of its own; a season may run over the turn
// of the year.
type Dates struct{ FruitSet, Veraison, Harvest time.Time }

// Usual are the dates of a hot district, an assumption: fruit set at the start of June, first colour on 20 July,
// harvest on 10 September, and half a year apart in the southern hemisphere.
func Usual(latitude_deg float64) Dates {
	if latitude_deg < 0 {
		return Dates{date(12, 1), date(1, 20), date(3, 10)}
	}
	return Dates{date(6, 1), date(7, 20), date(9, 10)}
}

// DatesOf are the dates of a scenario. Those that it does not name lie as far from the first that it names as is usual.
func DatesOf(s scenario.Scenario) Dates {
	dates := Usual(s.Site.Latitude_deg)
	named := []string{s.Season.FruitSet, s.Season.Veraison, s.Season.Harvest}
	of := []*time.Time{&dates.FruitSet, &dates.Veraison, &dates.Harvest}
	late := 0 // by which the season of the scenario is behind the usual one [days]
	for i := range of {
		if day, ok := dayOf(named[i]); ok {
			late = since(*of[i], day)
			break
		}
	}
	for i := range of {
		if day, ok := dayOf(named[i]); ok {
			*of[i] = day
		} else {
			*of[i] = of[i].AddDate(0, 0, late)
		}
	}
	return dates
}

// dayOf reads a date whose year does not count. There is none in an empty text, and the scenario's own check refuses
// any other that is no date.
func dayOf(text string) (time.Time, bool) {
	day, err := time.Parse(time.DateOnly, text)
	return date(day.Month(), day.Day()), err == nil
}

// Of is the stage of the day of a scenario: Full unless it lets vines grow by date.
func Of(s scenario.Scenario) Stage {
	day, ok := dayOf(s.Weather.Date)
	if s.Season.Growth != scenario.ByDate || !ok {
		return Full
	}
	return DatesOf(s).On(day)
}

// Grown is a scenario with all its options and its fruit in the stage of its day, given as they then stand.
func Grown(s scenario.Scenario) scenario.Scenario {
	stage := Of(s)
	s.Season.Growth = scenario.AsGiven
	s.Fruit = stage.Fruit(s.Fruit)
	s.Options = slices.Clone(s.Options)
	for i := range s.Options {
		s.Options[i] = stage.Option(s.Options[i])
	}
	return s
}

// Notices says which part of the full-grown vine a day shows, where it does not show all of it.
func Notices(s scenario.Scenario) []scenario.Fault {
	stage := Of(s)
	if stage == Full {
		return nil
	}
	of := shares[stage]
	return []scenario.Fault{{Code: "notice.growth", Path: "/season/growth", Values: map[string]any{
		"stage": string(stage), "leaves": of.leaves, "diameter": of.diameter}}}
}

func date(month time.Month, day int) time.Time {
	return time.Date(2001, month, day, 0, 0, 0, 0, time.UTC)
}

// The length of the first and third stage [days]: shoots are topped out some three weeks after fruit set, and colour
// goes through a block in about two weeks [common practice].
const (
	setDays      = 21
	veraisonDays = 14
)

// On is the stage of a date. What comes before fruit set counts as fruit set, what comes after harvest as ripening.
func (d Dates) On(day time.Time) Stage {
	at, veraison := since(d.FruitSet, day), since(d.FruitSet, d.Veraison)
	switch {
	case at >= 365-dormant: // the weeks before fruit set
		return FruitSet
	case at < min(setDays, veraison):
		return FruitSet
	case at < veraison:
		return Closing
	case at < veraison+veraisonDays:
		return Veraison
	}
	return Ripening
}

// dormant is how long before fruit set a vine has leaves of the new season [days].
const dormant = 60

// since is the number of days from one date to the next time that another comes.
func since(from, to time.Time) int {
	a := time.Date(2001, from.Month(), from.Day(), 0, 0, 0, 0, time.UTC)
	b := time.Date(2001, to.Month(), to.Day(), 0, 0, 0, 0, time.UTC)
	return (int(b.Sub(a).Hours()/24) + 365) % 365
}

// grown are the shares of what canopy and berries come to.
type grown struct{ shoots, leaves, diameter float64 }

// shares of each stage, from memory of the growth of hedged canopies and of berries (a double sigmoid, with about
// half of the final mass at veraison); how sure: ±0.1.
var shares = map[Stage]grown{
	Full:     {1, 1, 1},
	FruitSet: {0.8, 0.6, 0.4},
	Closing:  {1, 0.9, 0.65},
	Veraison: {1, 1, 0.8},
	Ripening: {1, 1, 1},
}

// Option is an option in a stage. The scenario gives it full-grown.
func (s Stage) Option(o scenario.Option) scenario.Option {
	of := shares[s]
	o.Shoots.Length_m *= of.shoots
	o.Leaves.Area_m2_per_m *= of.leaves
	o.Bunches.Mass_g *= math.Pow(of.diameter, 3)
	return o
}

// Fruit is the fruit in a stage: green before veraison.
func (s Stage) Fruit(f scenario.Fruit) scenario.Fruit {
	f.Diameter_mm *= shares[s].diameter
	if s == FruitSet || s == Closing {
		f.Colour = scenario.Green
	}
	return f
}
