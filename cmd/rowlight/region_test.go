package main

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// region is the path of an invented plan of three sites.
const region = "../../testdata/scenarios/region.csv"

// The pieces of a region are the whole, and its lines those of each site alone.
func TestShardsOfARegionAreTheWhole(t *testing.T) {
	inPieces(t, 3, 1+2*(2*2+3+2), "region", region, "--every", "4")
}

func TestARegionHasTheNumbersOfItsScenarios(t *testing.T) {
	plan := "site,latitude_deg,floor,form,azimuth_deg\nHere,36.4,,vsp-spurs,0 90\n"
	base := `{"site":{"longitude_deg":-119.9},"limits":{"hot_C":39},"options":[{"form":"vsp-spurs","rows":{"azimuth_deg":0}}]}`
	folder := t.TempDir()
	file := filepath.Join(folder, "base.json")
	if err := os.WriteFile(file, []byte(base), 0o600); err != nil {
		t.Fatal(err)
	}
	got := rowlight(plan, "region", "-", "--scenario", file)
	want := rowlight("", "rows", file, "--step", "90", "--format", "csv")
	if got.code != 0 || want.code != 0 {
		t.Fatalf("%s%s", got.stderr, want.stderr)
	}
	cells := func(text, column string) (cells []string) {
		lines, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		at := slices.Index(lines[0], column)
		for _, line := range lines[1:] {
			cells = append(cells, line[at])
		}
		return cells
	}
	for _, column := range []string{"azimuth_deg", "side", "light_MJm2", "heatOverHot_K_h", "atRisk", "hottest_C"} {
		if a, b := cells(got.stdout, column), cells(want.stdout, column); len(a) != 4 || !slices.Equal(a, b) {
			t.Errorf("%s: %s, of the scenario %s", column, a, b)
		}
	}
}

func TestFaultsOfARegionNameLineAndColumn(t *testing.T) {
	plan := "site,latitude_deg,floor,form,azimuth_deg\nA,north,,vsp-spurs,0\nB,91,,vsp-spurs,0 270\nC,36,snow,hop-pole,\n"
	got := rowlight(plan, "region", "-")
	if got.code != 2 || got.stdout != "" {
		t.Errorf("code %d, stdout %q", got.code, got.stdout)
	}
	for _, says := range []string{
		"rowlight: -: line 2: latitude_deg: a number is wanted",
		"rowlight: -: line 3: azimuth_deg: 270° is outside 0° to 180°",
		"rowlight: -: line 3: site.latitude_deg: 91° is outside -90° to 90°",
		"rowlight: -: line 4: azimuth_deg: it is missing",
		"rowlight: -: line 4: site.floor: “snow” is not known",
		"rowlight: -: line 4: options[0].form: “hop-pole” is no training form",
	} {
		if !strings.Contains(got.stderr, says) {
			t.Errorf("%q lacks %q", got.stderr, says)
		}
	}
	for name, test := range map[string]struct{ plan, says string }{
		"unknown column": {"site,form,azimuth_deg,soil\n", "column 4: “soil” is not known"},
		"column twice":   {"site,form,azimuth_deg,form\n", "column 4: “form” stands in two columns"},
		"no azimuths":    {"site,form\n", "azimuth_deg: it is missing"},
		"short line":     {"site,form,azimuth_deg\nA,sprawl\n", "line 2"},
		"nothing":        {"", "a line with the names of columns is wanted"},
	} {
		if got := rowlight(test.plan, "region", "-"); got.code == 0 || got.stdout != "" || !strings.Contains(got.stderr, test.says) {
			t.Errorf("%s: code %d, %q lacks %q", name, got.code, got.stderr, test.says)
		}
	}
}
