package heat

import (
	"math"
	"testing"
)

// sunny is the case of these facts where their sources leave it open: sun 850 W/m², sky light of
// 100 on the horizontal, floor light of 140 upward, absorptance 0.75, 25 W/m² lost as longwave, air
// at 35 °C. The broad fields stand across the beam.
func sunny(diameter_mm, wind, compactness float64) Steady {
	b := plain(diameter_mm, 0.75)
	b.Compactness = compactness
	return b.Steady(Load{Beam_Wm2: 850, Sun: slant, Short: Uniform((100 + 140) / 2), LongNet: Uniform(-25)},
		Around{Air_C: 35, Wind_ms: wind, Pressure_Pa: atmosphere})
}

// A table worked by hand with the same conduction series for that case, with Ranz–Marshall for h and
// h_r = 6.3 W/m²/K: rises over air of the sunlit pole, the shaded pole and the mean, printed to 0.1 K.
var handWorked = []struct{ diameter_mm, wind, h, lit, shaded, mean float64 }{
	{12, 0.2, 18.6, 12.6, 7.1, 9.0}, {12, 0.5, 26.9, 10.1, 5.0, 6.8}, {12, 1, 36.2, 8.4, 3.7, 5.3},
	{12, 2, 49.3, 6.9, 2.6, 4.0}, {16, 0.2, 15.6, 14.9, 7.9, 10.2}, {16, 0.5, 22.8, 12.1, 5.5, 7.7},
	{16, 2, 42.2, 8.3, 2.9, 4.6}, {20, 0.5, 20.0, 13.7, 5.9, 8.5}, {20, 2, 37.5, 9.5, 3.1, 5.1},
}

// With the h of the table the temperatures are those of the table, within the rounding of what it prints.
func TestHandWorkedSpheresWithTheirOwnConvection(t *testing.T) {
	for _, row := range handWorked {
		total := row.h + 6.3
		rest := (0.75*120 - 25) / total
		lit, mean, shaded := BeamPoles(0.75*850, total, 0.55, row.diameter_mm/2000)
		near(t, "sunlit pole", lit+rest, row.lit, 0.1)
		near(t, "mean", mean+rest, row.mean, 0.1)
		near(t, "shaded pole", shaded+rest, row.shaded, 0.1)
	}
}

// With the convection in use, h is −12…+6 % of the table's (the two correlations differ by that
// much) and the rises move by no more than that.
func TestHandWorkedSpheresWithTheConvectionInUse(t *testing.T) {
	for _, row := range handWorked {
		s := sunny(row.diameter_mm, row.wind, 0)
		t.Logf("%g mm %g m/s: h %.1f (%.1f) lit %.1f (%.1f) shaded %.1f (%.1f) mean %.1f (%.1f)", row.diameter_mm, row.wind,
			s.Convective, row.h, s.Lit_C-35, row.lit, s.Shaded_C-35, row.shaded, s.Mean_C-35, row.mean)
		within(t, "h over the table's", s.Convective/row.h, 0.88, 1.06)
		within(t, "sunlit pole over the table's", (s.Lit_C-35)/row.lit, 0.94, 1.12)
		within(t, "shaded pole over the table's", (s.Shaded_C-35)/row.shaded, 0.92, 1.14)
		within(t, "mean over the table's", (s.Mean_C-35)/row.mean, 0.93, 1.13)
	}
}

// Millar 1972, AJEV 23:173: exposed fruit is 1.4 to 7.3 K warmer than air, up to 10.7 K differ
// across one berry. Taken for a loose bunch of 10–16 mm berries in 0.5–2 m/s.
func TestExposedLooseFruitExcess(t *testing.T) {
	for _, diameter := range []float64{10, 12, 14, 16} {
		for _, wind := range []float64{0.5, 1, 2} {
			s := sunny(diameter, wind, 0)
			within(t, "whole berry over air", s.Mean_C-35, 1, 8)
			within(t, "across the berry", s.Lit_C-s.Shaded_C, 3, 11)
			within(t, "sunlit pole over air", s.Lit_C-35, 1, 13)
		}
	}
}

// Smart & Sinclair 1976, from memory: tight bunches of dark berries reach about 12 K over air,
// loose ones less; 16 K is the limit that the fact sets for a tight bunch with wind.
func TestTightBunchIsHotterButBounded(t *testing.T) {
	for _, diameter := range []float64{10, 12, 14, 16} {
		for _, wind := range []float64{0.5, 1, 2} {
			loose, tight := sunny(diameter, wind, 0), sunny(diameter, wind, 1)
			t.Logf("%g mm %g m/s: tight %.1f, loose %.1f", diameter, wind, tight.Lit_C-35, loose.Lit_C-35)
			if !(tight.Lit_C > loose.Lit_C+1) {
				t.Errorf("%g mm, %g m/s: tight %.2f is not hotter than loose %.2f", diameter, wind, tight.Lit_C, loose.Lit_C)
			}
			within(t, "tight sunlit pole over air", tight.Lit_C-35, 1, 16)
		}
	}
}

// Oxford Companion to Wine 2006, "sunburn": up to 12 K over air in bright sun and little wind.
func TestHotSpotInLittleWind(t *testing.T) {
	for _, diameter := range []float64{10, 12, 14, 16} {
		s := sunny(diameter, 0.2, 0)
		t.Logf("%g mm: %.2f K", diameter, s.Lit_C-35)
		within(t, "sunlit pole at 0.2 m/s", s.Lit_C-35, 9, 15)
	}
}

// The excess falls with wind by an exponent of about −0.25 at the sunlit pole and −0.35 in the mean;
// 0.2 to 2 m/s cuts the first by about 45 %.
func TestExcessFallsWithWind(t *testing.T) {
	for _, diameter := range []float64{12, 14, 16} {
		calm, windy := sunny(diameter, 0.2, 0), sunny(diameter, 2, 0)
		lit := math.Log10((windy.Lit_C - 35) / (calm.Lit_C - 35))
		mean := math.Log10((windy.Mean_C - 35) / (calm.Mean_C - 35))
		t.Logf("%g mm: exponents %.3f and %.3f", diameter, lit, mean)
		near(t, "exponent of the sunlit pole", lit, -0.25, 0.04)
		near(t, "exponent of the mean", mean, -0.35, 0.04)
		near(t, "cut of the sunlit pole", 1-math.Pow(10, lit), 0.45, 0.05)
	}
}

// Millar 1972: shaded berries are −4.4 to −0.5 K from air by day; +1.5 K is the limit that the fact
// sets. Light of 60 W/m² from above and below, longwave even or a little short.
func TestShadedBerriesTrackTheAir(t *testing.T) {
	b := plain(14, 0.75)
	for _, wind := range []float64{0.5, 1, 2} {
		for _, longwave := range []float64{0, -25} {
			s := b.Steady(Load{Short: Uniform(60), LongNet: Uniform(longwave), Transpiration_Wm2: 5}, Around{Air_C: 35, Wind_ms: wind})
			within(t, "shaded berry over air", s.Mean_C-35, -4.5, 1.5)
		}
	}
}
