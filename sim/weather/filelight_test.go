package weather

import (
	"math"
	"strings"
	"testing"
)

// withColumns sets fields, counted from 1, of all rows of an EPW file.
func withColumns(content string, values map[int]string) string {
	lines := strings.Split(strings.TrimSuffix(content, "\n"), "\n")
	for i, line := range lines[8:] {
		fields := strings.Split(line, ",")
		for column, value := range values {
			fields[column-1] = value
		}
		lines[8+i] = strings.Join(fields, ",")
	}
	return strings.Join(lines, "\n") + "\n"
}

// codes are the codes of a list of faults, joined.
func codes(faults []Fault) string {
	var all []string
	for _, fault := range faults {
		all = append(all, fault.Code)
	}
	return strings.Join(all, " ")
}

func TestGlobalLightAloneIsSplitAndFlagged(t *testing.T) {
	whole := mustRead(t, text(t, hotWeekEPW))
	file := mustRead(t, withColumns(text(t, hotWeekEPW), map[int]string{15: "9999", 16: "9999"}))
	want := mustDay(t, whole, 7, 16)
	got, faults := file.Day(7, 16)
	if codes(faults) != "notice.day-split" || Blocked(faults) {
		t.Fatalf("faults %v", faults)
	}
	if lit := faults[0].Values["count"].(int); lit < 14 || lit > 16 {
		t.Errorf("%d hours split; the sun is up for 14.3 h", lit)
	}
	beam, diffuse, global := 0.0, 0.0, 0.0
	for i, hour := range got {
		if hour.GHI_Wm2 != want[i].GHI_Wm2 || hour.DNI_Wm2 < 0 || hour.DHI_Wm2 < 0 || hour.DHI_Wm2 > hour.GHI_Wm2+1e-9 {
			t.Errorf("hour %d: %+v", i+1, hour)
		}
		beam, diffuse, global = beam+hour.DNI_Wm2, diffuse+hour.DHI_Wm2, global+hour.GHI_Wm2
	}
	// Erbs et al. 1982 gives a clear day some 10 to 25 % diffuse light.
	if share := diffuse / global; share < 0.1 || share > 0.25 {
		t.Errorf("diffuse share of a clear day %.3f", share)
	}
	measured := 0.0
	for _, hour := range want {
		measured += hour.DNI_Wm2
	}
	// The mean sky of the correlation is hazier than the invented one.
	if math.Abs(beam/measured-1) > 0.25 {
		t.Errorf("beam of the day %.0f W h/m², the file had %.0f", beam, measured)
	}
}

// Any two of global, beam and diffuse light give the third back.
func TestOneMissingPartOfTheLightIsClosed(t *testing.T) {
	want := mustDay(t, mustRead(t, text(t, hotWeekEPW)), 7, 16)
	for missing, column := range map[string]int{"global": 14, "beam": 15, "diffuse": 16} {
		file := mustRead(t, withColumns(text(t, hotWeekEPW), map[int]string{column: "9999"}))
		got, faults := file.Day(7, 16)
		if codes(faults) != "notice.day-closed" || Blocked(faults) {
			t.Errorf("without %s: faults %v", missing, faults)
			continue
		}
		for i, hour := range got {
			if want[i].GHI_Wm2 < 100 { // whole numbers leave little of low light
				continue
			}
			if math.Abs(hour.GHI_Wm2-want[i].GHI_Wm2) > 8 || math.Abs(hour.DNI_Wm2-want[i].DNI_Wm2) > 20 || math.Abs(hour.DHI_Wm2-want[i].DHI_Wm2) > 8 {
				t.Errorf("without %s, hour %d: %+v, the file had %+v", missing, i+1, hour, want[i])
			}
		}
	}
}

func TestDayWithoutLightIsBlocked(t *testing.T) {
	for name, columns := range map[string]map[int]string{
		"beam only":    {14: "9999", 16: "9999"},
		"diffuse only": {14: "9999", 15: "9999"},
	} {
		file := mustRead(t, withColumns(text(t, hotWeekEPW), columns))
		hours, faults := file.Day(7, 16)
		if !Blocked(faults) || hours != nil || faults[0].Code != "fault.day-missing" || faults[0].Values["what"] != "light" {
			t.Errorf("%s: %v", name, faults)
		}
	}
}

func TestDewPointComesFromHumidity(t *testing.T) {
	want := mustDay(t, mustRead(t, text(t, hotWeekEPW)), 7, 16)
	file := mustRead(t, withColumns(text(t, hotWeekEPW), map[int]string{8: "99.9"}))
	got, faults := file.Day(7, 16)
	if codes(faults) != "notice.day-dew" || faults[0].Values["count"] != 24 {
		t.Fatalf("faults %v", faults)
	}
	for i := range got {
		// The humidity stands in whole per cent, which is up to 0.4 K of dew point in dry air.
		if math.Abs(got[i].DewPoint_C-want[i].DewPoint_C) > 0.5 {
			t.Errorf("hour %d: dew point %.2f, the file had %.2f", i+1, got[i].DewPoint_C, want[i].DewPoint_C)
		}
	}
}

func TestShortGapsAreFilledAndLongOnesBlock(t *testing.T) {
	gap := func(hours int) File {
		lines := strings.Split(text(t, hotWeekEPW), "\n")
		for i := range hours {
			line := 8 + 4*24 + 9 + i // hour 10 of 16 July and on
			fields := strings.Split(lines[line], ",")
			fields[6], fields[21] = "99.9", "999"
			lines[line] = strings.Join(fields, ",")
		}
		return mustRead(t, strings.Join(lines, "\n"))
	}
	whole := mustDay(t, mustRead(t, text(t, hotWeekEPW)), 7, 16)
	file := gap(3)
	got, faults := file.Day(7, 16)
	if codes(faults) != "notice.day-filled" || Blocked(faults) || faults[0].Values["count"] != 6 {
		t.Fatalf("faults %v", faults)
	}
	if want := (whole[8].Air_C + whole[12].Air_C) / 2; math.Abs(got[10].Air_C-want) > 1e-9 {
		t.Errorf("middle of the gap %g °C, want %g", got[10].Air_C, want)
	}
	file = gap(4)
	if _, faults := file.Day(7, 16); !Blocked(faults) || faults[0].Code != "fault.day-missing" || faults[0].Values["what"] != "air" || faults[0].Line != 8+4*24+10 {
		t.Errorf("faults %v", faults)
	}
}

func TestDayThatIsNotThere(t *testing.T) {
	file := mustRead(t, text(t, hotWeekEPW))
	_, faults := file.Day(7, 19)
	if !Blocked(faults) || faults[0].Code != "fault.day-absent" || faults[0].Values["from"] != "07-12 01:00" || faults[0].Values["to"] != "07-18 24:00" {
		t.Errorf("faults %v", faults)
	}
}

// A PVGIS file says in a comment that its light is of moments. Here the light of the file is that
// of the middle of each hour, so that an offset of -90 minutes from the next stamp changes nothing
// but the straight lines between.
func TestLightOfMomentsIsMovedIntoHours(t *testing.T) {
	want := mustDay(t, mustRead(t, text(t, hotWeekEPW)), 7, 16)
	content := strings.Replace(text(t, hotWeekEPW), "COMMENTS 2,", "COMMENTS 2,Irradiance Time Offset (h):-1.5000,", 1)
	file, faults := Read("test", strings.NewReader(content))
	if codes(faults) != "notice.file-moments" || !file.Times.Declared || file.Times.Rule_min != -30 {
		t.Fatalf("faults %v, %+v", faults, file.Times)
	}
	for i, hour := range mustDay(t, file, 7, 16) {
		if want[i].GHI_Wm2 < 300 { // where the day bends
			continue
		}
		if math.Abs(hour.GHI_Wm2-want[i].GHI_Wm2) > 0.03*want[i].GHI_Wm2 || math.Abs(hour.DNI_Wm2-want[i].DNI_Wm2) > 0.03*want[i].DNI_Wm2 {
			t.Errorf("hour %d: %+v, the file has %+v", i+1, hour, want[i])
		}
	}
}
