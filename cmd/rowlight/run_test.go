package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// demo is the path of an invented scenario.
const demo = "../../testdata/scenarios/stony-bend.json"

// outcome is what one command line leaves.
type outcome struct {
	code           int
	stdout, stderr string
}

// rowlight runs one command line in this process.
func rowlight(stdin string, args ...string) outcome {
	var stdout, stderr bytes.Buffer
	code := run(context.Background(), args, strings.NewReader(stdin), &stdout, &stderr)
	return outcome{code, stdout.String(), stderr.String()}
}

func TestFaultsGoToStderrOnePerLine(t *testing.T) {
	path := filepath.Join(t.TempDir(), "bad.json")
	raw := `{"site":{"latitude_deg":91},"weather":{"airMin_C":30,"airMax_C":20},"options":[{"form":"hop-pole"}]}`
	if err := os.WriteFile(path, []byte(raw), 0o600); err != nil {
		t.Fatal(err)
	}
	got := rowlight("", "day", path, "--format", "csv")
	if got.code != 2 || got.stdout != "" {
		t.Errorf("code %d, stdout %q", got.code, got.stdout)
	}
	lines := strings.Split(strings.TrimSuffix(got.stderr, "\n"), "\n")
	want := []string{
		"site.latitude_deg: 91° is outside -90° to 90°.",
		"weather.airMin_C: the lowest air temperature 30.0 °C is not below the highest 20.0 °C.",
		"options[0].form: “hop-pole” is no training form",
	}
	if len(lines) != len(want) {
		t.Fatalf("%d lines: %s", len(lines), got.stderr)
	}
	for i, line := range lines {
		if !strings.HasPrefix(line, "rowlight: "+path+": ") || !strings.Contains(line, want[i]) {
			t.Errorf("line %d: %s\nwant the file and %s", i, line, want[i])
		}
	}
}

func TestExitCodes(t *testing.T) {
	polar := `{"site":{"latitude_deg":75,"longitude_deg":20,"utcOffset_h":1},"weather":{"date":"2026-06-21"},"options":[{"form":"sprawl"}]}`
	tests := map[string]struct {
		stdin string
		args  []string
		code  int
		says  string
	}{
		"syntax":         {"{\n oops}", []string{"day", "-"}, 2, "rowlight: -: Line 2, column 2: not JSON"},
		"polar day":      {polar, []string{"day", "-"}, 2, "the sun does not set at latitude 75"},
		"no file":        {"", []string{"day", "no-such.json"}, 1, "no-such.json"},
		"no scenario":    {"", []string{"day"}, 1, "accepts 1 arg"},
		"format":         {"", []string{"day", demo, "--format", "xml"}, 1, "write one of table, csv, json"},
		"unknown flag":   {"", []string{"day", demo, "--loud"}, 1, "--loud"},
		"unknown word":   {"", []string{"night"}, 1, "night"},
		"no such folder": {"", []string{"day", demo, "-o", filepath.Join("no-such-folder", "x.json")}, 1, "no-such-folder"},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			got := rowlight(test.stdin, test.args...)
			if got.code != test.code || got.stdout != "" || !strings.Contains(got.stderr, test.says) {
				t.Errorf("code %d, stdout %q, stderr %q; want code %d and %q", got.code, got.stdout, got.stderr, test.code, test.says)
			}
		})
	}
}

func TestHelpIsData(t *testing.T) {
	got := rowlight("", "--help")
	if got.code != 0 || !strings.Contains(got.stdout, "rowlight [command]") || got.stderr != "" {
		t.Errorf("%+v", got)
	}
}

func TestInterruptStopsTheRun(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var stdout, stderr bytes.Buffer
	code := run(ctx, []string{"day", demo}, strings.NewReader(""), &stdout, &stderr)
	if code != 1 || stdout.Len() != 0 || !strings.Contains(stderr.String(), "canceled") {
		t.Errorf("code %d, stdout %q, stderr %q", code, stdout.String(), stderr.String())
	}
}
