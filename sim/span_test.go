package sim_test

import (
	"testing"
	"time"

	"rowlight/sim"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
	"rowlight/testdata"
)

func day(month time.Month, day int) time.Time {
	return time.Date(2004, month, day, 0, 0, 0, 0, time.UTC)
}

func TestSpanGoesThroughTheDays(t *testing.T) {
	s := scenario.Default()
	sweep, faults := sim.Span(&s, nil, day(12, 1), day(3, 10), 9)
	if len(faults) != 0 || len(sweep.Days) != 12 || sweep.Days[0].Weather.Date != "2026-12-01" || sweep.Days[11].Weather.Date != "2027-03-10" {
		t.Errorf("%d days, %v: %+v", len(sweep.Days), faults, sweep.Days)
	}
	opened, err := testdata.FS.Open("weather/stony-bend-hot-week.epw")
	if err != nil {
		t.Fatal(err)
	}
	defer opened.Close()
	file, _ := weather.Read("week.epw", opened)
	sweep, faults = sim.Span(&s, &file, day(7, 12), day(7, 18), 1)
	if len(faults) != 0 || len(sweep.Days) != 7 || len(sweep.Days[3].Weather.Hours) != 24 {
		t.Errorf("%d days of the week, %v", len(sweep.Days), faults)
	}
	if _, faults = sim.Span(&s, &file, day(7, 10), day(7, 12), 1); len(faults) != 2 || faults[0].Code != "fault.day-absent" {
		t.Errorf("a span with two days that the file lacks: %v", faults)
	}
}

// A file of a week has only that of a longer span, of either hemisphere, and nothing of another.
func TestWithinIsWhatAFileHasOfASpan(t *testing.T) {
	file := func(from, to time.Time) *weather.File {
		f := &weather.File{}
		for at := from; !at.After(to); at = at.AddDate(0, 0, 1) {
			for hour := range 24 {
				f.Rows = append(f.Rows, weather.Row{Year: at.Year(), Month: int(at.Month()), Day: at.Day(), Hour: hour + 1})
			}
		}
		return f
	}
	week, turn, leap := file(day(7, 12), day(7, 18)), file(day(12, 28), day(12, 31).AddDate(0, 0, 4)), file(day(2, 27), day(2, 29))
	for name, c := range map[string]struct {
		file     *weather.File
		from, to time.Time
		want     string
	}{
		"summer":            {week, day(6, 1), day(9, 10), "07-12 07-18"},
		"part of it":        {week, day(7, 15), day(9, 10), "07-15 07-18"},
		"none of it":        {week, day(8, 1), day(9, 10), "-"},
		"southern summer":   {turn, day(12, 1), day(3, 10), "12-28 01-04"},
		"after the turn":    {turn, day(12, 30), day(1, 2), "12-30 01-02"},
		"29 February":       {leap, day(12, 1), day(3, 10), "02-27 02-29"},
		"not over the turn": {week, day(12, 1), day(3, 10), "-"},
	} {
		got := "-"
		if first, last, ok := sim.Within(c.file, c.from, c.to); ok {
			got = first.Format("01-02") + " " + last.Format("01-02")
		}
		if got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}
