package growth_test

import (
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
