package sim

import (
	"time"

	"rowlight/sim/growth"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// Span makes a sweep of the days from one day of the year to another, every so many of them. They come from a weather
// file, which must have each of them whole, or, without one, are the day of the scenario on other dates. A span that
// ends before it begins runs over the turn of the year. The vines are full-grown until stages are given. Faults
// are those of days that the file lacks; then there is no sweep.
func Span(s *scenario.Scenario, file *weather.File, from, to time.Time, every int) (Sweep, []weather.Fault) {
	sweep := Sweep{Jobs: 1}
	var faults []weather.Fault
	year, _ := time.Parse(time.DateOnly, s.Weather.Date) // the scenario was checked
	day := time.Date(year.Year(), from.Month(), from.Day(), 0, 0, 0, 0, time.UTC)
	last := time.Date(year.Year(), to.Month(), to.Day(), 0, 0, 0, 0, time.UTC)
	if last.Before(day) {
		last = last.AddDate(1, 0, 0)
	}
	for ; !day.After(last); day = day.AddDate(0, 0, max(every, 1)) {
		then := *s
		then.Weather.Date = day.Format(time.DateOnly)
		then.Weather.Hours, then.Weather.Source = nil, "" // measured hours belong to their own date
		if file != nil {
			if told := file.Put(int(day.Month()), day.Day(), &then); weather.Blocked(told) {
				faults = append(faults, told...)
			}
		}
		sweep.Days = append(sweep.Days, SpanDay{Weather: then.Weather, Stage: growth.Full})
	}
	return sweep, faults
}

// Ripening is a sweep of the usual weeks from first colour to harvest at the place of a scenario, every so many days:
// from a weather file where it has them all, else the design day of the scenario on those dates.
func Ripening(s scenario.Scenario, file *weather.File, every int) Sweep {
	dates := growth.DatesOf(s)
	sweep, faults := Span(&s, file, dates.Veraison, dates.Harvest, every)
	if len(faults) > 0 {
		sweep, _ = Span(&s, nil, dates.Veraison, dates.Harvest, every)
	}
	for i := range sweep.Days {
		if date, err := dateOf(sweep.Days[i]); err == nil {
			sweep.Days[i].Stage = dates.On(date)
		}
	}
	return sweep
}
