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
	day, last := ofYear(from, year.Year()), ofYear(to, year.Year())
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

// Within narrows a span of days of the year, which may run over the turn of the year, to the first and the last of its
// days that a weather file has. Where the file has none of them ok is false.
func Within(file *weather.File, from, to time.Time) (first, last time.Time, ok bool) {
	const leap = 2004
	year := leap
	if ofYear(to, year).Before(ofYear(from, year)) {
		year-- // so that 29 February lies after its turn
	}
	begins, ends := ofYear(from, year), ofYear(to, leap)
	for _, day := range file.Days() {
		at := time.Date(year, time.Month(day.Month), day.Day, 0, 0, 0, 0, time.UTC)
		if at.Before(begins) {
			at = time.Date(leap, time.Month(day.Month), day.Day, 0, 0, 0, 0, time.UTC)
		}
		if at.Before(begins) || at.After(ends) {
			continue
		}
		if !ok || at.Before(first) {
			first = at
		}
		if !ok || at.After(last) {
			last = at
		}
		ok = true
	}
	return first, last, ok
}

// ofYear is a day of the year in a year.
func ofYear(day time.Time, year int) time.Time {
	return time.Date(year, day.Month(), day.Day(), 0, 0, 0, 0, time.UTC)
}

// SeasonOf are the dates of the stages of a scenario's season, as days of a year of their own.
func SeasonOf(s scenario.Scenario) growth.Dates { return growth.DatesOf(s) }

// Stretch is a span of days on which vines and fruit are in the stages of the scenario's season. Of a weather file it takes
// as much of the span as the file has; where it has none of it, that is a fault, as is a day amid it that is not whole.
func Stretch(s *scenario.Scenario, file *weather.File, from, to time.Time, every int) (Sweep, []weather.Fault) {
	if file != nil {
		if first, last, ok := Within(file, from, to); ok {
			from, to = first, last
		}
	}
	sweep, faults := Span(s, file, from, to, every)
	dates := growth.DatesOf(*s)
	for i := range sweep.Days {
		if date, err := dateOf(sweep.Days[i]); err == nil {
			sweep.Days[i].Stage = dates.On(date)
		}
	}
	return sweep, faults
}
