package leaves

import (
	"errors"
	"math"
	"runtime"
	"testing"

	"rowlight/sim/scenario"
)

func free() error { return nil }

// The mean gap of the faces of one side through the grid is that between the leaves, for every form of the
// catalogue and in every direction, within the bounds and what two stands leave open: 3.5 standard errors of the bias,
// since some two thousand directions are looked at, and one of the rms. Over all directions together the error beside
// sampling is at most two thirds of what one may have. Twenty stands meet the bounds as they are: rowlight yardstick.
func TestGridStandsForLeaves(t *testing.T) {
	t.Parallel()
	forms := scenario.Forms()
	if runtime.GOOS == "js" {
		forms = forms[:1] // one thread; native and wasm measure alike
	}
	for _, form := range forms {
		t.Run(form.Key, func(t *testing.T) {
			t.Parallel()
			r, err := Measure(form, Settings{Seeds: 2, Rays: 3}, free)
			if err != nil {
				t.Fatal(err)
			}
			systematic := 0.0
			for _, d := range r.Directions {
				if math.Abs(d.Bias) > BiasAllowed+3.5*d.BiasSE || d.RMS > RMSAllowed+d.Sampling {
					t.Errorf("side %d, %.0f° high, %.0f° aside: gap %.3f between leaves, bias %+.3f ± %.3f, rms %.3f",
						d.Side, d.Elevation_deg, d.Azimuth_deg, d.Leaves, d.Bias, d.BiasSE, d.RMS)
				}
				systematic += (d.Bias*d.Bias - d.BiasSE*d.BiasSE) / float64(len(r.Directions))
			}
			if systematic > BiasAllowed*BiasAllowed*4/9 {
				t.Errorf("over all directions the grid is %.4f off, allowed %.4f", math.Sqrt(systematic), BiasAllowed*2/3)
			}
			if leaves, _, _ := r.Means(); leaves < 0.02 || leaves > 0.9 {
				t.Errorf("mean gap %.3f says nothing", leaves)
			}
		})
	}
}

// The sun stays on a face about as long as between leaves, and its moments by dome are those of rays, for forms of
// every kind. A minute of sun falls into a spell of the right length within 40 %, which matters to a berry that warms for
// minutes; flecks of a minute or two, of which leaves make more, let the mean differ up to twofold.
func TestSpellsLastAsLongAsBetweenLeaves(t *testing.T) {
	t.Parallel()
	keys := []string{"vsp-spurs", "sprawl", "double-curtain"}
	if runtime.GOOS == "js" {
		keys = keys[:1]
	}
	for _, key := range keys {
		t.Run(key, func(t *testing.T) {
			t.Parallel()
			form, _ := scenario.FormByKey(key)
			r, err := MeasureTiming(form, 1, free)
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("leaves %+.1f, field %+.1f, moments %.2f min off", r.Leaves, r.Field, r.Moment_min)
			if r.Moment_min > MomentAllowed {
				t.Errorf("moments lie %.2f min off, allowed %.0f", r.Moment_min, MomentAllowed)
			}
			if ratio := r.Field.LitMinute_min / r.Leaves.LitMinute_min; ratio < 0.6 || ratio > 1.4 {
				t.Errorf("a minute of sun falls into a spell of %.0f min, between leaves of %.0f", r.Field.LitMinute_min, r.Leaves.LitMinute_min)
			}
			if ratio := r.Field.Mean_min / r.Leaves.Mean_min; ratio < 0.5 || ratio > 2 {
				t.Errorf("spells last %.1f min, between leaves %.1f", r.Field.Mean_min, r.Leaves.Mean_min)
			}
		})
	}
}

// One Ω that makes exponentials of twice the depth into those given is found exactly (closed form).
func TestFitFindsOmega(t *testing.T) {
	var looks [][]look
	for k := range 6 {
		l := look{length: 9}
		for f := range 40 {
			depth := 0.2 + 0.1*float64(f)*float64(k)/5
			l.faces = append(l.faces, face{y: float64(f) / 5, free: math.Exp(-0.7 * depth), depth: depth})
		}
		looks = append(looks, []look{l})
	}
	if got := fit(looks); math.Abs(got-0.7) > 1e-6 {
		t.Errorf("Ω is %.6f, want 0.7", got)
	}
}

// Independent faces have the variance of a binomial share (closed form).
func TestVarianceOfIndependentFaces(t *testing.T) {
	got, want := 0.0, 0.0
	for seed := range 40 {
		l := look{length: 90}
		for f := range 400 {
			free := 0.0
			if hash := uint64(seed*400+f+1) * 0x9e3779b97f4a7c15; (hash^hash>>31)*0xbf58476d1ce4e5b9>>40%10 < 3 {
				free = 1
			}
			l.faces = append(l.faces, face{y: 0.225 * float64(f), free: free, depth: -math.Log(0.3)})
		}
		got += l.variance(1) / 40
		want += 0.3 * 0.7 / 400 / 40
	}
	if math.Abs(got-want) > 0.1*want {
		t.Errorf("variance %.3g, want %.3g", got, want)
	}
}

func TestSpellsAreCounted(t *testing.T) {
	var s spells
	s.add([][]bool{{true, true, false, true}, {false, false, false, false}})
	got := s.sum()
	// Spells of 2 and 1 minutes on two faces: a lit minute falls into one of (4 + 1)/3 minutes.
	if got.Count != 1 || got.Mean_min != 1.5 || got.Median_min != 2 || math.Abs(got.LitMinute_min-5.0/3) > 1e-12 {
		t.Errorf("got %+v", got)
	}
	if none := new(spells).sum(); none != (Spells{}) {
		t.Errorf("no sun: %+v", none)
	}
}

func TestMeasureStopsWhenTold(t *testing.T) {
	stop := errors.New("enough")
	halt := func() error { return stop }
	form, _ := scenario.FormByKey("sprawl")
	if _, err := Measure(form, Settings{Seeds: 1, Rays: 1}, halt); !errors.Is(err, stop) {
		t.Errorf("got %v, want the error of pace", err)
	}
	if _, err := MeasureTiming(form, 1, halt); !errors.Is(err, stop) {
		t.Errorf("got %v, want the error of pace", err)
	}
}
