package words

import (
	"math"
	"strings"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// alike_K and alike_h are differences that are not worth a word; assumptions of this program.
const alike_K, alike_h = 0.5, 0.1

// Compare says in one sentence how the hottest fruit of an option differs from that of the one that it is compared
// with: by its highest temperature and by its hours over a limit, each on its worse side.
func Compare(o, base result.Option, s scenario.Scenario) result.Sentence {
	own, _ := sides(o)
	other, _ := sides(base)
	limit := comparedLimit(own, other, s.Limits)
	delta, hours := own.Summary.Hottest_C-other.Summary.Hottest_C, limit.of(own.Summary)-limit.of(other.Summary)
	neither := limit.of(own.Summary) < alike_h && limit.of(other.Summary) < alike_h
	return result.Sentence{
		Code:  "compare." + difference(delta, hours, neither),
		Words: map[string]string{"name": o.Name, "base": base.Name, "side": own.Compass, "baseSide": other.Compass},
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

// counted is one of the limits with the hours that the hottest fruit of a side is over it.
type counted struct {
	temperature float64
	of          func(result.Summary) float64
}

// comparedLimit is the highest limit that either side passes for long enough to compare.
func comparedLimit(own, other result.Side, l scenario.Limits) counted {
	limits := []counted{
		{l.Burn_C, func(s result.Summary) float64 { return s.HottestOverBurn_h }},
		{l.Hot_C, func(s result.Summary) float64 { return s.HottestOverHot_h }},
		{l.Watch_C, func(s result.Summary) float64 { return s.HottestOverWatch_h }},
	}
	for _, limit := range limits {
		if limit.of(own.Summary) >= alike_h || limit.of(other.Summary) >= alike_h {
			return limit
		}
	}
	return limits[len(limits)-1]
}
