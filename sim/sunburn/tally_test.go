package sunburn

import (
	"math"
	"testing"

	"rowlight/sim/scenario"
)

func rule(colour scenario.Colour) Rule {
	return NewRule(scenario.Scenario{
		Fruit:  scenario.Fruit{Colour: colour},
		Limits: scenario.Limits{Watch_C: 35, Hot_C: 40, Burn_C: 45, T50_C: 47, Doubling_K: 1.5, Tolerated_K: 5},
	})
}

// A straight rise from 30 to 50 °C in 4 h is over 35 for 3 h, over 40 for 2 h, over 45 for 1 h, in
// whatever steps it is told (closed form).
func TestHoursOverLimitsInterpolateCrossings(t *testing.T) {
	for _, steps := range []int{1, 3, 48} {
		r, tally := rule(scenario.Red), Tally{}
		for k := range steps {
			at := func(i int) float64 { return 30 + 20*float64(i)/float64(steps) }
			r.Step(&tally, at(k), at(k+1), false, 4/float64(steps))
		}
		for k, want := range []float64{3, 2, 1} {
			if math.Abs(tally.Over[k]-want) > 1e-9 {
				t.Errorf("%d steps: %.6f h over limit %d, want %g", steps, tally.Over[k], k, want)
			}
		}
	}
}

// Half an hour at T50 kills half, by the definition of a 30-minute LD50 (Müller et al., mobile infrared
// device), and well above it one doubling step halves the time. Berries shaded in air over 40 °C stay
// whole (Allegro et al. 2024, Acta Hort. 1395).
func TestDamageFollowsItsDefinition(t *testing.T) {
	for _, c := range []struct{ temperature, hours, want, allowed float64 }{
		{47, 0.5, 0.5, 1e-12}, {48.5, 0.25, 0.5, 0.03}, {50, 0.125, 0.5, 0.04}, {41, 6, 0, 0},
	} {
		r, tally := rule(scenario.White), Tally{}
		r.Step(&tally, c.temperature, c.temperature, true, c.hours)
		if got := Damaged(tally.Dose); math.Abs(got-c.want) > c.allowed {
			t.Errorf("%g h at %g °C damages %.4f, want %g", c.hours, c.temperature, got, c.want)
		}
	}
}

// The dose of a rise is the integral of the rate, whatever the steps (closed form against fine steps).
func TestDoseIsIntegratedExactly(t *testing.T) {
	r := rule(scenario.White)
	coarse, fine := Tally{}, Tally{}
	r.Step(&coarse, 40, 49, true, 1)
	const n = 20000
	for k := range n {
		middle := 40 + 9*(float64(k)+0.5)/n
		r.Step(&fine, middle, middle, true, 1.0/n)
	}
	if math.Abs(coarse.Dose-fine.Dose) > 1e-6*fine.Dose {
		t.Errorf("dose %.8f in one step, %.8f in fine steps", coarse.Dose, fine.Dose)
	}
}

// White fruit browns after 5 h of sun at 34 °C (Rustioni et al. 2014): low but not zero; red fruit
// less; shaded fruit not at all.
func TestBrowningNeedsLight(t *testing.T) {
	white, red := rule(scenario.White), rule(scenario.Red)
	var w, d, s Tally
	white.Step(&w, 34, 34, true, 5)
	red.Step(&d, 34, 34, true, 5)
	white.Step(&s, 44, 44, false, 5)
	if w.Browning <= 0 || d.Browning >= w.Browning || s.Browning != 0 {
		t.Errorf("browning white %.3f, red %.3f, shaded %.3f: want white > red > 0 and shaded 0", w.Browning, d.Browning, s.Browning)
	}
}
