package main

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// explained is the chain that a command line gives.
func explained(t *testing.T, args ...string) result.Chain {
	t.Helper()
	got := rowlight("", append([]string{"explain", demo, "--format", "json"}, args...)...)
	var chain result.Chain
	if err := json.Unmarshal([]byte(got.stdout), &chain); err != nil || got.code != 0 {
		t.Fatalf("%v: %s", err, got.stderr)
	}
	return chain
}

// The hottest bunch of a side is in the hottest tenth of rowlight day, and shares its air and wind.
func TestExplainAgreesWithTheDay(t *testing.T) {
	day := demoDay()
	side := day.Options[1].Sides[scenario.Right]
	chain := explained(t, "--option", "b", "--side", side.Compass, "--hour", "15.5")
	steps := side.Steps
	k := int(math.Round(15.5 * 12))
	surface, _ := chain.Value("surface")
	air, _ := chain.Value("air")
	wind, _ := chain.Value("wind")
	if surface < steps.Hottest_C[k] || surface > steps.Hottest_C[k]+8 || air != steps.AirNear_C[k] || wind != steps.Wind_ms[k] {
		t.Errorf("chain %.3f °C in air of %.3f °C and %.3f m/s; day %.3f, %.3f, %.3f", surface, air, wind, steps.Hottest_C[k], steps.AirNear_C[k], steps.Wind_ms[k])
	}
	if chain.Option != "B" || chain.Side != side.Compass || chain.Date != day.Date || chain.Hour_h != 15.5 {
		t.Errorf("%s %s %s %g", chain.Option, chain.Side, chain.Date, chain.Hour_h)
	}
}

func TestExplainFormatsAgree(t *testing.T) {
	args := []string{"--side", "afternoon", "--hour", "15", "--face", "3"}
	chain := explained(t, args...)
	if chain.Bunch != 3 {
		t.Errorf("bunch %d", chain.Bunch)
	}
	rows := readCSV(t, rowlight("", append([]string{"explain", demo, "--format", "csv"}, args...)...).stdout)
	if len(rows) != len(chain.Links) {
		t.Fatalf("%d rows, %d links", len(rows), len(chain.Links))
	}
	table := rowlight("", append([]string{"explain", demo}, args...)...).stdout
	for i, link := range chain.Links {
		if rows[i]["symbol"] != link.Symbol || number(t, rows[i], "value") != link.Value || rows[i]["relation"] != link.Relation {
			t.Errorf("csv %v, json %+v", rows[i], link)
		}
		if !strings.Contains(table, link.Meaning) || !strings.Contains(table, link.Relation) {
			t.Errorf("the table leaves out %s", link.Symbol)
		}
	}
	if !strings.HasPrefix(table, "option A, ") || !strings.Contains(table, " 15:00\n") {
		t.Errorf("%.120s", table)
	}
}

func TestExplainRefusesWhatIsNotThere(t *testing.T) {
	for want, args := range map[string][]string{
		`--option: "E" is none of A to B`:         {"--option", "E", "--side", "left", "--hour", "12"},
		`--hour: 25 is outside 0 to 24`:           {"--side", "left", "--hour", "25"},
		`--side: "inside" is none of`:             {"--side", "inside", "--hour", "12"},
		`--face: 9999 is outside 1 to`:            {"--side", "right", "--hour", "12", "--face", "9999"},
		`--face: -1 is outside 1 to`:              {"--side", "right", "--hour", "12", "--face", "-1"},
		`required flag(s) "hour", "side" not set`: {},
	} {
		got := rowlight("", append([]string{"explain", demo}, args...)...)
		if got.code != 1 || !strings.Contains(got.stderr, want) || got.stdout != "" {
			t.Errorf("%v: code %d, %s", args, got.code, got.stderr)
		}
	}
	polar := `{"site":{"latitude_deg":75,"longitude_deg":20,"utcOffset_h":1},"weather":{"date":"2026-06-21"},"options":[{"form":"sprawl"}]}`
	if got := rowlight(polar, "explain", "-", "--side", "left", "--hour", "12"); got.code != 2 || !strings.Contains(got.stderr, "does not set") {
		t.Errorf("%+v", got)
	}
}
