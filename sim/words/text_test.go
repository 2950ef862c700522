package words_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rowlight/sim/growth"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
	"rowlight/sim/sun"
	"rowlight/sim/weather"
	"rowlight/sim/words"
)

func TestTemperaturesAndDifferencesInBothSystems(t *testing.T) {
	tests := []struct {
		value          float64
		unit           string
		decimals       int
		metric, us     string
		whyTheseValues string
	}{
		{12, "K", 1, "12.0 °C", "21.6 °F", "a difference has no offset: 12 · 1.8"},
		{0, "degC", 1, "0.0 °C", "32.0 °F", "ice"},
		{100, "degC", 0, "100 °C", "212 °F", "boiling water"},
		{-40, "degC", 0, "-40 °C", "-40 °F", "where the scales meet"},
		{0.3048, "m", 2, "0.30 m", "1.00 ft", "1 ft = 0.3048 m"},
		{25.4, "mm", 1, "25.4 mm", "1.0 in", "1 in = 25.4 mm"},
		{2.54, "cm", 2, "2.54 cm", "1.00 in", "1 in = 2.54 cm"},
		{6.4516, "cm2", 3, "6.452 cm²", "1.000 in²", "1 in² = 6.4516 cm²"},
		{0.44704, "m/s", 3, "0.447 m/s", "1.000 mph", "1 mph = 0.44704 m/s"},
		{28.349523125, "g", 2, "28.35 g", "1.00 oz", "1 oz = 28.349523125 g"},
		{3.280839895, "1/m", 3, "3.281 per m", "1.000 per ft", "1 per ft = 1/0.3048 per m"},
		{0.3048, "m2/m", 3, "0.305 m²/m", "1.000 ft²/ft", "area per length scales as length"},
		{1, "kg/m", 3, "1.000 kg/m", "0.672 lb/ft", "1 lb/ft = 1.48816 kg/m"},
		{2.2417, "t/ha", 3, "2.242 t/ha", "1.000 ton/acre", "1 short ton on an acre = 2.2417 t/ha"},
		{1, "m2/kg", 3, "1.000 m²/kg", "4.882 ft²/lb", "10.7639 ft² for 2.20462 lb"},
		{1, "m2/ha", 3, "1.000 m²/ha", "4.356 ft²/acre", "10.7639 ft² on 2.47105 acres"},
		{2.47105, "h/ha", 3, "2.471 h/ha", "1.000 h/acre", "1 ha = 2.47105 acres"},
		{91, "deg", -1, "91°", "91°", "angles are the same"},
		{1200, "W/m2", 0, "1200 W/m²", "1200 W/m²", "the same"},
		{0.18, "share", 0, "18 %", "18 %", "hundredths"},
		{1000000, "", -1, "1000000", "1000000", "no powers of ten"},
		{-0.0001, "K", 1, "0.0 °C", "0.0 °F", "zero has no sign"},
	}
	for _, test := range tests {
		if got := words.Quantity(test.value, test.unit, test.decimals, words.Metric); got != test.metric {
			t.Errorf("%v %s: %q, want %q (%s)", test.value, test.unit, got, test.metric, test.whyTheseValues)
		}
		if got := words.Quantity(test.value, test.unit, test.decimals, words.US); got != test.us {
			t.Errorf("%v %s: %q, want %q (%s)", test.value, test.unit, got, test.us, test.whyTheseValues)
		}
	}
}

func TestClock(t *testing.T) {
	for hour, want := range map[float64]string{0: "00:00", 15.5: "15:30", 9.999: "10:00", 24: "24:00"} {
		if got := words.Clock(hour); got != want {
			t.Errorf("%v: %s, want %s", hour, got, want)
		}
	}
}

func TestSentencesFollowTheUnits(t *testing.T) {
	sentence := result.Sentence{Code: "compare.cooler", Words: map[string]string{"name": "B", "base": "A", "side": "west", "baseSide": "east"},
		Values: map[string]float64{"delta": 12, "limit": 45}}
	want := "The hottest fruit of “B” (west side) stays 21.6 °F cooler than that of “A” (east side); both are over 113.0 °F for about as long."
	if got := (words.Style{Units: words.US}).Sentence(sentence); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}

func TestUnknownCodesAndLanguages(t *testing.T) {
	if got := words.Text("en", "no.such", nil, nil); got != "no.such" {
		t.Error(got)
	}
	if got := words.Text("xx", "word.west", nil, nil); got != "west" {
		t.Error(got)
	}
	if got := words.Text("en", "fault.arms", nil, map[string]any{"value": 1}); !strings.Contains(got, "{field}") || !strings.Contains(got, "{wires:count}") {
		t.Errorf("missing parameters are hidden: %s", got)
	}
}

// spoilt holds documents that between them show every fault of reading a scenario but
// fault.unreadable, which only a schema at odds with the Go types can cause, and
// fault.too-long and fault.form, which are made beside it.
var spoilt = []string{
	"", "\xff\xfe", "{", "[]", `{"schemaVersion":9}`, `{"schemaVersion":0}`,
	`{"site":{"latitude_deg":91,"floor":"lava","Aspect_deg":1},"weather":{"date":"soon","airMin_C":"x"},"options":[{"leaves":{"laterals":2}}]}`,
	`{"name":"` + strings.Repeat("n", 81) + `","options":[]}`,
	`{"options":[{"form":"none"}]}`,
	`{}`,
	`{"weather":{"date":"1800-01-01","airMin_C":45,"airMax_C":44,"dewPoint_C":30},"limits":{"hot_C":50},"season":{"fruitSet":"2026-07-20","veraison":"2026-06-01"},"compare":3,"options":[{}]}`,
	`{"weather":{"airMin_C":10,"dewPoint_C":20,"hours":[]},"options":[{"form":"vsp-spurs","rows":{"rowSpacing_m":1},
		"trellis":{"wires":[{"role":"foliage","offset_m":1}, {"role":"catch","height_m":1.5,"offset_m":-1}]}},
		{"form":"double-curtain","training":{"armsPerVine":1,"wood":"canes","caneLayout":"arched"},"shoots":{"trimTop_m":0.5,"skirt_m":1.9},
		"leaves":{"removedFrom_m":1.5,"removedTo_m":1},"shade":{"netSides":"both","netFrom_m":1.5,"netTo_m":1,"overheadShade":0.3,
		"overheadHeight_m":1.5,"mistRate_mmh":1,"mistFrom_h":18,"mistTo_h":11}}]}`,
	`{"weather":{"hours":[{"ghi_Wm2":0,"dni_Wm2":0,"dhi_Wm2":0,"air_C":1,"dewPoint_C":0,"wind_ms":1,"windFrom_deg":0}]},"options":[{"form":"sprawl"}]}`,
}

func TestEveryFaultOfADocumentReads(t *testing.T) {
	seen := map[string]bool{"fault.unreadable": true}
	for _, raw := range append(slices.Clone(spoilt), strings.Repeat(" ", document.MaxBytes+1)) {
		_, faults := document.Parse([]byte(raw))
		for _, fault := range append(faults, document.Notices([]byte(`{"a":1}`))...) {
			seen[fault.Code] = true
			checkFaultText(t, fault)
		}
	}
	every := scenario.Option{Shade: scenario.Shade{BirdNet: scenario.DrapedNet, Film: scenario.LightFilm, MistRate_mmh: 1}}
	every.Leaves = scenario.Leaves{RemovedMorning: 0.5, RemovedOn: "2026-07-18"}
	byDate := scenario.Default()
	byDate.Season.Growth = scenario.ByDate
	told := slices.Concat(sunFaults(t), growth.Notices(byDate), every.Cautions("/options/0"),
		every.RemovalNotices("2026-07-01", "/options/0"), every.RemovalNotices("2026-07-20", "/options/0"))
	for _, fault := range told {
		seen[fault.Code] = true
		checkFaultText(t, fault)
	}
	for code := range codesIn(t, "../scenario") {
		if !seen[code] {
			t.Errorf("no document shows %s", code)
		}
	}
}

// sunFaults holds the faults of sites at which the sun does not make a day.
func sunFaults(t *testing.T) []scenario.Fault {
	t.Helper()
	var faults []scenario.Fault
	for _, date := range []string{"2026-06-21", "2026-12-21", "2026-11-22"} {
		s := scenario.Default()
		s.Site.Latitude_deg, s.Site.Longitude_deg, s.Site.UTCOffset_h, s.Weather.Date = 70, 0, 0, date
		if date == "2026-11-22" {
			s.Site.Latitude_deg = 69
		}
		_, err := weather.Course(s, []float64{12})
		var fault weather.Fault
		if !errors.As(err, &fault) {
			t.Fatalf("%s: %v", date, err)
		}
		faults = append(faults, fault.Fault)
	}
	return faults
}

// checkFaultText wants a text that names the field and fills every parameter.
func checkFaultText(t *testing.T, fault scenario.Fault) {
	t.Helper()
	text := words.Style{}.Fault(fault)
	if text == fault.Code || strings.ContainsAny(text, "{}") && fault.Code != "fault.syntax" || strings.Contains(text, "<nil>") {
		t.Errorf("%+v reads %q", fault, text)
	}
	if i := strings.LastIndex(fault.Path, "/"); i >= 0 && strings.Trim(fault.Path[i+1:], "0123456789") != "" && !strings.Contains(text, fault.Path[i+1:]) {
		t.Errorf("%q does not name its field %s", text, fault.Path)
	}
}

func TestFaultTextsNameFieldValueRangeAndRemedy(t *testing.T) {
	_, faults := document.Parse([]byte(`{"options":[{"form":"sprawl"},{"form":"sprawl","rows":{"azimuth_deg":181}}]}`))
	want := "options[1].rows.azimuth_deg: 181° is outside 0° to 180°. Give a value in that range."
	if len(faults) != 1 || (words.Style{}).Fault(faults[0]) != want {
		t.Errorf("%v, want %s", faults, want)
	}
}

// TestEveryCodeHasATextAndEveryTextACode reads the sources: the codes that they name are the catalogue.
func TestEveryCodeHasATextAndEveryTextACode(t *testing.T) {
	used := codesIn(t, "../..")
	used["fault.polar-"+sun.PolarDay], used["fault.polar-"+sun.PolarNight] = true, true
	for _, kind := range []string{"verdict.", "fault.", "notice."} {
		for _, code := range codes(t, kind) {
			if !used[code] {
				t.Errorf("%s has a text and no use", code)
			}
			delete(used, code)
		}
	}
	for code := range used {
		t.Errorf("%s is used and has no text", code)
	}
}

// codesIn finds the codes that the Go sources below a folder name, tests left out.
func codesIn(t *testing.T, root string) map[string]bool {
	t.Helper()
	found := map[string]bool{}
	code := regexp.MustCompile(`"((?:verdict|fault|notice)\.[a-z-]*[a-z])"`)
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && (entry.Name() == "node_modules" || strings.HasPrefix(entry.Name(), ".git")) {
			return fs.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		source, err := os.ReadFile(path)
		for _, match := range code.FindAllSubmatch(source, -1) {
			found[string(match[1])] = true
		}
		return err
	})
	if err != nil || len(found) == 0 {
		t.Fatalf("%d codes below %s, %v", len(found), root, err)
	}
	return found
}

// codes lists the codes of the English catalogue that begin with kind.
func codes(t *testing.T, kind string) []string {
	t.Helper()
	var found []string
	for code := range catalogue(t) {
		if strings.HasPrefix(code, kind) {
			found = append(found, code)
		}
	}
	if len(found) == 0 {
		t.Fatalf("no codes of %s", kind)
	}
	slices.Sort(found)
	return found
}
