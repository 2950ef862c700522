package spread

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// A band reaches from the lowest to the highest of these shares of the draws.
const (
	LowShare  = 0.1
	HighShare = 0.9
)

// Band is the range within which the middle four fifths of at least one value lie, drawn out as far as the central one.
func Band(values []float64, central float64) (low, high float64) {
	sorted := slices.Sorted(slices.Values(values))
	low = stat.Quantile(LowShare, stat.LinInterp, sorted, nil)
	high = stat.Quantile(HighShare, stat.LinInterp, sorted, nil)
	return math.Min(low, central), math.Max(high, central)
}

// BandError is the standard error of the ends of a band, the larger of both: half of what lies between the shares of
// the draws that are one standard deviation of a count below and above (Woodruff 1952, J. Am. Stat. Assoc. 47:635,
// from memory). That holds for random draws; those that are spread evenly do better.
func BandError(values []float64) float64 {
	sorted := slices.Sorted(slices.Values(values))
	apart := math.Sqrt(LowShare * (1 - LowShare) / float64(len(values)))
	at := func(share float64) float64 {
		return stat.Quantile(math.Min(math.Max(share, 0), 1), stat.LinInterp, sorted, nil)
	}
	low := at(LowShare+apart) - at(LowShare-apart)
	high := at(HighShare+apart) - at(HighShare-apart)
	return math.Max(low, high) / 2
}

// Share is the share of values that are true.
func Share(values []float64, is func(float64) bool) float64 {
	count := 0.0
	for _, value := range values {
		if is(value) {
			count++
		}
	}
	return count / float64(len(values))
}

// Leading is the input whose rank correlation with an output is strongest (Spearman 1904), the first of equals;
// ok is false when the output does not vary, or no input does.
func Leading(inputs [][]float64, output []float64) (leading int, ok bool) {
	strongest, to := 0.0, ranks(output)
	for i, values := range inputs {
		// Where one does not vary the correlation is not a number, and no comparison with it holds.
		if strength := math.Abs(stat.Correlation(ranks(values), to, nil)); strength > strongest {
			leading, strongest, ok = i, strength, true
		}
	}
	return leading, ok
}

// ranks are the places of values in their order, equals sharing the mean of their places.
func ranks(values []float64) []float64 {
	order := make([]int, len(values))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(values[a], values[b]) })
	places := make([]float64, len(values))
	for from := 0; from < len(order); {
		to := from + 1
		for to < len(order) && values[order[to]] == values[order[from]] {
			to++
		}
		for _, i := range order[from:to] {
			places[i] = float64(from+to-1) / 2
		}
		from = to
	}
	return places
}
