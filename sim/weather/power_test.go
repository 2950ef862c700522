package weather

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

const hotWeekPOWER = "weather/stony-bend-hot-week-power.csv"

// The file has the invented week of the EPW file as POWER would: means over hours named by their beginning, light in
// MJ, wind at 2 m. Read, both have the same days, but for the air, which runs between the middles of the hours.
func TestReadPOWER(t *testing.T) {
	file, faults := Read("test", strings.NewReader(text(t, hotWeekPOWER)))
	if codes(faults) != "notice.file-solar-clock" || faults[0].Values["zone"] != "UTC−8" {
		t.Fatalf("faults %v", faults)
	}
	if file.Format != POWER || file.Latitude_deg != 36.4 || file.Longitude_deg != -119.9 || file.UTCOffset_h != -8 || file.Elevation_m != 90 || len(file.Rows) != 168 {
		t.Fatalf("%d rows, %+v", len(file.Rows), file.Times)
	}
	want := mustRead(t, text(t, hotWeekEPW))
	for i, row := range file.Rows {
		w := want.Rows[i]
		if row.stamp() != w.stamp() || row.Year != w.Year {
			t.Fatalf("row %d is %d %s, want %d %s", i, row.Year, row.stamp(), w.Year, w.stamp())
		}
		if math.Abs(row.GHI-w.GHI) > 0.1 || math.Abs(row.DNI-w.DNI) > 0.1 || math.Abs(row.DHI-w.DHI) > 0.1 || row.Longwave_Wm2 != w.Longwave_Wm2 {
			t.Errorf("%s: light %.2f, %.2f, %.2f, longwave %g; want %+v", row.stamp(), row.GHI, row.DNI, row.DHI, row.Longwave_Wm2, w)
		}
		if i > 1 && i < 166 && math.Abs(row.Air_C-w.Air_C) > 0.9 {
			t.Errorf("%s: air %.2f, want about %.2f", row.stamp(), row.Air_C, w.Air_C)
		}
	}
	// 2.9 and 2.8 m/s at 10 m about 14:00, which FAO-56 eq. 47 brought to 2 m and back.
	if got := file.Rows[13].Wind_ms; math.Abs(got-2.9) > 0.15 {
		t.Errorf("wind %.2f m/s at 10 m, want 2.9", got)
	}
	if math.Abs(file.Times.Best_min+30) > 5 {
		t.Errorf("the light belongs to %g min from the stamps, want -30", file.Times.Best_min)
	}
	mustDay(t, file, 7, 15)
}

// A file in UTC is moved to the band of its longitude; the unit follows the header.
func TestPOWERInUTCAndOtherUnits(t *testing.T) {
	lst := text(t, hotWeekPOWER)
	want, _ := Read("test", strings.NewReader(lst))
	var utc strings.Builder
	for line := range strings.Lines(lst) {
		fields := strings.Split(line, ",")
		if len(fields) == 11 && fields[0] == "2019" {
			day, hour := atoi(t, fields[2]), atoi(t, fields[3])+8
			if hour >= 24 {
				day, hour = day+1, hour-24
			}
			fields[2], fields[3] = strconv.Itoa(day), strconv.Itoa(hour)
		}
		utc.WriteString(strings.Join(fields, ","))
	}
	moved, faults := Read("test", strings.NewReader(strings.Replace(utc.String(), " in LST", " in UTC", 1)))
	if codes(faults) != "notice.file-solar-clock" || len(moved.Rows) != 168 {
		t.Fatalf("%d rows, %v", len(moved.Rows), faults)
	}
	for i := range want.Rows {
		if moved.Rows[i].stamp() != want.Rows[i].stamp() || moved.Rows[i].GHI != want.Rows[i].GHI {
			t.Fatalf("row %d: %+v, want %+v", i, moved.Rows[i], want.Rows[i])
		}
	}
	kelvin := replaced(t, lst, "at 2 Meters (C)", "at 2 Meters (furlong)")
	if _, faults := Read("test", strings.NewReader(kelvin)); faults[len(faults)-1].Code != "fault.file-unit" || faults[len(faults)-1].Column != 9 || !Blocked(faults) {
		t.Errorf("faults %v", faults)
	}
	watts := strings.ReplaceAll(lst, "(MJ/hr)", "(Wh/m^2)")
	inWatts, _ := Read("test", strings.NewReader(watts))
	if got, want := inWatts.Rows[12].GHI*1e6/3600, want.Rows[12].GHI; math.Abs(got/want-1) > 1e-9 {
		t.Errorf("a MJ has %g, want %g W h", got, want)
	}
}

func TestFaultsOfPOWERFiles(t *testing.T) {
	good := text(t, hotWeekPOWER)
	row := "2019,7,15,12,"
	at := strings.Index(good, row)
	line := 1 + strings.Count(good[:at], "\n")
	withField := func(column int, value string) string {
		lines := strings.Split(good, "\n")
		fields := strings.Split(lines[line-1], ",")
		fields[column-1] = value
		lines[line-1] = strings.Join(fields, ",")
		return strings.Join(lines, "\n")
	}
	for name, test := range map[string]struct {
		content, code string
		line, column  int
		blocks        bool
	}{
		"no end of the header": {strings.Replace(good, powerEnd, "", 1), "fault.file-header", 60, 0, true},
		"no place":             {strings.Replace(good, "Location:", "Somewhere", 1), "", 0, 0, false},
		"latitude":             {strings.Replace(good, "Latitude  36.4", "Latitude  north", 1), "fault.file-place", 4, 1, true},
		"no air":               {strings.Replace(good, ",T2M,", ",T9M,", 1), "fault.file-column", 16, 0, true},
		"no hour":              {strings.Replace(good, "DY,HR,", "DY,XX,", 1), "fault.file-column", 16, 0, true},
		"hour 24":              {withField(4, "24"), "fault.file-stamp", line, 4, false},
		"a word":               {withField(9, "hot"), "fault.file-number", line, 9, false},
		"too hot":              {withField(9, "99"), "fault.file-range", line, 9, false},
		"cut":                  {good[:len(good)-20], "fault.file-fields", 16 + 168, 0, false},
		"twice":                {withField(4, "11"), "fault.file-again", line, 0, false},
		"nothing measured":     {voidOf(good), "fault.file-void", 0, 0, true},
	} {
		t.Run(name, func(t *testing.T) {
			_, faults := Read("test", strings.NewReader(test.content))
			if test.code == "" {
				if Blocked(faults) {
					t.Errorf("faults %v", faults)
				}
				return
			}
			for _, fault := range faults {
				if fault.Code == test.code && fault.Line == test.line && fault.Column == test.column && fault.Blocks == test.blocks {
					return
				}
			}
			t.Errorf("faults %v, want %s at %d, %d", faults, test.code, test.line, test.column)
		})
	}
}

// voidOf is a POWER file whose every value is missing.
func voidOf(good string) string {
	var out strings.Builder
	for line := range strings.Lines(good) {
		if fields := strings.Split(line, ","); len(fields) == 11 && fields[0] == "2019" {
			line = strings.Join(fields[:4], ",") + strings.Repeat(",-999", 7) + "\n"
		}
		out.WriteString(line)
	}
	return out.String()
}

func atoi(t *testing.T, text string) int {
	t.Helper()
	number, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return number
}
