package crew_test

import (
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
	"rowlight/testdata"
	"rowlight/wasm/engine/crew"
)

func free() error { return nil }

// week opens an invented week, whatever the scenario.
func week(t *testing.T) func(scenario.Scenario) *weather.File {
	t.Helper()
	opened, err := testdata.FS.Open("weather/stony-bend-hot-week.epw")
	if err != nil {
		t.Fatal(err)
	}
	defer opened.Close()
	file, _ := weather.Read("week.epw", opened)
	return func(scenario.Scenario) *weather.File { return &file }
}

func none(scenario.Scenario) *weather.File { return nil }

// one is a scenario of one option.
const one = `{"options":[{"form":"vsp-spurs"}]}`

// shared lets two engines do the parts of a plan by turns, the last first, and one of them put them together.
func shared(t *testing.T, plan *crew.Plan) []byte {
	t.Helper()
	raw, err := json.Marshal(plan)
	if err != nil {
		t.Fatal(err)
	}
	var hands [2]*crew.Work
	for i := range hands {
		if hands[i], err = crew.NewWork(sim.NewEngine(), raw); err != nil {
			t.Fatal(err)
		}
	}
	answers := make([]any, len(plan.Parts))
	for i := len(answers) - 1; i >= 0; i-- {
		if answers[i], err = hands[i%2].Part(i, free); err != nil {
			t.Fatal(err)
		}
	}
	all, err := json.Marshal(answers)
	if err != nil {
		t.Fatal(err)
	}
	whole, err := hands[0].Whole(all)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(whole)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// The page reads some fields of a plan by these names.
func TestPlanIsReadByThePage(t *testing.T) {
	plan, _ := crew.NewPlan([]byte(one), crew.Asked{What: crew.Season, Over: crew.Season, From: "07-12", To: "07-18"}, week(t))
	raw, err := json.Marshal(plan)
	if err != nil {
		t.Fatal(err)
	}
	var read struct {
		Days []struct {
			Weather struct{ Date string }
			Stage   string
		}
		Parts []map[string]float64
	}
	if err := json.Unmarshal(raw, &read); err != nil {
		t.Fatal(err)
	}
	if part := read.Parts[1]; part["option"] != 0 || part["from"] != 6 || part["to"] != 7 {
		t.Errorf("the second part is %v", part)
	}
	if day := read.Days[6]; day.Weather.Date != "2019-07-18" || day.Stage != "closing" {
		t.Errorf("the last day is %+v", day)
	}
}

// The parts of a season make the season that one engine makes, to the last digit.
func TestSeasonInParts(t *testing.T) {
	plan, _ := crew.NewPlan([]byte(one), crew.Asked{What: crew.Season, Over: crew.Season, From: "07-12", To: "07-18"}, week(t))
	var got result.Season
	if err := json.Unmarshal(shared(t, plan), &got); err != nil {
		t.Fatal(err)
	}
	want, err := sim.NewEngine().Season(plan.Scenario, sim.Sweep{Days: plan.Days, Jobs: 1}, free, nil)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, &got); diff != "" || len(got.Days) != 7 || len(plan.Parts) != 2 {
		t.Errorf("%d days: %s", len(got.Days), diff)
	}
}

// The parts of a turn of the rows make the turn that one engine makes.
func TestRowsInParts(t *testing.T) {
	plan, _ := crew.NewPlan([]byte(one), crew.Asked{What: crew.Rows, Over: crew.Day}, none)
	var got result.Directions
	if err := json.Unmarshal(shared(t, plan), &got); err != nil {
		t.Fatal(err)
	}
	want, err := sim.NewEngine().Directions(plan.Scenario, sim.Sweep{Days: plan.Days, Jobs: 1}, 5, free, nil)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, &got); diff != "" || len(got.Options[0].Rows) != 36 {
		t.Errorf("%d rows: %s", len(got.Options[0].Rows), diff)
	}
}

func TestPlansCoverWhatIsAsked(t *testing.T) {
	two := `{"options":[{"form":"vsp-spurs","rows":{"azimuth_deg":12}},{"form":"sprawl"}]}`
	for name, c := range map[string]struct {
		document    string
		asked       crew.Asked
		file        func(scenario.Scenario) *weather.File
		days, parts int
		fault       string
	}{
		"day":                 {two, crew.Asked{What: crew.Rows, Over: crew.Day}, none, 1, 37 + 36, ""},
		"ripening":            {two, crew.Asked{What: crew.Rows, Over: crew.Ripening}, none, 6, 37 + 36, ""},
		"season":              {two, crew.Asked{What: crew.Season, Over: crew.Season}, none, 102, 2 * (4 + 5 + 3 + 7), ""},
		"part of a season":    {two, crew.Asked{What: crew.Season, Over: crew.Season, From: "07-01", To: "07-03"}, none, 3, 2, ""},
		"what the file has":   {two, crew.Asked{What: crew.Season, Over: crew.Season}, week(t), 7, 2 * 2, ""},
		"not in the file":     {two, crew.Asked{What: crew.Rows, Over: crew.Ripening}, week(t), 0, 0, "fault.day-absent"},
		"no valid document":   {`{"options":[]}`, crew.Asked{What: crew.Rows, Over: crew.Day}, none, 0, 0, "fault.count"},
		"half in the file":    {two, crew.Asked{What: crew.Season, Over: crew.Season, From: "07-17", To: "07-25"}, week(t), 2, 2, ""},
		"south of the turn":   {`{"site":{"latitude_deg":-34},"options":[{"form":"sprawl"}]}`, crew.Asked{What: crew.Season, Over: crew.Season}, none, 100, 4 + 5 + 3 + 6, ""},
		"nowhere in the file": {two, crew.Asked{What: crew.Season, Over: crew.Season, From: "08-17", To: "08-25"}, week(t), 0, 0, "fault.day-absent"},
	} {
		plan, faults := crew.NewPlan([]byte(c.document), c.asked, c.file)
		if c.fault != "" {
			if plan != nil || len(faults) == 0 || faults[0].Code != c.fault {
				t.Errorf("%s: %+v, want %s", name, faults, c.fault)
			}
			continue
		}
		if plan == nil || len(plan.Days) != c.days || len(plan.Parts) != c.parts {
			t.Errorf("%s: %d days, %d parts, want %d and %d", name, len(plan.Days), len(plan.Parts), c.days, c.parts)
		}
	}
}
