package training

import "math"

// spread gathers weighted lengths in classes of one millimetre, for quantiles exact to that.
type spread struct {
	weights []float64
	total   float64
}

const (
	spreadClass = 0.001 // [m]
	spreadReach = 10.0  // lengths beyond this to either side count there [m]
)

func newSpread() *spread {
	return &spread{weights: make([]float64, int(2*spreadReach/spreadClass)+1)}
}

func (s *spread) add(value, weight float64) {
	i := int(math.Round((value + spreadReach) / spreadClass))
	s.weights[min(max(i, 0), len(s.weights)-1)] += weight
	s.total += weight
}

// quantile is the length below which the share q of the weight lies; 0 without any weight.
func (s *spread) quantile(q float64) float64 {
	sum := 0.0
	for i, weight := range s.weights {
		if sum += weight; weight > 0 && sum >= q*s.total {
			return round(float64(i)*spreadClass-spreadReach, 1e4)
		}
	}
	return 0
}

// between is the distance between two quantiles.
func (s *spread) between(low, high float64) float64 { return s.quantile(high) - s.quantile(low) }
