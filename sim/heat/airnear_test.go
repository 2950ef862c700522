package heat

import (
	"math"
	"testing"
)

var midday = Around{Air_C: 38, Pressure_Pa: atmosphere}

// Without heat from the floor the air is that of the weather; with very little in much wind the profile is the
// logarithm of neutral air.
func TestAirNearNeutral(t *testing.T) {
	near(t, "no heat", AirNear(midday, 0, 0.3, 0.5), 38, 0)
	near(t, "at the screen", AirNear(midday, 300, 0.3, 2), 38, 0)
	air := AirAt(38, atmosphere)
	for _, z := range []float64{0.2, 0.5, 1} {
		want := 10 / (air.Density * air.HeatCapacity_JkgK * 2 * karman) * math.Log(2/z)
		near(t, "neutral rise", AirNear(midday, 10, 2, z)-38, want, 0.003*want)
	}
}

// By day 0.2 m is about 1.6 K warmer than 2 m at the daily maximum (Chaptal 1943); with the heat that floors give
// around noon and light wind this comes out within a factor of about two.
func TestAirNearWarmsTowardsTheFloor(t *testing.T) {
	for _, sensible := range []float64{150, 300} {
		for _, friction := range []float64{0.2, 0.35} {
			before := math.Inf(1)
			for _, z := range []float64{0.1, 0.2, 0.5, 1, 1.5, 2} {
				now := AirNear(midday, sensible, friction, z) - 38
				if now >= before {
					t.Errorf("air at %.1f m is not cooler than below: %g after %g", z, now, before)
				}
				before = now
			}
			rise := AirNear(midday, sensible, friction, 0.2) - 38
			t.Logf("%.0f W/m², u* %.2f: %.2f K at 0.2 m, %.2f K at 1 m", sensible, friction, rise, AirNear(midday, sensible, friction, 1)-38)
			within(t, "0.2 m over 2 m", rise, 0.7, 4)
		}
	}
}

// At night the floor cools the air, and the profile turns over.
func TestAirNearAtNight(t *testing.T) {
	night := Around{Air_C: 22}
	if !(AirNear(night, -20, 0.15, 0.3) < AirNear(night, -20, 0.15, 1) && AirNear(night, -20, 0.15, 1) < 22) {
		t.Error("air over a cold floor must be colder below")
	}
}

func TestAirNearIsBounded(t *testing.T) {
	near(t, "still and hot", AirNear(midday, 700, 0.2, 0.05), 38+nearLimit_K, 0)
	near(t, "still and cold", AirNear(midday, -100, 0, 0.1), 38-nearLimit_K, 0)
	near(t, "on the ground", AirNear(midday, 100, 0.3, 0), AirNear(midday, 100, 0.3, 0.05), 0)
}

// ψ against the integral of (1 − φ)/x that it stands for, φ = (1−16x)^(−1/2), by midpoints.
func TestHeatStabilityIsItsIntegral(t *testing.T) {
	for _, x := range []float64{-0.05, -0.5, -2} {
		const steps = 20000
		integral := 0.0
		for i := range steps {
			y := x * (float64(i) + 0.5) / steps
			integral += (1 - 1/math.Sqrt(1-16*y)) / y * x / steps
		}
		near(t, "ψ", heatStability(x), integral, 1e-5)
	}
	near(t, "stable", heatStability(0.2), -1, 1e-15)
}
