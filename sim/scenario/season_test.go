package scenario_test

import (
	"testing"

	"rowlight/sim/scenario"
)

func TestStagesFollowEachOther(t *testing.T) {
	for _, test := range []struct {
		season scenario.Season
		code   string
		path   string
	}{
		{scenario.Season{FruitSet: "2026-06-01", Veraison: "2026-07-20", Harvest: "2026-09-10"}, "", ""},
		{scenario.Season{FruitSet: "2026-12-01", Veraison: "2026-01-20", Harvest: "2026-03-10"}, "", ""},
		{scenario.Season{FruitSet: "2026-06-01", Harvest: "2026-09-10"}, "", ""},
		{scenario.Season{FruitSet: "2026-07-20", Veraison: "2026-06-01"}, "fault.season-order", "/season/veraison"},
		{scenario.Season{Veraison: "2026-07-20", Harvest: "2025-07-20"}, "fault.season-order", "/season/harvest"},
		{scenario.Season{FruitSet: "1 June"}, "fault.date", "/season/fruitSet"},
	} {
		s := scenario.Default()
		s.Season = test.season
		s.Season.Growth = scenario.AsGiven
		faults := s.Validate()
		if test.code == "" && len(faults) != 0 || test.code != "" && (len(faults) != 1 || faults[0].Code != test.code || faults[0].Path != test.path) {
			t.Errorf("%+v: %v", test.season, faults)
		}
	}
}
