package exp

import (
	"math"
	"slices"
	"testing"
)

// Against math.Exp, which errs by less than a unit of the last digit.
func TestOfIsTheExponential(t *testing.T) {
	worst := 0.0
	for i := range 2_000_000 {
		x := (float64(i)/1e6 - 1) * 699.9
		worst = math.Max(worst, math.Abs(Of(x)/math.Exp(x)-1))
	}
	for i := range 200_000 {
		x := (float64(i)/1e5 - 1) * 3
		worst = math.Max(worst, math.Abs(Of(x)/math.Exp(x)-1))
	}
	if worst > 7e-16 {
		t.Errorf("off by %g", worst)
	}
}

func TestOfAtTheEnds(t *testing.T) {
	for _, x := range []float64{0, 700, -700, 709, -745, -800, 800, math.Inf(1), math.Inf(-1)} {
		if got, want := Of(x), math.Exp(x); got != want {
			t.Errorf("Of(%g) = %g, not %g", x, got, want)
		}
	}
	if got := Of(math.NaN()); !math.IsNaN(got) {
		t.Errorf("Of(NaN) = %g", got)
	}
}

func TestOfEachIsOf(t *testing.T) {
	numbers := []float64{0, -0.3, -12, 5, 699, 800, math.Inf(-1)}
	want := make([]float64, len(numbers))
	for i, x := range numbers {
		want[i] = Of(x)
	}
	if OfEach(numbers); !slices.Equal(numbers, want) {
		t.Errorf("%v, not %v", numbers, want)
	}
}

func BenchmarkOf(b *testing.B) {
	x, sum := 0.0, 0.0
	for b.Loop() {
		x += 1e-7
		sum += Of(-x)
	}
	if sum == 0 {
		b.Fatal("nothing was added up")
	}
}
