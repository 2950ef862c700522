package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"rowlight/sim/result"
)

// oneForm is a scenario file with one option, which a run takes seconds for.
func oneForm(t *testing.T, raw string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "one.json")
	if err := os.WriteFile(path, []byte(raw), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestWeighSaysWhatItIsNot(t *testing.T) {
	raw := `{"crop":{"prunings_kg_per_m":0.4,"price_per_t":500},"options":[{"form":"vsp-spurs","cost":{"year_per_ha":4000}}]}`
	got := rowlight("", "weigh", oneForm(t, raw), "--units", "us")
	if got.code != 0 {
		t.Fatal(got.stderr)
	}
	for _, want := range []string{
		"not a frost warning", "not a promise", "This vine will not fill four arms", "lb/ft", "ton/acre", "breaks even",
		"Nothing is ranked", "Where the columns are from", "Half killed: Pinot noir",
	} {
		if !strings.Contains(got.stdout, want) {
			t.Errorf("it does not say %q", want)
		}
	}
	if strings.Contains(got.stdout, "{") || strings.Contains(got.stdout, "crop.") || strings.Contains(got.stdout, "frost.") {
		t.Errorf("a text is missing:\n%s", got.stdout)
	}
}

func TestWeighInEveryFormat(t *testing.T) {
	path := oneForm(t, `{"options":[{"form":"vsp-spurs"},{"form":"vsp-spurs","training":{"blindNodes":0.3}}]}`)
	var w result.Weighing
	if got := rowlight("", "weigh", path, "--format", "json", "--weights", "crop=1"); got.code != 0 || json.Unmarshal([]byte(got.stdout), &w) != nil {
		t.Fatalf("code %d: %s", got.code, got.stderr)
	}
	if len(w.Order) != 2 || w.Order[0].Option != 0 || !w.Order[0].Decided {
		t.Errorf("blind nodes bear no fruit, yet the order is %+v", w.Order)
	}
	got := rowlight("", "weigh", path, "--format", "csv", "--weights", "crop=1")
	rows, err := csv.NewReader(strings.NewReader(got.stdout)).ReadAll()
	if err != nil || len(rows) != 3 {
		t.Fatalf("%v: %s", err, got.stdout)
	}
	for i, name := range rows[0] {
		if name != "yield_t_per_ha" {
			continue
		}
		if value, err := strconv.ParseFloat(rows[1][i], 64); err != nil || value != w.Options[0].Crop.PerHa_t.Value {
			t.Errorf("csv has %s, json %v", rows[1][i], w.Options[0].Crop.PerHa_t.Value)
		}
	}
	if place := rows[2][len(rows[2])-1]; place != "2" {
		t.Errorf("the second option is in place %q", place)
	}
}

func TestWeightsAreChecked(t *testing.T) {
	for _, bad := range []string{"taste=1", "heat=2", "heat", "heat=x", "heat=NaN"} {
		if got := rowlight("", "weigh", demo, "--weights", bad); got.code != exitFailed || !strings.Contains(got.stderr, "--weights") {
			t.Errorf("%s: %+v", bad, got)
		}
	}
	w, err := parseWeights("heat=1, light=0.5,less-light")
	if err != nil || w.Heat != 1 || w.Light != 0.5 || w.LightWish != "less" {
		t.Errorf("%+v, %v", w, err)
	}
}

func TestFrostInEveryFormat(t *testing.T) {
	path := oneForm(t, `{"options":[{"form":"vsp-spurs"},{"form":"double-curtain","name":"High"}]}`)
	for format, wants := range map[string][]string{
		"table": {"not a frost warning", "weakest inversion", "A cordon 0.30 m higher", "Half killed: Pinot noir"},
		"csv":   {"buds_m", "High"},
		"json":  {"kill50_C", "verdict"},
	} {
		got := rowlight("", "frost", path, "--format", format)
		for _, want := range wants {
			if got.code != 0 || !strings.Contains(got.stdout, want) {
				t.Errorf("%s without %q: %s%s", format, want, got.stdout, got.stderr)
			}
		}
	}
	polar := `{"frost":{"lowest":"weather"},"site":{"latitude_deg":80},"weather":{"date":"2026-06-20"},"options":[{"form":"sprawl"}]}`
	if got := rowlight(polar, "frost", "-"); got.code != exitFaults || !strings.Contains(got.stderr, "latitude") {
		t.Errorf("a night without a dusk: %+v", got)
	}
}

func TestCropInEveryFormat(t *testing.T) {
	path := oneForm(t, `{"crop":{"prunings_kg_per_m":0.2},"options":[{"form":"vsp-canes"},{"form":"lyre"}]}`)
	var answers []cropAnswer
	if got := rowlight("", "crop", path, "--format", "json"); got.code != 0 || json.Unmarshal([]byte(got.stdout), &answers) != nil {
		t.Fatalf("%+v", got)
	}
	if len(answers) != 2 || answers[0].Crop.Canes != 2 || answers[1].Crop.Filled >= 1 || answers[0].Crop.LeafToFruit_m2kg.Value <= 0 {
		t.Errorf("%+v", answers)
	}
	for format, want := range map[string]string{"table": "This vine will not fill four arms", "csv": "perAcre_ton"} {
		if got := rowlight("", "crop", path, "--format", format); got.code != 0 || !strings.Contains(got.stdout, want) {
			t.Errorf("%s without %q: %s", format, want, got.stdout)
		}
	}
}
