package words_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/words"
)

// instants is the number of instants of a day, both midnights included.
const instants = 289

// bell is a course that stands at base and rises to peak at an hour, over a span to each side.
func bell(base, peak, hour, span float64) []float64 {
	course := make([]float64, instants)
	for i := range course {
		away := math.Min(math.Abs(24*float64(i)/(instants-1)-hour)/span, 1)
		course[i] = base + (peak-base)*(1+math.Cos(math.Pi*away))/2
	}
	return course
}

// side makes the fruit of one side: lit and hottest around one hour; summary figures follow from the course.
func side(compass string, lit, peak, hour float64) result.Side {
	hottest := bell(20, peak, hour, 8)
	s := result.Side{Compass: compass, Steps: result.Steps{
		LitShare:  bell(0, lit, hour, 4),
		Light_Wm2: bell(0, 600*lit+50, hour, 6),
		Hottest_C: hottest,
		AirNear_C: bell(20, 40, 15, 10),
	}}
	s.Summary.Hottest_C, s.Summary.HottestAt_h = peak, hour
	for _, temperature := range hottest {
		if temperature > 45 {
			s.Summary.HottestOverBurn_h += 1.0 / 12
		}
		if temperature > 40 {
			s.Summary.HottestOverHot_h += 1.0 / 12
		}
	}
	return s
}

// The hours at which a course passes a limit follow from the closed form of bell:
// hour = peak hour - span/π · arccos(2 (limit-base)/(peak-base) - 1); 49.8 °C at 16:00 passes 45 °C at 13:54.
func TestVerdict(t *testing.T) {
	none := result.Side{Compass: "west", Steps: result.Steps{
		LitShare: bell(0, 0, 12, 1), Light_Wm2: bell(0, 0, 12, 1), Hottest_C: bell(3, 8, 14, 8), AirNear_C: bell(2, 8, 14, 8)}}
	none.Summary.Hottest_C, none.Summary.HottestAt_h = 8, 14
	tests := map[string]struct {
		left, right result.Side
		want        string
	}{
		"open side": {side("west", 0.9, 49.8, 16), side("east", 0.9, 42, 9),
			"The west side burns from 13:54 (hottest fruit over 45.0 °C): no leaves between it and the sun."},
		"gaps": {side("west", 0.4, 49.8, 16), side("east", 0.3, 42, 9),
			"The west side burns from 13:54 (hottest fruit over 45.0 °C): the sun comes through gaps in the leaves."},
		"few": {side("west", 0.1, 49.8, 16), side("east", 0.1, 42, 9),
			"The west side burns from 13:54 (hottest fruit over 45.0 °C): few of its bunches are in the sun, but those are hot."},
		"air": {side("west", 0, 49.8, 16), side("east", 0, 42, 9),
			"The west side burns from 13:54 (hottest fruit over 45.0 °C): it is shaded, but the air around it is hot."},
		"both": {side("south-west", 0.9, 49.8, 16), side("north-east", 0.9, 47, 10),
			"Both sides burn; the south-west side gets hottest, its hottest fruit over 45.0 °C from 13:54: no leaves between it and the sun."},
		"right side worse": {side("south", 0.2, 41, 12), side("north", 0.8, 48, 12),
			"The north side burns from 10:18 (hottest fruit over 45.0 °C): no leaves between it and the sun."},
		"brief": {side("west", 0.8, 45.001, 16), side("east", 0.8, 41, 9),
			"The west side comes close to burning at 16:00, hottest fruit 45.0 °C: no leaves between it and the sun."},
		"shaded": {side("west", 0.05, 44.1, 15.34), side("east", 0.05, 39, 10),
			"The fruit stays shaded when it is hottest; hottest fruit 44.1 °C at 15:20."},
		"hot": {side("west", 0.6, 43, 15.5), side("east", 0.6, 41, 9),
			"The hottest fruit of the west side is over 40.0 °C from 13:37, up to 43.0 °C at 15:30: no leaves between it and the sun."},
		"mild": {side("west", 0.6, 38, 15.5), side("east", 0.6, 36, 9),
			"The fruit stays below 40.0 °C all day; hottest fruit 38.0 °C at 15:30."},
		"polar night": {none, none,
			"No sun reaches the vines on this day; hottest fruit 8.0 °C at 14:00."},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			verdict := words.Verdict(result.Option{Sides: [2]result.Side{test.left, test.right}}, scenario.Default())
			text := words.Style{}.Sentence(verdict)
			if diff := cmp.Diff(test.want, text); diff != "" {
				t.Errorf("%s\n%+v", diff, verdict)
			}
		})
	}
}

// TestVerdictFollowsItsOwnSide turns the row end for end: the sentence must not care which side comes first.
func TestVerdictFollowsItsOwnSide(t *testing.T) {
	west, east := side("west", 0.9, 49.8, 16), side("east", 0.9, 42, 9)
	one := words.Verdict(result.Option{Sides: [2]result.Side{west, east}}, scenario.Default())
	two := words.Verdict(result.Option{Sides: [2]result.Side{east, west}}, scenario.Default())
	if diff := cmp.Diff(one, two); diff != "" {
		t.Error(diff)
	}
}

func TestVerdictSurvivesAnEmptyResult(t *testing.T) {
	if verdict := words.Verdict(result.Option{}, scenario.Default()); verdict.Code != "verdict.no-sun" {
		t.Errorf("%+v", verdict)
	}
}

func TestCompare(t *testing.T) {
	option := func(name string, peak, burn_h, hot_h float64) result.Option {
		s := result.Side{Compass: "west", Summary: result.Summary{Hottest_C: peak, HottestOverBurn_h: burn_h, HottestOverHot_h: hot_h}}
		// The other side burns longer but stays cooler: it does not count.
		cooler := result.Side{Compass: "east", Summary: result.Summary{Hottest_C: peak - 3, HottestOverBurn_h: burn_h + 1, HottestOverHot_h: hot_h + 1}}
		return result.Option{Name: name, Sides: [2]result.Side{cooler, s}}
	}
	base := option("VSP, spurs", 49.8, 2.4, 5)
	tests := map[string]struct {
		option, base result.Option
		want         string
	}{
		"cooler-shorter": {option("Sprawl", 44.1, 0, 2), base,
			"The hottest fruit of “Sprawl” (west side) stays 5.7 °C cooler than that of “VSP, spurs” (west side), and is over 45.0 °C for 2.4 h less."},
		"hotter-longer": {base, option("Sprawl", 44.1, 0, 2),
			"The hottest fruit of “VSP, spurs” (west side) gets 5.7 °C hotter than that of “Sprawl” (west side), and is over 45.0 °C for 2.4 h longer."},
		"cooler-longer": {option("B", 48.8, 3, 5), base,
			"The hottest fruit of “B” (west side) stays 1.0 °C cooler than that of “VSP, spurs” (west side), but is over 45.0 °C for 0.6 h longer."},
		"hotter-shorter": {option("B", 50.8, 2, 5), base,
			"The hottest fruit of “B” (west side) gets 1.0 °C hotter than that of “VSP, spurs” (west side), but is over 45.0 °C for 0.4 h less."},
		"cooler": {option("B", 48.8, 2.4, 5), base,
			"The hottest fruit of “B” (west side) stays 1.0 °C cooler than that of “VSP, spurs” (west side); both are over 45.0 °C for about as long."},
		"hotter": {option("B", 50.8, 2.4, 5), base,
			"The hottest fruit of “B” (west side) gets 1.0 °C hotter than that of “VSP, spurs” (west side); both are over 45.0 °C for about as long."},
		"shorter": {option("B", 49.8, 2, 5), base,
			"The hottest fruit of “B” (west side) is over 45.0 °C for 0.4 h less than that of “VSP, spurs” (west side); their highest temperatures are alike."},
		"longer": {option("B", 49.8, 3, 5), base,
			"The hottest fruit of “B” (west side) is over 45.0 °C for 0.6 h longer than that of “VSP, spurs” (west side); their highest temperatures are alike."},
		"alike": {option("B", 49.6, 2.42, 9), base,
			"The hottest fruit of “B” (west side) and that of “VSP, spurs” (west side) differ by less than 0.5 °C, and by less than 0.1 h over 45.0 °C."},
		"cooler-neither": {option("B", 33, 0, 0), option("C", 34.5, 0, 0),
			"The hottest fruit of “B” (west side) stays 1.5 °C cooler than that of “C” (west side); neither is over 35.0 °C for long."},
		"hotter-neither": {option("B", 34.5, 0, 0), option("C", 33, 0, 0),
			"The hottest fruit of “B” (west side) gets 1.5 °C hotter than that of “C” (west side); neither is over 35.0 °C for long."},
		"limit that counts": {option("B", 42, 0, 1), option("C", 44, 0.01, 3),
			"The hottest fruit of “B” (west side) stays 2.0 °C cooler than that of “C” (west side), and is over 40.0 °C for 2.0 h less."},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			text := words.Style{}.Sentence(words.Compare(test.option, test.base, scenario.Default()))
			if diff := cmp.Diff(test.want, text); diff != "" {
				t.Error(diff)
			}
		})
	}
}
