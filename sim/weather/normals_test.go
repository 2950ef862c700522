package weather

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

const normalsCSV = "weather/stony-bend-normals.csv"

func readNormals(content string) (File, []Fault) {
	return Setting{Site: stonyBend(), Year: 2026}.Read("normals", strings.NewReader(content))
}

// Each month keeps its means: extremes, dew point, light and wind; the days change evenly.
func TestDaysOfNormalsKeepTheMeansOfTheirMonths(t *testing.T) {
	file, faults := readNormals(text(t, normalsCSV))
	if codes(faults) != "notice.normals" || file.Format != Normals || len(file.Rows) != 24*(31+30+31+31+30) {
		t.Fatalf("%d rows, faults %v", len(file.Rows), faults)
	}
	want := map[int][5]float64{5: {28.1, 12.4, 8.1, 26.4, 2.9}, 7: {36.6, 19.1, 11.8, 28.6, 2.5}, 9: {32.4, 15.6, 10.2, 21.0, 2.1}}
	var sum [13][5]float64
	var days [13]float64
	last := math.NaN()
	for i := 0; i < len(file.Rows); i += 24 {
		rows := file.Rows[i : i+24]
		m := rows[0].Month
		highest, lowest, light := math.Inf(-1), math.Inf(1), 0.0
		for _, row := range rows {
			highest, lowest = math.Max(highest, row.Air_C), math.Min(lowest, row.Air_C)
			sum[m][2] += row.Dew_C / 24
			light += row.GHI * 3600 / 1e6
			sum[m][4] += row.Wind_ms / 24
		}
		sum[m][0], sum[m][1], sum[m][3] = sum[m][0]+highest, sum[m][1]+lowest, sum[m][3]+light
		days[m]++
		if math.Abs(highest-last) > 0.3 {
			t.Errorf("from day to day the highest goes from %.2f to %.2f °C on %s", last, highest, rows[0].stamp())
		}
		last = highest
	}
	for m, want := range want {
		// Full hours miss the highest moment by a little, and the lowest, at sunrise, by more; the rest is kept.
		for q, allowed := range []float64{0.1, 0.35, 0.01, 0.01, 0.01} {
			if got := sum[m][q] / days[m]; math.Abs(got-want[q]) > allowed {
				t.Errorf("month %d, quantity %d: mean %.3f, want %.3f", m, q, got, want[q])
			}
		}
	}
	hours := mustDay(t, file, 7, 18)
	if date, _ := file.DateOf(7, 18); date != "2026-07-18" || hours[12].GHI_Wm2 < 700 || hours[12].DHI_Wm2 > 300 || hours[2].GHI_Wm2 != 0 {
		t.Errorf("%s: %+v", date, hours[12])
	}
	if file.Times.Shifted() {
		t.Errorf("the clock is blamed: %+v", file.Times)
	}
	checkCourse(t, file, 7, 18, 0.01)
}

// A year of months runs round; the mean of each is kept from December to January too.
func TestAYearOfNormalsRunsRound(t *testing.T) {
	var content strings.Builder
	content.WriteString("month,airMax_C,airMin_C\n")
	for m := 1; m <= 12; m++ {
		fmt.Fprintf(&content, "%d,%.1f,%.1f\n", m, 22-12*math.Cos(float64(m-1)/6*math.Pi), 10-8*math.Cos(float64(m-1)/6*math.Pi))
	}
	file, faults := readNormals(content.String())
	if codes(faults) != "notice.normals notice.normals-dew notice.normals-light notice.normals-wind" || len(file.Rows) != 8760 {
		t.Fatalf("%d rows, faults %v", len(file.Rows), faults)
	}
	first, end := file.Rows[14], file.Rows[8760-10]
	if math.Abs(first.Air_C-end.Air_C) > 0.5 {
		t.Errorf("afternoons of 1 January and 31 December have %.2f and %.2f °C", first.Air_C, end.Air_C)
	}
}

// FAO-56, example 15: July in Lyon at 45°43' N has 26.6 and 14.8 °C; light by the range of temperature is 22.3 MJ/m².
func TestLightByTheRangeOfTemperature(t *testing.T) {
	site := stonyBend()
	site.Latitude_deg, site.Longitude_deg, site.Elevation_m, site.UTCOffset_h = 45+43.0/60, 4.8, 200, 1
	file, _ := Setting{Site: site}.Read("Lyon", strings.NewReader("month,airMax_C,airMin_C\n7,26.6,14.8\n"))
	light := 0.0
	for _, row := range file.Rows {
		light += row.GHI * 3600 / 1e6 / 31
	}
	if math.Abs(light-22.3) > 0.1 {
		t.Errorf("light %.2f MJ/m² a day, want 22.3", light)
	}
}

// The published shares of hours (Duffie & Beckman, Solar Engineering of Thermal Processes, from memory: at sunset angles
// of 90° an hour about noon has a share of π/24·(a+b)·1/1) and the closed form of their sum: they are all of the day.
func TestSharesOfHours(t *testing.T) {
	n := normals{site: stonyBend()}
	n.site.Latitude_deg, n.site.Longitude_deg, n.site.UTCOffset_h = 0.001, 0, 0
	date := dayOfMonth(2026, 3, 20) // sunset angle 90°
	hours := n.light(date, 20, 37.5)
	sum, most := 0.0, 0.0
	for _, hour := range hours {
		sum += hour.GHI * 3600 / 1e6
		most = math.Max(most, hour.GHI*3600/1e6/20)
	}
	if math.Abs(sum-20) > 1e-9 {
		t.Errorf("the hours have %.9f MJ/m², the day 20", sum)
	}
	// a = 0.409+0.5016 sin 30°, b = 0.6609−0.4767 sin 30°: about noon π/24·(a+b) = 0.142.
	if math.Abs(most-0.142) > 0.003 {
		t.Errorf("the hour at noon has %.4f of the day, want 0.142", most)
	}
}

func TestFaultsOfNormals(t *testing.T) {
	good := text(t, normalsCSV)
	for name, test := range map[string]struct {
		content, code string
		line, column  int
	}{
		"no lowest":       {strings.Replace(good, "airMin_C", "lowest", 1), "fault.file-column", 1, 0},
		"no month":        {good[:strings.Index(good, "\n")+1], "fault.file-no-rows", 0, 0},
		"month 13":        {strings.Replace(good, "\n9,", "\n13,", 1), "fault.file-stamp", 6, 1},
		"month twice":     {strings.Replace(good, "\n9,", "\n8,", 1), "fault.normals-twice", 6, 1},
		"a word":          {strings.Replace(good, "36.6", "hot", 1), "fault.file-number", 4, 2},
		"an empty field":  {strings.Replace(good, "36.6", "", 1), "fault.normals-lack", 4, 2},
		"too hot":         {strings.Replace(good, "36.6", "96.6", 1), "fault.file-range", 4, 2},
		"Fahrenheit":      {strings.Replace(good, "36.6", "98", 1), "fault.file-range", 4, 2},
		"upside down":     {strings.Replace(good, "36.6,19.1", "19.1,36.6", 1), "fault.normals-order", 4, 3},
		"kilowatt hours":  {strings.Replace(good, "28.6", "43", 1), "fault.normals-light", 4, 5},
		"decimal commas":  {strings.Replace(good, "36.6", `"36,6"`, 1), "fault.file-comma", 4, 2},
		"a second header": {good + "month,airMax_C\n", "fault.file-stamp", 7, 1},
	} {
		file, faults := readNormals(test.content)
		if len(faults) == 0 || faults[0].Code != test.code || !Blocked(faults) || faults[0].Line != test.line || faults[0].Column != test.column || len(file.Rows) != 0 {
			t.Errorf("%s: %v, want %s at %d, %d", name, faults, test.code, test.line, test.column)
		}
	}
	site := stonyBend()
	site.Latitude_deg = 78
	if _, faults := (Setting{Site: site}).Read("", strings.NewReader("month,airMax_C,airMin_C,light_MJm2\n12,-10,-20,0.1\n")); !Blocked(faults) {
		t.Errorf("polar night: %v", faults)
	}
}
