package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rowlight/sim/result"
)

// hotWeek is an invented week of weather.
const hotWeek = "../../testdata/weather/stony-bend-hot-week.epw"

// TestDayOfAWeatherFile runs a scenario on a day of a file. The scenario in the answer holds the day, so
// that running it again without the file gives the same answer to the last digit.
func TestDayOfAWeatherFile(t *testing.T) {
	first := rowlight("", "day", demo, "--weather", hotWeek, "--date", "07-15", "--format", "json")
	if first.code != 0 {
		t.Fatal(first.stderr)
	}
	var day result.Day
	if err := json.Unmarshal([]byte(first.stdout), &day); err != nil {
		t.Fatal(err)
	}
	checkMeasured(t, day)

	again, err := json.Marshal(day.Scenario)
	if err != nil {
		t.Fatal(err)
	}
	if second := rowlight(string(again), "day", "-", "--format", "json"); second.stdout != first.stdout {
		t.Errorf("the scenario of the answer gives another answer: %s", second.stderr)
	}
}

// checkMeasured wants the air at full hours and the light over the day as the hours of the file have them.
func checkMeasured(t *testing.T, day result.Day) {
	t.Helper()
	hours := day.Scenario.Weather.Hours
	if len(hours) != 24 || !strings.HasSuffix(day.Date, "-07-15") || !strings.Contains(day.Scenario.Weather.Source, "stony-bend-hot-week.epw") {
		t.Fatalf("%d hours, %s, %s", len(hours), day.Date, day.Scenario.Weather.Source)
	}
	measured, computed := 0.0, 0.0
	for i, hour := range hours {
		at := (i + 1) * stepsOfHour(day)
		if math.Abs(day.Air.Temperature_C[at]-hour.Air_C) > 1e-9 {
			t.Errorf("at %v the air is %v, in the file %v", day.Hour[at], day.Air.Temperature_C[at], hour.Air_C)
		}
		measured += hour.GHI_Wm2
	}
	for i := range day.Hour[1:] {
		computed += (day.Air.GHI_Wm2[i] + day.Air.GHI_Wm2[i+1]) / 2 * day.Step_min / 60
	}
	const tolerance = 0.02 // of the daily sum, for the curve through the means of hours
	if math.Abs(computed/measured-1) > tolerance {
		t.Errorf("light of the day %v, in the file %v W h/m²", computed, measured)
	}
}

func TestDayOfAWeatherFileIsTheHottestUnlessNamed(t *testing.T) {
	got := rowlight("", "day", demo, "--weather", hotWeek, "--summary", "--format", "csv")
	raw, err := os.ReadFile(hotWeek)
	if err != nil {
		t.Fatal(err)
	}
	highest, date := -100.0, ""
	for line := range strings.Lines(string(raw)) {
		fields := strings.Split(line, ",")
		if len(fields) < 30 {
			continue
		}
		row := map[string]string{"air": fields[6]}
		if air := number(t, row, "air"); air > highest {
			highest, date = air, fields[0]+"-0"+fields[1]+"-"+fields[2]
		}
	}
	if rows := readCSV(t, got.stdout); rows[0]["date"] != date {
		t.Errorf("computed %s, hottest is %s", rows[0]["date"], date)
	}
}

func TestFaultsOfWeatherFiles(t *testing.T) {
	text := filepath.Join(t.TempDir(), "letter.txt")
	if err := os.WriteFile(text, []byte("Dear all,\nit was hot."), 0o600); err != nil {
		t.Fatal(err)
	}
	tests := map[string]struct {
		args []string
		code int
		says string
	}{
		"no such day":       {[]string{"--weather", hotWeek, "--date", "01-03"}, 2, hotWeek + ": The weather file has no 01-03"},
		"no day":            {[]string{"--weather", hotWeek, "--date", "2-30"}, 2, "--date: “2-30” is no day of the year"},
		"no weather file":   {[]string{"--weather", text}, 2, text + ": The weather file begins with “Dear all,”"},
		"no file":           {[]string{"--weather", "no-such.epw"}, 1, "no-such.epw"},
		"date without file": {[]string{"--date", "07-15"}, 1, "--weather"},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			got := rowlight("", append([]string{"day", demo}, test.args...)...)
			if got.code != test.code || got.stdout != "" || !strings.Contains(got.stderr, test.says) {
				t.Errorf("code %d, stdout %q, stderr %q; want code %d and %q", got.code, got.stdout, got.stderr, test.code, test.says)
			}
		})
	}
}
