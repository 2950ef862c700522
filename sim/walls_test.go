package sim_test

import (
	"math"
	"testing"
	"time"

	"rowlight/sim/sun"
)

// wall is the beam of a clear day on the fruit of one side of opaque hedges.
type wall struct {
	whole, afternoon float64 // [Wh/m²]
	peak, at         float64 // [W/m²], solar hour
}

// hedges are rows 2.7 m apart, 0.4 m wide and 2.0 m high with fruit at 1.0 m on their faces: the next row hides the sun below
// this elevation across the rows. The beam is I = 1353·0.7^(AM^0.678) (Meinel & Meinel 1976, from memory).
func hedges(latitude float64, day time.Time, azimuth float64) (left, right wall) {
	hides := (2.0 - 1.0) / (2.7 - 0.4)
	var transit float64
	highest := 0.0
	for minute := range 24 * 60 {
		if p := sun.At(latitude, 0, day.Add(time.Duration(minute)*time.Minute)); p.Elevation_deg > highest {
			highest, transit = p.Elevation_deg, float64(minute)
		}
	}
	for minute := range 24 * 60 {
		p := sun.At(latitude, 0, day.Add(time.Duration(minute)*time.Minute))
		if p.Elevation_deg <= 0 {
			continue
		}
		v := sun.InRow(p.Vector(), azimuth)
		beam := 1353 * math.Pow(0.7, math.Pow(sun.AirMassKastenYoung1989(90-p.Elevation_deg), 0.678)) * math.Abs(v[0])
		if v[2] < hides*math.Abs(v[0]) {
			continue
		}
		of := &right
		if v[0] < 0 {
			of = &left
		}
		of.whole += beam / 60
		if float64(minute) > transit {
			of.afternoon += beam / 60
		}
		if beam > of.peak {
			of.peak, of.at = beam, 12+(float64(minute)-transit)/60
		}
	}
	return left, right
}

// The beam on the faces of four row directions at 36.8° N on 21 July, as it was computed apart from this program for a lesson
// (infinite opaque hedges under the same clear sky): to 1 % and, for peaks, 0.1 h. The sun of the two halves of the day differs
// by what its declination changes.
func TestBeamByRowDirection(t *testing.T) {
	day := time.Date(2026, 7, 21, 0, 0, 0, 0, time.UTC)
	const latitude = 36.78
	// Rows at 0° and 180° are the same row, and the diagonals mirror each other about noon: so SE stands for SW.
	for azimuth, want := range map[float64][2]wall{
		0:   {{2259, 2259, 663, 16.3}, {2259, 0, 663, 7.7}},
		45:  {{1403, 1403, 515, 17.0}, {2445, 2445 - 2344, 484, 8.75}},
		90:  {{433, 433.0 / 2, 0, 0}, {1352, 678, 264, 12.0}},
		135: {{1403, 0, 515, 7.0}, {2445, 2344, 484, 15.25}},
	} {
		left, right := hedges(latitude, day, azimuth)
		for side, got := range [2]wall{left, right} {
			w := want[side]
			t.Logf("%3.0f° side %d: %.0f / %.0f Wh/m², after noon %.0f / %.0f, peak %.0f / %.0f W/m² at %.2f / %.2f h", azimuth, side,
				got.whole, w.whole, got.afternoon, w.afternoon, got.peak, w.peak, got.at, w.at)
			if math.Abs(got.whole-w.whole) > 0.01*w.whole || math.Abs(got.afternoon-w.afternoon) > 0.01*w.whole {
				t.Errorf("rows %g°, side %d: %.0f Wh/m², after noon %.0f; the lesson has %.0f and %.0f", azimuth, side, got.whole, got.afternoon, w.whole, w.afternoon)
			}
			if w.peak > 0 && (math.Abs(got.peak-w.peak) > 0.01*w.peak || math.Abs(got.at-w.at) > 0.1) {
				t.Errorf("rows %g°, side %d: peak %.0f W/m² at %.2f h; the lesson has %.0f at %.2f", azimuth, side, got.peak, got.at, w.peak, w.at)
			}
		}
	}
}

// On E–W rows the sun stands square to the south face at noon by sin(latitude − declination), 0.282 at 36.8° on 21 July, and
// reaches the north face before 8 and after 16 h, where cos(hour angle) = tan(declination)/tan(latitude) = 0.502.
func TestSunOnEastWestRows(t *testing.T) {
	day := time.Date(2026, 7, 21, 0, 0, 0, 0, time.UTC)
	const latitude = 36.78
	var noon, last float64
	highest, transit := 0.0, 0
	for minute := range 24 * 60 {
		p := sun.At(latitude, 0, day.Add(time.Duration(minute)*time.Minute))
		if p.Elevation_deg > highest {
			highest, transit, noon = p.Elevation_deg, minute, sun.InRow(p.Vector(), 90)[0]
		}
	}
	for minute := transit - 6*60; minute < transit; minute++ {
		if sun.InRow(sun.At(latitude, 0, day.Add(time.Duration(minute)*time.Minute)).Vector(), 90)[0] < 0 {
			last = 12 - float64(transit-minute)/60
		}
	}
	if math.Abs(noon-0.282) > 0.002 || math.Abs(last-8) > 0.05 {
		t.Errorf("the south face stands %.3f square to the sun at noon, and the north face is lit until %.2f h", noon, last)
	}
}
