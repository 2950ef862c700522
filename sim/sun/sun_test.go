package sun

import (
	"math"
	"testing"
	"time"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"rowlight/sim/internal/table"
	"rowlight/testdata"
)

// SPA gives the truth of 2025; the series is said to hold 0.1 %.
func TestExtraterrestrialIsNearThatOfSPA(t *testing.T) {
	want, err := table.Read(testdata.FS, "reference/extraterrestrial.csv")
	if err != nil {
		t.Fatal(err)
	}
	days, err := want.Floats("doy")
	if err != nil {
		t.Fatal(err)
	}
	spa, err := want.Floats("E0n_spa2025")
	if err != nil {
		t.Fatal(err)
	}
	for i, day := range days {
		if got := ExtraterrestrialNormal(int(day)); math.Abs(got/spa[i]-1) > 1.2e-3 {
			t.Errorf("day %g: %.3f, SPA distance gives %.3f", day, got, spa[i])
		}
	}
}

func TestSunBelowHorizonHasTheAirMassOfOneOnIt(t *testing.T) {
	if AirMassKasten1966(120) != AirMassKasten1966(90) || AirMassKastenYoung1989(120) != AirMassKastenYoung1989(90) {
		t.Error("a sun below the horizon does not count as on it")
	}
}

func TestPolarDayAndNightAreNamed(t *testing.T) {
	june, december := time.Date(2026, 6, 21, 0, 0, 0, 0, time.UTC), time.Date(2026, 12, 21, 0, 0, 0, 0, time.UTC)
	for _, test := range []struct {
		latitude float64
		date     time.Time
		want     string
	}{
		{69.65, june, PolarDay}, {69.65, december, PolarNight}, // Tromsø; the midnight sun of June is well known
		{-69.65, june, PolarNight}, {-69.65, december, PolarDay},
		{90, june, PolarDay}, {90, december, PolarNight}, {-90, december, PolarDay},
		{60, june, ""}, {60, december, ""}, {0, june, ""},
	} {
		got := DayOf(test.latitude, 19, test.date, 1)
		if got.Polar != test.want {
			t.Errorf("latitude %g, %s: polar %q, want %q", test.latitude, test.date.Format(time.DateOnly), got.Polar, test.want)
		}
		if got.Transit.IsZero() || got.Rise.IsZero() != (test.want != "") || got.Set.IsZero() != (test.want != "") {
			t.Errorf("latitude %g, %s: events %v", test.latitude, test.date.Format(time.DateOnly), got)
		}
	}
}

// The events stand where the sun is at -0.8333°, in order, around the noon of the clock.
func TestEventsAreRootsOfThePosition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		latitude := rapid.Float64Range(-60, 60).Draw(t, "latitude")
		longitude := rapid.Float64Range(-180, 180).Draw(t, "longitude")
		offset := math.Round(longitude/15*2) / 2
		date := time.Date(2026, 1, rapid.IntRange(1, 365).Draw(t, "day"), 0, 0, 0, 0, time.UTC)
		got := DayOf(latitude, longitude, date, offset)
		for _, moment := range []time.Time{got.Rise, got.Set} {
			// The sun moves at most 0.0042° in a second; moments are good to 0.01 s.
			if off := At(latitude, longitude, moment).Elevation_deg - RiseElevation_deg; math.Abs(off) > 1e-3 {
				t.Fatalf("elevation at %v off by %g°", moment, off)
			}
		}
		if angle := HourAngle(latitude, longitude, got.Transit); math.Abs(angle) > 1e-3 {
			t.Fatalf("hour angle at transit %g°", angle)
		}
		if !got.Rise.Before(got.Transit) || !got.Transit.Before(got.Set) {
			t.Fatalf("out of order: %v", got)
		}
		noon := Midnight(date, offset).Add(12 * time.Hour)
		if got.Transit.Sub(noon).Abs() > 40*time.Minute {
			t.Fatalf("transit %v is far from %v", got.Transit, noon)
		}
	})
}

func TestVectorPointsToTheSun(t *testing.T) {
	for _, test := range []struct {
		at   Position
		want mgl64.Vec3
	}{
		{Position{0, 0}, mgl64.Vec3{0, 1, 0}},    // north
		{Position{0, 90}, mgl64.Vec3{1, 0, 0}},   // east
		{Position{0, 180}, mgl64.Vec3{0, -1, 0}}, // south
		{Position{0, 270}, mgl64.Vec3{-1, 0, 0}}, // west
		{Position{90, 45}, mgl64.Vec3{0, 0, 1}},  // zenith
		{Position{-90, 0}, mgl64.Vec3{0, 0, -1}}, // nadir
		{Position{30, 90}, mgl64.Vec3{math.Sqrt(3) / 2, 0, 0.5}},
	} {
		if got := test.at.Vector(); got.Sub(test.want).Len() > 1e-15 {
			t.Errorf("%+v points to %v, want %v", test.at, got, test.want)
		}
	}
}

func TestInRowTurnsTheAzimuthAlongTheRow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		azimuth := rapid.Float64Range(0, 180).Draw(t, "azimuth")
		at := Position{rapid.Float64Range(-90, 90).Draw(t, "elevation"), rapid.Float64Range(0, 360).Draw(t, "sun azimuth")}
		got := InRow(at.Vector(), azimuth)
		want := Position{at.Elevation_deg, at.Azimuth_deg - azimuth}.Vector()
		if got.Sub(want).Len() > 1e-14 {
			t.Fatalf("%v, want %v", got, want)
		}
	})
	along := Position{0, 40}.Vector()
	if got := InRow(along, 40); got.Sub(mgl64.Vec3{0, 1, 0}).Len() > 1e-15 {
		t.Errorf("the row direction is %v in the row frame, want y", got)
	}
}

// A sky mirrored about north gives the mirrored vectors to the last digit.
func TestMirroredSkyIsAnExactMirrorImage(t *testing.T) {
	for azimuth := 0.0; azimuth < 180; azimuth += 0.5 {
		east, west := Position{33.3, azimuth}.Vector(), Position{33.3, 360 - azimuth}.Vector()
		if east[0] != -west[0] || east[1] != west[1] || east[2] != west[2] {
			t.Fatalf("azimuth %g°: %v and %v", azimuth, east, west)
		}
		eastRow, westRow := InRow(east, 15), InRow(west, -15)
		if eastRow[0] != -westRow[0] || eastRow[1] != westRow[1] {
			t.Fatalf("azimuth %g° in the row: %v and %v", azimuth, eastRow, westRow)
		}
	}
}

func BenchmarkAt(b *testing.B) {
	moment := time.Date(2026, 7, 18, 20, 0, 0, 0, time.UTC)
	for b.Loop() {
		moment = moment.Add(time.Minute)
		At(36.4, -119.9, moment)
	}
}

func BenchmarkDayOf(b *testing.B) {
	date := time.Date(2026, 7, 18, 0, 0, 0, 0, time.UTC)
	for b.Loop() {
		DayOf(36.4, -119.9, date, -8)
	}
}
