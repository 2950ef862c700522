package sim

import (
	"math"
	"slices"

	"rowlight/sim/crop"
	"rowlight/sim/frost"
	"rowlight/sim/light/scatter"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/sun"
	"rowlight/sim/weather"
)

// weigh puts frost, crop, work and water of every option beside the light and heat of a day that is computed.
func (e *Engine) weigh(s scenario.Scenario, day *result.Day, course weather.Series, pace func() error) (*result.Weighing, error) {
	night, err := frost.NightOf(s)
	if err != nil {
		return nil, err
	}
	critical := frost.CriticalOf(s.Frost)
	w := &result.Weighing{Night: frost.Told(night, critical), Terms: Terms()}
	w.Terms["burn"], w.Terms["lowest"] = s.Limits.Burn_C, night.Lowest_C
	for i, o := range s.Options {
		stand, key, err := e.stand(s, o)
		if err != nil {
			return nil, err
		}
		shaded, err := e.shadedAtNoon(s, o, stand, key, course, pace)
		if err != nil {
			return nil, err
		}
		of := day.Options[i]
		w.Options = append(w.Options, result.Weighed{
			Name: of.Name, Colour_h: colourHours(of, day.Hour),
			Frost: frost.Of(stand.Stand, night, critical),
			Crop:  crop.Of(s, o, stand.leafAreaIndex()),
			Work:  crop.Work(s, o),
			Water: waterOf(shaded),
		})
	}
	FillWeighing(w, day)
	return w, nil
}

// Terms are the numbers, the same in all scenarios, that the texts of the weighed rows name, by the names that they have
// there. A weighing adds those of its scenario.
func Terms() map[string]float64 {
	return map[string]float64{
		"colourLimit": colourLimit_C, "weakest": frost.Weakest_K, "strongest": frost.Strongest_K, "screen": frost.Screen_m,
		"bareWarmer": frost.BareWarmer_K,
	}
}

// WithRanges is the weighing of a run with the ranges that draws gave its day.
func (r *Run) WithRanges(ranges *result.Ranges) *result.Weighing {
	day, w := r.Result, *r.Result.Weighing
	day.Ranges, w.Options = ranges, slices.Clone(w.Options)
	FillWeighing(&w, &day)
	return &w
}

// FillWeighing takes light and heat of a day into a weighing, with the ranges of the day where it has some, and puts
// the options in the order of the reader's weights.
func FillWeighing(w *result.Weighing, day *result.Day) {
	for i := range w.Options {
		w.Options[i].Heat, w.Options[i].Light = heatAndLight(day, i)
	}
	w.Order = order(w, day.Scenario.Weights)
}

// heatAndLight are the hottest fruit on the worse side [°C] and the light on the fruit of both sides [MJ/m²].
func heatAndLight(day *result.Day, option int) (heat, light result.Estimate) {
	of := &day.Options[option]
	worse := 0
	if of.Sides[1].Summary.Hottest_C > of.Sides[0].Summary.Hottest_C {
		worse = 1
	}
	heat = exactly(of.Sides[worse].Summary.Hottest_C)
	light = exactly((of.Sides[0].Summary.Light_MJm2 + of.Sides[1].Summary.Light_MJm2) / 2)
	if day.Ranges != nil {
		bands := day.Ranges.Options[option].Sides
		heat.Low, heat.High = bands[worse].Hottest_C.Low, bands[worse].Hottest_C.High
		light.Low = (bands[0].Light_MJm2.Low + bands[1].Light_MJm2.Low) / 2
		light.High = (bands[0].Light_MJm2.High + bands[1].Light_MJm2.High) / 2
	}
	return heat, light
}

// exactly is a number whose range is not known.
func exactly(value float64) result.Estimate {
	return result.Estimate{Low: value, Value: value, High: value}
}

// colourLimit_C is the berry temperature above which colour fails to form and fades: by day berries at 35 °C had about
// half the anthocyanin of those at 25 °C (Mori et al. 2007, from memory); the best lies at 25 to 30 °C (Spayd 2002, as
// Gallina 2012 has it).
const colourLimit_C = 35.0

// colourHours is how long the mean berry is over that, on the side where it is longer [h].
func colourHours(of result.Option, hours []float64) float64 {
	longest := 0.0
	for _, side := range of.Sides {
		longest = math.Max(longest, hoursOver(side.Steps.Berry_C, hours, colourLimit_C))
	}
	return longest
}

// hoursOver is how long a course lies over a limit [h], its crossings interpolated.
func hoursOver(course, hours []float64, limit float64) float64 {
	sum := 0.0
	for k := 1; k < len(course); k++ {
		a, b, dt := course[k-1]-limit, course[k]-limit, hours[k]-hours[k-1]
		switch {
		case a > 0 && b > 0:
			sum += dt
		case a > 0 || b > 0:
			sum += dt * math.Max(a, b) / (math.Abs(a) + math.Abs(b))
		}
	}
	return sum
}

// shadedAtNoon is the share of the ground that leaves shade when the sun is highest [0–1]: what of the beam they
// catch. A sun that stays down leaves no shade.
func (e *Engine) shadedAtNoon(s scenario.Scenario, o scenario.Option, stand *measured, key string, course weather.Series, pace func() error) (float64, error) {
	model, lightKey, err := e.light(s, o, stand, key, pace)
	if err != nil {
		return 0, err
	}
	scattering, _, err := e.scattering(s, o, stand, model, lightKey, pace)
	if err != nil {
		return 0, err
	}
	highest := course.Instants[0].Sun
	for _, at := range course.Instants {
		if at.Sun.Elevation_deg > highest.Elevation_deg {
			highest = at.Sun
		}
	}
	var beam scatter.Source
	scattering.model.Beam(sun.InRow(highest.Vector(), o.Rows.Azimuth_deg), &beam)
	if all := beam.Total(); all > 0 {
		return 1 - beam.Floor(scattering.model)/all, nil
	}
	return 0, nil
}

// Water use of vines grows evenly with the ground that they shade at noon (Williams & Ayars 2005, Agric. For.
// Meteorol. 132:201; slope 0.017 a percent, from memory): their lysimeter had 0.9 at 60 % and 1.3 at 75 %, which sets
// how far the line may be off.
const (
	coefficientPerShade = 1.7
	coefficientOff      = 0.15
)

// waterOf is the crop coefficient of a shaded share of the ground.
func waterOf(shaded float64) result.OptionWater {
	k := coefficientPerShade * shaded
	return result.OptionWater{Shaded: shaded, CropCoefficient: result.Estimate{Low: k * (1 - coefficientOff), Value: k, High: k * (1 + coefficientOff)}}
}
