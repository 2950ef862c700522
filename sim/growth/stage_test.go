package growth_test

import (
	"reflect"
	"testing"
	"time"

	"rowlight/sim/growth"
	"rowlight/sim/scenario"
)

func TestStagesFollowTheSeasonInBothHemispheres(t *testing.T) {
	for latitude, days := range map[float64]map[string]growth.Stage{
		36:  {"05-20": growth.FruitSet, "06-10": growth.FruitSet, "07-01": growth.Closing, "07-25": growth.Veraison, "08-20": growth.Ripening, "10-01": growth.Ripening},
		-34: {"11-20": growth.FruitSet, "12-31": growth.Closing, "01-19": growth.Closing, "01-20": growth.Veraison, "02-28": growth.Ripening, "03-20": growth.Ripening},
	} {
		for day, want := range days {
			date, err := time.Parse("01-02", day)
			if err != nil {
				t.Fatal(err)
			}
			if got := growth.Usual(latitude).On(date); got != want {
				t.Errorf("latitude %g, %s: %s, want %s", latitude, day, got, want)
			}
		}
	}
}

// TestScenarioTellsItsStages: the dates of a scenario move the stages, those that it does not name move with them, and
// vines grow by date only where it asks for it.
func TestScenarioTellsItsStages(t *testing.T) {
	for _, test := range []struct {
		latitude float64
		season   scenario.Season
		date     string
		want     growth.Stage
	}{
		{36, scenario.Season{}, "2026-06-05", growth.Full},
		{36, scenario.Season{Growth: scenario.AsGiven, FruitSet: "2026-06-01"}, "2026-06-05", growth.Full},
		{36, scenario.Season{Growth: scenario.ByDate}, "2026-06-05", growth.FruitSet},
		{36, scenario.Season{Growth: scenario.ByDate}, "2026-07-25", growth.Veraison},
		{36, scenario.Season{Growth: scenario.ByDate, FruitSet: "2019-06-20"}, "2026-07-25", growth.Closing}, // colour moves to 8 August
		{36, scenario.Season{Growth: scenario.ByDate, FruitSet: "2019-06-20", Veraison: "2019-07-20"}, "2026-07-25", growth.Veraison},
		{36, scenario.Season{Growth: scenario.ByDate, Harvest: "2026-10-10"}, "2026-08-10", growth.Closing}, // 30 days late
		{-34, scenario.Season{Growth: scenario.ByDate}, "2026-01-10", growth.Closing},
		{-34, scenario.Season{Growth: scenario.ByDate, FruitSet: "2025-11-10"}, "2026-01-10", growth.Veraison}, // 21 days early
	} {
		s := scenario.Default()
		s.Site.Latitude_deg, s.Season, s.Weather.Date = test.latitude, test.season, test.date
		if got := growth.Of(s); got != test.want {
			t.Errorf("latitude %g, %+v, on %s: %s, want %s", test.latitude, test.season, test.date, got, test.want)
		}
		grown := growth.Grown(s)
		if o := test.want.Option(s.Options[1]); !reflect.DeepEqual(grown.Options[1], o) || grown.Fruit != test.want.Fruit(s.Fruit) {
			t.Errorf("on %s the scenario does not stand as its stage says", test.date)
		}
		if again := growth.Grown(grown); !reflect.DeepEqual(again, grown) {
			t.Errorf("on %s vines that have grown grow once more", test.date)
		}
		if got := len(growth.Notices(s)); got != map[bool]int{false: 1}[test.want == growth.Full] {
			t.Errorf("on %s: %d notices", test.date, got)
		}
	}
}

func TestVinesGrowTowardWhatTheScenarioSays(t *testing.T) {
	s := scenario.Default()
	o, fruit := s.Options[0], s.Fruit
	leaves, mass, berry := 0.0, 0.0, 0.0
	for _, stage := range []growth.Stage{growth.FruitSet, growth.Closing, growth.Veraison, growth.Ripening} {
		then, berries := stage.Option(o), stage.Fruit(fruit)
		if then.Leaves.Area_m2_per_m < leaves || then.Bunches.Mass_g <= mass || berries.Diameter_mm <= berry {
			t.Errorf("%s: leaves %g m²/m, bunch %g g, berry %g mm: no growth", stage, then.Leaves.Area_m2_per_m, then.Bunches.Mass_g, berries.Diameter_mm)
		}
		leaves, mass, berry = then.Leaves.Area_m2_per_m, then.Bunches.Mass_g, berries.Diameter_mm
		if green := berries.Colour == scenario.Green; green != (stage == growth.FruitSet || stage == growth.Closing) {
			t.Errorf("%s: the berries are %s", stage, berries.Colour)
		}
	}
	if leaves != o.Leaves.Area_m2_per_m || mass != o.Bunches.Mass_g || berry != fruit.Diameter_mm {
		t.Error("ripening fruit is not that of the scenario")
	}
}
