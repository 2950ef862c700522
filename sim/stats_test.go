package sim_test

import (
	"math"
	"slices"
)

// quantile is the value below which a share of the values lies.
func quantile(values []float64, share float64) float64 {
	sorted := slices.Sorted(slices.Values(values))
	return sorted[min(int(share*float64(len(sorted))), len(sorted)-1)]
}

// argMax is the index of the largest value.
func argMax(values []float64) int {
	best := 0
	for i, v := range values {
		if v > values[best] {
			best = i
		}
	}
	return best
}

// argMin is the index of the value nearest to a target.
func argMin(values []float64, target float64) int {
	best := 0
	for i, v := range values {
		if math.Abs(v-target) < math.Abs(values[best]-target) {
			best = i
		}
	}
	return best
}
