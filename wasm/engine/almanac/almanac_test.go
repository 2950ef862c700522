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
	got := a.Open("hot week.epw", read(t, "weather/stony-bend-hot-week.epw"))
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
	if got := a.Open("letter.txt", []byte("Dear all,\nit was hot.")); got.File != nil || len(got.Faults) != 1 || got.Faults[0].Code != "fault.file-format" {
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
