package sky

import (
	"math"
	"strconv"
	"testing"

	"rowlight/sim/internal/table"
	"rowlight/sim/sun"
	"rowlight/testdata"
)

func read(t testing.TB, name string) table.Table {
	t.Helper()
	got, err := table.Read(testdata.FS, "reference/"+name+".csv")
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func number(t testing.TB, from table.Table, row int, column string) float64 {
	t.Helper()
	value, err := from.Float(row, column)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

func whole(t testing.TB, from table.Table, row int, column string) int {
	t.Helper()
	value, err := strconv.Atoi(from.String(row, column))
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// check fails when got is further from want than allowed, and returns the distance.
func check(t testing.TB, row int, what string, got, want, allowed float64) float64 {
	t.Helper()
	off := math.Abs(got - want)
	if !(off <= allowed) {
		t.Errorf("row %d, %s: %.6g, want %.6g within %.2g", row+1, what, got, want, allowed)
	}
	return off
}

// Bird & Hulstrom 1981 by an independent implementation.
func TestBirdWithinOneThousandth(t *testing.T) {
	want := read(t, "clearsky_bird")
	worst := 0.0
	for i := range want.Rows {
		get := func(column string) float64 { return number(t, want, i, column) }
		got := Bird(get("zenith_deg"), get("dni_extra"), Atmosphere{
			Ozone_cm: get("ozone_cm"), Water_cm: get("pw_cm"), AOD380: get("aod380"), AOD500: get("aod500"),
			Pressure_Pa: get("pressure_pa"), Albedo: get("albedo"),
		})
		for column, value := range map[string]float64{"ghi": got.GHI, "dni": got.DNI, "dhi": got.DHI} {
			worst = max(worst, check(t, i, column, value/get(column), 1, 1e-3))
		}
	}
	t.Logf("%d rows: worst %.2g", want.Len(), worst)
}

// Erbs, Klein & Duffie 1982 by an independent implementation.
func TestErbsWithinHalfAWatt(t *testing.T) {
	want := read(t, "decomposition")
	worst := 0.0
	for i := range want.Rows {
		get := func(column string) float64 { return number(t, want, i, column) }
		got := Erbs(get("ghi"), get("zenith_deg"), get("dni_extra_1366.1"))
		worst = max(worst, check(t, i, "dni", got.DNI, get("erbs_dni"), 0.5))
		worst = max(worst, check(t, i, "dhi", got.DHI, get("erbs_dhi"), 0.5))
	}
	t.Logf("%d rows: worst %.2g W/m²", want.Len(), worst)
}

// Vertical walls by an independent implementation: isotropic and Hay & Davies 1980.
func TestTranspositionToWallsWithinATenthOfAWatt(t *testing.T) {
	facing := map[string]float64{"N": 0, "E": 90, "S": 180, "W": 270}
	want := read(t, "transposition_vertical")
	worst := 0.0
	for i := range want.Rows {
		get := func(column string) float64 { return number(t, want, i, column) }
		light := Irradiance{GHI: get("ghi"), DNI: get("dni"), DHI: get("dhi")}
		toSun := sun.Position{Elevation_deg: 90 - get("zenith_deg"), Azimuth_deg: get("sun_azimuth_deg")}.Vector()
		normal := sun.Position{Azimuth_deg: facing[want.String(i, "facing")]}.Vector()
		even := OnPlaneIsotropic(light, toSun, normal, get("albedo"))
		hay := OnPlaneHayDavies(light, get("dni_extra"), toSun, normal, get("albedo"))
		for column, value := range map[string]float64{
			"sky_isotropic": even.Sky + even.Circumsolar, "sky_haydavies": hay.Sky + hay.Circumsolar,
			"beam": hay.Beam, "ground": hay.Ground,
		} {
			worst = max(worst, check(t, i, column, value, get(column), 0.1))
		}
	}
	t.Logf("%d rows: worst %.2g W/m²", want.Len(), worst)
}

func TestBrutsaertEmissivity(t *testing.T) {
	want := read(t, "sky_emissivity")
	for i := range want.Rows {
		air, vapour := number(t, want, i, "T_C"), number(t, want, i, "e_hPa")*100
		check(t, i, "emissivity", BrutsaertEmissivity(air, vapour), number(t, want, i, "brutsaert"), 1e-4)
		check(t, i, "longwave", Brutsaert(air, DewPoint(vapour)), number(t, want, i, "Ld_brutsaert_W_m2"), 0.05)
	}
}

// FAO-56 eq. 11 and 13, and the formulation of Wagner & Pruss 1993 as the truth.
func TestSaturationPressure(t *testing.T) {
	want := read(t, "es_fao")
	for i := range want.Rows {
		air := number(t, want, i, "T_C")
		got := SaturationPressure(air)
		check(t, i, "saturation pressure", got/1000, number(t, want, i, "es_fao56"), 1e-5)
		check(t, i, "slope", SaturationSlope(air)/1000, number(t, want, i, "slope_fao56_kPa_per_C"), 1e-5)
		check(t, i, "against Wagner & Pruss", got/1000/number(t, want, i, "wagner_pruss"), 1, 1.5e-3)
		check(t, i, "dew point", DewPoint(got), air, 1e-9)
	}
}

// FAO-56 eq. 21 and 34, -60° to 60° through the year.
func TestDailyExtraterrestrialAndDaylight(t *testing.T) {
	want := read(t, "fao56_ra")
	for i := range want.Rows {
		latitude, day := number(t, want, i, "lat_deg"), whole(t, want, i, "J_mid15")
		check(t, i, "daily extraterrestrial", DailyExtraterrestrial(latitude, day), number(t, want, i, "Ra_MJ_m2_d"), 1e-3)
		check(t, i, "daylight", DaylightHours(latitude, day), number(t, want, i, "N_h"), 1e-3)
	}
}
