package heat

import (
	"math"
	"testing"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
)

var leafAir = Around{Air_C: 35, Dew_C: 11, Wind_ms: 0.6}

// exactLeaf finds the leaf temperature with σT⁴ and the saturation pressure of the leaf themselves, by bisection.
func exactLeaf(l Leaf, absorbed, longNet float64, around Around) float64 {
	air := AirAt(around.Air_C, 0)
	deficit := sky.SaturationPressure(around.Air_C) - sky.SaturationPressure(around.Dew_C)
	heat, vapour := l.conductances(absorbed, deficit, around.Wind_ms, atmosphere/(gasConstant*air.AbsoluteTemperature))
	capacity, gamma := air.Density*air.HeatCapacity_JkgK, sky.Psychrometric(atmosphere)
	surplus := func(leaf float64) float64 {
		return absorbed + longNet - 2*l.Emissivity*(Emitted(leaf)-Emitted(around.Air_C)) - capacity*heat*(leaf-around.Air_C) -
			capacity/gamma*vapour*(sky.SaturationPressure(leaf)-sky.SaturationPressure(around.Dew_C))
	}
	low, high := around.Air_C-30, around.Air_C+60
	for range 60 {
		if middle := (low + high) / 2; surplus(middle) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

func TestLeafAgainstTheFullBalance(t *testing.T) {
	for _, water := range []scenario.Water{scenario.Watered, scenario.Short, scenario.Thirsty} {
		l := NewLeaf(100, water)
		for _, absorbed := range []float64{0, 100, 300, 500} {
			for _, wind := range []float64{0.15, 0.6, 2} {
				around := leafAir
				around.Wind_ms = wind
				b := l.Balance(absorbed, -40, around)
				near(t, "leaf temperature", b.Temperature_C, exactLeaf(l, absorbed, -40, around), 0.1)
				near(t, "sum of flows", b.Absorbed+b.Longwave-b.Sensible-b.Latent, 0, 1e-9)
			}
		}
	}
}

// A leaf that cannot evaporate is a dry plate, and one in saturated air with nothing shining on it is at air temperature.
func TestLeafLimits(t *testing.T) {
	dry := Leaf{Width_m: 0.1, Emissivity: 0.96}
	_, vapour := dry.conductances(300, 2000, 0.6, 40)
	near(t, "vapour conductance", vapour, 0, 0)
	b := dry.Balance(300, 0, leafAir)
	near(t, "latent heat", b.Latent, 0, 0)
	near(t, "dry plate", b.Temperature_C, exactLeaf(dry, 300, 0, leafAir), 0.01)
	damp := leafAir
	damp.Dew_C = damp.Air_C
	near(t, "saturated air", NewLeaf(100, scenario.Watered).Balance(0, 0, damp).Temperature_C, 35, 1e-12)
}

// Millar 1972, AJEV 23:173: leaves stay close to air temperature. Thirsty leaves in the sun are several kelvins
// warmer than watered ones (common practice of thermal imaging).
func TestLeavesStayCloseToAir(t *testing.T) {
	for _, wind := range []float64{0.3, 0.6, 1.5} {
		around := leafAir
		around.Wind_ms = wind
		watered, thirsty := NewLeaf(100, scenario.Watered), NewLeaf(100, scenario.Thirsty)
		lit, dry, shaded := watered.Balance(400, -40, around), thirsty.Balance(400, -40, around), watered.Balance(30, 0, around)
		t.Logf("%.1f m/s: watered %+.1f, thirsty %+.1f, shaded %+.1f", wind, lit.Temperature_C-35, dry.Temperature_C-35, shaded.Temperature_C-35)
		within(t, "watered leaf in the sun", lit.Temperature_C-35, -4, 4)
		within(t, "shaded leaf", shaded.Temperature_C-35, -5, 1)
		within(t, "thirsty over watered", dry.Temperature_C-lit.Temperature_C, 2, 10)
	}
}

func TestLeafSize(t *testing.T) {
	near(t, "width", NewLeaf(100, scenario.Watered).Width_m, 0.1, 1e-12)
	small, large := NewLeaf(50, scenario.Watered).Balance(400, 0, leafAir), NewLeaf(200, scenario.Watered).Balance(400, 0, leafAir)
	if math.Abs(small.Temperature_C-35) > math.Abs(large.Temperature_C-35)+3 {
		t.Error("a small leaf follows the air more closely than a large one")
	}
}
