package spread

import (
	"math"
	"slices"
	"testing"
)

// An input lies about its usual value, and has a key of its own.
func TestInputsAreComplete(t *testing.T) {
	seen := map[string]bool{}
	for _, in := range Inputs() {
		if in.Key == "" || in.Unit == "" || seen[in.Key] {
			t.Errorf("%+v says too little or stands twice", in)
		}
		seen[in.Key] = true
		if in.Low > in.Usual || in.Usual > in.High || in.Low == in.High {
			t.Errorf("%s: %g to %g about %g", in.Key, in.Low, in.High, in.Usual)
		}
		if in.Shape == Ratio && in.Low <= 0 {
			t.Errorf("%s has no ratio from %g", in.Key, in.Low)
		}
	}
	if len(seen) != Count {
		t.Errorf("%d inputs, %d constants", len(seen), Count)
	}
}

func TestDrawsAreFrozen(t *testing.T) {
	a, b, other := Draws(Inputs(), 7, 50), Draws(Inputs(), 7, 50), Draws(Inputs(), 8, 50)
	if !slices.Equal(a, b) {
		t.Error("the same seed gives other draws")
	}
	if slices.Equal(a, other) {
		t.Error("another seed gives the same draws")
	}
	if !slices.Equal(a[:20], Draws(Inputs(), 7, 20)) {
		t.Error("fewer draws are not the first of more")
	}
	if len(Draws(Inputs(), 1, 0)) != 0 {
		t.Error("no draws are some")
	}
}

// The draws fill their ranges evenly: means and medians are those of the distributions (closed form: even (a+b)/2,
// triangle (a+b+c)/3, and the logarithm of a ratio is even).
func TestDrawsFollowTheirShapes(t *testing.T) {
	inputs := Inputs()
	draws := Draws(inputs, 3, 400)
	for i, in := range inputs {
		mean := 0.0
		for _, d := range draws {
			if d[i] < in.Low || d[i] > in.High {
				t.Fatalf("%s: %g lies outside %g to %g", in.Key, d[i], in.Low, in.High)
			}
			value := d[i]
			if in.Shape == Ratio {
				value = math.Log(value)
			}
			mean += value / float64(len(draws))
		}
		want, width := (in.Low+in.High)/2, in.High-in.Low
		switch in.Shape {
		case Ratio:
			want, width = math.Log(in.Low*in.High)/2, math.Log(in.High/in.Low)
		case Peaked:
			want = (in.Low + in.Usual + in.High) / 3
		}
		if math.Abs(mean-want) > 0.01*width {
			t.Errorf("%s: mean %.4f, want %.4f", in.Key, mean, want)
		}
	}
}

// No two inputs go together: 100 draws of any two are correlated by less than chance would allow 3 times in 100.
func TestDrawsAreIndependent(t *testing.T) {
	columns := columnsOf(Draws(Inputs(), 1, 100))
	for i := range columns {
		for j := range i {
			if r := correlation(columns[i], columns[j]); math.Abs(r) > 0.22 {
				t.Errorf("inputs %d and %d are correlated by %.2f", i, j, r)
			}
		}
	}
}

func columnsOf(draws []Draw) [][]float64 {
	columns := make([][]float64, Count)
	for _, d := range draws {
		for i, value := range d {
			columns[i] = append(columns[i], value)
		}
	}
	return columns
}

// correlation is Pearson's, written out.
func correlation(x, y []float64) float64 {
	n, mx, my := float64(len(x)), 0.0, 0.0
	for k := range x {
		mx, my = mx+x[k]/n, my+y[k]/n
	}
	xy, xx, yy := 0.0, 0.0, 0.0
	for k := range x {
		xy, xx, yy = xy+(x[k]-mx)*(y[k]-my), xx+(x[k]-mx)*(x[k]-mx), yy+(y[k]-my)*(y[k]-my)
	}
	return xy / math.Sqrt(xx*yy)
}

// A made-up model follows one input most, however bent its answer is.
func TestLeadingInputOfAMadeUpModel(t *testing.T) {
	draws := Draws(Inputs(), 1, 100)
	columns := columnsOf(draws)
	constant := slices.Repeat([]float64{4}, len(draws))
	model := func(follow int) []float64 {
		var out []float64
		for _, d := range draws {
			share := func(i int) float64 { in := Inputs()[i]; return (d[i] - in.Low) / (in.High - in.Low) }
			out = append(out, math.Exp(9*share(follow))+200*share((follow+1)%Count)-100*share((follow+3)%Count))
		}
		return out
	}
	for i := range Count {
		if got, ok := Leading(columns, model(i)); !ok || got != i {
			t.Errorf("the model follows input %d most (%t), want %d", got, ok, i)
		}
	}
	if _, ok := Leading(columns, constant); ok {
		t.Error("an output that stays follows an input")
	}
	if _, ok := Leading([][]float64{constant}, columns[0]); ok {
		t.Error("an input that stays leads")
	}
}

func TestRanksShareThePlacesOfEquals(t *testing.T) {
	if got := ranks([]float64{30, 10, 20, 10, 30, 30}); !slices.Equal(got, []float64{4, 0.5, 2, 0.5, 4, 4}) {
		t.Errorf("ranks %v", got)
	}
}

// Of the whole numbers from 0 to 100 a tenth lies below 10 and a tenth above 90.
func TestBand(t *testing.T) {
	var values []float64
	for k := range 101 {
		values = append(values, float64((k*37)%101))
	}
	if low, high := Band(values, 50); math.Abs(low-10) > 1 || math.Abs(high-90) > 1 {
		t.Errorf("band %g to %g, want 10 to 90", low, high)
	}
	if low, high := Band(values, 97); high != 97 || math.Abs(low-10) > 1 {
		t.Errorf("band %g to %g does not end at the central 97", low, high)
	}
	if got := Share(values, func(v float64) bool { return v > 75 }); math.Abs(got-25.0/101) > 1e-12 {
		t.Errorf("share %g", got)
	}
}
