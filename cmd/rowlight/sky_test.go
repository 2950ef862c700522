package main

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"rowlight/testdata"
)

// number reads a cell of a csv row.
func number(t *testing.T, row map[string]string, key string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(row[key], 64)
	if err != nil {
		t.Fatalf("%s: %v", key, err)
	}
	return value
}

// reference reads a reference table; its lines that begin with # name the source.
func reference(t *testing.T, path string) []map[string]string {
	t.Helper()
	raw, err := testdata.FS.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for line := range strings.Lines(string(raw)) {
		if !strings.HasPrefix(line, "#") {
			lines = append(lines, line)
		}
	}
	return readCSV(t, strings.Join(lines, ""))
}

// TestSunFollowsSPA runs the command at the places and moments of a reference table: NREL SPA (Reda &
// Andreas 2008, NREL/TP-560-34302).
func TestSunFollowsSPA(t *testing.T) {
	const tolerance_deg = 0.03 // of the corrected low-order position against SPA
	spa := reference(t, "reference/solarpos_1.csv")
	days := map[string][]map[string]string{}
	for i := 0; i < len(spa); i += 7 {
		lat, lon, utc := spa[i]["lat_deg"], spa[i]["lon_deg"], spa[i]["utc"]
		key := lat + lon + utc[:10]
		if days[key] == nil {
			got := rowlight("", "sun", "--lat", lat, "--lon", lon, "--date", utc[:10], "--format", "csv")
			if got.code != 0 {
				t.Fatal(got.stderr)
			}
			days[key] = readCSV(t, got.stdout)
		}
		hour, err := strconv.Atoi(utc[11:13])
		if err != nil || utc[13:] != ":00:00Z" {
			t.Fatalf("the table has a row at %s", utc)
		}
		row := days[key][hour]
		if row["time"] != utc {
			t.Fatalf("row %d is of %s, not %s", hour, row["time"], utc)
		}
		elevation, azimuth := number(t, spa[i], "true_elev_deg"), number(t, spa[i], "azimuth_deg")
		turn := math.Remainder(number(t, row, "azimuth_deg")-azimuth, 360) * math.Cos(elevation*math.Pi/180)
		if off := number(t, row, "elevation_deg") - elevation; math.Abs(off) > tolerance_deg || math.Abs(turn) > tolerance_deg {
			t.Errorf("%s at %s, %s: off by %.3f° up, %.3f° around", utc, lat, lon, off, turn)
		}
	}
	if len(days) < 4 {
		t.Errorf("only %d days", len(days))
	}
}

func TestSunGivesRiseTransitAndSet(t *testing.T) {
	// Bordeaux, 21 June 2022: root of SPA elevation = -0.8333°, testdata/reference/suntimes.csv.
	args := []string{"sun", "--lat", "44.84", "--lon", "-0.58", "--date", "2022-06-21", "--utc-offset", "1"}
	want := map[string]string{"rise": "2022-06-21T04:16:13Z", "transit": "2022-06-21T12:04:08Z", "set": "2022-06-21T19:52:03Z"}
	var day map[string]any
	if err := json.Unmarshal([]byte(rowlight("", append(args, "--format", "json")...).stdout), &day); err != nil {
		t.Fatal(err)
	}
	listing := rowlight("", args...).stdout
	for event, moment := range want {
		got, err := time.Parse(time.RFC3339, day[event].(string))
		if err != nil {
			t.Fatal(err)
		}
		reference, err := time.Parse(time.RFC3339, moment)
		if err != nil {
			t.Fatal(err)
		}
		if off := got.Sub(reference); off.Abs() > time.Minute {
			t.Errorf("%s off by %v", event, off)
		}
		if !strings.Contains(listing, day[event].(string)) || !strings.Contains(day[event].(string), "+01:00") {
			t.Errorf("%s %v is not in the table on the clock asked for", event, day[event])
		}
	}
	if rows := day["rows"].([]any); len(rows) != 25 {
		t.Errorf("%d rows", len(rows))
	}
}

func TestSunInPolarNightHasNoRise(t *testing.T) {
	got := rowlight("", "sun", "--lat", "75", "--lon", "20", "--date", "2026-12-21", "--utc-offset", "1", "--format", "json")
	var day map[string]any
	if err := json.Unmarshal([]byte(got.stdout), &day); err != nil {
		t.Fatal(err)
	}
	if _, rises := day["rise"]; rises || day["polar"] != "night" {
		t.Errorf("%v, %v", day["rise"], day["polar"])
	}
	if text := rowlight("", "sun", "--lat", "75", "--lon", "20", "--date", "2026-12-21").stdout; !strings.Contains(text, "no rise and no set: polar night") {
		t.Error(text)
	}
}

func TestStepsOfAnyLength(t *testing.T) {
	got := rowlight("", "sun", "--lat", "0", "--lon", "0", "--date", "2026-03-20", "--step", "25m", "--format", "csv")
	rows := readCSV(t, got.stdout)
	if last := rows[len(rows)-1]["time"]; len(rows) != 58 || last != "2026-03-20T23:45:00Z" {
		t.Errorf("%d rows, the last at %s", len(rows), last)
	}
}

func TestPlaceFaultsComeAllAtOnce(t *testing.T) {
	got := rowlight("", "sky", "--lat", "91", "--lon", "0", "--date", "2026-02-30", "--step", "0s", "--water_cm", "99")
	if got.code != 2 || got.stdout != "" {
		t.Fatalf("%+v", got)
	}
	for _, want := range []string{"sky: --lat: 91° is outside -90° to 90°", "--water_cm: 99 cm is outside", "--date: “2026-02-30” is no date", "--step: 0s is outside 1s to 24h0m0s"} {
		if !strings.Contains(got.stderr, want) {
			t.Errorf("no %q in\n%s", want, got.stderr)
		}
	}
	if lines := strings.Count(got.stderr, "\n"); lines != 4 {
		t.Errorf("%d lines", lines)
	}
	if got := rowlight("", "sun", "--lat", "1"); got.code != 1 || !strings.Contains(got.stderr, `"date"`) {
		t.Errorf("%+v", got)
	}
}

// TestSkyClosesAndIsDarkAtNight holds GHI = DNI·sin(elevation) + DHI in every row.
func TestSkyClosesAndIsDarkAtNight(t *testing.T) {
	got := rowlight("", "sky", "--lat", "36.4", "--lon", "-119.9", "--date", "2026-07-18", "--utc-offset", "-8", "--format", "csv", "--step", "30m")
	brightest := 0.0
	for _, row := range readCSV(t, got.stdout) {
		sin := math.Sin(number(t, row, "elevation_deg") * math.Pi / 180)
		ghi, dni, dhi := number(t, row, "ghi_Wm2"), number(t, row, "dni_Wm2"), number(t, row, "dhi_Wm2")
		if sin <= 0 && ghi+dni+dhi != 0 {
			t.Errorf("light at night: %v", row)
		}
		if sin > 0 && math.Abs(dni*sin+dhi-ghi) > 1e-6 {
			t.Errorf("%v does not close", row)
		}
		brightest = math.Max(brightest, ghi)
	}
	// Bird & Hulstrom 1981 by independent code (testdata/reference/clearsky_bird.csv): 1002 to 1074 W/m² with the
	// sun 0 to 20° off the zenith and 1.42 cm of water; here it is 15° off, at 3 % less of the sun in July.
	if brightest < 940 || brightest > 1074 {
		t.Errorf("brightest %v", brightest)
	}
}

// TestSkyFollowsBird compares with a row of testdata/reference/clearsky_bird.csv (Bird & Hulstrom 1981,
// independent code): the sun 30° off the zenith, 1.42 cm of water, DNI over the irradiance outside the atmosphere.
func TestSkyFollowsBird(t *testing.T) {
	const want = 920.871 / 1361.0
	// On 20 March the sun passes overhead at the equator, so at 120 minutes from noon it is 30° off.
	got := rowlight("", "sky", "--lat", "0", "--lon", "0", "--date", "2026-03-20", "--water_cm", "1.42", "--step", "1m", "--format", "csv")
	nearest, share := 90.0, 0.0
	for _, row := range readCSV(t, got.stdout) {
		if off := math.Abs(number(t, row, "elevation_deg") - 60); off < nearest {
			nearest = off
			share = number(t, row, "dni_Wm2") / (1361 * 1.0087) // Spencer 1971 on day 79: 1.0087; 1361 W/m²
		}
	}
	if nearest > 0.2 || math.Abs(share/want-1) > 0.003 {
		t.Errorf("%.3f° off 60°: share %.5f, want %.5f", nearest, share, want)
	}
}
