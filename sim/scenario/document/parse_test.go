package document_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
)

// two is a document that says nothing but its forms.
const two = `{"options":[{"form":"vsp-spurs"},{"form":"sprawl"}]}`

func TestParseFillsDefaults(t *testing.T) {
	s, faults := document.Parse([]byte(two))
	if len(faults) != 0 {
		t.Fatal(faults)
	}
	want := scenario.Default()
	want.Name, want.Note = "New vineyard", ""
	if diff := cmp.Diff(want, s); diff != "" {
		t.Error(diff)
	}
}

func TestParseReadsWhatTheProgramWrites(t *testing.T) {
	raw, err := json.Marshal(scenario.Default())
	if err != nil {
		t.Fatal(err)
	}
	s, faults := document.Parse(raw)
	if len(faults) != 0 {
		t.Fatal(faults)
	}
	if diff := cmp.Diff(scenario.Default(), s); diff != "" {
		t.Error(diff)
	}
}

// TestParseNamesEachFault gives one document per kind of fault and expects that fault and no other.
func TestParseNamesEachFault(t *testing.T) {
	type values = map[string]any
	option := func(text string) string { return `{"options":[` + text + `]}` }
	tests := []struct {
		name, raw string
		want      scenario.Fault
	}{
		{"empty", " \n", scenario.Fault{Code: "fault.empty"}},
		{"UTF-16", "\xff\xfe{\x00}\x00", scenario.Fault{Code: "fault.encoding"}},
		{"list", `[1]`, scenario.Fault{Code: "fault.type", Values: values{"got": "array", "want": []string{"object"}}}},
		{"newer", `{"schemaVersion":2,"site":7}`, scenario.Fault{Code: "fault.newer", Path: "/schemaVersion", Values: values{"value": 2.0, "supported": 1}}},
		{"version", `{"schemaVersion":0}`, scenario.Fault{Code: "fault.version", Path: "/schemaVersion", Values: values{"value": 0.0, "supported": 1}}},
		{"range", `{"site":{"latitude_deg":91},` + two[1:], scenario.Fault{Code: "fault.range", Path: "/site/latitude_deg",
			Values: values{"value": 91.0, "min": -90.0, "max": 90.0, "unit": "deg"}}},
		{"range of a share", option(`{"shoots":{"positioning":-0.1}}`), scenario.Fault{Code: "fault.range", Path: "/options/0/shoots/positioning",
			Values: values{"value": -0.1, "min": 0.0, "max": 1.0}}},
		{"type", `{"weather":{"airMax_C":"hot"},` + two[1:], scenario.Fault{Code: "fault.type", Path: "/weather/airMax_C",
			Values: values{"value": "hot", "got": "string", "want": []string{"number"}}}},
		{"null", `{"site":null,` + two[1:], scenario.Fault{Code: "fault.type", Path: "/site",
			Values: values{"got": "null", "want": []string{"object"}}}},
		{"choice", `{"fruit":{"colour":"blue"},` + two[1:], scenario.Fault{Code: "fault.choice", Path: "/fruit/colour",
			Values: values{"value": "blue", "allowed": []string{"green", "white", "red"}}}},
		{"date", `{"weather":{"date":"2026-02-30"},` + two[1:], scenario.Fault{Code: "fault.date", Path: "/weather/date",
			Values: values{"value": "2026-02-30"}}},
		{"long name", `{"name":"` + strings.Repeat("é", 81) + `",` + two[1:], scenario.Fault{Code: "fault.length", Path: "/name",
			Values: values{"count": 81, "max": 80.0}}},
		{"no options", `{}`, scenario.Fault{Code: "fault.missing", Path: "/options"}},
		{"empty options", `{"options":[]}`, scenario.Fault{Code: "fault.count", Path: "/options",
			Values: values{"count": 0, "min": 1.0, "max": 4.0}}},
		{"many options", option(`{},{},{},{},{}`), scenario.Fault{Code: "fault.count", Path: "/options",
			Values: values{"count": 5, "min": 1.0, "max": 4.0}}},
		{"form", option(`{"form":"hop-pole"}`), scenario.Fault{Code: "fault.form", Path: "/options/0/form",
			Values: values{"value": "hop-pole", "allowed": scenario.FormKeys()}}},
		{"capitals", `{"site":{"Latitude_deg":400},` + two[1:], scenario.Fault{Code: "fault.capitals", Path: "/site/Latitude_deg",
			Values: values{"value": "Latitude_deg", "want": "latitude_deg"}}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, faults := document.Parse([]byte(test.raw))
			if test.name == "empty options" { // comparing with an option that is not there is a fault of its own
				faults = faults[:1]
			}
			if test.name == "no options" {
				faults = faults[:1]
			}
			if diff := cmp.Diff([]scenario.Fault{test.want}, faults); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestParsePointsAtSyntaxFaults(t *testing.T) {
	tests := map[string]struct {
		raw          string
		line, column int
	}{
		"first column": {`x`, 1, 1},
		"second line":  {"{\n  \"é\": 1,\n  \"b\" 2}", 3, 7},
		"cut off":      {"{\"a\":", 1, 5},
		"after value":  {"{}\n]", 2, 1},
		"huge number":  {`{"seed": 1e999}`, 1, 10},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			_, faults := document.Parse([]byte(test.raw))
			if len(faults) != 1 || faults[0].Code != "fault.syntax" {
				t.Fatal(faults)
			}
			got := fmt.Sprint(faults[0].Values["line"], ":", faults[0].Values["column"])
			if want := fmt.Sprint(test.line, ":", test.column); got != want {
				t.Errorf("at %s, want %s (%v)", got, want, faults[0].Values["detail"])
			}
		})
	}
}

func TestParseNamesAllFaultsAtOnce(t *testing.T) {
	_, faults := document.Parse([]byte(`{
		"site":{"latitude_deg":91,"floor":"lava"},
		"weather":{"airMin_C":44,"hours":[{"air_C":20}]},
		"options":[{"form":"none","leaves":{"laterals":2}}],
		"compare":3}`))
	got := map[string]string{}
	for _, fault := range faults {
		got[fault.Path] = fault.Code
	}
	want := map[string]string{
		"/site/latitude_deg":            "fault.range",
		"/site/floor":                   "fault.choice",
		"/weather/hours":                "fault.hours",
		"/weather/hours/0/ghi_Wm2":      "fault.missing",
		"/weather/hours/0/dni_Wm2":      "fault.missing",
		"/weather/hours/0/dhi_Wm2":      "fault.missing",
		"/weather/hours/0/dewPoint_C":   "fault.missing",
		"/weather/hours/0/wind_ms":      "fault.missing",
		"/weather/hours/0/windFrom_deg": "fault.missing",
		"/options/0/form":               "fault.form",
		"/options/0/leaves/laterals":    "fault.range",
		"/compare":                      "fault.compare",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestParseRefusesWhatIsTooLong(t *testing.T) {
	raw := []byte(strings.Repeat(" ", document.MaxBytes+1))
	if _, faults := document.Parse(raw); len(faults) != 1 || faults[0].Code != "fault.too-long" {
		t.Error(faults)
	}
}

// TestKeysGivenTwiceReadAsTheyWereChecked holds the door shut for a value that is overwritten for the
// check and merged back by the decoder.
func TestKeysGivenTwiceReadAsTheyWereChecked(t *testing.T) {
	s, faults := document.Parse([]byte(`{"site":{"latitude_deg":1000},"site":{},` + two[1:]))
	if len(faults) != 0 || s.Site.Latitude_deg > 90 {
		t.Errorf("latitude %v, faults %v", s.Site.Latitude_deg, faults)
	}
}

func TestWholeNumbersMayBeWrittenWithAPoint(t *testing.T) {
	s, faults := document.Parse([]byte(`{"seed":2.0,` + two[1:]))
	if len(faults) != 0 || s.Seed != 2 {
		t.Errorf("seed %d, faults %v", s.Seed, faults)
	}
}

func TestNoticesNameUnknownFields(t *testing.T) {
	raw := []byte(`{"appVersion":"9","site":{"latitud_deg":3},"options":[{"form":"sprawl","x/y":[{"a":1}]}]}`)
	if _, faults := document.Parse(raw); len(faults) != 0 {
		t.Fatalf("unknown fields are no fault: %v", faults)
	}
	var paths []string
	for _, notice := range document.Notices(raw) {
		paths = append(paths, notice.Path)
	}
	if diff := cmp.Diff([]string{"/appVersion", "/options/0/x~1y", "/site/latitud_deg"}, paths); diff != "" {
		t.Error(diff)
	}
	if notices := document.Notices([]byte("{")); notices != nil {
		t.Error(notices)
	}
}

// BenchmarkParse reads what a newcomer starts from.
func BenchmarkParse(b *testing.B) { benchmarkParse(b, scenario.Default()) }

// BenchmarkParseMost reads the most that a document holds: 24 measured hours and four options with every size written out.
func BenchmarkParseMost(b *testing.B) {
	most := scenario.Default()
	most.Weather.Hours = make([]scenario.Hour, 24)
	most.Options = append(most.Options, most.Options...)
	benchmarkParse(b, most)
}

func benchmarkParse(b *testing.B, s scenario.Scenario) {
	raw, err := json.Marshal(s)
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(raw)))
	for b.Loop() {
		if _, faults := document.Parse(raw); len(faults) != 0 {
			b.Fatal(faults)
		}
	}
}
