//go:build !js

package lesson

import (
	"math"
	"testing"
	"time"

	"rowlight/sim/sun"
)

// fresno_deg is the latitude of the set-up that the check values belong to.
const fresno_deg = 36.78

// at is the sun over Fresno's latitude on longitude 0 at a solar hour of a day: the hour counts from the sun's highest.
func at(t *testing.T, date string, solar_h float64) sun.Position {
	t.Helper()
	day, err := time.Parse(time.DateOnly, date)
	if err != nil {
		t.Fatal(err)
	}
	noon := sun.DayOf(fresno_deg, 0, day, 0).Transit
	return sun.At(fresno_deg, 0, noon.Add(time.Duration((solar_h-12)*float64(time.Hour))))
}

// An upright face to the east or west meets the sun at cos(declination) · sin(hour angle), without the latitude: 0.733
// at 8:30 and 15:30 solar on 8 July.
func TestMirroredFaces(t *testing.T) {
	for _, hour := range []float64{8.5, 15.5} {
		across := sun.InRow(at(t, "2026-07-08", hour).Vector(), 0)[0]
		if math.Abs(math.Abs(across)-0.733) > 0.004 {
			t.Errorf("at %g h the face meets the sun at %.4f, closed form 0.733", hour, across)
		}
	}
}

// Closed forms of 21 July: a south face at noon meets the sun at sin(latitude − declination) = 0.282; the north face of
// east–west rows has the sun before 8.0 and after 16.0 h solar, where cos(hour angle) = tan(declination)/tan(latitude).
func TestEastWestRows(t *testing.T) {
	south := func(hour float64) float64 { return sun.InRow(at(t, "2026-07-21", hour).Vector(), 90)[0] }
	if got := south(12); math.Abs(got-0.282) > 0.005 {
		t.Errorf("a south face at noon meets the sun at %.4f, closed form 0.282", got)
	}
	for _, hour := range []float64{8.0, 16.0} {
		before, after := south(hour-0.15), south(hour+0.15)
		if before*after >= 0 {
			t.Errorf("the sun does not change sides within 9 minutes of %g h", hour)
		}
	}
}

// An overhang that reaches b out and hangs h above the fruit blocks the beam while the sun's angle seen along the row is
// over atan(h/b): on 21 July on a west face to 15.25 h for 0.3 and 0.3 m, 16.4 h for 0.5 and 0.3, 17.1 h for 0.6 and
// 0.25 (closed form).
func TestOverhangs(t *testing.T) {
	for _, c := range []struct{ out_m, above_m, until_h float64 }{{0.3, 0.3, 15.25}, {0.5, 0.3, 16.4}, {0.6, 0.25, 17.1}} {
		until := 12.0
		for hour := 12.1; hour < 19; hour += 0.01 {
			v := sun.InRow(at(t, "2026-07-21", hour).Vector(), 0)
			if v[2]/-v[0] > c.above_m/c.out_m {
				until = hour
			}
		}
		if math.Abs(until-c.until_h) > 0.05 {
			t.Errorf("%g m out, %g m above: the beam is blocked until %.2f h, closed form %.2f", c.out_m, c.above_m, until, c.until_h)
		}
	}
}

// hedge is beam on one face of opaque hedges 0.4 m wide and 2 m high in rows 2.7 m apart, fruit 1 m high, bare, over 21
// July at Fresno [Wh/m²]: over the day, and after noon.
type hedge struct {
	azimuth_deg, side float64
	total, after      float64
}

// The table of the set-up that the lessons share, computed apart from this program under a simple clear sky; here under
// I = 1353·0.7^(AM^0.678) (Meinel & Meinel 1976, from memory). Geometry must agree exactly, energy to its sky: shares of
// the sum of both faces of north–south rows agree to 0.003.
func TestHedges(t *testing.T) {
	const both = 2259 + 2259
	table := []hedge{
		{0, 1, 2259, 0}, {0, -1, 2259, 2259}, {45, 1, 2445, 0}, {45, -1, 1403, 1403},
		{90, 1, 1352, 678}, {90, -1, 433, 0}, {135, 1, 2445, 2344}, {135, -1, 1403, 0},
	}
	own := map[hedge][2]float64{}
	all := 0.0
	for _, h := range table {
		total, after := h.beam(t)
		own[h] = [2]float64{total, after}
		if h.azimuth_deg == 0 {
			all += total
		}
	}
	for h, got := range own {
		t.Logf("%3.0f° %+.0f: %.0f Wh/m², after noon %.0f; published %.0f and %.0f", h.azimuth_deg, h.side, got[0], got[1], h.total, h.after)
		if math.Abs(got[0]/all-h.total/both) > 0.003 {
			t.Errorf("%.0f° %+.0f: %.3f of the beam, published %.3f", h.azimuth_deg, h.side, got[0]/all, h.total/both)
		}
		if h.after > 0 && math.Abs(got[1]/all-h.after/both) > 0.003 {
			t.Errorf("%.0f° %+.0f: %.3f of the beam after noon, published %.3f", h.azimuth_deg, h.side, got[1]/all, h.after/both)
		}
	}
	east, west := own[table[0]], own[table[1]]
	if math.Abs(east[0]/west[0]-1) > 0.005 {
		t.Errorf("east %.0f and west %.0f Wh/m²: the sun is a mirror image", east[0], west[0])
	}
}

// beam adds up the day, minute by minute. The next hedge stands in the way while the sun is lower than its top.
func (h hedge) beam(t *testing.T) (total, after float64) {
	const alley_m, above_m = 2.7 - 0.4, 2.0 - 1.0
	for minute := range 14 * 60 {
		hour := 5 + float64(minute)/60
		p := at(t, "2026-07-21", hour)
		v := sun.InRow(p.Vector(), h.azimuth_deg)
		outward := v[0] * h.side
		if p.Elevation_deg <= 0 || outward <= 0 || v[2]/outward < above_m/alley_m {
			continue
		}
		mass := sun.AirMassKastenYoung1989(90 - p.Elevation_deg)
		beam := 1353 * math.Pow(0.7, math.Pow(mass, 0.678)) * outward / 60
		total += beam
		if hour > 12 {
			after += beam
		}
	}
	return total, after
}
