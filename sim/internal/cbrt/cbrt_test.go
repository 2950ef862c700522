package cbrt

import (
	"math"
	"testing"
)

// Against math.Cbrt, which errs by less than 0.667 units of the last digit.
func TestOfIsTheCubeRoot(t *testing.T) {
	worst := 0.0
	check := func(x float64) { worst = math.Max(worst, math.Abs(Of(x)/math.Cbrt(x)-1)) }
	for i := range 2_000_000 {
		check(math.Exp((float64(i)/1e6 - 1) * 700))
		check(1 + float64(i)/250_000) // all steps of three powers of two
	}
	if worst > 4.5e-16 {
		t.Errorf("off by %g", worst)
	}
}

func TestOfAtTheEnds(t *testing.T) {
	for _, x := range []float64{0, -8, math.SmallestNonzeroFloat64, -1e300, math.Inf(1), math.Inf(-1)} {
		if got, want := Of(x), math.Cbrt(x); got != want {
			t.Errorf("Of(%g) = %g, not %g", x, got, want)
		}
	}
	for _, x := range []float64{0x1p-1022, 1, 8, 27, math.Nextafter(2, 0), 2, math.MaxFloat64} {
		if got, want := Of(x), math.Cbrt(x); math.Abs(got/want-1) > 4.5e-16 {
			t.Errorf("Of(%g) = %g, not %g", x, got, want)
		}
	}
	if got := Of(math.NaN()); !math.IsNaN(got) {
		t.Errorf("Of(NaN) = %g", got)
	}
}

func BenchmarkOf(b *testing.B) {
	x, sum := 16.0, 0.0
	for b.Loop() {
		x += 1e-3
		sum += Of(x)
	}
	if sum == 0 {
		b.Fatal("nothing was added up")
	}
}

func BenchmarkStandard(b *testing.B) {
	x, sum := 16.0, 0.0
	for b.Loop() {
		x += 1e-3
		sum += math.Cbrt(x)
	}
	if sum == 0 {
		b.Fatal("nothing was added up")
	}
}
