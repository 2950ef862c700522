//go:build !js

package sim

import (
	"errors"
	"math"
	"reflect"
	"sync"
	"testing"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/spread"
)

func unhindered() error { return nil }

// lived is the default scenario with its first option once more as the second, and its day.
type lived struct {
	scenario scenario.Scenario
	engine   *Engine
	run      *Run
}

var livedDay = sync.OnceValue(func() lived {
	l := lived{scenario: scenario.Default(), engine: NewEngine()}
	twin := l.scenario.Options[0]
	twin.Name = "the same"
	l.scenario.Options = []scenario.Option{l.scenario.Options[0], twin, l.scenario.Options[1]}
	var err error
	if l.run, err = l.engine.Day(l.scenario, unhindered, nil); err != nil {
		panic(err)
	}
	return l
})

// single is that day of the first option alone.
func single() lived {
	l := livedDay()
	l.scenario.Options = l.scenario.Options[:1]
	return l
}

// only are the inputs of which one alone varies.
func only(which int) []spread.Input {
	inputs := spread.Inputs()
	for i := range inputs {
		if i != which {
			inputs[i].Low, inputs[i].High = inputs[i].Usual, inputs[i].Usual
		}
	}
	return inputs
}

// bandsWith draws ten times.
func bandsWith(t *testing.T, inputs []spread.Input) [2]result.SummaryBands {
	t.Helper()
	l := single()
	ranges, err := l.engine.ranges(l.scenario, l.run, inputs, 10, unhindered, nil)
	if err != nil {
		t.Fatal(err)
	}
	return ranges.Options[0].Sides
}

// Bands hold the central numbers, have a width, and say what they follow; hours and shares stay possible.
func TestBandsHoldTheCentralNumbers(t *testing.T) {
	l := livedDay()
	done := 0.0
	ranges, err := l.engine.Ranges(l.scenario, l.run, 20, unhindered, func(_ string, share float64) {
		if share < done || share > 1 {
			t.Errorf("progress goes from %g to %g", done, share)
		}
		done = share
	})
	if err != nil {
		t.Fatal(err)
	}
	if done != 1 {
		t.Errorf("progress ends at %g", done)
	}
	for o := range ranges.Options {
		for side := range ranges.Options[o].Sides {
			central := l.run.Result.Options[o].Sides[side].Summary.Numbers()
			for i, band := range ranges.Options[o].Sides[side].Each() {
				if band.Low > central[i] || band.High < central[i] || band.Low < 0 || band.Most == "" || band.Low == band.High {
					t.Errorf("option %d side %d number %d: %g in %+v", o, side, i, central[i], *band)
				}
			}
			if risk := ranges.Options[o].Sides[side].AtRisk; risk.High > 1 {
				t.Errorf("a share of %g is at risk", risk.High)
			}
		}
	}
	checkDifferences(t, ranges.Differences)
}

// checkDifferences: draws are the same for all options, so that two that are the same never differ.
func checkDifferences(t *testing.T, differences []result.Difference) {
	t.Helper()
	if len(differences) != 2 || differences[0].Option != 1 || differences[1].Option != 2 {
		t.Fatalf("differences %+v", differences)
	}
	if want := (result.Difference{Option: 1}); differences[0] != want {
		t.Errorf("the same option differs: %+v", differences[0])
	}
	hottest := differences[1].Hottest
	if hottest.Central == 0 || hottest.Low > hottest.Central || hottest.High < hottest.Central || hottest.Low == hottest.High {
		t.Errorf("another option differs by %+v", hottest)
	}
	if hottest.Worse+hottest.Better != 1 {
		t.Errorf("of all draws %g are worse and %g better", hottest.Worse, hottest.Better)
	}
}

func TestBandsAreFrozen(t *testing.T) {
	a, b := bandsWith(t, spread.Inputs()), bandsWith(t, spread.Inputs())
	if !reflect.DeepEqual(a, b) {
		t.Errorf("the same draws give %+v and %+v", a, b)
	}
}

// A wider input widens the band, and by about as much while it is small.
func TestWiderInputWidensTheBand(t *testing.T) {
	narrow, wide := only(spread.Wind), only(spread.Wind)
	narrow[spread.Wind].Low, narrow[spread.Wind].High = 0.95, 1/0.95
	wide[spread.Wind].Low, wide[spread.Wind].High = 0.95*0.95, 1/(0.95*0.95)
	a, b := bandsWith(t, narrow), bandsWith(t, wide)
	for side := range a {
		from, to := a[side].MeanMax_C.High-a[side].MeanMax_C.Low, b[side].MeanMax_C.High-b[side].MeanMax_C.Low
		if from <= 0 || math.Abs(to/from-2) > 0.2 {
			t.Errorf("twice the range of wind widens the band from %.3f to %.3f K", from, to)
		}
	}
}

// An input moves what it can move and nothing else: limits do not warm the fruit, wind does not light it, and an
// input without a range moves nothing.
func TestInputsMoveWhatTheyCan(t *testing.T) {
	still := func(band result.Band) bool { return band.Low == band.High && band.Most == "" }
	limits, wind, nothing := bandsWith(t, only(spread.T50)), bandsWith(t, only(spread.Wind)), bandsWith(t, only(-1))
	for side := range limits {
		if !still(limits[side].Hottest_C) || !still(limits[side].OverHot_h) || limits[side].AtRisk.Most != "t50" {
			t.Errorf("limits alone: %+v", limits[side])
		}
		if !still(wind[side].Lit_h) || !still(wind[side].Light_MJm2) || wind[side].Hottest_C.Most != "wind" {
			t.Errorf("wind alone: %+v", wind[side])
		}
		for i, band := range nothing[side].Each() {
			if !still(*band) {
				t.Errorf("nothing moves number %d: %+v", i, *band)
			}
		}
	}
	for _, which := range []int{spread.Skin, spread.LeafArea, spread.Clumping, spread.Convection, spread.Turbidity, spread.Stomata, spread.Field} {
		key := spread.Inputs()[which].Key
		for side, bands := range bandsWith(t, only(which)) {
			if bands.Hottest_C.Most != key || bands.Hottest_C.Low == bands.Hottest_C.High {
				t.Errorf("%s alone, side %d: hottest fruit %+v", key, side, bands.Hottest_C)
			}
		}
	}
}

// A skin that is said to take in hardly any sunlight takes in none at the low end of its range, and stays a number:
// then only what surrounds it warms it, which is the same at that end and below.
func TestSkinThatTakesInNothing(t *testing.T) {
	l := lived{scenario: scenario.Default(), engine: NewEngine()}
	l.scenario.Options = l.scenario.Options[:1]
	l.scenario.Fruit.Absorptance = 0.02
	run, err := l.engine.Day(l.scenario, unhindered, nil)
	if err != nil {
		t.Fatal(err)
	}
	inputs := only(spread.Skin)
	ranges, err := l.engine.ranges(l.scenario, run, inputs, 10, unhindered, nil)
	if err != nil {
		t.Fatal(err)
	}
	for side := range ranges.Options[0].Sides {
		central := run.Result.Options[0].Sides[side].Summary.Numbers()
		for i, band := range ranges.Options[0].Sides[side].Each() {
			if !(band.Low <= central[i] && central[i] <= band.High) {
				t.Errorf("side %d number %d: %g in %+v", side, i, central[i], *band)
			}
		}
	}

	c, err := newCoarse(l.scenario, inputs, nil, unhindered)
	if err != nil {
		t.Fatal(err)
	}
	thin, err := l.engine.thin(l.scenario, l.scenario.Options[0], inputs, c, unhindered)
	if err != nil {
		t.Fatal(err)
	}
	var numbers [3]numbers
	for i, skin := range []float64{-0.02, -1, 0.05} {
		values := c.inputs
		values[spread.Skin] = skin
		if numbers[i], err = thin.live(c.usual, values, thin.shade, unhindered); err != nil {
			t.Fatal(err)
		}
	}
	if numbers[0] != numbers[1] {
		t.Errorf("a skin that takes in nothing gives %v, and less than nothing %v", numbers[0], numbers[1])
	}
	if numbers[0] == numbers[2] {
		t.Errorf("a skin that takes in nothing gives what one of 0.07 gives: %v", numbers[0])
	}
}

// Leaf area and clumping thicken the leaves alike; what differs is how far the leaves brake the wind and share
// their light, which the light on the fruit does not know.
func TestLeafAreaAndClumpingShadeAlike(t *testing.T) {
	inputs := only(spread.LeafArea)
	area := bandsWith(t, inputs)
	inputs = only(spread.Clumping)
	inputs[spread.Clumping].Low, inputs[spread.Clumping].High = 0.85, 1.15
	clumping := bandsWith(t, inputs)
	for side := range area {
		a, b := area[side].Light_MJm2, clumping[side].Light_MJm2
		if wide := a.High - a.Low; wide < 0.1 || math.Abs(wide-(b.High-b.Low)) > 0.15*wide {
			t.Errorf("bands of light %+v by leaf area, %+v by clumping", a, b)
		}
	}
}

func TestBandsStopWhenTold(t *testing.T) {
	l, stop := single(), errors.New("newer input")
	for _, after := range []int{0, 40, 1000, 5000} {
		left := after
		_, err := l.engine.Ranges(l.scenario, l.run, 10, func() error {
			if left--; left < 0 {
				return stop
			}
			return nil
		}, nil)
		if !errors.Is(err, stop) {
			t.Errorf("told after %d paces, got %v", after, err)
		}
	}
	if _, err := l.engine.Ranges(l.scenario, l.run, 9, unhindered, nil); err == nil {
		t.Error("nine draws have a lowest tenth")
	}
}

// A measured day holds its own sunlight: haze is in it already.
func TestHazeIsInMeasuredHoursAlready(t *testing.T) {
	s := scenario.Default()
	for hour := range 24 {
		h := scenario.Hour{Air_C: 25, DewPoint_C: 10, Wind_ms: 2}
		if hour > 7 && hour < 17 {
			h.GHI_Wm2, h.DNI_Wm2, h.DHI_Wm2 = 600, 600, 120
		}
		s.Weather.Hours = append(s.Weather.Hours, h)
	}
	c, err := newCoarse(s, spread.Inputs(), nil, unhindered)
	if err != nil {
		t.Fatal(err)
	}
	values := c.inputs
	values[spread.Turbidity], values[spread.Wind] = 2, 1.5
	hazy, err := c.course(s, values)
	if err != nil {
		t.Fatal(err)
	}
	for k, was := range c.usual.Instants {
		if is := hazy.Instants[k]; is.DNI != was.DNI || math.Abs(is.Wind_ms-1.5*was.Wind_ms) > 1e-9 {
			t.Fatalf("hour %.2f: beam %g and wind %g become %g and %g", was.Hour_h, was.DNI, was.Wind_ms, is.DNI, is.Wind_ms)
		}
	}
	if s.Weather.Hours[3].Wind_ms != 2 {
		t.Error("a draw writes into the scenario")
	}
}

// Scattered light between three stands is that of a stand solved anew, within 0.5 W/m² on every face at noon.
func TestScatteredLightBetweenStands(t *testing.T) {
	l := single()
	s, o := l.scenario, l.scenario.Options[0]
	c, err := newCoarse(s, spread.Inputs(), nil, unhindered)
	if err != nil {
		t.Fatal(err)
	}
	thin, err := l.engine.thin(s, o, spread.Inputs(), c, unhindered)
	if err != nil {
		t.Fatal(err)
	}
	for _, factor := range []float64{0.82, 1.15} {
		values := c.inputs
		values[spread.Clumping] = factor
		model := thin.between.At(factor)
		exchange, err := thicker(s, o, thin.stand, model, factor, unhindered)
		if err != nil {
			t.Fatal(err)
		}
		anew, err := newAnswers(exchange, model, o, c.usual, unhindered)
		if err != nil {
			t.Fatal(err)
		}
		const noon = 12 * 60 / coarseStep_min
		day := thin.daylight(c.usual, values, model, thin.shade)
		sky, moved := day.skies[noon], 0.0
		for f := range model.Faces {
			view, _, _, _ := model.Views(f)
			want := view.Mean*sky.Diffuse + anew.beam[noon].short[f].Mean*sky.Beam + anew.sky.short[f].Mean*sky.Diffuse
			if got := day.instants[noon].Short[f].Mean; math.Abs(got-want) > 0.5 {
				t.Errorf("at %.2f face %d gets %.2f W/m² of diffuse light, solved anew %.2f", factor, f, got, want)
			}
			usual := thin.answers[1].beam[noon].short[f].Mean * sky.Beam
			moved = math.Max(moved, math.Abs(usual-anew.beam[noon].short[f].Mean*sky.Beam))
		}
		if moved < 2 {
			t.Errorf("at %.2f scattered light moves by %.2f W/m² at most: the test says nothing", factor, moved)
		}
		if leaves := anew.beam[noon].leafTaken*sky.Beam + anew.sky.leafTaken*sky.Diffuse; math.Abs(day.scatters[noon].leafTaken-leaves) > 0.005*leaves {
			t.Errorf("at %.2f leaves take %.2f W/m², solved anew %.2f", factor, day.scatters[noon].leafTaken, leaves)
		}
	}
}

// BenchmarkBands draws a hundred times for both options of the default scenario, whose day is done.
func BenchmarkBands(b *testing.B) {
	s, engine := scenario.Default(), NewEngine()
	run, err := engine.Day(s, unhindered, nil)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := engine.Ranges(s, run, 100, unhindered, nil); err != nil {
			b.Fatal(err)
		}
	}
}
