package render

import (
	"slices"
	"testing"

	"rowlight/sim/scenario"
)

// drawn says what a stage draws: which options, and whether the space between the panes.
func drawn(st *Stage) (options []int, cleared bool) {
	st.Draw(func() { cleared = true }, func(option int, scene *Scene, view *View, budget int) {
		options = append(options, option)
	})
	return options, cleared
}

// shownStage is a stage with the default scenario in two panes, drawn once.
func shownStage(t *testing.T) (*Stage, scenario.Scenario) {
	t.Helper()
	st, s := NewStage(), scenario.Default()
	st.SetPanes([]Pane{{Width: 300, Height: 200}, {X: 310, Width: 300, Height: 200}})
	if err := st.SetScenario(s); err != nil {
		t.Fatal(err)
	}
	if options, cleared := drawn(st); !slices.Equal(options, []int{0, 1}) || !cleared {
		t.Fatalf("at first it draws %v, cleared %v", options, cleared)
	}
	return st, s
}

func TestStageDrawsOnlyWhatChanged(t *testing.T) {
	st, s := shownStage(t)
	camera := Camera{Azimuth_deg: 100, Elevation_deg: 10, Distance_m: 3, TargetZ_m: 1}
	faces := make([]float32, st.options[1].scene.Faces())
	for name, step := range map[string]struct {
		do      func()
		options []int
		cleared bool
	}{
		"nothing":     {do: func() {}},
		"camera":      {do: func() { st.SetCamera(1, camera) }, options: []int{1}},
		"faces":       {do: func() { st.SetFaces(1, faces, make([]uint8, len(faces))) }, options: []int{1}},
		"instant":     {do: func() { st.SetInstant(afternoon) }, options: []int{0, 1}},
		"scale":       {do: func() { st.SetScale(Scale{Min_C: 10, Max_C: 50}) }, options: []int{0, 1}},
		"loss":        {do: st.Invalidate, options: []int{0, 1}, cleared: true},
		"pane hidden": {do: func() { st.SetPanes([]Pane{{}, {Width: 610, Height: 200}}) }, options: []int{1}, cleared: true},
		"pane back": {do: func() { st.SetPanes([]Pane{{Width: 300, Height: 200}, {X: 310, Width: 300, Height: 200}}) },
			options: []int{0, 1}, cleared: true},
		"row turned": {do: func() {
			s.Options[0].Rows.Azimuth_deg = 45
			if err := st.SetScenario(s); err != nil {
				t.Error(err)
			}
		}, options: []int{0}},
	} {
		if name == "pane back" {
			st.SetPanes([]Pane{{Width: 300, Height: 200}})
			drawn(st)
		}
		step.do()
		if stale := st.Stale(); stale != (len(step.options) > 0) {
			t.Errorf("%s: stale %v", name, stale)
		}
		if options, cleared := drawn(st); !slices.Equal(options, step.options) || cleared != step.cleared {
			t.Errorf("%s: draws %v, cleared %v", name, options, cleared)
		}
		step.do() // the same once more changes nothing, but for faces and losses, whose news is not compared
		if options, _ := drawn(st); len(options) > 0 && name != "faces" && name != "loss" {
			t.Errorf("%s: told twice it draws %v again", name, options)
		}
		st.SetPanes([]Pane{{Width: 300, Height: 200}, {X: 310, Width: 300, Height: 200}})
		drawn(st)
	}
}

// What the options do not change keeps its scene; weather and limits change no stand.
func TestStageKeepsUnchangedStands(t *testing.T) {
	st, s := shownStage(t)
	first, second := st.options[0].scene, st.options[1].scene
	s.Weather.AirMax_C, s.Limits.Burn_C = 30, 44
	s.Options[1].Shoots.PerMetre = 10
	if err := st.SetScenario(s); err != nil {
		t.Fatal(err)
	}
	if st.options[0].scene != first || st.options[1].scene == second {
		t.Error("the wrong scenes were made anew")
	}
	s.Options = s.Options[:1]
	if err := st.SetScenario(s); err != nil {
		t.Fatal(err)
	}
	if options, cleared := drawn(st); !slices.Equal(options, []int{0}) || !cleared {
		t.Errorf("with one option it draws %v, cleared %v", options, cleared)
	}
}

// An option that cannot be grown leaves its pane empty and is named; the others are drawn.
func TestStageSurvivesABadOption(t *testing.T) {
	st, s := shownStage(t)
	s.Options[1].Form, s.Options[1].Trellis.Wires = "no such form", nil
	if err := st.SetScenario(s); err == nil {
		t.Fatal("an option without wires was planted")
	}
	if options, cleared := drawn(st); !slices.Equal(options, []int{0}) || !cleared {
		t.Errorf("it draws %v, cleared %v", options, cleared)
	}
}

// Panes, cameras and hour may come before the scenario; numbers of options that do not exist do no harm.
func TestStageTakesCallsInAnyOrder(t *testing.T) {
	st := NewStage()
	if options, cleared := drawn(st); len(options) > 0 || !cleared {
		t.Errorf("an empty stage draws %v, cleared %v", options, cleared)
	}
	camera := Camera{Azimuth_deg: 77, Elevation_deg: 10, Distance_m: 3, TargetZ_m: 1}
	st.SetCamera(1, camera)
	st.SetCamera(-1, camera)
	st.SetInstant(afternoon)
	st.SetFaces(3, nil, nil)
	st.SetFaces(-1, nil, nil)
	st.SetPanes([]Pane{{Width: 100, Height: 80}, {X: 100, Width: 100, Height: 80}})
	if err := st.SetScenario(scenario.Default()); err != nil {
		t.Fatal(err)
	}
	if st.Camera(1) != camera || st.Camera(0) == camera {
		t.Error("a camera that was set early is lost")
	}
	if st.options[0].scene.instant != afternoon {
		t.Error("an hour that was set early is lost")
	}
	if options, _ := drawn(st); !slices.Equal(options, []int{0, 1}) {
		t.Errorf("it draws %v", options)
	}
}
