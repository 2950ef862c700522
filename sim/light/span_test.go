package light

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/canopy/yardstick"
	"rowlight/sim/internal/draw"
	"rowlight/sim/training"
)

func TestQuantileOfDistances(t *testing.T) {
	var h histogram
	for bin := range 100 {
		h[bin+10] = 2 // even between 0.2 and 2.2 m
	}
	for _, q := range []float64{0.01, 0.25, 0.5, 0.99} {
		if got, ok := h.quantile(q); !ok || math.Abs(got-(0.2+2*q)) > 1e-12 {
			t.Errorf("quantile %.2f is %.4f (%t), want %.4f", q, got, ok, 0.2+2*q)
		}
	}
	if _, ok := new(histogram).quantile(0.5); ok {
		t.Error("no leaves have a quantile")
	}
}

// A Gaussian field falls below a level e^(−u²/2)/(2π·angle) times per radian, with the root mean square of one over
// the angles of its waves (Rice 1945).
func TestFieldCrossesAsOftenAsRiceSays(t *testing.T) {
	sources := make([]draw.Source, 400)
	for i := range sources {
		sources[i] = draw.New(3).Of(i)
	}
	const level, step, length = 0.35, 0.004, 1.2
	const u = -0.38532 // the normal quantile of 0.35 [Abramowitz & Stegun 1964, table 26.5, interpolated: from memory]
	crossings, expected, seeds := 0.0, 0.0, 12
	for seed := range seeds {
		var angles [waves]float64
		squares := 0.0
		for k := range angles {
			angles[k] = 0.08 + 0.3*float64(k)/waves
			squares += 1 / (angles[k] * angles[k]) / waves
		}
		field := NewField(draw.New(seed), sources, angles)
		expected += length * math.Exp(-u*u/2) / (2 * math.Pi) * math.Sqrt(squares)
		was := make([]bool, len(sources))
		for k := 0; k <= int(length/step); k++ {
			angle := 0.2 + step*float64(k)
			at := field.At(mgl64.Vec3{math.Cos(angle), 0.3 * math.Sin(angle), math.Sqrt(1-0.09) * math.Sin(angle)})
			for f := range sources {
				below := at.Of(f) < level
				if k > 0 && below && !was[f] {
					crossings += 1 / float64(len(sources))
				}
				was[f] = below
			}
		}
	}
	// The draws of 32 waves change the pace of one field by a tenth; twelve fields by a thirtieth.
	if math.Abs(crossings-expected) > 0.1*expected {
		t.Errorf("fields fall below the level %.3f times, want %.3f", crossings, expected)
	}
}

// curtain is a sheet of leaves to either side of a row of bunches, at a distance.
func curtain(distance float64) *training.Stand {
	random := rand.New(rand.NewPCG(5, 0))
	s := &training.Stand{RowSpacing: 6, VineSpacing: 1.5, Length: 6, Top: 4}
	for range 2000 {
		side := 2*float64(random.IntN(2)) - 1
		at := mgl64.Vec3{side * distance, 6 * random.Float64(), 4 * random.Float64()}
		s.Leaves = append(s.Leaves, training.Leaf{Centre: at, Normal: mgl64.Vec3{side, 0, 0}, Tip: mgl64.Vec3{0, 0, -1}, Area: 0.01})
	}
	for b := range 40 {
		s.Bunches = append(s.Bunches, training.Bunch{Centre: mgl64.Vec3{0, 0.15 * float64(b), 0.5}, Radius: 0.04, Length: 0.14})
	}
	return s
}

// Leaves twice as far away span half the angle (geometry, for leaves that span little).
func TestFarLeavesSpanLess(t *testing.T) {
	mean := map[float64]float64{}
	for _, distance := range []float64{0.5, 1} {
		stand := curtain(distance)
		angles, err := spans(stand, canopy.FromStand(stand, canopy.Slope{}), yardstick.Places(stand), free)
		if err != nil {
			t.Fatal(err)
		}
		for _, angle := range angles {
			mean[distance] += angle / waves
		}
	}
	if ratio := mean[1] / mean[0.5]; math.Abs(ratio-0.5) > 0.04 {
		t.Errorf("leaves at 1 m span %.3f of those at 0.5 m", ratio)
	}
	// A leaf of 100 cm² at 0.5 m spans 0.225 rad, the field 0.26 of it on the straight way and less on slanting
	// ones, which are one to three times as long.
	if mean[0.5] > 0.26*0.225 || mean[0.5] < 0.26/3*0.225 {
		t.Errorf("the field of leaves at 0.5 m is correlated over %.4f rad", mean[0.5])
	}
}
