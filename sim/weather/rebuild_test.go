package weather

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rowlight/sim/scenario"
)

// hourly5 are the instants of hour i of a whole day, its stamps too.
func hourly5(of []Instant, i int) []Instant { return of[i*stepsOfHour : (i+1)*stepsOfHour+1] }

// Whatever clouds do, every hour with the sun up keeps its energy to 1e-9, stamps shared with its neighbours; nothing
// stands below the horizon or below zero; and from step to step within an hour light changes by less than two thirds of
// what the hour has under the shape of the sky.
func TestEveryHourKeepsItsLightOnASmoothCourse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := drawHours(t)
		for i := range rows {
			if i < 6 || i > 17 {
				rows[i].DNI_Wm2, rows[i].DHI_Wm2 = 0, 0
			}
			// Of what the sky can send, so much that a cloud before and after leaves room for it.
			rows[i].DNI_Wm2 *= 0.5
			rows[i].DHI_Wm2 *= math.Sin(math.Pi*(float64(i)-4.5)/15.2) * 0.5
			if rapid.Bool().Draw(t, "cloud") {
				rows[i].DNI_Wm2 = 0
			}
		}
		got, err := Course(withHours(rows), instants())
		if err != nil {
			t.Fatal(err)
		}
		for i, row := range rows {
			hour := hourly5(got.Instants, i)
			for what, of := range map[string]struct {
				of     func(Instant) float64
				wanted float64
			}{"beam": {beamOf, row.DNI_Wm2}, "diffuse": {diffuseOf, row.DHI_Wm2}} {
				if mean := trapezoids(hour, of.of); math.Abs(mean-of.wanted) > 1e-9*of.wanted {
					t.Fatalf("hour %d: %s %.12g W/m², the file has %.12g", i+1, what, mean, of.wanted)
				}
			}
			for k, at := range hour {
				if at.Sun.Elevation_deg <= 0 && at.GHI != 0 || at.DNI < 0 || at.DHI < 0 {
					t.Fatalf("%.2f h, sun at %.1f°: %+v", at.Hour_h, at.Sun.Elevation_deg, at.Irradiance)
				}
				if k > 0 && i > 6 && i < 17 && math.Abs(at.DNI-hour[k-1].DNI) > 0.67*row.DNI_Wm2+1 {
					t.Fatalf("%.2f h: beam goes from %.0f to %.0f W/m² in an hour of %.0f", at.Hour_h, hour[k-1].DNI, at.DNI, row.DNI_Wm2)
				}
			}
		}
	})
}

// A sun that rises in the last minutes of an hour leaves its light to the stamp; what even that cannot carry has no place.
func TestHoursOfRiseAndSetKeepTheirLight(t *testing.T) {
	rows := clearHours(t)
	lost := 0.0
	for minutes := 0; minutes < 60; minutes += 2 {
		s := withHours(rows)
		s.Site.Longitude_deg += float64(minutes) / 4 // the sun comes so much earlier, the clear hours do not
		got := course(t, s, instants())
		lost = math.Max(lost, math.Abs(got.Unplaced_Wh))
		sum, wanted := 0.0, 0.0
		for i, row := range rows {
			sum += trapezoids(hourly5(got.Instants, i), diffuseOf) + trapezoids(hourly5(got.Instants, i), beamOf)
			wanted += row.DHI_Wm2 + row.DNI_Wm2
		}
		if math.Abs(wanted-sum-got.Unplaced_Wh) > 1e-6 {
			t.Errorf("%d min: %.6f W h/m² are missing, %.6f said to have no place", minutes, wanted-sum, got.Unplaced_Wh)
		}
	}
	if lost < 10 {
		t.Errorf("of light after sunset only %.1f W h/m² have no place", lost)
	}
}

// Half an hour of cloud in a clear day: the light sinks and rises without a jump, and every hour keeps its own.
func TestACloudedHourSinksAndRises(t *testing.T) {
	rows := clearHours(t)
	rows[10].DNI_Wm2 *= 0.3
	got := course(t, withHours(rows), instants()).Instants
	lowest := math.Inf(1)
	for _, at := range hourly5(got, 10) {
		lowest = math.Min(lowest, at.DNI)
	}
	clear := course(t, hotDay(), instants()).Instants
	for k := 9 * stepsOfHour; k < 12*stepsOfHour; k++ {
		if jump := math.Abs(got[k+1].DNI - got[k].DNI); jump > 150 {
			t.Errorf("%.2f h: beam jumps by %.0f W/m²", got[k].Hour_h, jump)
		}
		if got[k].DNI > 1.2*clear[k].DNI {
			t.Errorf("%.2f h: beam %.0f W/m² beside the cloud, a clear sky has %.0f", got[k].Hour_h, got[k].DNI, clear[k].DNI)
		}
	}
	if mean := trapezoids(hourly5(got, 10), beamOf); math.Abs(mean-rows[10].DNI_Wm2) > 1e-9*mean || lowest > mean {
		t.Errorf("mean %.3f, lowest %.1f, wanted %.3f W/m²", mean, lowest, rows[10].DNI_Wm2)
	}
}

// Every hour of real files keeps its light, but for twilight and for light that is no sun's.
func TestHoursOfRealFilesKeepTheirLight(t *testing.T) {
	for _, path := range realFiles(t) {
		file, _ := readReal(t, path)
		all, lost, hours := 0.0, 0.0, 0
		for _, day := range file.Days() {
			if day.Day%5 != 0 {
				continue
			}
			var s scenario.Scenario
			if faults := file.Put(day.Month, day.Day, &s); Blocked(faults) {
				t.Fatal(faults)
			}
			got := course(t, s, instants())
			for i, row := range s.Weather.Hours {
				hour := hourly5(got.Instants, i)
				beam, diffuse := trapezoids(hour, beamOf), trapezoids(hour, diffuseOf)
				all += row.DNI_Wm2 + row.DHI_Wm2
				lost += row.DNI_Wm2 - beam + row.DHI_Wm2 - diffuse
				low := hour[0].Sun.Elevation_deg < 3 || hour[stepsOfHour].Sun.Elevation_deg < 3
				if hours++; !low && (math.Abs(beam-row.DNI_Wm2) > 1e-9*row.DNI_Wm2 || math.Abs(diffuse-row.DHI_Wm2) > 1e-9*row.DHI_Wm2) {
					t.Errorf("%s %s, hour %d: beam %.9g of %g, diffuse %.9g of %g W/m²", file.Name, s.Weather.Date, i+1, beam, row.DNI_Wm2, diffuse, row.DHI_Wm2)
				}
			}
		}
		t.Logf("%s: %.3f %% of the light of %d hours has no place", file.Name, 100*lost/all, hours)
		if lost > 0.003*all {
			t.Errorf("%s: %.2f %% of the light has no place", file.Name, 100*lost/all)
		}
	}
}
