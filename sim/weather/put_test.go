package weather

import (
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"rowlight/sim/scenario"
)

// column reads the numbers of a column of the lines of an EPW file that begin with a date.
func column(t *testing.T, text, date string, index int) []float64 {
	t.Helper()
	var values []float64
	for line := range strings.Lines(text) {
		if !strings.HasPrefix(line, date+",") {
			continue
		}
		value, err := strconv.ParseFloat(strings.Split(line, ",")[index], 64)
		if err != nil {
			t.Fatal(err)
		}
		values = append(values, value)
	}
	return values
}

func TestPutTakesDayPlaceAndClock(t *testing.T) {
	whole := text(t, hotWeekEPW)
	file, faults := Read("hot week.epw", strings.NewReader(whole))
	if Blocked(faults) {
		t.Fatal(faults)
	}
	s := scenario.Scenario{Site: scenario.Site{Slope_deg: 7, Floor: scenario.Straw}, Limits: scenario.Limits{Watch_C: 35, Hot_C: 40, Burn_C: 45}}
	s.Options = make([]scenario.Option, 1)
	before := s.Options
	if faults := file.Put(7, 18, &s); len(faults) != 0 {
		t.Errorf("faults %v", faults)
	}
	wantSite := scenario.Site{Latitude_deg: 36.4, Longitude_deg: -119.9, Elevation_m: 90, UTCOffset_h: -8, Slope_deg: 7, Floor: scenario.Straw}
	if s.Site != wantSite {
		t.Errorf("site %+v, want %+v", s.Site, wantSite)
	}
	w := s.Weather
	if w.Date != "2019-07-18" || w.Source != "hot week.epw, Stony Bend (invented)" || !reflect.DeepEqual(w.Hours, mustDay(t, file, 7, 18)) {
		t.Errorf("date %s, source %q, %d hours", w.Date, w.Source, len(w.Hours))
	}
	if !reflect.DeepEqual(s.Options, before) {
		t.Error("the options changed")
	}
	// Dry bulb is field 7 of a line, the wind speed field 22.
	air, wind := column(t, whole, "2019,7,18", 6), column(t, whole, "2019,7,18", 21)
	warmest, coolest, sum := math.Inf(-1), math.Inf(1), 0.0
	for i := range air {
		warmest, coolest, sum = math.Max(warmest, air[i]), math.Min(coolest, air[i]), sum+wind[i]
	}
	if w.AirMax_C != warmest || w.AirMin_C != coolest {
		t.Errorf("air %g to %g, in the file %g to %g", w.AirMin_C, w.AirMax_C, coolest, warmest)
	}
	if mean := sum / float64(len(wind)); math.Abs(w.Wind_ms-mean) > 0.05+1e-9 {
		t.Errorf("wind %g, mean of the file %g", w.Wind_ms, mean)
	}
	if w.WindFrom_deg < 305 || w.WindFrom_deg > 325 {
		t.Errorf("wind from %g, in the file between 305 and 325", w.WindFrom_deg)
	}
}

// A day that a scenario cannot take leaves it as it was.
func TestPutLeavesTheScenarioWhereAFaultBlocks(t *testing.T) {
	file := mustRead(t, text(t, hotWeekEPW))
	s := scenario.Scenario{Name: "mine", Weather: scenario.Weather{Date: "2026-07-18", AirMax_C: 41}}
	before := s
	if faults := file.Put(1, 3, &s); !Blocked(faults) || faults[0].Code != "fault.day-absent" {
		t.Errorf("faults %v", faults)
	}
	if !reflect.DeepEqual(s, before) {
		t.Errorf("the scenario became %+v", s)
	}
}

// A measured day without its hours is still a design day without faults, whatever the weather was.
func TestPutDescribesADesignDay(t *testing.T) {
	moist := func(air, dew, wind, from float64) scenario.Hour {
		return scenario.Hour{Air_C: air, DewPoint_C: dew, Wind_ms: wind, WindFrom_deg: from}
	}
	tests := map[string]struct {
		hours [2]scenario.Hour // of the first and of the second half of the day
		want  scenario.Weather
	}{
		"wind around north":    {[2]scenario.Hour{moist(20, 5, 2, 350), moist(35, 7, 2, 10)}, scenario.Weather{AirMax_C: 35, AirMin_C: 20, DewPoint_C: 6, Wind_ms: 2, WindFrom_deg: 0}},
		"mostly from the west": {[2]scenario.Hour{moist(20, 5, 3, 270), moist(35, 7, 1, 90)}, scenario.Weather{AirMax_C: 35, AirMin_C: 20, DewPoint_C: 6, Wind_ms: 2, WindFrom_deg: 270}},
		"calm":                 {[2]scenario.Hour{moist(20, 5, 0, 0), moist(35, 7, 0, 90)}, scenario.Weather{AirMax_C: 35, AirMin_C: 20, DewPoint_C: 6, WindFrom_deg: 315}},
		"dry and cold night":   {[2]scenario.Hour{moist(-3, -4, 1, 315), moist(20, 12, 1, 315)}, scenario.Weather{AirMax_C: 20, AirMin_C: -3, DewPoint_C: -3, Wind_ms: 1, WindFrom_deg: 315}},
		"deep winter":          {[2]scenario.Hour{moist(-40, -45, 1, 315), moist(-30, -35, 1, 315)}, scenario.Weather{AirMax_C: -10, AirMin_C: -25, DewPoint_C: -30, Wind_ms: 1, WindFrom_deg: 315}},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			w := scenario.Weather{WindFrom_deg: 315}
			for i := range hoursOfDay {
				w.Hours = append(w.Hours, test.hours[i*2/hoursOfDay])
			}
			describe(&w)
			w.Hours = nil
			if !reflect.DeepEqual(w, test.want) {
				t.Errorf("%+v, want %+v", w, test.want)
			}
		})
	}
}

func TestDaysAreWholeAndInTheOrderOfTheFile(t *testing.T) {
	file := mustRead(t, text(t, hotWeekTMY3))
	want := []Day{
		{1994, 1, 29, 0}, {1994, 1, 30, 0}, {1994, 1, 31, 0}, {2001, 2, 1, 0}, {2001, 2, 2, 0}, {2001, 2, 3, 0}, {2001, 2, 4, 0},
	}
	days := file.Days()
	hottest := math.Inf(-1)
	for i := range days {
		hottest = math.Max(hottest, days[i].AirMax_C)
		days[i].AirMax_C = 0
	}
	if !reflect.DeepEqual(days, want) {
		t.Errorf("%v, want %v", days, want)
	}
	if day, ok := file.Hottest(); !ok || day.AirMax_C != hottest {
		t.Errorf("hottest %+v, %v; want %g °C", day, ok, hottest)
	}
}

// A day that lacks an hour is neither listed nor the hottest one, however hot.
func TestDaysLeaveOutWhatIsNotWhole(t *testing.T) {
	var lines []string
	for line := range strings.Lines(text(t, hotWeekEPW)) {
		if !strings.HasPrefix(line, "2019,7,18,3,") { // the hottest day of the file
			lines = append(lines, line)
		}
	}
	file, _ := Read("", strings.NewReader(strings.Join(lines, "")))
	if days := file.Days(); len(days) != 6 || days[5].Day != 17 {
		t.Errorf("days %v", days)
	}
	if day, ok := file.Hottest(); !ok || day.Day == 18 {
		t.Errorf("hottest %+v, %v", day, ok)
	}
	if day, ok := (&File{}).Hottest(); ok {
		t.Errorf("a file without rows has the hottest day %+v", day)
	}
}
