package main

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
)

// berry runs rowlight berry and reads its json.
func berry(t *testing.T, args ...string) map[string]float64 {
	t.Helper()
	got := rowlight("", append([]string{"berry", "--format", "json"}, args...)...)
	var answer map[string]float64
	if err := json.Unmarshal([]byte(got.stdout), &answer); err != nil {
		t.Fatalf("%v: %s", err, got.stderr)
	}
	return answer
}

func TestBerryFlowsBalance(t *testing.T) {
	for _, args := range [][]string{nil, {"--wind_ms", "0"}, {"--dni_Wm2", "0", "--transpiration_Wm2", "8"}, {"--floor_C", "60", "--compactness", "1"}} {
		answer := berry(t, args...)
		sum := 0.0
		for _, flow := range []string{"beam_Wm2", "diffuse_Wm2", "surroundings_Wm2", "emission_Wm2", "convection_Wm2", "transpiration_Wm2"} {
			sum += answer[flow]
		}
		if math.Abs(sum) > 1e-6 {
			t.Errorf("%v: flows leave %v W/m²", args, sum)
		}
	}
}

// TestBerryTakesInTheBeamOfItsShadow: a sphere catches the beam on a quarter of its surface.
func TestBerryTakesInTheBeamOfItsShadow(t *testing.T) {
	if got := berry(t, "--dni_Wm2", "800", "--absorptance", "0.7")["beam_Wm2"]; math.Abs(got-800*0.7/4) > 1e-9 {
		t.Error(got)
	}
}

// TestBerryWithoutSunInBlackSurroundingsIsAsWarmAsTheAir: nothing flows where all is at one temperature.
func TestBerryWithoutSunInBlackSurroundingsIsAsWarmAsTheAir(t *testing.T) {
	// σT⁴ at 30 °C, with σ of CODATA 2018
	emitted := 5.670374419e-8 * math.Pow(303.15, 4)
	answer := berry(t, "--air_C", "30", "--dni_Wm2", "0", "--dhi_Wm2", "0", "--longwave_Wm2", jsonNumber(t, emitted))
	for _, place := range []string{"litPole_C", "shadedPole_C", "mean_C", "hottest_C"} {
		if math.Abs(answer[place]-30) > 1e-6 {
			t.Errorf("%s %v", place, answer[place])
		}
	}
}

func jsonNumber(t *testing.T, value float64) string {
	t.Helper()
	text, err := json.Marshal(value)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestExposedBerryStaysWithinPublishedExcess: the lit pole of a loose bunch in wind of 0.5 m/s or more
// is at most 13 K above the air: Millar 1972, AJEV 23:173, saw up to 7.3 K for whole berries and 10.7 K
// across one berry.
func TestExposedBerryStaysWithinPublishedExcess(t *testing.T) {
	calm := berry(t, "--air_C", "35", "--wind_ms", "0.5", "--diameter_mm", "16")
	windy := berry(t, "--air_C", "35", "--wind_ms", "2", "--diameter_mm", "16")
	if excess := calm["litPole_C"] - 35; excess < 1 || excess > 13 {
		t.Errorf("excess %v K at 0.5 m/s", excess)
	}
	if windy["litPole_C"] >= calm["litPole_C"] {
		t.Error("wind does not cool")
	}
	if calm["hottest_C"] < calm["litPole_C"]-0.05 || calm["shadedPole_C"] >= calm["mean_C"] {
		t.Errorf("%v", calm)
	}
}

func TestBerryFormatsAgree(t *testing.T) {
	answer := berry(t)
	rows := readCSV(t, rowlight("", "berry", "--format", "csv").stdout)
	for key, want := range answer {
		if got := number(t, rows[0], key); got != want {
			t.Errorf("%s: csv %v, json %v", key, got, want)
		}
	}
	if table := rowlight("", "berry", "--units", "us").stdout; !strings.Contains(table, "sunlit pole") || !strings.Contains(table, "°F") {
		t.Error(table)
	}
	if got := rowlight("", "berry", "--diameter_mm", "99"); got.code != 2 || !strings.Contains(got.stderr, "berry: --diameter_mm: 99 mm is outside 4 mm to 30 mm") {
		t.Errorf("%+v", got)
	}
}

func TestFormsListTheCatalogue(t *testing.T) {
	rows := readCSV(t, rowlight("", "forms", "--format", "csv").stdout)
	keys := map[string]bool{}
	for _, row := range rows {
		keys[row["key"]] = true
	}
	if !keys["vsp-spurs"] || !keys["sprawl"] || !keys["double-curtain"] {
		t.Errorf("%v", keys)
	}
	var forms []map[string]any
	if err := json.Unmarshal([]byte(rowlight("", "forms", "--format", "json").stdout), &forms); err != nil || len(forms) != len(rows) {
		t.Errorf("%d forms in json, %d in csv, %v", len(forms), len(rows), err)
	}
	table := rowlight("", "forms").stdout
	for _, form := range forms {
		if !strings.Contains(table, form["line"].(string)) {
			t.Errorf("the table leaves out %v", form["key"])
		}
	}
}
