package weather

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rowlight/sim/scenario"
)

// drawHours are 24 hours of any weather at all, night light included.
func drawHours(t *rapid.T) []scenario.Hour {
	hours := make([]scenario.Hour, 24)
	for i := range hours {
		hours[i] = scenario.Hour{
			DNI_Wm2:      rapid.Float64Range(0, 1000).Draw(t, "dni"),
			DHI_Wm2:      rapid.Float64Range(0, 500).Draw(t, "dhi"),
			Air_C:        rapid.Float64Range(-10, 45).Draw(t, "air"),
			DewPoint_C:   rapid.Float64Range(-20, 25).Draw(t, "dew"),
			Wind_ms:      rapid.Float64Range(0, 20).Draw(t, "wind"),
			WindFrom_deg: rapid.Float64Range(0, 360).Draw(t, "from"),
			Longwave_Wm2: rapid.SampledFrom([]float64{0, 250, 420}).Draw(t, "longwave"),
		}
	}
	return hours
}

// clearHours are the hour means of the design day, in steps of half a minute.
func clearHours(t testing.TB) []scenario.Hour {
	rows := make([]scenario.Hour, 24)
	for i := range rows {
		const steps = 120
		hours := make([]float64, steps)
		for k := range hours {
			hours[k] = float64(i) + (float64(k)+0.5)/steps
		}
		for _, at := range course(t, hotDay(), hours).Instants {
			rows[i].GHI_Wm2 += at.GHI / steps
			rows[i].DNI_Wm2 += at.DNI / steps
			rows[i].DHI_Wm2 += at.DHI / steps
		}
		stamp := course(t, hotDay(), []float64{float64(i + 1)}).Instants[0]
		rows[i].Air_C, rows[i].DewPoint_C = stamp.Air_C, stamp.Dew_C
		rows[i].Wind_ms, rows[i].WindFrom_deg = stamp.Wind_ms, stamp.WindFrom_deg
	}
	return rows
}

// withHours is the hot day with measured hours.
func withHours(rows []scenario.Hour) scenario.Scenario {
	s := hotDay()
	s.Weather.Hours = rows
	return s
}

// insideHour are five-minute steps over hour i, its ends a trifle inside.
func insideHour(i int) []float64 {
	hours := make([]float64, 13)
	for k := range hours {
		hours[k] = float64(i) + float64(k)/12
	}
	hours[0], hours[12] = hours[0]+1e-8, hours[12]-1e-8
	return hours
}

// trapezoids is the mean of a quantity over evenly spaced instants.
func trapezoids(of []Instant, quantity func(Instant) float64) float64 {
	sum := (quantity(of[0]) + quantity(of[len(of)-1])) / 2
	for _, at := range of[1 : len(of)-1] {
		sum += quantity(at)
	}
	return sum / float64(len(of)-1)
}

func beamOf(at Instant) float64    { return at.DNI }
func diffuseOf(at Instant) float64 { return at.DHI }

func TestMeasuredHoursKeepTheirLight(t *testing.T) {
	rows := clearHours(t)
	s := withHours(rows)
	for i, row := range rows {
		got := course(t, s, insideHour(i)).Instants
		beam, diffuse := trapezoids(got, beamOf), trapezoids(got, diffuseOf)
		if math.Abs(beam-row.DNI_Wm2) > 1e-6*row.DNI_Wm2 || math.Abs(diffuse-row.DHI_Wm2) > 1e-6*row.DHI_Wm2 {
			t.Errorf("hour %d: beam %.6f, diffuse %.6f; want %.6f, %.6f", i+1, beam, diffuse, row.DNI_Wm2, row.DHI_Wm2)
		}
	}
}

// Whatever the clouds do, what stands over the horizon is kept hour by hour and over the day.
func TestCloudyDaysKeepTheirLight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := drawHours(t)
		for i := range rows {
			if i < 6 || i > 17 { // dark: the sun of the hot day is well up from 06:00 to 18:00
				rows[i].DNI_Wm2, rows[i].DHI_Wm2 = 0, 0
			}
			rows[i].DNI_Wm2, rows[i].DHI_Wm2 = rows[i].DNI_Wm2/2, rows[i].DHI_Wm2/2 // the sky can send that
		}
		got, err := Course(withHours(rows), instants())
		if err != nil {
			t.Fatal(err)
		}
		beam, diffuse := 0.0, 0.0
		for _, row := range rows {
			beam, diffuse = beam+row.DNI_Wm2, diffuse+row.DHI_Wm2
		}
		missing := beam + diffuse - 24*(trapezoids(got.Instants, beamOf)+trapezoids(got.Instants, diffuseOf))
		if math.Abs(missing-got.Unplaced_Wh) > 1e-6*(beam+diffuse) {
			t.Fatalf("%.6f W h/m² are missing, %.6f said to have no place", missing, got.Unplaced_Wh)
		}
		if math.Abs(got.Unplaced_Wh) > 1e-9*(beam+diffuse) {
			t.Fatalf("%g of %.1f W h/m² without a place", got.Unplaced_Wh, beam+diffuse)
		}
	})
}

// The hour means of a clear day give back the clear day.
func TestHoursOfAClearDayGiveItBack(t *testing.T) {
	want := course(t, hotDay(), instants())
	got := course(t, withHours(clearHours(t)), instants())
	if got.Unplaced_Wh > 1 {
		t.Errorf("%.3f W h/m² without a place", got.Unplaced_Wh)
	}
	for i, at := range got.Instants {
		if at.Sun.Elevation_deg < 12 { // the hours of rise and set are coarse
			continue
		}
		if math.Abs(at.DNI-want.Instants[i].DNI) > 5 || math.Abs(at.GHI-want.Instants[i].GHI) > 10 {
			t.Errorf("%.2f h: DNI %.1f, GHI %.1f; the clear day has %.1f, %.1f",
				at.Hour_h, at.DNI, at.GHI, want.Instants[i].DNI, want.Instants[i].GHI)
		}
	}
}

func TestAirAndWindStandAtTheStampsAndRunStraightBetween(t *testing.T) {
	rows := clearHours(t)
	rows[9].WindFrom_deg, rows[10].WindFrom_deg = 350, 20 // at 10:00 and 11:00
	got := course(t, withHours(rows), []float64{0, 10, 10.5, 11, 24}).Instants
	if got[1].Air_C != rows[9].Air_C || got[3].Wind_ms != rows[10].Wind_ms || got[3].Dew_C != rows[10].DewPoint_C {
		t.Errorf("stamps: %+v, %+v", got[1], got[3])
	}
	if want := (rows[9].Air_C + rows[10].Air_C) / 2; math.Abs(got[2].Air_C-want) > 1e-9 {
		t.Errorf("between: %g °C, want %g", got[2].Air_C, want)
	}
	if math.Abs(got[2].WindFrom_deg-5) > 1e-9 {
		t.Errorf("wind turns over north to %g°, want 5°", got[2].WindFrom_deg)
	}
	if got[0].Air_C != got[4].Air_C || got[0].Wind_ms != got[4].Wind_ms || got[4].Air_C != rows[23].Air_C {
		t.Errorf("midnight: %+v and %+v", got[0], got[4])
	}
}

func TestLongwaveOfTheFileIsUsedWhereThereIsSome(t *testing.T) {
	rows := clearHours(t)
	for i := range rows {
		rows[i].Longwave_Wm2 = 300 + float64(i)
	}
	rows[12].Longwave_Wm2 = 0
	got := course(t, withHours(rows), []float64{9.5, 10, 12.5}).Instants
	if got[0].Longwave_Wm2 != 309 || math.Abs(got[1].Longwave_Wm2-309.5) > 1e-9 {
		t.Errorf("longwave %g and %g, want 309 and 309.5", got[0].Longwave_Wm2, got[1].Longwave_Wm2)
	}
	clear := course(t, hotDay(), []float64{12.5}).Instants[0]
	if math.Abs(got[2].Longwave_Wm2-clear.Longwave_Wm2) > 1 {
		t.Errorf("hour without longwave: %g, a clear sky gives %g", got[2].Longwave_Wm2, clear.Longwave_Wm2)
	}
}

// Measured hours need no sunrise.
func TestMeasuredPolarDayHasACourse(t *testing.T) {
	s := withHours(clearHours(t))
	s.Site.Latitude_deg, s.Weather.Date = 70, "2026-06-21"
	if got := course(t, s, instants()); got.Events.Polar != "day" || len(got.Instants) != 289 {
		t.Errorf("%+v", got.Events)
	}
}

func TestLightOfANightHourHasNoPlace(t *testing.T) {
	rows := clearHours(t)
	rows[0].DHI_Wm2 = 40 // from 00:00 to 01:00
	got := course(t, withHours(rows), instants())
	if math.Abs(got.Unplaced_Wh-40) > 1 {
		t.Errorf("%.3f W h/m² without a place, want 40", got.Unplaced_Wh)
	}
}
