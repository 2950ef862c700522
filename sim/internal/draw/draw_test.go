package draw

import (
	"math"
	"testing"
)

const many = 40000

// moments gives mean and standard deviation of a draw over many sources.
func moments(draw func(Source) float64) (mean, deviation float64) {
	stand := New(1)
	sum, squares := 0.0, 0.0
	for i := range many {
		x := draw(stand.Of(i))
		sum += x
		squares += x * x
	}
	mean = sum / many
	return mean, math.Sqrt(squares/many - mean*mean)
}

// The even distribution over [0, 1) has mean 1/2 and standard deviation 1/√12.
func TestUniformIsEven(t *testing.T) {
	mean, deviation := moments(func(s Source) float64 { return s.Uniform(3) })
	if math.Abs(mean-0.5) > 0.005 || math.Abs(deviation-1/math.Sqrt(12)) > 0.005 {
		t.Errorf("mean %.4f, deviation %.4f", mean, deviation)
	}
}

func TestNormalHasUnitDeviation(t *testing.T) {
	mean, deviation := moments(func(s Source) float64 { return s.Normal(3) })
	if math.Abs(mean) > 0.02 || math.Abs(deviation-1) > 0.02 {
		t.Errorf("mean %.4f, deviation %.4f", mean, deviation)
	}
}

func TestSignAndCountKeepTheirMean(t *testing.T) {
	if mean, _ := moments(func(s Source) float64 { return s.Sign(3, 0.75) }); math.Abs(mean-0.5) > 0.02 {
		t.Errorf("sign has mean %.3f, want 0.5", mean)
	}
	if mean, _ := moments(func(s Source) float64 { return float64(s.Count(3, 1.8)) }); math.Abs(mean-1.8) > 0.02 {
		t.Errorf("count has mean %.3f, want 1.8", mean)
	}
}

// Draws of one thing for two purposes, of neighbours, and of part and whole know nothing of each other.
func TestDrawsAreIndependent(t *testing.T) {
	pairs := map[string]func(Source) float64{
		"purposes":   func(s Source) float64 { return s.Normal(1) * s.Normal(2) },
		"parts":      func(s Source) float64 { return s.Of(0).Normal(1) * s.Of(1).Normal(1) },
		"generation": func(s Source) float64 { return s.Normal(1) * s.Of(1).Normal(1) },
		"seeds":      func(s Source) float64 { return New(int(s)).Normal(1) * New(int(s)+1).Normal(1) },
	}
	for name, product := range pairs {
		if correlation, _ := moments(product); math.Abs(correlation) > 0.02 {
			t.Errorf("%s: correlation %.3f", name, correlation)
		}
	}
}

func TestNearbySourcesNeverMeet(t *testing.T) {
	seen := map[Source]bool{}
	for seed := range 20 {
		for vine := range 20 {
			for shoot := -5; shoot < 60; shoot++ {
				s := New(seed).Of(vine).Of(shoot)
				if seen[s] {
					t.Fatalf("seed %d, vine %d, shoot %d meets another", seed, vine, shoot)
				}
				seen[s] = true
			}
		}
	}
}
