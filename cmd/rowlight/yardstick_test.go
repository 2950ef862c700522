package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"rowlight/sim/scenario"
	"rowlight/sim/verify/leaves"
)

const yardstickDocs = "../../web/docs/yardstick.md"

// The page of the docs is what rowlight yardstick --page -o web/docs/yardstick.md makes now: its text, a line for every
// form, and all numbers of the form that is quickest to measure.
func TestYardstickPageIsFresh(t *testing.T) {
	raw, err := os.ReadFile(filepath.FromSlash(yardstickDocs))
	if err != nil {
		t.Fatal(err)
	}
	page, advice := string(raw), "make it anew with rowlight yardstick --page -o web/docs/yardstick.md"
	var frame strings.Builder
	if err := writeYardstickPage(&frame, nil, 20); err != nil {
		t.Fatal(err)
	}
	intro, rest, _ := strings.Cut(frame.String(), "\n## Directions")
	if !strings.HasPrefix(page, intro) || !strings.Contains(page, "\n## Directions"+rest) {
		t.Errorf("the text of %s is another: %s", yardstickDocs, advice)
	}
	for _, form := range scenario.Forms() {
		if !strings.Contains(page, "\n| "+form.Name+" |") || !strings.Contains(page, "\n### "+form.Name+"\n") {
			t.Errorf("%s lacks %q: %s", yardstickDocs, form.Name, advice)
		}
	}
	form, _ := scenario.FormByKey("goblet")
	m := measured{form: form}
	if m.Report, err = leaves.Measure(form, leaves.Settings{Seeds: 20, Rays: yardstickRays}, t.Context().Err); err != nil {
		t.Fatal(err)
	}
	line := strings.Join(strings.Split(m.pageLine(), "|")[:10], "|")
	if !strings.Contains(page, line) || !strings.Contains(page, m.pageDirections()) {
		t.Errorf("%s has other numbers for %s than\n%s\n%s: %s", yardstickDocs, form.Name, line, m.pageDirections(), advice)
	}
}

func TestYardstickCommand(t *testing.T) {
	directions := 0
	got := rowlight("", "yardstick", "--form", "sprawl", "--seeds", "1", "--format", "csv")
	rows, err := csv.NewReader(strings.NewReader(got.stdout)).ReadAll()
	if err != nil || len(rows) < 100 || rows[0][0] != "form" || rows[0][10] != "bias" {
		t.Fatalf("code %d, %d rows, %v: %s", got.code, len(rows), err, got.stderr)
	}
	for _, row := range rows[1:] {
		leaves, grid, bias := cellNumber(t, row[6]), cellNumber(t, row[9]), cellNumber(t, row[10])
		if row[0] != "sprawl" || leaves < 0 || leaves > 1 || grid-leaves != bias {
			t.Fatalf("row %q", row)
		}
		directions++
	}
	if directions != 122 {
		t.Errorf("%d directions, want 48 on each side and 26 of the day", directions)
	}
}

// Table and json say the same as was measured; a form outside the bounds is named.
func TestYardstickFormats(t *testing.T) {
	form, _ := scenario.FormByKey("sprawl")
	m := measured{form: form, Report: leaves.Report{Form: "sprawl", Clumping: 0.96, Directions: []leaves.Direction{
		{Elevation_deg: 15, Azimuth_deg: 45, Leaves: 0.2, Even: 0.18, Grid: 0.21, Bias: 0.01, RMS: 0.02},
		{Elevation_deg: 20, Azimuth_deg: 10, Day: true, Leaves: 0.1, Grid: 0.095, Bias: -0.005},
	}}}
	var table, document strings.Builder
	c := yardstickCommand{output: output{format: choice{value: "table"}}}
	if err := c.write(&table, []measured{m}); err != nil {
		t.Fatal(err)
	}
	for _, says := range []string{"0.200", "0.180", "0.210", "0.96", "0.010", "0.020", "-0.005", "allowed in any direction: bias 0.02, rms 0.05; moment 2 min"} {
		if !strings.Contains(strings.ReplaceAll(table.String(), "−", "-"), says) {
			t.Errorf("the table lacks %s:\n%s", says, table.String())
		}
	}
	c.output.format.value = "json"
	if err := c.write(&document, []measured{m}); err != nil {
		t.Fatal(err)
	}
	var all []measured
	if err := json.Unmarshal([]byte(document.String()), &all); err != nil || len(all) != 1 || len(all[0].Report.Directions) != 2 || all[0].Report.Directions[1].Bias != -0.005 {
		t.Errorf("json: %v, %s", err, document.String())
	}
	if outside := m.Report.Outside(); len(outside) != 0 {
		t.Errorf("outside: %+v", outside)
	}
	m.Report.Directions[0].Bias = 0.03
	if outside := m.Report.Outside(); len(outside) != 1 {
		t.Errorf("a bias of 0.03 is not outside: %+v", outside)
	}
}

func cellNumber(t *testing.T, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

func TestYardstickRefuses(t *testing.T) {
	for says, args := range map[string][]string{
		"--seeds is 0: write 1 or more": {"--seeds", "0"},
		`no form "hop-pole"`:            {"--form", "hop-pole"},
		"none of the others can be":     {"--page", "--format", "csv"},
	} {
		if got := rowlight("", append([]string{"yardstick"}, args...)...); got.code != 1 || got.stdout != "" || !strings.Contains(got.stderr, says) {
			t.Errorf("%v: code %d, %q", args, got.code, got.stderr)
		}
	}
}
