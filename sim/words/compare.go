package words

import (
	"math"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// alike_K and alike_h are differences that are not worth a word; assumptions of this program.
const alike_K, alike_h = 0.5, 0.1

// Compare says in one sentence how an option differs from the one that it is compared with: by its
// hottest fruit and by the hours over a limit, each on the worse side.
func Compare(o, base result.Option, s scenario.Scenario) result.Sentence {
	limit := comparedLimit(o, base, s.Limits)
	delta := hottestOf(o) - hottestOf(base)
	hours := limit.hours(o) - limit.hours(base)
	numbers := values{"limit": limit.temperature}
	warmth, length := "", ""
	switch {
	case delta <= -alike_K:
		warmth = "cooler"
	case delta >= alike_K:
		warmth = "hotter"
	}
	switch {
	case hours <= -alike_h:
		length = "shorter"
	case hours >= alike_h:
		length = "longer"
	}
	code := "compare.alike"
	switch {
	case warmth == "" && length == "":
		numbers.with("margin", alike_K).with("hours", alike_h)
	case warmth == "":
		code = "compare." + length
		numbers.with("hours", math.Abs(hours))
	case length == "":
		code = "compare." + warmth
		numbers.with("delta", math.Abs(delta))
	default:
		code = "compare." + warmth + "-" + length
		numbers.with("delta", math.Abs(delta)).with("hours", math.Abs(hours))
	}
	return sentence(code, map[string]string{"name": o.Name, "base": base.Name}, numbers)
}

// counted is one of the counted limits with its hours on a side.
type counted struct {
	temperature float64
	of          func(result.Summary) float64
}

// comparedLimit is the highest limit that either option passes for long enough to compare.
func comparedLimit(o, base result.Option, l scenario.Limits) counted {
	limits := []counted{
		{l.Burn_C, func(s result.Summary) float64 { return s.OverBurn_h }},
		{l.Hot_C, func(s result.Summary) float64 { return s.OverHot_h }},
		{l.Watch_C, func(s result.Summary) float64 { return s.OverWatch_h }},
	}
	for _, limit := range limits {
		if limit.hours(o) >= alike_h || limit.hours(base) >= alike_h {
			return limit
		}
	}
	return limits[len(limits)-1]
}

// hours is the time over the limit on the side where it is longer [h].
func (c counted) hours(o result.Option) float64 {
	return math.Max(c.of(o.Sides[0].Summary), c.of(o.Sides[1].Summary))
}

// hottestOf is the hottest fruit of either side [°C].
func hottestOf(o result.Option) float64 {
	return math.Max(o.Sides[0].Summary.Hottest_C, o.Sides[1].Summary.Hottest_C)
}
