package sim

import (
	"slices"

	"rowlight/sim/result"
	"rowlight/sim/weather"
)

// sideDay is one side of an option on one day.
type sideDay struct {
	lit, light, before, after float64
	over, heat                [3]float64
	hottest, at               float64
	doses                     []float64 // of damage, of every face
	hourly                    [24]float64
	risk                      float64
}

// daySum is what is kept of an option on a day.
type daySum struct {
	sides       [2]sideDay
	intercepted float64 // sunlight that the leaves take in [MJ per m² of ground]
	fallen      float64 // sunlight on the ground area [MJ/m²]
}

// halfDay is a day by half of the bunches: the stand with its rows read from one end.
type halfDay struct {
	hours               []float64
	tallies             [2]sideTally
	intercepted, fallen float64
}

// half takes from a day what the sum over days needs.
func (d *optionDay) half() halfDay {
	out := halfDay{hours: make([]float64, len(d.course.Instants)), tallies: d.tallies}
	for k := range out.hours {
		out.hours[k] = d.course.Instants[k].Hour_h
	}
	for k := 1; k < len(out.hours); k++ {
		seconds := (out.hours[k] - out.hours[k-1]) * 3600 / 2
		for _, i := range []int{k - 1, k} {
			out.intercepted += d.day.scatters[i].leafTaken * d.leafArea * seconds / 1e6
			out.fallen += d.course.Instants[i].GHI * seconds / 1e6
		}
	}
	return out
}

// whole puts a day together from the rows read from their one end and from their other, whose left side is the right one
// of the first.
func whole(halves *[2]halfDay, course weather.Series) (out daySum) {
	one, other := &halves[0], &halves[1]
	noon := course.ClockHour(course.Events.Transit)
	for side := range out.sides {
		both := one.tallies[side].with(&other.tallies[1-side])
		out.sides[side] = both.day(one.hours, noon)
		out.sides[side].hourly = both.hourly(one.hours, course)
	}
	out.intercepted = (one.intercepted + other.intercepted) / 2
	out.fallen = one.fallen
	return out
}

// with is the fruit of two tallies of as many faces over the same instants.
func (t *sideTally) with(other *sideTally) sideTally {
	mean := func(a, b []float64) []float64 {
		out := make([]float64, len(a))
		for k := range out {
			out[k] = (a[k] + b[k]) / 2
		}
		return out
	}
	return sideTally{
		tallies: slices.Concat(t.tallies, other.tallies),
		steps: result.Steps{
			Light_Wm2: mean(t.steps.Light_Wm2, other.steps.Light_Wm2),
			Mean_C:    mean(t.steps.Mean_C, other.steps.Mean_C),
			Hottest_C: mean(t.steps.Hottest_C, other.steps.Hottest_C),
		},
	}
}

// day is the side's day in a few numbers.
func (t *sideTally) day(hours []float64, noon float64) (out sideDay) {
	sum, n := t.summary(hours), float64(len(t.tallies))
	out.lit, out.hottest, out.at, out.risk = sum.Lit_h, sum.Hottest_C, sum.HottestAt_h, sum.AtRisk
	out.over = [3]float64{sum.OverWatch_h, sum.OverHot_h, sum.OverBurn_h}
	for i := range t.tallies {
		for k, heat := range t.tallies[i].Heat {
			out.heat[k] += heat / n
		}
		out.doses = append(out.doses, t.tallies[i].Dose)
	}
	for k := 1; k < len(hours); k++ {
		a, b := hours[k-1], hours[k]
		energy := (t.steps.Light_Wm2[k-1] + t.steps.Light_Wm2[k]) / 2 * (b - a) * 3600 / 1e6
		early := min(max((noon-a)/(b-a), 0), 1)
		out.before += early * energy
		out.after += (1 - early) * energy
	}
	out.light = out.before + out.after
	return out
}

// hourly is the highest temperature of the hottest tenth of faces in each hour of the clock, and of the air where the
// day is not lived through: at night berries are about as warm.
func (t *sideTally) hourly(hours []float64, whole weather.Series) (out [24]float64) {
	for hour := range out {
		out[hour] = whole.Instants[0].Air_C
	}
	filled := [24]bool{}
	put := func(at, value float64) {
		if hour := min(int(at), 23); !filled[hour] || value > out[hour] {
			filled[hour], out[hour] = true, value
		}
	}
	for k, at := range hours {
		put(at, t.steps.Hottest_C[k])
	}
	lived := filled
	for i := range whole.Instants {
		if at := &whole.Instants[i]; !lived[min(int(at.Hour_h), 23)] {
			put(at.Hour_h, at.Air_C)
		}
	}
	return out
}
