package weather

import (
	"io/fs"
	"math"
	"strings"
	"testing"

	"golang.org/x/text/encoding/unicode"

	"rowlight/sim/scenario"
	"rowlight/testdata"
)

const (
	hotWeekEPW  = "weather/stony-bend-hot-week.epw"
	hotWeekTMY3 = "weather/kestrel-flat-hot-week-tmy3.csv"
)

// text is an invented weather file with LF at its line ends.
func text(t testing.TB, name string) string {
	t.Helper()
	raw, err := fs.ReadFile(testdata.FS, name)
	if err != nil {
		t.Fatal(err)
	}
	return strings.ReplaceAll(string(raw), "\r\n", "\n")
}

// mustRead reads a file that has nothing wrong.
func mustRead(t testing.TB, content string) File {
	t.Helper()
	file, faults := Read("test", strings.NewReader(content))
	if len(faults) > 0 {
		t.Fatalf("faults %v", faults)
	}
	return file
}

func mustDay(t testing.TB, file File, month, day int) []scenario.Hour {
	t.Helper()
	hours, faults := file.Day(month, day)
	if Blocked(faults) || len(hours) != 24 {
		t.Fatalf("%02d-%02d: %d hours, faults %v", month, day, len(hours), faults)
	}
	return hours
}

func TestReadEPW(t *testing.T) {
	file := mustRead(t, text(t, hotWeekEPW))
	if file.Format != EPW || file.Latitude_deg != 36.4 || file.Longitude_deg != -119.9 || file.UTCOffset_h != -8 || file.Elevation_m != 90 {
		t.Errorf("place %+v", file)
	}
	if file.Place != "Stony Bend (invented)" || len(file.Rows) != 168 {
		t.Errorf("%q, %d rows", file.Place, len(file.Rows))
	}
	// The row "2019,7,12,14,…" of the file.
	want := scenario.Hour{GHI_Wm2: 947, DNI_Wm2: 927, DHI_Wm2: 98, Air_C: 35.9, DewPoint_C: 10.6, Wind_ms: 2.9, WindFrom_deg: 325, Longwave_Wm2: 422}
	if got := mustDay(t, file, 7, 12)[13]; got != want {
		t.Errorf("hour 14 of 12 July: %+v, want %+v", got, want)
	}
	if date, ok := file.DateOf(7, 18); !ok || date != "2019-07-18" {
		t.Errorf("date %q, %v", date, ok)
	}
	if day, ok := file.Hottest(); !ok || day.Month != 7 || day.Day != 18 {
		t.Errorf("hottest day %+v, %v", day, ok)
	}
}

func TestReadTMY3(t *testing.T) {
	file := mustRead(t, text(t, hotWeekTMY3))
	if file.Format != TMY3 || file.Latitude_deg != -34.3 || file.Longitude_deg != 140.4 || file.UTCOffset_h != 9.5 || file.Elevation_m != 60 {
		t.Errorf("place %+v", file)
	}
	if file.Place != "KESTREL FLAT, INVENTED FOR TESTS, XX" || len(file.Rows) != 168 {
		t.Errorf("%q, %d rows", file.Place, len(file.Rows))
	}
	hours, faults := file.Day(1, 29)
	// The row "01/29/1994,14:00,…" of the file; its longwave comes from no cloud at dew point 9.6 °C.
	got := hours[13]
	if got.GHI_Wm2 != 956 || got.DNI_Wm2 != 929 || got.DHI_Wm2 != 98 || got.Air_C != 32.7 || got.DewPoint_C != 9.6 || got.Wind_ms != 4.0 || got.WindFrom_deg != 30 {
		t.Errorf("hour 14 of 29 January: %+v", got)
	}
	if len(faults) != 1 || faults[0].Code != "notice.day-longwave" || faults[0].Values["count"] != 24 || got.Longwave_Wm2 < 380 || got.Longwave_Wm2 > 420 {
		t.Errorf("longwave %g, faults %v", got.Longwave_Wm2, faults)
	}
	// The months of a typical year come from different years, in the order of the file.
	for _, test := range []struct {
		month, day int
		want       string
	}{{1, 31, "1994-01-31"}, {2, 1, "2001-02-01"}} {
		if date, ok := file.DateOf(test.month, test.day); !ok || date != test.want {
			t.Errorf("date %q, want %s", date, test.want)
		}
	}
}

func TestTheLightItselfTellsTheClock(t *testing.T) {
	for _, name := range []string{hotWeekEPW, hotWeekTMY3} {
		file := mustRead(t, text(t, name))
		if file.Times.By != Closure || math.Abs(file.Times.Best_min+30) > 2 {
			t.Errorf("%s: %+v, want the middle of the hour", name, file.Times)
		}
	}
	// Clocks that run on daylight saving, and on a neighbouring zone.
	for shift, zone := range map[float64]string{60: "-7.0", -60: "-9.0"} {
		content := strings.Replace(text(t, hotWeekEPW), ",-8.0,90.0", ","+zone+",90.0", 1)
		file, faults := Read("test", strings.NewReader(content))
		if len(faults) != 1 || faults[0].Code != "notice.file-shift-closure" || faults[0].Blocks || len(file.Rows) != 168 {
			t.Fatalf("zone %s: %d rows, faults %v", zone, len(file.Rows), faults)
		}
		if math.Abs(file.Times.Best_min-(-30+shift)) > 5 {
			t.Errorf("zone %s: best offset %g, want %g", zone, file.Times.Best_min, -30+shift)
		}
	}
}

func TestEndsOfLinesMarksAndBytesOfOldFiles(t *testing.T) {
	plain := text(t, hotWeekEPW)
	want := mustRead(t, plain)
	for name, content := range map[string]string{
		"CR LF":           strings.ReplaceAll(plain, "\n", "\r\n"),
		"CR":              strings.ReplaceAll(plain, "\n", "\r"),
		"byte order mark": "\ufeff" + plain,
		"no last newline": strings.TrimSuffix(plain, "\n"),
		"blank last line": plain + "\n",
		"blanks":          strings.ReplaceAll(plain, "2019,7,", "2019, 7, "),
		"SAVING":          strings.Replace(plain, "SAVINGS", "SAVING", 1),
		"UTF-16":          utf16Text(plain, unicode.LittleEndian, unicode.UseBOM),
		"UTF-16, bare":    utf16Text(plain, unicode.LittleEndian, unicode.IgnoreBOM),
		"UTF-16, big end": utf16Text(plain, unicode.BigEndian, unicode.UseBOM),
		"stray quote":     strings.Replace(plain, "COMMENTS 2,A hot", `COMMENTS 2,A "hot`, 1),
	} {
		t.Run(name, func(t *testing.T) {
			got := mustRead(t, content)
			if len(got.Rows) != 168 || got.Rows[100].Air_C != want.Rows[100].Air_C || got.Rows[100].Line != want.Rows[100].Line || got.Place != want.Place {
				t.Errorf("%d rows, row 100 %+v", len(got.Rows), got.Rows[100])
			}
		})
	}
	latin1 := mustRead(t, strings.Replace(plain, "Stony Bend (invented)", "Ch\xe2teau (invented)", 1))
	if latin1.Place != "Château (invented)" {
		t.Errorf("place %q", latin1.Place)
	}
}

// Copies of TMY3 files write midnight as 00:00, of the next day or of the same one.
func TestMidnightIsTheEndOfTheDay(t *testing.T) {
	plain := text(t, hotWeekTMY3)
	want := mustRead(t, plain)
	same := strings.ReplaceAll(plain, ",24:00,", ",00:00,")
	next := plain
	for _, pair := range [][2]string{
		{"01/29/1994", "01/30/1994"}, {"01/30/1994", "01/31/1994"}, {"01/31/1994", "02/01/1994"}, {"02/01/2001", "02/02/2001"},
		{"02/02/2001", "02/03/2001"}, {"02/03/2001", "02/04/2001"}, {"02/04/2001", "02/05/2001"},
	} {
		next = strings.Replace(next, pair[0]+",24:00,", pair[1]+",00:00,", 1)
	}
	for name, content := range map[string]string{"same day": same, "next day": next} {
		got := mustRead(t, content)
		for i, row := range got.Rows {
			if row.stamp() != want.Rows[i].stamp() {
				t.Fatalf("%s: row %d is %s, want %s", name, i, row.stamp(), want.Rows[i].stamp())
			}
		}
	}
}

func TestColumnsOfCopiesAreFoundByName(t *testing.T) {
	plain := text(t, hotWeekTMY3)
	stray := mustRead(t, strings.Replace(plain, "DNI (W/m^2),", "DNI (W/m^2)),", 1))
	if got := mustDay(t, stray, 1, 29)[13].DNI_Wm2; got != 929 {
		t.Errorf("stray bracket: DNI %g", got)
	}
	// Three more columns at the end, as files with present weather have.
	lines := strings.Split(strings.TrimSuffix(plain, "\n"), "\n")
	lines[1] += ",PresWth (METAR code),PresWth source,PresWth uncert (code)"
	for i := range lines[2:] {
		lines[i+2] += ",00,C,8"
	}
	if got := mustRead(t, strings.Join(lines, "\n")); len(got.Rows) != 168 {
		t.Errorf("71 columns: %d rows", len(got.Rows))
	}
}

// The week through the course of a day: the light keeps its energy and fits the sun.
func TestHotWeeksHaveACourse(t *testing.T) {
	for _, name := range []string{hotWeekEPW, hotWeekTMY3} {
		file := mustRead(t, text(t, name))
		for i := 0; i < len(file.Rows); i += 24 {
			checkCourse(t, file, file.Rows[i].Month, file.Rows[i].Day, 0.005)
		}
	}
}

// checkCourse runs a day of a file and checks that no more than a share of its light has no place.
func checkCourse(t testing.TB, file File, month, day int, share float64) {
	t.Helper()
	s := scenario.Scenario{}
	s.Site = scenario.Site{Latitude_deg: file.Latitude_deg, Longitude_deg: file.Longitude_deg, Elevation_m: file.Elevation_m, UTCOffset_h: file.UTCOffset_h}
	s.Weather.Date, _ = file.DateOf(month, day)
	s.Weather.Hours = mustDay(t, file, month, day)
	got := course(t, s, instants())
	light := 0.0
	for _, hour := range s.Weather.Hours {
		light += hour.DNI_Wm2 + hour.DHI_Wm2
	}
	if got.Unplaced_Wh > share*light+1 {
		t.Errorf("%s %02d-%02d: %.1f of %.1f W h/m² without a place", file.Name, month, day, got.Unplaced_Wh, light)
	}
	kept := 24 * (trapezoids(got.Instants, beamOf) + trapezoids(got.Instants, diffuseOf))
	if math.Abs(kept+got.Unplaced_Wh-light) > 1e-6*light {
		t.Errorf("%s %02d-%02d: %.3f of %.3f W h/m² kept", file.Name, month, day, kept+got.Unplaced_Wh, light)
	}
}

// utf16Text is a text in UTF-16.
func utf16Text(text string, order unicode.Endianness, mark unicode.BOMPolicy) string {
	out, err := unicode.UTF16(order, mark).NewEncoder().String(text)
	if err != nil {
		panic(err)
	}
	return out
}
