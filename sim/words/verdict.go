package words

import (
	"math"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// Bounds at which the words change; assumptions of this program.
const (
	// burning_h is how long the hottest fruit must be over the burn limit before a side is said to burn; below that it
	// comes close.
	burning_h = 0.25
	// shadedShare is the share of lit fruit below which fruit is said to stay shaded.
	shadedShare = 0.15
	// openShare and gapShare part fruit that stands free, behind gaps, and with a few bunches lit.
	openShare, gapShare = 0.5, 0.15
	// airShare is the share of lit fruit below which heat is blamed on the air.
	airShare = 0.01
	// noSun_Wm2 is the light on the fruit below which a day is said to have no sun.
	noSun_Wm2 = 1.0
	// hottestHours_h is the span around the hottest air over which shade is judged.
	hottestHours_h = 2.0
)

// Verdict says in one sentence what the day does to the fruit of an option: a side, a time, a cause.
// The sides of the option must carry their courses and their summaries.
func Verdict(o result.Option, s scenario.Scenario) result.Sentence {
	worse, other := sides(o)
	if !burns(worse, s.Limits) && burns(other, s.Limits) {
		worse, other = other, worse
	}
	hottest := values{"hottest": worse.Summary.Hottest_C, "time": worse.Summary.HottestAt_h}
	limits := s.Limits
	switch {
	case dark(o):
		return sentence("verdict.no-sun", nil, hottest)
	case burns(worse, limits):
		code := "verdict.burns"
		if burns(other, limits) {
			code = "verdict.burns-both"
		}
		from := firstOver(worse.Steps.Hottest_C, limits.Burn_C)
		return sentence(code, blame(worse, limits.Burn_C), values{"from": from, "limit": limits.Burn_C})
	case worse.Summary.Hottest_C <= limits.Hot_C:
		return sentence("verdict.mild", nil, hottest.with("limit", limits.Hot_C))
	case shaded(o):
		return sentence("verdict.shaded", nil, hottest)
	case worse.Summary.Hottest_C > limits.Burn_C:
		return sentence("verdict.near", blame(worse, limits.Burn_C), hottest)
	default:
		from := firstOver(worse.Steps.Hottest_C, limits.Hot_C)
		return sentence("verdict.hot", blame(worse, limits.Hot_C), hottest.with("limit", limits.Hot_C).with("from", from))
	}
}

// values are the numbers of a sentence.
type values map[string]float64

// with adds one number.
func (v values) with(name string, value float64) values {
	v[name] = value
	return v
}

func sentence(code string, words map[string]string, numbers values) result.Sentence {
	return result.Sentence{Code: code, Words: words, Values: numbers}
}

// sides gives the worse side of an option first, the one with the hotter hottest fruit.
func sides(o result.Option) (worse, other result.Side) {
	left, right := o.Sides[scenario.Left], o.Sides[scenario.Right]
	if right.Summary.Hottest_C > left.Summary.Hottest_C {
		return right, left
	}
	return left, right
}

// burns tells whether the hottest fruit of a side passes the burn limit, and for how long.
func burns(side result.Side, limits scenario.Limits) bool {
	return side.Summary.Hottest_C > limits.Burn_C && side.Summary.HottestOverBurn_h >= burning_h
}

// blame names the side and why its hottest fruit passes a limit, by the share of its fruit that is in
// the sun while it does.
func blame(side result.Side, limit float64) map[string]string {
	sum, count := 0.0, 0
	for i, temperature := range side.Steps.Hottest_C {
		if temperature > limit {
			sum += side.Steps.LitShare[i]
			count++
		}
	}
	cause := "cause-few"
	switch lit := sum / float64(max(count, 1)); {
	case lit >= openShare:
		cause = "cause-open"
	case lit >= gapShare:
		cause = "cause-gaps"
	case lit < airShare:
		cause = "cause-air"
	}
	return map[string]string{"side": side.Compass, "cause": cause}
}

// dark tells whether the fruit sees next to no light all day.
func dark(o result.Option) bool {
	for _, side := range o.Sides {
		for _, light := range side.Steps.Light_Wm2 {
			if light > noSun_Wm2 {
				return false
			}
		}
	}
	return true
}

// shaded tells whether little fruit of either side is in the sun around the hottest hour of the air.
func shaded(o result.Option) bool {
	for _, side := range o.Sides {
		air, sum, count := side.Steps.AirNear_C, 0.0, 0
		hottest := hourOf(highest(air), len(air))
		for i, lit := range side.Steps.LitShare {
			if math.Abs(hourOf(i, len(air))-hottest) <= hottestHours_h/2 {
				sum += lit
				count++
			}
		}
		if count > 0 && sum/float64(count) >= shadedShare {
			return false
		}
	}
	return true
}

// highest is the index of the first highest value; 0 for none.
func highest(course []float64) int {
	best := 0
	for i, value := range course {
		if value > course[best] {
			best = i
		}
	}
	return best
}

// hourOf is the clock hour of an instant of a course that spans the day, both midnights included.
func hourOf(instant, instants int) float64 {
	return 24 * float64(instant) / float64(max(instants-1, 1))
}

// firstOver is the clock hour at which a course first passes a limit, linear between instants; the
// end of the day where it never does.
func firstOver(course []float64, limit float64) float64 {
	for i, value := range course {
		if value <= limit {
			continue
		}
		if i == 0 {
			return 0
		}
		share := (limit - course[i-1]) / (value - course[i-1])
		return hourOf(i-1, len(course)) + share*24/float64(len(course)-1)
	}
	return 24
}
