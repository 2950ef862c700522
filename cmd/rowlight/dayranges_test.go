package main

import (
	"encoding/json"
	"strings"
	"testing"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// The ranges of a day stand in json with every input, option and difference, and in the table with their words.
func TestDayWithRanges(t *testing.T) {
	got := rowlight("", "day", demo, "--ranges", "--draws", "20", "--format", "json")
	if got.code != 0 {
		t.Fatalf("code %d: %s", got.code, got.stderr)
	}
	var day result.Day
	if err := json.Unmarshal([]byte(got.stdout), &day); err != nil {
		t.Fatal(err)
	}
	r := day.Ranges
	if r == nil || r.Draws != 20 || len(r.Options) != len(day.Options) || len(r.Differences) != len(day.Options)-1 || len(r.Inputs) == 0 {
		t.Fatalf("ranges %+v", r)
	}
	for o, option := range r.Options {
		for _, side := range []scenario.Side{scenario.Left, scenario.Right} {
			band, central := option.Sides[side].Hottest_C, day.Options[o].Sides[side].Summary.Hottest_C
			if band.Low > central || band.High < central || band.Low == band.High {
				t.Errorf("option %d: hottest fruit %g in %+v", o, central, band)
			}
		}
	}
	var table strings.Builder
	if err := (dayCommand{output: output{format: choice{value: "table"}}, summary: true}).writeDay(&table, day); err != nil {
		t.Fatal(err)
	}
	for _, in := range r.Inputs {
		if strings.HasPrefix(in.Name, "input.") || strings.HasPrefix(in.Source, "input.") {
			t.Errorf("nothing says what %s is or whence: %q, %q", in.Key, in.Name, in.Source)
		}
	}
	for _, want := range []string{"by 20 draws", "follows most", "B against A", "worse in", r.Inputs[0].Name, r.Inputs[0].Source} {
		if !strings.Contains(table.String(), want) {
			t.Errorf("the table does not say %q", want)
		}
	}
}

func TestRangesThatCannotBe(t *testing.T) {
	for want, args := range map[string][]string{
		"--draws 5 is outside":         {"day", demo, "--ranges", "--draws", "5"},
		"--ranges has no place in csv": {"day", demo, "--ranges", "--format", "csv"},
	} {
		if got := rowlight("", args...); got.code == 0 || got.stdout != "" || !strings.Contains(got.stderr, want) {
			t.Errorf("code %d, %q, want %q", got.code, got.stderr, want)
		}
	}
	if got := rowlight("", "day", demo, "--summary"); strings.Contains(got.stdout, "follows most") {
		t.Error("a day has ranges that nobody asked for")
	}
}
