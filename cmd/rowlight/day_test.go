package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"rowlight/sim/result"
	"rowlight/sim/scenario/document"
)

// demoDay is the day of the demo scenario, computed once for all tests.
var demoDay = sync.OnceValue(func() result.Day {
	raw, err := os.ReadFile(demo)
	if err != nil {
		panic(err)
	}
	s, faults := document.Parse(raw)
	if len(faults) != 0 {
		panic(faults)
	}
	day, err := computeDay(context.Background(), s, demo)
	if err != nil {
		panic(err)
	}
	return day
})

// written is the demo day as a command with these flags writes it.
func written(t *testing.T, format, units string, summary bool) string {
	t.Helper()
	var text bytes.Buffer
	flags := dayCommand{output: output{format: choice{value: format}, units: choice{value: units}}, summary: summary}
	if err := flags.writeDay(&text, demoDay()); err != nil {
		t.Fatal(err)
	}
	return text.String()
}

// readCSV reads csv text into rows by column name.
func readCSV(t *testing.T, text string) []map[string]string {
	t.Helper()
	lines, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil || len(lines) < 2 {
		t.Fatalf("%d lines, %v", len(lines), err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, key := range lines[0] {
			row[key] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func TestDayCSVReadsBackExactly(t *testing.T) {
	day := demoDay()
	rows := readCSV(t, written(t, "csv", "us", false))
	if want := len(day.Options) * 2 * len(day.Hour); len(rows) != want {
		t.Fatalf("%d rows, want %d", len(rows), want)
	}
	r := 0
	for o, option := range day.Options {
		for _, side := range option.Sides {
			for i := range day.Hour {
				row := rows[r]
				r++
				if row["option"] != letter(o) || row["side"] != side.Compass || row["sampling"] != "instant" {
					t.Fatalf("row %d: %v", r, row)
				}
				for key, want := range map[string]float64{
					"litShare": side.Steps.LitShare[i], "light_Wm2": side.Steps.Light_Wm2[i], "mean_C": side.Steps.Mean_C[i],
					"hottest_C": side.Steps.Hottest_C[i], "coolest_C": side.Steps.Coolest_C[i], "berry_C": side.Steps.Berry_C[i],
					"airNear_C": side.Steps.AirNear_C[i], "windNear_ms": side.Steps.Wind_ms[i],
					"sunElevation_deg": day.Sun.Elevation_deg[i], "sunAzimuth_deg": day.Sun.Azimuth_deg[i], "air_C": day.Air.Temperature_C[i],
				} {
					if got, err := strconv.ParseFloat(row[key], 64); err != nil || got != want {
						t.Fatalf("row %d, %s: %q is not %v", r, key, row[key], want)
					}
				}
			}
		}
	}
}

func TestDayCSVTimesRunThroughTheDay(t *testing.T) {
	rows := readCSV(t, written(t, "csv", "metric", false))
	want := time.Date(2026, 7, 18, 8, 0, 0, 0, time.UTC) // midnight at UTC-8
	for i := range demoDay().Hour {
		got, err := time.Parse(time.RFC3339, rows[i]["time"])
		if err != nil || !got.Equal(want.Add(time.Duration(i)*5*time.Minute)) || !strings.HasSuffix(rows[i]["time"], "-08:00") {
			t.Fatalf("instant %d: %s, %v", i, rows[i]["time"], err)
		}
	}
}

func TestSummaryCSVHoldsOneRowPerSide(t *testing.T) {
	rows := readCSV(t, written(t, "csv", "metric", true))
	if len(rows) != 4 {
		t.Fatalf("%d rows", len(rows))
	}
	west := demoDay().Options[0].Sides[0].Summary
	if got, err := strconv.ParseFloat(rows[0]["overBurn_h"], 64); err != nil || got != west.OverBurn_h {
		t.Errorf("%s, want %v", rows[0]["overBurn_h"], west.OverBurn_h)
	}
	if _, err := time.Parse(time.RFC3339, rows[0]["hottestAt"]); err != nil {
		t.Error(err)
	}
}

func TestDayJSONIsTheResult(t *testing.T) {
	var read result.Day
	if err := json.Unmarshal([]byte(written(t, "json", "metric", false)), &read); err != nil {
		t.Fatal(err)
	}
	want := demoDay()
	if !slices.Equal(read.Options[1].Sides[1].Steps.Hottest_C, want.Options[1].Sides[1].Steps.Hottest_C) || read.Scenario.Name != "Stony Bend" {
		t.Error("the json is not the day")
	}
}

func TestDayTableStartsWithWhatMatters(t *testing.T) {
	table := written(t, "table", "metric", false)
	lines := strings.Split(table, "\n")
	if lines[0] != "Stony Bend, 2026-07-18, UTC-08:00" || !strings.Contains(lines[1], "Invented") {
		t.Errorf("heading: %q", lines[:2])
	}
	for _, want := range []string{"A  VSP, spurs: ", "B  Sprawl, one foliage wire: ", "over 45 °C", "24:00"} {
		if !strings.Contains(table, want) {
			t.Errorf("no %q in\n%s", want, table)
		}
	}
	hours := 0
	for _, line := range lines {
		if len(line) > 5 && line[2:5] == ":00" {
			hours++
		}
		if strings.HasSuffix(line, " ") {
			t.Errorf("line ends in blanks: %q", line)
		}
	}
	if hours != 4*25 {
		t.Errorf("%d rows of full hours", hours)
	}
	if short := written(t, "table", "metric", true); !strings.HasPrefix(table, short) {
		t.Error("the summary is not how the table begins")
	}
}

func TestDayTableInUSUnits(t *testing.T) {
	table := written(t, "table", "us", false)
	for _, want := range []string{"Air 69.8 °F to 105.8 °F", "over 113 °F", "mph"} {
		if !strings.Contains(table, want) {
			t.Errorf("no %q in\n%s", want, table[:2000])
		}
	}
	if strings.Contains(table, "°C") {
		t.Error("°C in a table of US units")
	}
}

func TestDayReadsStandardInputAndWritesAFile(t *testing.T) {
	raw, err := os.ReadFile(demo)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "day.json")
	withNote := strings.Replace(string(raw), "{", `{"appVersion":"x",`, 1)
	got := rowlight(withNote, "day", "-", "--format", "json", "-o", path)
	if got.code != 0 || got.stdout != "" || !strings.Contains(got.stderr, "note: appVersion") {
		t.Fatalf("%+v", got)
	}
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(file) != written(t, "json", "metric", false) {
		t.Error("the file differs from the day computed before")
	}
}
