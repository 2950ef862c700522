package frost

import (
	"math"
	"testing"

	"rowlight/sim/heat"
	"rowlight/sim/scenario"
)

// stillNight is a calm clear night over a mown cover.
func stillNight(t *testing.T, change func(*scenario.Scenario)) Night {
	t.Helper()
	s := scenario.Default()
	s.Frost.Wind_ms, s.Frost.Cloud = 0, 0
	if change != nil {
		change(&s)
	}
	n, err := NightOf(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// Fact 11: the air of a calm clear night warms with height: 0 to 5 K from 0.3 to 2.4 m, about 1 K typical (seven
// Californian sites, 5.0 K at the extreme one: Battany, American Vineyard Foundation, 2013); not at all with more
// than 1.7 m/s (Shaw 2001; Ker 2007). Grass is colder than tilled soil at 0.3 m (de Rességuier et al. 2023).
func TestFactAirOfANightByHeight(t *testing.T) {
	n := stillNight(t, nil)
	rise := func(n Night, inversion_K float64) float64 { return n.At(2.4, inversion_K) - n.At(0.3, inversion_K) }
	usual, weak, strong := rise(n, n.Usual_K), rise(n, Weakest_K), rise(n, Strongest_K)
	t.Logf("2.4 m is %.2f K warmer than 0.3 m (%.2f to %.2f); published 0 to 5, 1 typical", usual, weak, strong)
	if usual < 0.7 || usual > 1.5 || weak < 0 || strong > 5 || strong < 4.5 {
		t.Errorf("%.2f K (%.2f to %.2f)", usual, weak, strong)
	}
	for z := 0.2; z < 3; z += 0.1 {
		if n.At(z, n.Usual_K) <= n.At(z-0.1, n.Usual_K) {
			t.Errorf("the air of a calm night is not warmer at %.1f m than below", z)
		}
	}
	windy := stillNight(t, func(s *scenario.Scenario) { s.Frost.Wind_ms = 1.71 })
	if d := rise(windy, Strongest_K); d != 0 {
		t.Errorf("in wind the air is %.2f K warmer above", d)
	}
	if d := rise(stillNight(t, func(s *scenario.Scenario) { s.Frost.Cloud = 1 }), Strongest_K); d != 0 {
		t.Errorf("under clouds the air is %.2f K warmer above", d)
	}
	tilled := stillNight(t, func(s *scenario.Scenario) { s.Site.Floor = scenario.BareMoist })
	if d := tilled.At(0.3, tilled.Usual_K) - n.At(0.3, n.Usual_K); math.Abs(d-0.5) > 1e-9 {
		t.Errorf("over tilled soil the air at 0.3 m is %.2f K warmer than over grass, the project's number is 0.5", d)
	}
	if tilled.At(2.4, 1) != n.At(2.4, 1) {
		t.Error("the floor changes the air above the screen")
	}
}

// Few feet of cordon are worth 0.6 to 1.1 K (1 to 2 °F, Wines & Vines 2012): the range of the model holds that.
func TestFactFewFeetOfCordon(t *testing.T) {
	n := stillNight(t, nil)
	low, high := n.At(1.8, Weakest_K)-n.At(0.9, Weakest_K), n.At(1.8, Strongest_K)-n.At(0.9, Strongest_K)
	t.Logf("from 0.9 to 1.8 m %.2f to %.2f K, usual %.2f", low, high, n.At(1.8, n.Usual_K)-n.At(0.9, n.Usual_K))
	if low > 0.6 || high < 1.1 {
		t.Errorf("from 0.9 to 1.8 m %.2f to %.2f K, published 0.6 to 1.1", low, high)
	}
}

// noonFloor is a floor after four hours of summer sun: air of 30 °C, 2 m/s at 2 m, dew point 10 °C.
func noonFloor(kind scenario.Floor) (floor *heat.Floor, air heat.Around) {
	air = heat.Around{Air_C: 30, Dew_C: 10, Pressure_Pa: 101325, Wind_ms: 0.8}
	floor = heat.NewFloor(kind, 1, 28)
	for range 16 {
		floor.Step([]float64{850}, []float64{370}, air, 900)
	}
	return floor, air
}

// warmerBelow is how much warmer it is at noon at 0.2 m than at 2 m over a floor [K], by the profile of the day that
// the simulation of fruit uses.
func warmerBelow(kind scenario.Floor) float64 {
	const friction_ms = 0.25 // of such a wind over a floor between rows
	floor, air := noonFloor(kind)
	profile := heat.NewAirProfile(air, floor.Flux.Sensible, friction_ms)
	return profile.At(0.2) - profile.At(2)
}

// Fact 11, by day: near the ground it is warmer at 0.2 m than at 2 m (Chaptal 1943), the other way about than at
// night. The source leaves the floor open, so it must hold over each.
func TestFactByDayTheGroundIsWarmer(t *testing.T) {
	for _, kind := range []scenario.Floor{scenario.BareDry, scenario.BareMoist, scenario.MownCover, scenario.Straw} {
		d := warmerBelow(kind)
		t.Logf("by day over %s 0.2 m is %.2f K warmer than 2 m; published about 1.6", kind, d)
		if d <= 0 {
			t.Errorf("by day over %s 0.2 m is %.2f K warmer than 2 m", kind, d)
		}
	}
}

// Known miss: the size of that fact, about 1.6 K (Chaptal 1943). Over dry bare soil the simulation gives more than
// twice as much; over moist soil it comes near. The test fails when the miss grows or is cured.
func TestKnownMissDrySoilByDay(t *testing.T) {
	const published_K, given_K, margin_K = 1.6, 3.94, 0.3
	switch d := warmerBelow(scenario.BareDry); {
	case math.Abs(d-published_K) <= 0.8:
		t.Errorf("over dry soil it is %.2f K, published about %g: the known miss is cured, take it off", d, published_K)
	case math.Abs(d-given_K) > margin_K:
		t.Errorf("over dry soil it is %.2f K, published about %g: the known miss of %g has moved", d, published_K, given_K)
	}
}

// Known miss: by day the air at 0.3 m is published as hotter over a cover than over tilled soil (de Rességuier et al.
// 2023). In the simulation that holds for a cover that has dried up; a green one gives off water and warms the air
// less. The test fails when either changes.
func TestKnownMissGrassByDay(t *testing.T) {
	sensible := func(kind scenario.Floor) float64 {
		floor, _ := noonFloor(kind)
		return floor.Flux.Sensible
	}
	green, tilled, dried := sensible(scenario.MownCover), sensible(scenario.BareMoist), sensible(scenario.Straw)
	t.Logf("sensible heat at noon: mown cover %.0f, moist soil %.0f, dried cover %.0f W/m²", green, tilled, dried)
	if dried <= tilled {
		t.Error("a dried cover warms the air less than tilled soil")
	}
	if green >= tilled {
		t.Error("a green cover warms the air more than tilled soil: the known miss is cured, take it off")
	}
	if green < 0.4*tilled {
		t.Error("the known miss has grown")
	}
}
