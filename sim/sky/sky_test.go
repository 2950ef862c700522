package sky

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rowlight/sim/sun"
)

var typical = Atmosphere{Ozone_cm: 0.3, Water_cm: 1.5, AOD380: 0.15, AOD500: 0.1, Pressure_Pa: 101325, Albedo: 0.2}

func drawIrradiance(t *rapid.T, sinElevation float64) Irradiance {
	dni := rapid.Float64Range(0, 1100).Draw(t, "dni")
	dhi := rapid.Float64Range(0, 500).Draw(t, "dhi")
	return Irradiance{GHI: dni*sinElevation + dhi, DNI: dni, DHI: dhi}
}

func drawPosition(t *rapid.T, lowest_deg float64, what string) sun.Position {
	return sun.Position{
		Elevation_deg: rapid.Float64Range(lowest_deg, 90).Draw(t, what+" elevation"),
		Azimuth_deg:   rapid.Float64Range(0, 360).Draw(t, what+" azimuth"),
	}
}

func TestClearSkyClosesAndNeverShinesAtNight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		zenith := rapid.Float64Range(0, 180).Draw(t, "zenith")
		got := Bird(zenith, 1361, Atmosphere{
			Ozone_cm:    rapid.Float64Range(0.1, 0.6).Draw(t, "ozone"),
			Water_cm:    rapid.Float64Range(0.1, 7).Draw(t, "water"),
			AOD380:      rapid.Float64Range(0, 1.5).Draw(t, "aod380"),
			AOD500:      rapid.Float64Range(0, 1.5).Draw(t, "aod500"),
			Pressure_Pa: rapid.Float64Range(60000, 106000).Draw(t, "pressure"),
			Albedo:      rapid.Float64Range(0, 0.6).Draw(t, "albedo"),
		})
		if zenith >= 90 && got != (Irradiance{}) {
			t.Fatalf("light at night: %+v", got)
		}
		if !(got.GHI >= 0 && got.DNI >= 0 && got.DNI < 1361 && got.DHI >= 0) {
			t.Fatalf("not light: %+v", got)
		}
		if closure := got.DNI*math.Max(math.Cos(zenith*math.Pi/180), 0) + got.DHI; math.Abs(closure-got.GHI) > 1e-9 {
			t.Fatalf("beam and diffuse make %g, global is %g", closure, got.GHI)
		}
	})
}

// The beam weakens all the way to the horizon, clean or hazy, on the coast or on a mountain.
func TestLowerSunHasLessBeam(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		air := typical
		air.AOD380 = rapid.Float64Range(0, 1.5).Draw(t, "aod380")
		air.AOD500 = rapid.Float64Range(0, 1.5).Draw(t, "aod500")
		air.Pressure_Pa = rapid.Float64Range(60000, 106000).Draw(t, "pressure")
		last := Bird(0, 1361, air)
		for zenith := 0.5; zenith <= 90; zenith += 0.5 {
			next := Bird(zenith, 1361, air)
			if next.DNI > last.DNI || next.GHI > last.GHI {
				t.Fatalf("zenith %g°: %+v after %+v", zenith, next, last)
			}
			last = next
		}
	})
}

func TestHazierSkyHasLessBeamAndMoreDiffuse(t *testing.T) {
	hazy := typical
	hazy.AOD380, hazy.AOD500 = 0.6, 0.4
	for zenith := 0.0; zenith <= 80; zenith += 5 {
		clear, haze := Bird(zenith, 1361, typical), Bird(zenith, 1361, hazy)
		if haze.DNI >= clear.DNI || haze.GHI >= clear.GHI {
			t.Errorf("zenith %g°: clear %+v, hazy %+v", zenith, clear, haze)
		}
		if zenith <= 60 && haze.DHI <= clear.DHI {
			t.Errorf("zenith %g°: clear %+v, hazy %+v", zenith, clear, haze)
		}
	}
}

func TestErbsKeepsTheGlobalLight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ghi := rapid.Float64Range(0, 1400).Draw(t, "ghi")
		zenith := rapid.Float64Range(0, 95).Draw(t, "zenith")
		got := Erbs(ghi, zenith, 1361)
		if closure := got.DNI*math.Cos(zenith*math.Pi/180) + got.DHI; math.Abs(closure-ghi) > 1e-9 || got.GHI != ghi {
			t.Fatalf("%+v closes to %g, global is %g", got, closure, ghi)
		}
		if got.DNI < 0 || got.DHI < 0 || zenith > 87 && got.DNI != 0 {
			t.Fatalf("%+v", got)
		}
	})
	if got := Erbs(-3, 30, 1361); got != (Irradiance{}) {
		t.Errorf("night offset of an instrument gives %+v", got)
	}
}

// The published pieces of the correlation meet where they change over, within the three digits of
// their coefficients.
func TestErbsHasNoSteps(t *testing.T) {
	for _, k := range []float64{0.22, 0.80} {
		below, above := diffuseShare(k), diffuseShare(k+1e-9)
		if math.Abs(below-above) > 2e-3 {
			t.Errorf("clearness %g: %.5f to %.5f", k, below, above)
		}
	}
}

// On the horizontal any split gives back the global light; on a plane and its reverse the diffuse
// light of an even sky and ground adds up to all there is.
func TestTiltedPlanesKeepTheLight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		toSun := drawPosition(t, 1.1, "sun").Vector()
		light := drawIrradiance(t, toSun[2])
		flat := OnPlaneHayDavies(light, 1361, toSun, sun.Position{Elevation_deg: 90}.Vector(), 0.3)
		if math.Abs(flat.Total()-light.GHI) > 1e-9*(1+light.GHI) {
			t.Fatalf("horizontal gets %g, global is %g", flat.Total(), light.GHI)
		}

		normal := drawPosition(t, -90, "plane").Vector()
		front := OnPlaneIsotropic(light, toSun, normal, 0.3)
		back := OnPlaneIsotropic(light, toSun, normal.Mul(-1), 0.3)
		if off := front.Sky + back.Sky - light.DHI; math.Abs(off) > 1e-9 {
			t.Fatalf("sky on both sides is off by %g", off)
		}
		if off := front.Ground + back.Ground - 0.3*light.GHI; math.Abs(off) > 1e-9 {
			t.Fatalf("ground light on both sides is off by %g", off)
		}
		if front.Beam > 0 && back.Beam > 0 {
			t.Fatalf("the beam is on both sides: %g, %g", front.Beam, back.Beam)
		}
	})
}

func TestSunBelowHorizonGivesNoBeam(t *testing.T) {
	below := sun.Position{Elevation_deg: -2, Azimuth_deg: 90}.Vector()
	east := sun.Position{Azimuth_deg: 90}.Vector()
	got := OnPlaneHayDavies(Irradiance{GHI: 4, DHI: 4, DNI: 10}, 1361, below, east, 0)
	if got.Beam != 0 || got.Circumsolar != 0 || got.Sky != 2 {
		t.Errorf("%+v", got)
	}
}

func TestHumidityAndDewPointAgree(t *testing.T) {
	// FAO-56 (Allen et al. 1998), example 5: at 25 °C and 54 % the air holds 3.168·0.54 = 1.711 kPa.
	dew := DewPointFromHumidity(25, 54)
	if got := SaturationPressure(dew); math.Abs(got-1711) > 1 {
		t.Errorf("vapour pressure %.1f Pa, want 1711", got)
	}
	if got := DewPointFromHumidity(31, 100); math.Abs(got-31) > 1e-9 {
		t.Errorf("saturated air of 31 °C has dew point %g", got)
	}
}

func TestPolarDaylight(t *testing.T) {
	if got := DaylightHours(80, 172); got != 24 {
		t.Errorf("midsummer at 80° N: %g h", got)
	}
	if got := DaylightHours(80, 355); got != 0 {
		t.Errorf("midwinter at 80° N: %g h", got)
	}
	if got := DailyExtraterrestrial(80, 355); math.Abs(got) > 1e-9 {
		t.Errorf("midwinter at 80° N: %g MJ/m²", got)
	}
}

func TestCloudsSendMoreLongwave(t *testing.T) {
	// EnergyPlus auxiliary programs, EPW data dictionary: 20 °C, dew point 10 °C, no cloud, 340.6
	// W/m²; the figure is printed with 0 °C as 273 K, which makes 0.6 W/m².
	if got := CloudySky(20, 10, 0); math.Abs(got-340.6) > 0.7 {
		t.Errorf("clear sky %.2f W/m², want 340.6", got)
	}
	last := 0.0
	for tenths := 0.0; tenths <= 10; tenths++ {
		got := CloudySky(20, 10, tenths)
		if got <= last || got > blackBody(20)*1.01 {
			t.Errorf("%g tenths: %.1f W/m² after %.1f", tenths, got, last)
		}
		last = got
	}
}
