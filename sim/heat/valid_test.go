package heat

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"rowlight/sim/scenario"
)

// anyLoad draws what can fall on a berry under a real sky.
func anyLoad(t *rapid.T) Load {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	height, turn := number("sun height", 0, math.Pi/2), number("sun azimuth", 0, 2*math.Pi)
	load := Load{
		Sun:     mgl64.Vec3{math.Cos(height) * math.Sin(turn), math.Cos(height) * math.Cos(turn), math.Sin(height)},
		Short:   Broad{Mean: number("short", 0, 250)},
		LongNet: Broad{Mean: number("long", -90, 60)},
	}
	if rapid.Bool().Draw(t, "lit") {
		load.Beam_Wm2 = number("beam", 0, 1050)
	}
	load.Short.Vector = mgl64.Vec3{number("x", -1, 1), number("y", -1, 1), number("z", -1, 1)}.Mul(load.Short.Mean / 4)
	load.LongNet.Vector = mgl64.Vec3{0, 0, number("up", -60, 20)}
	load.Transpiration_Wm2 = number("transpiration", 0, 15)
	return load
}

func anyBerry(t *rapid.T) Berry {
	return NewBerry(scenario.Fruit{
		Colour:      rapid.SampledFrom([]scenario.Colour{scenario.Green, scenario.White, scenario.Red}).Draw(t, "colour"),
		Diameter_mm: rapid.Float64Range(4, 30).Draw(t, "diameter"), Compactness: rapid.Float64Range(0, 1).Draw(t, "compactness"),
	}, rapid.Float64Range(20, 1000).Draw(t, "bunch"))
}

// Whatever falls on a berry: its heat flows close, its skin is between the coldest sky and a black plate in the sun,
// and more wind never moves a berry at rest further from the air.
func TestEveryBerryKeepsToPhysics(t *testing.T) { rapid.Check(t, berriesKeepToPhysics) }

func berriesKeepToPhysics(t *rapid.T) {
	b, load, air := anyBerry(t), anyLoad(t), rapid.Float64Range(-5, 50).Draw(t, "air")
	calm := rapid.Float64Range(0, 8).Draw(t, "wind")
	windy := calm + rapid.Float64Range(0.01, 8).Draw(t, "more wind")
	from, dt := air+rapid.Float64Range(-10, 25).Draw(t, "before"), rapid.Float64Range(0, 3600).Draw(t, "step")
	step := b.Step(from, &load, &Around{Air_C: air, Wind_ms: calm}, dt)
	if off := sumOfFlows(step); !(math.Abs(off) < 1e-7) {
		t.Fatalf("flows do not close by %g W/m²", off)
	}
	still, moved := b.Steady(load, Around{Air_C: air, Wind_ms: calm}), b.Steady(load, Around{Air_C: air, Wind_ms: windy})
	for _, s := range []Surface{step, still.Surface, moved.Surface} {
		// A black plate of 1300 W/m² in still air at 5 W/m²/K of convection and as much of radiation is 130 K warmer.
		if !(s.Hottest_C < air+130 && s.Shaded_C > air-40) || s.Hottest_C < s.Mean_C-1e-9 {
			t.Fatalf("a skin in air of %g °C: %+v", air, s)
		}
	}
	if rise := still.Mean_C - air; math.Abs(moved.Mean_C-air) > math.Abs(rise)+1e-6 {
		t.Fatalf("at %g m/s the berry is %g K off the air, at %g m/s %g K", calm, rise, windy, moved.Mean_C-air)
	}
}
