package weather

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rowlight/sim/scenario"
)

// instants are the clock hours of one day in steps of five minutes.
func instants() []float64 {
	hours := make([]float64, 289)
	for k := range hours {
		hours[k] = float64(k) * 5 / 60
	}
	return hours
}

// hotDay is an invented day at an invented inland site.
func hotDay() scenario.Scenario {
	s := scenario.Scenario{}
	s.Site = scenario.Site{Latitude_deg: 36.4, Longitude_deg: -119.9, Elevation_m: 90, UTCOffset_h: -8}
	s.Weather = scenario.Weather{
		Date: "2026-07-18", AirMax_C: 41, AirMaxLag_h: 1.86, AirMin_C: 21, DewPoint_C: 11, Wind_ms: 2.5, WindFrom_deg: 315,
		Ozone_cm: 0.3, Water_cm: 1.5, AOD380: 0.15, AOD500: 0.1,
	}
	return s
}

func course(t testing.TB, s scenario.Scenario, hours []float64) Series {
	t.Helper()
	got, err := Course(s, hours)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func drawDesign(t *rapid.T) scenario.Scenario {
	s := hotDay()
	s.Site.Latitude_deg = rapid.Float64Range(-62, 62).Draw(t, "latitude")
	s.Site.Longitude_deg = rapid.Float64Range(-180, 180).Draw(t, "longitude")
	s.Site.UTCOffset_h = rapid.Float64Range(-12, 14).Draw(t, "clock")
	s.Weather.Date = rapid.SampledFrom([]string{"2026-01-15", "2026-03-20", "2026-06-21", "2026-09-03", "2028-02-29", "2026-12-21"}).Draw(t, "date")
	s.Weather.AirMin_C = rapid.Float64Range(-5, 25).Draw(t, "lowest")
	s.Weather.AirMax_C = s.Weather.AirMin_C + rapid.Float64Range(1, 25).Draw(t, "range")
	s.Weather.DewPoint_C = rapid.Float64Range(-20, 30).Draw(t, "dew point")
	s.Weather.Wind_ms = rapid.Float64Range(0, 15).Draw(t, "wind")
	return s
}

// extremes are the lowest and highest air temperature of a series.
func extremes(of Series) (coldest, warmest float64) {
	coldest, warmest = math.Inf(1), math.Inf(-1)
	for _, at := range of.Instants {
		coldest, warmest = math.Min(coldest, at.Air_C), math.Max(warmest, at.Air_C)
	}
	return coldest, warmest
}

func TestDesignDayHitsItsExtremes(t *testing.T) {
	if coldest, warmest := extremes(course(t, hotDay(), instants())); math.Abs(warmest-41) > 0.05 || math.Abs(coldest-21) > 0.05 {
		t.Errorf("hot day from %.3f to %.3f °C in five-minute steps, want 21 to 41", coldest, warmest)
	}
	minutes := make([]float64, 24*60)
	for k := range minutes {
		minutes[k] = float64(k) / 60
	}
	rapid.Check(t, func(t *rapid.T) {
		s := drawDesign(t)
		got, err := Course(s, minutes)
		if err != nil {
			t.Fatal(err)
		}
		coldest, warmest := extremes(got)
		if math.Abs(warmest-s.Weather.AirMax_C) > 0.05 || math.Abs(coldest-s.Weather.AirMin_C) > 0.05 {
			t.Fatalf("%.3f to %.3f °C, want %.3f to %.3f", coldest, warmest, s.Weather.AirMin_C, s.Weather.AirMax_C)
		}
	})
}

// Parton & Logan 1981: the warmest moment 1.86 h - 0.17 h after the middle of the day, the coldest
// 0.17 h before sunrise.
func TestDesignDayIsWarmestInTheAfternoonAndColdestBeforeSunrise(t *testing.T) {
	s := hotDay()
	got := course(t, s, instants())
	warmest, coldest := got.Instants[0], got.Instants[0]
	for _, at := range got.Instants {
		if at.Air_C > warmest.Air_C {
			warmest = at
		}
		if at.Air_C < coldest.Air_C {
			coldest = at
		}
	}
	rise, set := got.ClockHour(got.Events.Rise), got.ClockHour(got.Events.Set)
	if want := (rise+set)/2 + 1.69; math.Abs(warmest.Hour_h-want) > 0.05 {
		t.Errorf("warmest at %.2f h, want %.2f", warmest.Hour_h, want)
	}
	if want := rise - 0.17; math.Abs(coldest.Hour_h-want) > 0.09 {
		t.Errorf("coldest at %.2f h, want %.2f", coldest.Hour_h, want)
	}
}

// No step of five minutes is larger than the steepest slope of the curves, and the day joins itself
// at midnight.
func TestDesignDayHasNoJumps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawDesign(t)
		got, err := Course(s, instants())
		if err != nil {
			t.Fatal(err)
		}
		first, last := got.Instants[0], got.Instants[288]
		if math.Abs(first.Air_C-last.Air_C) > 1e-9 || math.Abs(first.Wind_ms-last.Wind_ms) > 1e-9 ||
			math.Abs(first.Dew_C-last.Dew_C) > 1e-9 || math.Abs(first.Longwave_Wm2-last.Longwave_Wm2) > 1e-6 {
			t.Fatalf("midnight: %+v and %+v", first, last)
		}
		// The shortest day drawn lasts 4.5 h: the steepest slope is π/8.2 h of the range.
		most := (s.Weather.AirMax_C - s.Weather.AirMin_C) * math.Pi / 8.2 * 5 / 60
		for i := 1; i < len(got.Instants); i++ {
			if step := got.Instants[i].Air_C - got.Instants[i-1].Air_C; math.Abs(step) > most+1e-9 {
				t.Fatalf("at %.2f h the air jumps by %.3f K", got.Instants[i].Hour_h, step)
			}
		}
	})
}

func TestDesignDayWindKeepsItsMeanAndBlowsInTheAfternoon(t *testing.T) {
	got := course(t, hotDay(), instants())
	sum, strongest := 0.0, got.Instants[0]
	for _, at := range got.Instants[:288] {
		sum += at.Wind_ms
		if at.Wind_ms > strongest.Wind_ms {
			strongest = at
		}
	}
	if mean := sum / 288; math.Abs(mean-2.5) > 1e-9 {
		t.Errorf("mean wind %.12g m/s, want 2.5", mean)
	}
	if noon := got.ClockHour(got.Events.Transit); strongest.Hour_h < noon+1 || strongest.Hour_h > noon+5 {
		t.Errorf("strongest wind at %.2f h, noon is %.2f h", strongest.Hour_h, noon)
	}
}

func TestLightIsNeverNegativeNorBelowTheHorizon(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawDesign(t)
		if rapid.Bool().Draw(t, "measured") {
			s.Weather.Hours = drawHours(t)
		}
		got, err := Course(s, instants())
		if err != nil {
			t.Fatal(err)
		}
		for _, at := range got.Instants {
			for _, value := range []float64{at.GHI, at.DNI, at.DHI} {
				if !(value >= 0) || at.Sun.Elevation_deg <= 0 && value != 0 {
					t.Fatalf("light at %.2f h, sun at %.2f°: %+v", at.Hour_h, at.Sun.Elevation_deg, at.Irradiance)
				}
			}
			if outside := at.Extraterrestrial_Wm2; at.DNI > outside || at.DHI > outside*math.Sin(at.Sun.Elevation_deg*math.Pi/180)+1e-9 && at.Sun.Elevation_deg > 0 {
				t.Fatalf("at %.2f h more light than outside the atmosphere: %+v", at.Hour_h, at.Irradiance)
			}
			closure := at.DNI*math.Max(math.Sin(at.Sun.Elevation_deg*math.Pi/180), 0) + at.DHI
			if math.Abs(closure-at.GHI) > 1e-6 { // a stamp is met within 1e-9 h
				t.Fatalf("at %.2f h beam and diffuse make %g, global is %g", at.Hour_h, closure, at.GHI)
			}
			if at.Dew_C > at.Air_C || at.Wind_ms < 0 || at.WindFrom_deg < 0 || at.WindFrom_deg >= 360 {
				t.Fatalf("at %.2f h: %+v", at.Hour_h, at)
			}
			if !(at.Longwave_Wm2 > 50 && at.Longwave_Wm2 < 700) {
				t.Fatalf("at %.2f h longwave %g", at.Hour_h, at.Longwave_Wm2)
			}
		}
	})
}

func TestPolarDaysAreRefusedInPlainFaults(t *testing.T) {
	for _, test := range []struct {
		latitude   float64
		date, want string
	}{
		{70, "2026-06-21", "fault.polar-day"},
		{70, "2026-12-21", "fault.polar-night"},
		{-80, "2026-12-21", "fault.polar-day"},
		{67, "2026-12-11", "fault.short-day"},
	} {
		s := hotDay()
		s.Site.Latitude_deg, s.Weather.Date = test.latitude, test.date
		_, err := Course(s, instants())
		fault, ok := errors.AsType[Fault](err)
		if !ok || fault.Code != test.want || fault.Path != "/site/latitude_deg" {
			t.Errorf("%g°, %s: %v, want %s", test.latitude, test.date, err, test.want)
		}
	}
}

func TestBrokenDatesAndHoursAreFaults(t *testing.T) {
	for want, change := range map[string]func(*scenario.Weather){
		"fault.date":  func(w *scenario.Weather) { w.Date = "2026-02-30" },
		"fault.year":  func(w *scenario.Weather) { w.Date = "1826-07-18" },
		"fault.hours": func(w *scenario.Weather) { w.Hours = make([]scenario.Hour, 23) },
	} {
		s := hotDay()
		change(&s.Weather)
		_, err := Course(s, instants())
		if fault, ok := errors.AsType[Fault](err); !ok || fault.Code != want {
			t.Errorf("%v, want %s", err, want)
		}
	}
}

func BenchmarkCourse(b *testing.B) {
	hours := instants()
	real := hotDay()
	real.Weather.Hours = clearHours(b)
	for name, s := range map[string]scenario.Scenario{"design": hotDay(), "measured": real} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				course(b, s, hours)
			}
		})
	}
}
