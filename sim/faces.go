package sim

import (
	"math"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/sunburn"
)

// sideTally gathers the faces of one side of the row over the day.
type sideTally struct {
	side    scenario.Side
	steps   result.Steps
	hottest []float64 // scratch: of each face
	highest extremes  // scratch
	tallies []sunburn.Tally
}

// faceState is one face at one instant.
type faceState struct {
	hottest, mean float64 // of the berry surface and of the whole berry [°C]
	light         float64 // on the outward face [W/m²]
	lit           bool
}

// record adds an instant of all faces; faces of a side are every other one, left first.
func (t *sideTally) record(faces []faceState, air_C, wind_ms float64) {
	lit, light, mean, berry, n := 0.0, 0.0, 0.0, 0.0, float64(len(t.tallies))
	if len(t.hottest) != len(t.tallies) {
		t.hottest = make([]float64, len(t.tallies))
	}
	hottest := t.hottest
	for i := range hottest {
		state := &faces[2*i+int(t.side)]
		if state.lit {
			lit++
		}
		light += state.light
		mean += state.hottest
		berry += state.mean
		hottest[i] = state.hottest
	}
	tenth := max(1, len(t.tallies)/10)
	s := &t.steps
	s.LitShare = append(s.LitShare, lit/n)
	s.Light_Wm2 = append(s.Light_Wm2, light/n)
	s.Mean_C = append(s.Mean_C, mean/n)
	s.Berry_C = append(s.Berry_C, berry/n)
	s.Hottest_C = append(s.Hottest_C, meanOf(t.highest.of(hottest, 1, tenth)))
	s.Coolest_C = append(s.Coolest_C, -meanOf(t.highest.of(hottest, -1, tenth)))
	s.AirNear_C = append(s.AirNear_C, air_C)
	s.Wind_ms = append(s.Wind_ms, wind_ms)
}

// extremes are the highest of some values in rising order; sorting all of them would take longer.
type extremes []float64

// of finds so many of the values times a sign, until the next values come. There must be as many.
func (e *extremes) of(values []float64, sign float64, count int) []float64 {
	if len(*e) != count {
		*e = make(extremes, count)
	}
	kept, least := *e, math.Inf(-1)
	for i := range kept {
		kept[i] = least
	}
	for _, value := range values {
		if value *= sign; !(value > least) {
			continue
		}
		at := 0
		for _, next := range kept[1:] {
			if !(next < value) {
				break
			}
			kept[at] = next
			at++
		}
		kept[at] = value
		least = kept[0]
	}
	return kept
}

// summary puts the day of a side into a few numbers.
func (d *optionDay) summary(side scenario.Side, hours []float64) result.Summary {
	t := &d.tallies[side]
	sum, hottest := t.summary(hours), sunburn.Tally{}
	for k := 1; k < len(hours); k++ {
		d.rule.Step(&hottest, t.steps.Hottest_C[k-1], t.steps.Hottest_C[k], false, hours[k]-hours[k-1])
	}
	sum.HottestOverWatch_h, sum.HottestOverHot_h, sum.HottestOverBurn_h = hottest.Over[0], hottest.Over[1], hottest.Over[2]
	return sum
}

// summary is the same without the hours of the hottest fruit over the limits.
func (t *sideTally) summary(hours []float64) (sum result.Summary) {
	n := float64(len(t.tallies))
	for i := range t.tallies {
		tally := &t.tallies[i]
		sum.Lit_h += tally.Lit_h / n
		sum.OverWatch_h += tally.Over[0] / n
		sum.OverHot_h += tally.Over[1] / n
		sum.OverBurn_h += tally.Over[2] / n
		sum.AtRisk += sunburn.Damaged(tally.Dose) / n
		sum.Browning += tally.Browning / n
	}
	at := highest(t.steps.Hottest_C)
	sum.Hottest_C, sum.HottestAt_h = t.steps.Hottest_C[at], hours[at]
	sum.MeanMax_C = t.steps.Mean_C[highest(t.steps.Mean_C)]
	for k := 1; k < len(hours); k++ {
		sum.Light_MJm2 += (t.steps.Light_Wm2[k-1] + t.steps.Light_Wm2[k]) / 2 * (hours[k] - hours[k-1]) * 3600 / 1e6
	}
	return sum
}

// meanOf is the mean of values; there must be one at least.
func meanOf(values []float64) float64 {
	sum := 0.0
	for _, v := range values {
		sum += v
	}
	return sum / float64(len(values))
}

// highest is the index of the first highest value.
func highest(values []float64) int {
	best := 0
	for i, v := range values {
		if v > values[best] {
			best = i
		}
	}
	return best
}
