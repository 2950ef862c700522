package frost

import (
	"math"
	"testing"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// The table of Concord buds: FAO Frost Protection vol. 1, table 4.8, some of its rows.
func TestConcordOfTheTable(t *testing.T) {
	for _, row := range []struct {
		stage          scenario.BudStage
		kill10, kill90 float64
	}{{scenario.FirstSwell, -10.6, -19.4}, {scenario.BudBurst, -3.9, -8.9}, {scenario.ThirdLeaf, -2.2, -3.3}} {
		c := CriticalOf(scenario.Frost{Stage: row.stage, Group: scenario.American})
		if math.Abs(c.Kill10_C-row.kill10) > 1e-9 || math.Abs(c.Kill90_C-row.kill90) > 1e-9 {
			t.Errorf("%s: %+v, published %v and %v", row.stage, c, row.kill10, row.kill90)
		}
	}
}

// Half of the buds of Pinot noir: Gardea 1987, from memory.
func TestVinifera(t *testing.T) {
	for stage, half := range map[scenario.BudStage]float64{
		scenario.FullSwell: -3.3, scenario.BudBurst: -2.2, scenario.FirstLeaf: -2.0, scenario.SecondLeaf: -1.7, scenario.FourthLeaf: -1.2,
	} {
		c := CriticalOf(scenario.Frost{Stage: stage, Group: scenario.Vinifera})
		american := CriticalOf(scenario.Frost{Stage: stage, Group: scenario.American})
		if c.Kill50_C != half || c.Kill10_C <= c.Kill50_C || c.Kill50_C <= c.Kill90_C {
			t.Errorf("%s: %+v, published half %v", stage, c, half)
		}
		if american.Kill50_C >= half {
			t.Errorf("%s: American buds are as tender as vinifera", stage)
		}
	}
}

func TestOwnNumberGoesFirst(t *testing.T) {
	if c := CriticalOf(scenario.Frost{Stage: scenario.BudBurst, HalfKilled_C: -4}); c.Kill50_C != -4 || c.Source != ownSource {
		t.Errorf("%+v", c)
	}
}

// The curve goes through its own three points, and from all to none.
func TestKilledShare(t *testing.T) {
	for _, stage := range []scenario.BudStage{scenario.FirstSwell, scenario.FourthLeaf} {
		c := CriticalOf(scenario.Frost{Stage: stage, Group: scenario.Vinifera})
		for air, want := range map[float64]float64{c.Kill10_C: 0.1, c.Kill50_C: 0.5, c.Kill90_C: 0.9, 5: 0, -40: 1} {
			if got := c.Killed(air); math.Abs(got-want) > 0.01 {
				t.Errorf("%s at %.2f °C: %.3f killed, want %.2f", stage, air, got, want)
			}
		}
	}
}

// The buds hang where the wood is: on the cordon, or on canes that arch above and below it.
func TestBudsOfTheWood(t *testing.T) {
	for key, want := range map[string][2]float64{"vsp-spurs": {0.90, 1.05}, "double-curtain": {1.5, 1.9}, "goblet": {0.3, 0.9}} {
		form, ok := scenario.FormByKey(key)
		if !ok {
			t.Fatal(key)
		}
		stand, err := training.Build(form.Option, 36, 1)
		if err != nil {
			t.Fatal(err)
		}
		f := Of(stand, stillNight(t, nil), CriticalOf(scenario.Default().Frost))
		t.Logf("%s: buds at %.2f m (%.2f to %.2f), %.2f °C, margin %.2f K, killed %.2f (%.2f to %.2f)",
			key, f.Buds_m, f.Lowest_m, f.Highest_m, f.Air.Value, f.Margin.Value, f.Killed.Value, f.Killed.Low, f.Killed.High)
		if f.Buds_m < want[0] || f.Buds_m > want[1] || f.Lowest_m > f.Buds_m || f.Highest_m < f.Buds_m {
			t.Errorf("%s: buds at %.2f m (%.2f to %.2f), want %v", key, f.Buds_m, f.Lowest_m, f.Highest_m, want)
		}
		if f.Raised.Value <= 0 || f.Raised.Low > f.Raised.Value || f.Raised.High < f.Raised.Value {
			t.Errorf("%s: a raised cordon buys %+v", key, f.Raised)
		}
	}
	if f := Of(&training.Stand{}, Night{}, Critical{}); f.Buds_m != 0 || f.Killed.High != 0 {
		t.Errorf("a stand without buds has %+v", f)
	}
}

// The night of the weather is its coldest moment: the lowest air of a design day.
func TestNightOfTheWeather(t *testing.T) {
	s := scenario.Default()
	s.Weather.Date, s.Weather.AirMin_C, s.Weather.AirMax_C, s.Weather.DewPoint_C = "2026-04-10", -1.5, 14, -4
	s.Weather.Wind_ms, s.Frost.Lowest = 1, scenario.LowestWeather
	n, err := NightOf(s)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(n.Lowest_C+1.5) > 0.05 || n.Wind_ms <= 0.3 || n.Wind_ms >= 1 {
		t.Errorf("%+v", n)
	}
	s.Site.Latitude_deg, s.Weather.Date = 80, "2026-06-20"
	if _, err := NightOf(s); err == nil {
		t.Error("a day without a night has one")
	}
}

func TestToldNight(t *testing.T) {
	n := stillNight(t, nil)
	told := Told(n, CriticalOf(scenario.Default().Frost))
	last := len(told.Height_m) - 1
	if math.Abs(told.Height_m[0]-0.1) > 1e-9 || math.Abs(told.Height_m[last]-3) > 1e-9 || len(told.Air_C) != last+1 {
		t.Errorf("heights %v to %v", told.Height_m[0], told.Height_m[last])
	}
	if told.Strong_C[0] >= told.Weak_C[0] || told.Strong_C[last] <= told.Weak_C[last] {
		t.Error("a strong inversion is not colder below and warmer above")
	}
}
