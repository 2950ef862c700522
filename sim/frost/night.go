// Package frost says what a cold night of spring means for the buds of a training form: the air by height from calm
// clear to windy nights, and how far the buds are above the temperatures that kill them. It is no frost warning: it
// compares heights in a night that the user describes.
package frost

import (
	"math"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

const (
	// Screen_m is the height at which the lowest temperature is given: that of stations and of a screen (common
	// practice 1.25 to 2 m).
	Screen_m = 1.5
	// Weakest_K and Strongest_K bound the warming of a calm clear night for a growth of the height by the factor e.
	// The strongest of seven Californian sites was 5.0 K warmer at 8 ft than at 1 ft, that is 2.4 · ln 8; the others
	// little (Battany, American Vineyard Foundation, 2013). The weakest is an assumption.
	Weakest_K, Strongest_K = 0.3, 2.4
	// stirred_ms is the wind, taken at 10 m, above which nights have no strong inversion: 6 km/h (Shaw 2001; Ker
	// 2007, Niagara).
	stirred_ms = 1.7
	// BareWarmer_K is how much warmer the air is at 0.3 m over tilled soil than over a cover: a project default, whose
	// sign is that of de Rességuier et al. 2023 (OENO One, Saint-Émilion).
	BareWarmer_K = 0.5
	// low_m is the height that the number above holds for; below it the profile ends.
	low_m = 0.3
	// lowest_m is the height below which the air is said to be that of it: grass and clods stand in the way.
	lowest_m = 0.1
)

// Night is the air of a night by height.
type Night struct {
	Lowest_C  float64 // at Screen_m
	Wind_ms   float64 // 10 m above open ground
	Stillness float64 // 1 in a calm clear night, 0 in wind or under a full cover of clouds
	Usual_K   float64 // warming of a calm clear night for a growth of the height by the factor e
	bare      bool    // the floor is soil without a cover
}

// NightOf is the night of a scenario. Where it takes the weather, the coldest instant of the day's course gives
// temperature and wind; a day without a course is an error.
func NightOf(s scenario.Scenario) (Night, error) {
	n := Night{Lowest_C: s.Frost.AirMin_C, Wind_ms: s.Frost.Wind_ms, Usual_K: s.Frost.Inversion_K, bare: isBare(s.Site.Floor)}
	if s.Frost.Lowest == scenario.LowestWeather {
		course, err := weather.Course(s, quarterHours())
		if err != nil {
			return Night{}, err
		}
		coldest := course.Instants[0]
		for _, at := range course.Instants {
			if at.Air_C < coldest.Air_C {
				coldest = at
			}
		}
		n.Lowest_C, n.Wind_ms = coldest.Air_C, coldest.Wind_ms
	}
	n.Stillness = Stillness(n.Wind_ms, s.Frost.Cloud)
	return n, nil
}

// Stillness is the part of the inversion of a calm clear night that wind [m/s] and clouds [0–1] leave. It falls
// evenly with either; that it does so evenly is an assumption, that nothing is left above 1.7 m/s is published.
func Stillness(wind_ms, cloud float64) float64 {
	return math.Max(1-wind_ms/stirred_ms, 0) * (1 - cloud)
}

// At is the air temperature at a height [m] if the air of a calm clear night warmed by inversion_K for a growth of
// the height by the factor e: T(screen) + a·ln(z/screen), the form a·ln(z/0.3 m) of a difference to 0.3 m. Below 0.1 m
// it is that of 0.1 m.
func (n Night) At(height_m, inversion_K float64) float64 {
	z := math.Max(height_m, lowest_m)
	air := n.Lowest_C + n.Stillness*inversion_K*math.Log(z/Screen_m)
	if n.bare && z < Screen_m {
		air += n.Stillness * BareWarmer_K * math.Log(Screen_m/z) / math.Log(Screen_m/low_m)
	}
	return air
}

// Between is the air temperature at a height with its range, from the weakest to the strongest published inversion.
// The range always holds the value of the scenario's own inversion.
func (n Night) Between(height_m float64) result.Estimate {
	return estimate(n.At(height_m, n.Usual_K), n.At(height_m, Weakest_K), n.At(height_m, Strongest_K))
}

// estimate is a value with the range that it and others span.
func estimate(value float64, others ...float64) result.Estimate {
	e := result.Estimate{Low: value, Value: value, High: value}
	for _, other := range others {
		e.Low, e.High = math.Min(e.Low, other), math.Max(e.High, other)
	}
	return e
}

// isBare tells whether a floor is soil without a cover. Straw keeps the warmth of the soil from the air as grass does.
func isBare(floor scenario.Floor) bool {
	return floor == scenario.BareDry || floor == scenario.BareMoist || floor == scenario.Pale
}

// quarterHours are the clock hours of a day in steps of a quarter.
func quarterHours() []float64 {
	hours := make([]float64, 0, 97)
	for k := range 97 {
		hours = append(hours, float64(k)/4)
	}
	return hours
}
