package sim

import (
	"cmp"
	"math"
	"slices"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// weighedColumn is one column that has weight.
type weighedColumn struct {
	weight float64
	values []result.Estimate // of the options; more is better
}

// order puts the options in the order of the reader's weights. In each column the worst option counts 0 and the best
// 1, others between; a column in which all are alike counts for none. It is done once with the central numbers and
// once for each end of each column, the same end for all options, since they share night and season: what changes
// places then is not decided. Without weights there is no order.
func order(w *result.Weighing, weights scenario.Weights) []result.Placed {
	columns := columnsOf(w, weights)
	if len(columns) == 0 || len(w.Options) < 2 {
		return []result.Placed{}
	}
	central := func(e result.Estimate) float64 { return e.Value }
	cases := [][]float64{scores(columns, len(w.Options), -1, central)}
	for c := range columns {
		cases = append(cases,
			scores(columns, len(w.Options), c, func(e result.Estimate) float64 { return e.Low }),
			scores(columns, len(w.Options), c, func(e result.Estimate) float64 { return e.High }))
	}
	placed := make([]result.Placed, len(w.Options))
	for i := range placed {
		placed[i] = result.Placed{Option: i, Score: exactly(cases[0][i])}
		for _, scores := range cases {
			score := &placed[i].Score
			score.Low, score.High = math.Min(score.Low, scores[i]), math.Max(score.High, scores[i])
		}
	}
	slices.SortStableFunc(placed, func(a, b result.Placed) int { return cmp.Compare(b.Score.Value, a.Score.Value) })
	for i := range placed[:len(placed)-1] {
		placed[i].Decided = leads(cases, placed[i].Option, placed[i+1].Option)
	}
	return placed
}

// apart is the least lead in score that counts as one, assumption.
const apart = 0.05

// leads tells whether an option is ahead of another in every case.
func leads(cases [][]float64, first, second int) bool {
	for _, scores := range cases {
		if scores[first] < scores[second]+apart {
			return false
		}
	}
	return true
}

// scores are the weighted means of the options [0–1], with one column read by end and all others by their central
// numbers.
func scores(columns []weighedColumn, options, read int, end func(result.Estimate) float64) []float64 {
	sums, weights := make([]float64, options), 0.0
	for c, column := range columns {
		values := make([]float64, options)
		for i, e := range column.values {
			values[i] = e.Value
			if c == read {
				values[i] = end(e)
			}
		}
		worst, best := slices.Min(values), slices.Max(values)
		if best-worst < 1e-9 {
			continue
		}
		weights += column.weight
		for i, value := range values {
			sums[i] += column.weight * (value - worst) / (best - worst)
		}
	}
	if weights > 0 {
		for i := range sums {
			sums[i] /= weights
		}
	}
	return sums
}

// columnsOf lists the columns that have weight, turned so that more is better.
func columnsOf(w *result.Weighing, weights scenario.Weights) []weighedColumn {
	lightSign := 1.0
	if weights.LightWish == scenario.LessLight {
		lightSign = -1
	}
	var columns []weighedColumn
	add := func(weight, sign float64, of func(*result.Weighed) result.Estimate) {
		if weight <= 0 {
			return
		}
		column := weighedColumn{weight: weight}
		for i := range w.Options {
			e := of(&w.Options[i])
			column.values = append(column.values, result.Estimate{Low: sign * e.Low, Value: sign * e.Value, High: sign * e.High})
		}
		columns = append(columns, column)
	}
	add(weights.Heat, -1, func(o *result.Weighed) result.Estimate { return o.Heat })
	add(weights.Light, lightSign, func(o *result.Weighed) result.Estimate { return o.Light })
	add(weights.Frost, -1, func(o *result.Weighed) result.Estimate { return o.Frost.Killed })
	add(weights.Crop, 1, func(o *result.Weighed) result.Estimate { return o.Crop.PerHa_t })
	add(weights.Work, -1, func(o *result.Weighed) result.Estimate { return o.Work.Total })
	return columns
}
