package sim

import (
	"rowlight/sim/result"
	"rowlight/sim/spread"
)

// bands sums up the draws of every option.
func (d *Drawing) bands() []result.OptionBands {
	columns := make([][]float64, len(d.inputs))
	for i := range columns {
		for k := range d.options[0].values {
			columns[i] = append(columns[i], d.sample[k][i])
		}
	}
	bands := make([]result.OptionBands, len(d.options))
	for o := range d.options {
		for side := range bands[o].Sides {
			for i, band := range bands[o].Sides[side].Each() {
				*band = d.options[o].band(side, i, d.inputs, columns)
			}
			bands[o].Hours[side] = d.options[o].hours(side, d.thin[o].hours)
		}
	}
	return bands
}

// hours are the bands of the whole hours among some.
func (d *drawnOption) hours(side int, hours []float64) (bands []result.HourBands) {
	for _, hour := range hours {
		if whole := int(hour); float64(whole) == hour {
			at := result.SummaryNumbers + hourNumbers*whole
			bands = append(bands, result.HourBands{
				Hour_h: hour, LitShare: d.reach(side, at), Mean_C: d.reach(side, at+1), Hottest_C: d.reach(side, at+2),
			})
		}
	}
	return bands
}

// reach is the band of one number.
func (d *drawnOption) reach(side, i int) (r result.Reach) {
	values := make([]float64, len(d.values))
	for k := range values {
		values[k] = d.values[k][side][i]
	}
	r.Low, r.High = spread.Band(values, d.central[side][i])
	return r
}

// band is that of one number. A light field has no order of its own: it goes by what it adds.
func (d *drawnOption) band(side, i int, inputs []spread.Input, columns [][]float64) (band result.Band) {
	values, noise := make([]float64, len(d.values)), make([]float64, len(d.values))
	for k := range values {
		values[k], noise[k] = d.values[k][side][i], d.noise[k][side][i]
	}
	band.Low, band.High = spread.Band(values, d.central[side][i])
	band.Error = spread.BandError(values)
	columns = append(columns[:spread.Field:spread.Field], noise)
	if most, ok := spread.Leading(columns, values); ok {
		band.Most = inputs[most].Key
	}
	return band
}

// differences are those of every option from the compared one.
func differences(options []drawnOption, compared int) []result.Difference {
	all := []result.Difference{}
	if compared >= len(options) {
		return all
	}
	for i := range options {
		if i == compared {
			continue
		}
		versus := func(of func(result.Summary) float64) result.Versus {
			return versus(&options[i], &options[compared], of)
		}
		all = append(all, result.Difference{
			Option: i, Compared: compared,
			Hottest:          versus(func(s result.Summary) float64 { return s.Hottest_C }),
			HottestOverWatch: versus(func(s result.Summary) float64 { return s.HottestOverWatch_h }),
			HottestOverHot:   versus(func(s result.Summary) float64 { return s.HottestOverHot_h }),
			HottestOverBurn:  versus(func(s result.Summary) float64 { return s.HottestOverBurn_h }),
			AtRisk:           versus(func(s result.Summary) float64 { return s.AtRisk }),
		})
	}
	return all
}

// versus compares a number of two options, each on its hotter side, draw by draw.
func versus(a, b *drawnOption, of func(result.Summary) float64) (v result.Versus) {
	v.Central = onHotterSide(&a.central, of) - onHotterSide(&b.central, of)
	apart := make([]float64, len(a.values))
	for k := range apart {
		apart[k] = onHotterSide(&a.values[k], of) - onHotterSide(&b.values[k], of)
	}
	v.Low, v.High = spread.Band(apart, v.Central)
	v.Worse = spread.Share(apart, func(value float64) bool { return value > 0 })
	v.Better = spread.Share(apart, func(value float64) bool { return value < 0 })
	return v
}

// onHotterSide is a number on the side with the hotter hottest fruit.
func onHotterSide(n *numbers, of func(result.Summary) float64) float64 {
	left, right := n.summary(0), n.summary(1)
	if right.Hottest_C > left.Hottest_C {
		return of(right)
	}
	return of(left)
}
