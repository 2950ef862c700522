package almanac

import (
	"encoding/json"
	"maps"
	"math"
	"reflect"
	"testing"

	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
	"rowlight/sim/weather"
	"rowlight/testdata"
)

func read(t *testing.T, path string) []byte {
	t.Helper()
	text, err := testdata.FS.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func opened(t *testing.T) (*Almanac, Opened) {
	t.Helper()
	a := &Almanac{}
	got := a.Open("hot week.epw", read(t, "weather/stony-bend-hot-week.epw"), Asked{})
	if got.File == nil || len(got.Faults) > 0 {
		t.Fatalf("opened %+v", got)
	}
	return a, got
}

func TestOpenTellsWhatIsInTheFile(t *testing.T) {
	_, got := opened(t)
	f := got.File
	if f.Name != "hot week.epw" || f.Format != "EPW" || f.Place != "Stony Bend (invented)" || f.Latitude_deg != 36.4 || f.UTCOffset_h != -8 {
		t.Errorf("%+v", f)
	}
	if len(f.Days) != 7 || f.Days[0].Day != 12 || f.Days[6].Day != 18 {
		t.Errorf("days %+v", f.Days)
	}
	// The row "2019,7,18,14,…,42.9" of the file.
	if h := f.Hottest; h == nil || h.Year != 2019 || h.Month != 7 || h.Day != 18 || *h.AirMax_C != 42.9 {
		t.Errorf("hottest %+v", h)
	}
}

// merged lays a fragment over a document as the page does: objects key by key, all else replaced.
func merged(under, over map[string]any) map[string]any {
	out := maps.Clone(under)
	for key, value := range over {
		a, isObject := out[key].(map[string]any)
		b, laid := value.(map[string]any)
		if isObject && laid {
			value = merged(a, b)
		}
		out[key] = value
	}
	return out
}

func decode(t *testing.T, raw []byte) (value map[string]any) {
	t.Helper()
	if err := json.Unmarshal(raw, &value); err != nil {
		t.Fatal(err)
	}
	return value
}

func encode(t *testing.T, value any) []byte {
	t.Helper()
	raw, err := json.Marshal(value)
	if err != nil {
		t.Fatal(err)
	}
	return raw
}

// A fragment over a document reads as the scenario that the command line makes of document and file.
func TestFragmentOverADocumentIsThePutScenario(t *testing.T) {
	a, _ := opened(t)
	raw := read(t, "scenarios/stony-bend.json")
	for _, day := range []int{12, 15, 18} {
		taken := a.Day(7, day)
		if taken.Fragment == nil || len(taken.Faults) > 0 {
			t.Fatalf("%d July: %+v", day, taken)
		}
		got, faults := document.Parse(encode(t, merged(decode(t, raw), decode(t, encode(t, taken.Fragment)))))
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		want := parsed(t, raw)
		a.file.Put(7, day, &want)
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%d July: got %+v\nwant %+v", day, got, want)
		}
	}
}

func parsed(t *testing.T, raw []byte) scenario.Scenario {
	t.Helper()
	s, faults := document.Parse(raw)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return s
}

// A file that cannot be read leaves the one that is open; a day that is not there has no fragment.
func TestFaultsLeaveTheOpenFile(t *testing.T) {
	a, _ := opened(t)
	if got := a.Open("letter.txt", []byte("Dear all,\nit was hot."), Asked{}); got.File != nil || len(got.Faults) != 1 || got.Faults[0].Code != "fault.file-format" {
		t.Errorf("opened %+v", got)
	}
	if got := a.Day(1, 3); got.Fragment != nil || len(got.Faults) != 1 || got.Faults[0].Code != "fault.day-absent" {
		t.Errorf("took %+v", got)
	}
	if got := a.Day(7, 12); got.Fragment == nil {
		t.Errorf("the file is gone: %+v", got)
	}
	if got := (&Almanac{}).Day(7, 12); got.Fragment != nil || len(got.Faults) != 1 {
		t.Errorf("without a file: %+v", got)
	}
}

// A value that a file lacks is absent from JSON, which has no word for it.
func TestMissingValuesAreAbsent(t *testing.T) {
	var file weather.File
	for hour := 1; hour <= 24; hour++ {
		file.Rows = append(file.Rows, weather.Row{Year: 2019, Month: 7, Day: 12, Hour: hour, Air_C: math.NaN()})
	}
	if got, want := string(encode(t, contents(&file).Days)), `[{"year":2019,"month":7,"day":12}]`; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// A table is not read before its mapping is confirmed; until then the file before stays open.
func TestTableIsConfirmedBeforeItIsRead(t *testing.T) {
	a, _ := opened(t)
	site := scenario.Site{Latitude_deg: 36.4, Longitude_deg: -119.9, UTCOffset_h: -8, Elevation_m: 90}
	logger := read(t, "weather/stony-bend-logger.csv")
	got := a.Open("logger.csv", logger, Asked{Site: site})
	if got.Table == nil || got.File != nil || len(got.Faults) > 0 || len(got.Table.Rows) != 4 || got.Table.Mapping.UTCOffset_h != -8 {
		t.Fatalf("%+v", got)
	}
	if a.file.Name != "hot week.epw" {
		t.Errorf("%s is open", a.file.Name)
	}
	wrong := got.Table.Mapping
	wrong.Clock = "sundial"
	mapping, err := json.Marshal(wrong)
	if err != nil {
		t.Fatal(err)
	}
	if got := a.Open("logger.csv", logger, Asked{Site: site, Mapping: mapping}); got.File != nil || len(got.Faults) != 1 || got.Faults[0].Path != "/clock" {
		t.Errorf("%+v", got)
	}
	mapping, err = json.Marshal(got.Table.Mapping)
	if err != nil {
		t.Fatal(err)
	}
	if got := a.Open("logger.csv", logger, Asked{Site: site, Mapping: mapping}); got.File == nil || len(got.File.Days) != 7 || got.File.Clock.Code != "clock.fits-clear-days" {
		t.Errorf("%+v", got)
	}
}

// The preview is the clearest day as the simulation would have it.
func TestPreviewShowsTheClearestDay(t *testing.T) {
	_, got := opened(t)
	p := got.File.Preview
	if p == nil || len(p.Hour_h) != 97 || p.Day.Month != 7 || p.Day.Day == 14 { // the 14th is cloudy
		t.Fatalf("%+v", p)
	}
	noon := 0
	for i, elevation := range p.Elevation_deg {
		if elevation > p.Elevation_deg[noon] {
			noon = i
		}
		if elevation <= 0 && p.GHI_Wm2[i] != 0 {
			t.Errorf("%.2f h: light %.1f W/m² with the sun down", p.Hour_h[i], p.GHI_Wm2[i])
		}
	}
	if p.Hour_h[noon] != 12 || p.GHI_Wm2[noon] < 900 || got.File.Shifted || got.File.Clock.Code != "clock.fits-closure" {
		t.Errorf("noon at %.2f h with %.0f W/m², clock %+v", p.Hour_h[noon], p.GHI_Wm2[noon], got.File.Clock)
	}
}

// Normals take place and year from the scenario.
func TestNormalsTakePlaceAndYearFromTheScenario(t *testing.T) {
	var a Almanac
	got := a.Open("normals.csv", read(t, "weather/stony-bend-normals.csv"), Asked{Site: scenario.Site{Latitude_deg: 40, Longitude_deg: -120, UTCOffset_h: -8}, Date: "2026-07-18"})
	if got.File == nil || got.File.Latitude_deg != 40 || len(got.File.Days) != 153 || got.File.Days[0].Year != 2026 {
		t.Errorf("%+v", got)
	}
}
