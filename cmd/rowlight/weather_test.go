package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rowlight/sim/weather"
)

// Invented files of other kinds with the week of hotWeek.
const (
	powerWeek     = "../../testdata/weather/stony-bend-hot-week-power.csv"
	loggerWeek    = "../../testdata/weather/stony-bend-logger.csv"
	loggerMapping = "../../testdata/weather/stony-bend-logger.json"
)

func TestWeatherTellsWhatAFileHolds(t *testing.T) {
	for name, test := range map[string]struct {
		args []string
		says []string
	}{
		"EPW":     {[]string{hotWeek}, []string{"EPW, Stony Bend (invented)", "168 hours, 7 whole days from 2019-07-12 to 2019-07-18", "hottest is 2019-07-18 with 42.9 °C", "The clock fits the sun"}},
		"POWER":   {[]string{powerWeek}, []string{"NASA POWER", "168 hours", "The clock fits the sun"}},
		"normals": {[]string{"../../testdata/weather/stony-bend-normals.csv", "--scenario", demo}, []string{"monthly normals", "153 whole days from 2026-05-01 to 2026-09-30"}},
		"table":   {[]string{loggerWeek, "--mapping", loggerMapping, "--scenario", demo}, []string{"table", "168 hours", "42.8 °C", "The clock fits the sun to 0 minutes, by the light of 6 clear days"}},
	} {
		got := rowlight("", append([]string{"weather"}, test.args...)...)
		for _, says := range test.says {
			if got.code != 0 || !strings.Contains(got.stdout, says) {
				t.Errorf("%s: code %d, %q in\n%s%s", name, got.code, says, got.stdout, got.stderr)
			}
		}
	}
	var summary weatherSummary
	if err := json.Unmarshal([]byte(rowlight("", "weather", hotWeek, "--format", "json").stdout), &summary); err != nil {
		t.Fatal(err)
	}
	if summary.Clock.By != "closure" || summary.Clock.Shifted || len(summary.Hours) != 168 || *summary.Hours[13].Air_C != 35.9 {
		t.Errorf("%+v, %d hours", summary.Clock, len(summary.Hours))
	}
	rows := readCSV(t, rowlight("", "weather", hotWeek, "--format", "csv").stdout)
	if len(rows) != 168 || rows[13]["air_C"] != "35.9" || rows[13]["ghi_Wm2"] != "947" || rows[13]["date"] != "2019-07-12" {
		t.Errorf("%d rows, %v", len(rows), rows[13])
	}
}

// The guess is the mapping of the test data; a season and the rows take it as a day does.
func TestMappingsAreGuessedAndTaken(t *testing.T) {
	got := rowlight("", "weather", loggerWeek, "--guess", "--scenario", demo)
	guessed, faults := weather.ParseMapping([]byte(got.stdout), 0)
	kept, err := os.ReadFile(loggerMapping)
	if err != nil {
		t.Fatal(err)
	}
	if strings.TrimSpace(got.stdout) != strings.TrimSpace(string(kept)) || len(faults) > 0 || guessed.WindHeight_m != 2 {
		t.Errorf("guessed %s, faults %v", got.stdout, faults)
	}
	dates := map[string]bool{}
	table := rowlight("", "season", demo, "--weather", loggerWeek, "--mapping", loggerMapping, "--from", "07-14", "--to", "07-15", "--format", "csv")
	if table.code != 0 {
		t.Fatal(table.stderr)
	}
	for _, row := range readCSV(t, table.stdout) {
		dates[row["date"][5:]] = true
		if math.Abs(number(t, row, "airMax_C")-40) > 4 {
			t.Errorf("%v", row)
		}
	}
	if len(dates) != 2 || !dates["07-14"] || !dates["07-15"] {
		t.Errorf("days %v", dates)
	}
}

// Whatever is wrong with a mapping is said by its field, all at once.
func TestFaultsOfMappings(t *testing.T) {
	raw, err := os.ReadFile(loggerMapping)
	if err != nil {
		t.Fatal(err)
	}
	wrong := filepath.Join(t.TempDir(), "wrong.json")
	text := strings.NewReplacer(`"dmy"`, `"ymx"`, `"end"`, `"noon"`, `"km/h"`, `"furlong"`).Replace(string(raw))
	if err := os.WriteFile(wrong, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	got := rowlight("", "day", demo, "--weather", loggerWeek, "--mapping", wrong)
	if got.code != 2 || strings.Count(got.stderr, "\n") != 3 {
		t.Errorf("code %d, %s", got.code, got.stderr)
	}
	for _, says := range []string{"dateOrder: “ymx” is not known. Write one of ymd, dmy, mdy", "stamp: “noon”", "columns[5].unit: “furlong” is not known. Write one of m/s, km/h, mph, kn"} {
		if !strings.Contains(got.stderr, says) {
			t.Errorf("%q is not in %s", says, got.stderr)
		}
	}
	for _, test := range []struct {
		args []string
		says string
	}{
		{[]string{"day", demo, "--weather", loggerWeek}, "Say what its columns are"},
		{[]string{"weather", loggerWeek, "--mapping", loggerMapping}, "does not say where it is from"},
		{[]string{"weather", hotWeek, "--guess"}, "needs no mapping"},
		{[]string{"day", demo, "--weather", loggerWeek, "--mapping", "no-such.json"}, "no-such.json"},
	} {
		if got := rowlight("", test.args...); got.code == 0 || !strings.Contains(got.stderr, test.says) {
			t.Errorf("%v: code %d, %s", test.args, got.code, got.stderr)
		}
	}
}
