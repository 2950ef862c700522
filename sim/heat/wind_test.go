package heat

import (
	"math"
	"testing"
)

// vineyard is a planting of upright shoots: top at 2 m, leaf area index 1.7.
func vineyard(wind10, from, row float64) WindProfile {
	return NewWindProfile(wind10, from, row, 2, 1.7)
}

// exp(−a(1−z/h)) at z/h = 0.45, worked by hand: 0.58 for a = 1, 0.25 for a = 2.5.
func TestWindInTheCanopyAlongAndAcross(t *testing.T) {
	for angle, want := range map[float64]float64{0: 0.58, 90: 0.25} {
		p := NewWindProfile(20, angle, 0, 2, 50)
		near(t, "wind at fruit height over wind at the top", p.At(0.9)/p.At(2), want, 0.005)
	}
}

// Miller et al. 2017: the same wind above gives more wind at the fruit when it blows along the rows;
// so exposed berries are cooler.
func TestWindAlongTheRowsCoolsFruitMore(t *testing.T) {
	b := plain(14, 0.75)
	load := Load{Beam_Wm2: 850, Sun: slant, Short: Uniform(120), LongNet: Uniform(-25)}
	for _, row := range []float64{0, 45, 130} {
		before := math.Inf(1)
		hot := 0.0
		for turn := 0.0; turn <= 90; turn += 15 {
			wind := vineyard(3, row+turn, row).At(1)
			excess := b.Steady(load, Around{Air_C: 38, Wind_ms: wind}).Lit_C
			if !(wind < before && excess > hot) {
				t.Errorf("row %g, wind turned %g: %.2f m/s and %.2f °C do not follow the turn", row, turn, wind, excess)
			}
			before, hot = wind, excess
		}
	}
	ratio := vineyard(3, 0, 0).At(1) / vineyard(3, 90, 0).At(1)
	within(t, "wind along over wind across, at the fruit", ratio, 1.8, 2.6)
}

// A row line has no direction, and neither has the angle to it.
func TestWindAngleToTheRow(t *testing.T) {
	for _, c := range []struct{ from, row, want float64 }{
		{0, 0, 0}, {180, 0, 0}, {360, 0, 0}, {270, 0, 90}, {315, 0, 45}, {225, 45, 0}, {315, 45, 90}, {10, 170, 20}, {350, 10, 20},
	} {
		near(t, "angle", angleToRow(c.from, c.row), c.want, 1e-12)
	}
}

// Without leaves, or without height, it is the logarithmic profile of open ground through the
// wind that was measured.
func TestNoLeavesNoShelter(t *testing.T) {
	for _, p := range []WindProfile{NewWindProfile(4, 90, 0, 2, 0), NewWindProfile(4, 90, 0, 0, 2), NewWindProfile(4, 90, 0, 2, 1e-9)} {
		near(t, "at 10 m", p.At(10), 4, 1e-4)
		for _, z := range []float64{0.5, 1, 1.9, 2, 5} {
			near(t, "logarithm", p.At(z), 4*math.Log(z/0.03)/math.Log(10/0.03), 1e-4)
		}
	}
	before := math.Inf(1)
	for leaves := 0.0; leaves < 4; leaves += 0.1 {
		now := NewWindProfile(4, 90, 0, 2, leaves).At(1)
		if now >= before {
			t.Fatalf("leaf area index %.1f does not slow the wind: %g after %g", leaves, now, before)
		}
		before = now
	}
}

// Closed crops: displacement about two thirds and roughness about an eighth of the height (Allen et
// al. 1998, FAO-56, eq. 4, for grass); the formula of Raupach 1994 spans 0.6–0.8 and 0.06–0.15 at
// the leaf areas of vineyards.
func TestRoughnessOfAVineyard(t *testing.T) {
	for _, leaves := range []float64{1, 1.7, 3} {
		d, z0 := roughness(2, leaves)
		within(t, "displacement over height", d/2, 0.6, 0.85)
		within(t, "roughness over height", z0/2, 0.05, 0.15)
	}
	// At full drag the wind at the top is u*/0.3 (Raupach 1994, eq. 7).
	p := NewWindProfile(5, 0, 0, 2, 5)
	near(t, "friction velocity over wind at the top", p.FrictionVelocity_ms/p.TopWind_ms, 0.3, 1e-4)
}

func TestWindProfileIsOnePiece(t *testing.T) {
	for _, leaves := range []float64{0, 0.3, 1.7, 5} {
		p := NewWindProfile(6, 40, 0, 2, leaves)
		near(t, "across the top", p.At(2-1e-9), p.At(2), 1e-6)
		before := 0.0
		for z := 0.0; z <= 12; z += 0.05 {
			now := p.At(z)
			if now < before-1e-12 {
				t.Fatalf("wind falls with height at %.2f m", z)
			}
			before = now
		}
		near(t, "wind doubles everywhere", NewWindProfile(12, 40, 0, 2, leaves).At(1.5), 2*p.At(1.5), 1e-12)
	}
	within(t, "at 10 m over a vineyard, over that over open ground", vineyard(6, 0, 0).At(10)/6, 0.8, 0.95)
}

func TestStillWind(t *testing.T) {
	for _, wind := range []float64{0, 0.3} {
		near(t, "at the fruit", vineyard(wind, 90, 0).At(1), StillWind_ms, 0)
	}
	near(t, "on the ground", vineyard(0, 0, 0).At(0), StillWind_ms, 0)
}
