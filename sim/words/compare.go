package words

import (
	"math"
	"strings"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// alike_K and alike_h are differences that are not worth a word; assumptions of this program.
const alike_K, alike_h = 0.5, 0.1

// Compare says in one sentence how an option differs from the one that it is compared with: by its
// hottest fruit and by the hours over a limit, each on the worse side.
func Compare(o, base result.Option, s scenario.Scenario) result.Sentence {
	limit := comparedLimit(o, base, s.Limits)
	delta, hours := hottestOf(o)-hottestOf(base), limit.hours(o)-limit.hours(base)
	neither := limit.hours(o) < alike_h && limit.hours(base) < alike_h
	return result.Sentence{
		Code:  "compare." + difference(delta, hours, neither),
		Words: map[string]string{"name": o.Name, "base": base.Name},
		Values: map[string]float64{
			"delta": math.Abs(delta), "hours": math.Abs(hours), "limit": limit.temperature,
			"alikeDelta": alike_K, "alikeHours": alike_h,
		},
	}
}

// difference names the ways in which an option differs by its hottest fruit [K] and its hours over a
// limit; neither tells that none of the two is over it for long.
func difference(delta, hours float64, neither bool) string {
	var ways []string
	switch {
	case delta <= -alike_K:
		ways = append(ways, "cooler")
	case delta >= alike_K:
		ways = append(ways, "hotter")
	case math.Abs(hours) < alike_h:
		return "alike"
	}
	switch {
	case neither:
		ways = append(ways, "neither")
	case hours <= -alike_h:
		ways = append(ways, "shorter")
	case hours >= alike_h:
		ways = append(ways, "longer")
	}
	return strings.Join(ways, "-")
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
