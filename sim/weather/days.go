package weather

import (
	"math"
	"slices"
	"time"
)

// Day is what a list of the days of a file says about one of them.
type Day struct {
	Year, Month, Day int     // the year that the file took the day from
	AirMax_C         float64 // the highest air temperature of its hours; NaN where none has one
}

// Days lists the days of which the file has every hour once, in the order of the file. What the hours
// lack is seen when a day is taken from them.
func (f *File) Days() []Day {
	type hours struct {
		day   Day
		count [hoursOfDay]int
	}
	var order []*hours
	byDate := map[[2]int]*hours{}
	for _, row := range f.Rows {
		date := [2]int{row.Month, row.Day}
		h, known := byDate[date]
		if !known {
			h = &hours{day: Day{Year: row.Year, Month: row.Month, Day: row.Day, AirMax_C: missing()}}
			byDate[date] = h
			order = append(order, h)
		}
		h.count[row.Hour-1]++
		if math.IsNaN(h.day.AirMax_C) || row.Air_C > h.day.AirMax_C {
			h.day.AirMax_C = row.Air_C
		}
	}
	var days []Day
	for _, h := range order {
		if !slices.ContainsFunc(h.count[:], func(count int) bool { return count != 1 }) {
			days = append(days, h.day)
		}
	}
	return days
}

// DateOf is the date of a day of the file as year-month-day, with the year that the file took the
// day from; ok is false where the file lacks the day.
func (f *File) DateOf(month, day int) (date string, ok bool) {
	for _, row := range f.Rows {
		if row.Month == month && row.Day == day {
			return row.date().Format(time.DateOnly), true
		}
	}
	return "", false
}

// Hottest is the whole day with the highest air temperature, the first of several; ok is false in a
// file without one.
func (f *File) Hottest() (hottest Day, ok bool) {
	for _, day := range f.Days() {
		if !math.IsNaN(day.AirMax_C) && (!ok || day.AirMax_C > hottest.AirMax_C) {
			hottest, ok = day, true
		}
	}
	return hottest, ok
}
