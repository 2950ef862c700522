//go:build !js

package sim_test

import (
	"math"
	"testing"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// robertson is an invented clear February day at the latitude of the trial of the Hunter group (Terroir
// 2008, IVES 9420: Shiraz VSP in four row directions, southern hemisphere).
func robertson(t *testing.T) scenario.Scenario {
	s := one(t, "vsp-spurs")
	s.Site = scenario.Site{Latitude_deg: -33.8, Longitude_deg: 19.9, UTCOffset_h: 2, Elevation_m: 160, Floor: scenario.MownCover}
	s.Weather.Date, s.Weather.AirMax_C, s.Weather.AirMin_C, s.Weather.DewPoint_C = "2026-02-15", 35, 16, 10
	s.Weather.WindFrom_deg = 180
	return s
}

// turned runs a scenario with its rows at several azimuths on one engine.
func turned(t *testing.T, s scenario.Scenario, azimuths ...float64) []result.Option {
	t.Helper()
	engine := sim.NewEngine()
	var options []result.Option
	for _, azimuth := range azimuths {
		s.Options[0].Rows.Azimuth_deg = azimuth
		r, err := engine.Day(s, free, nil)
		if err != nil {
			t.Fatal(err)
		}
		options = append(options, r.Result.Options[0])
	}
	return options
}

// degreeHours adds up the mean berry surface over a limit on the worse side [K h].
func degreeHours(o result.Option, limit float64) float64 {
	worst := 0.0
	for _, side := range o.Sides {
		sum := 0.0
		for _, temperature := range side.Steps.Mean_C {
			sum += math.Max(temperature-limit, 0) * 5 / 60
		}
		worst = math.Max(worst, sum)
	}
	return worst
}

// Fact 6: in the ripening months of the southern hemisphere the worse side of VSP rows has the fewest
// degree-hours over 35 °C in E–W rows, and of the diagonals NE–SW has more than NW–SE (geometry; the Hunter group
// measured the daily means in the order E–W, N–S, NW–SE, NE–SW). In the northern hemisphere the diagonals change places.
func TestFactRowDirections(t *testing.T) {
	south := robertson(t)
	north := south
	north.Site.Latitude_deg, north.Weather.Date = 33.8, "2026-08-15"
	for name, c := range map[string]struct {
		scenario scenario.Scenario
		worse    int // index of the worse diagonal
	}{"south": {south, 1}, "north": {north, 3}} {
		names := []string{"N–S", "NE–SW", "E–W", "NW–SE"}
		var over []float64
		for _, o := range turned(t, c.scenario, 0, 45, 90, 135) {
			over = append(over, degreeHours(o, 35))
		}
		t.Logf("%s: degree-hours over 35 °C on the worse side %.1f (%s)", name, over, names)
		if better := 4 - c.worse; over[c.worse] <= over[better] {
			t.Errorf("%s: %s rows have %.2f K h on the worse side, %s rows %.2f", name, names[c.worse], over[c.worse], names[better], over[better])
		}
		for k, value := range over {
			if k != 2 && value <= over[2] {
				t.Errorf("%s: %s rows have %.2f K h on the worse side, E–W rows %.2f", name, names[k], value, over[2])
			}
		}
	}
}

// Fact 7: fruit in N–S rows has two peaks of light, before and after noon; NE–SW rows of the southern
// hemisphere have their peak in the afternoon, NW–SE rows in the morning; E–W rows stay low (Hunter group 2008; OENO One 3100).
func TestFactCourseOfLight(t *testing.T) {
	s := robertson(t)
	day := run(t, s).Result
	noon := argMin(day.Hour, day.Sun.Transit_h)
	options := turned(t, s, 0, 45, 135, 90)
	morning, afternoon := make([]float64, 4), make([]float64, 4)
	for k, o := range options {
		for i := range day.Hour {
			light := interior(day, o, i)
			if i < noon {
				morning[k] = math.Max(morning[k], light)
			} else {
				afternoon[k] = math.Max(afternoon[k], light)
			}
		}
	}
	mid := interior(day, options[0], noon)
	t.Logf("peaks before and after noon [W/m²]: N–S %.0f, %.0f (noon %.0f); NE–SW %.0f, %.0f; NW–SE %.0f, %.0f; E–W %.0f, %.0f",
		morning[0], afternoon[0], mid, morning[1], afternoon[1], morning[2], afternoon[2], morning[3], afternoon[3])
	if highest := math.Max(morning[3], afternoon[3]); highest > 0.75*math.Min(morning[0], afternoon[0]) {
		t.Errorf("E–W rows reach %.0f W/m², N–S rows %.0f and %.0f", highest, morning[0], afternoon[0])
	}
	if mid > 0.8*morning[0] || mid > 0.8*afternoon[0] {
		t.Errorf("N–S rows: %.0f W/m² at noon between peaks of %.0f and %.0f", mid, morning[0], afternoon[0])
	}
	if afternoon[1] <= morning[1] || morning[2] <= afternoon[2] {
		t.Errorf("NE–SW peaks at %.0f before and %.0f after noon, NW–SE at %.0f and %.0f", morning[1], afternoon[1], morning[2], afternoon[2])
	}
}

// interior is the direct light inside the canopy as a level sensor between the bunches sees it [W/m²].
func interior(day result.Day, o result.Option, k int) float64 {
	lit := (o.Sides[0].Steps.LitShare[k] + o.Sides[1].Steps.LitShare[k]) / 2
	return lit * day.Air.DNI_Wm2[k] * math.Sin(day.Sun.Elevation_deg[k]*math.Pi/180)
}

// Fact 13: the same wind makes the fruit zone windier and lit berries cooler when it blows along the rows
// than across them (Miller et al. 2017, Boundary-Layer Meteorol., doi 10.1007/s10546-017-0265-y).
func TestFactWindAlongRows(t *testing.T) {
	s := washington(t)
	s.Weather.WindFrom_deg = 0
	along := run(t, s).Result.Options[0].Sides[scenario.Left]
	s.Weather.WindFrom_deg = 90
	across := run(t, s).Result.Options[0].Sides[scenario.Left]
	at := argMax(across.Steps.Mean_C)
	if along.Steps.Wind_ms[at] <= across.Steps.Wind_ms[at] || along.Summary.Hottest_C >= across.Summary.Hottest_C {
		t.Errorf("wind along the rows %.2f m/s at the fruit, %.1f °C; across %.2f m/s, %.1f °C",
			along.Steps.Wind_ms[at], along.Summary.Hottest_C, across.Steps.Wind_ms[at], across.Summary.Hottest_C)
	}
}
