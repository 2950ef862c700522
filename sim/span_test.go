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
