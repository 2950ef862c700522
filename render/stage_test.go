package render

import (
	"slices"
	"testing"

	"rowlight/sim/scenario"
)

// never is enough for those who want all work done.
func never() bool { return false }

// finish does all work of a stage.
func finish(t testing.TB, st *Stage) {
	t.Helper()
	if left := st.Work(true, never); left != Nothing {
		t.Fatalf("after all work %v is left", left)
	}
}

// drawn says what a stage draws until it is not stale: which options, and whether the space between the panes.
func drawn(st *Stage) (options []int, cleared bool) {
	for st.Stale() {
		st.Draw(func() { cleared = true }, func(option int, scene *Scene, view *View, budget int) {
			options = append(options, option)
		})
	}
	slices.Sort(options)
	return options, cleared
}

var twoPanes = []Pane{{Width: 300, Height: 200}, {X: 310, Width: 300, Height: 200}}

// emptyStage is a stage that uses the atlas of all tests.
func emptyStage() *Stage {
	st := NewStage()
	st.atlas = testAtlas()
	return st
}

// shownStage is a stage with the default scenario in two panes, drawn once.
func shownStage(t testing.TB) (*Stage, scenario.Scenario) {
	t.Helper()
	st, s := emptyStage(), scenario.Default()
	st.SetPanes(twoPanes)
	st.SetScenario(s)
	finish(t, st)
	if options, cleared := drawn(st); !slices.Equal(options, []int{0, 1}) || !cleared {
		t.Fatalf("at first it draws %v, cleared %v", options, cleared)
	}
	return st, s
}

func TestStageDrawsOnlyWhatChanged(t *testing.T) {
	st, s := shownStage(t)
	look := Look{Turn_deg: 20, Elevation_deg: 10, Distance_m: 3}
	faces := make([]float32, st.options[1].scene.Faces())
	for name, step := range map[string]struct {
		do      func()
		options []int
		cleared bool
	}{
		"nothing":     {do: func() {}},
		"look":        {do: func() { st.SetLook(1, look) }, options: []int{1}},
		"faces":       {do: func() { st.SetFaces(1, faces, make([]uint8, len(faces))) }, options: []int{1}},
		"instant":     {do: func() { st.SetInstant(afternoon) }, options: []int{0, 1}},
		"scale":       {do: func() { st.SetScale(Scale{Min_C: 10, Max_C: 50}) }, options: []int{0, 1}},
		"loss":        {do: st.Invalidate, options: []int{0, 1}, cleared: true},
		"pane hidden": {do: func() { st.SetPanes([]Pane{{}, {Width: 610, Height: 200}}) }, options: []int{1}, cleared: true},
		"pane back":   {do: func() { st.SetPanes(twoPanes) }, options: []int{0, 1}, cleared: true},
		"row turned":  {do: func() { s.Options[0].Rows.Azimuth_deg = 45; st.SetScenario(s) }, options: []int{0}},
		"floor":       {do: func() { s.Site.Floor = scenario.Straw; st.SetScenario(s) }, options: []int{0, 1}},
		"name, air":   {do: func() { s.Options[0].Name, s.Weather.AirMax_C = "Upper block", 30; st.SetScenario(s) }},
	} {
		if name == "pane back" {
			st.SetPanes(twoPanes[:1])
			drawn(st)
		}
		for range 2 { // the second time changes nothing, but for losses
			step.do()
			finish(t, st)
			if stale := st.Stale(); stale != (len(step.options) > 0) {
				t.Errorf("%s: stale %v", name, stale)
			}
			if options, cleared := drawn(st); !slices.Equal(options, step.options) || cleared != step.cleared {
				t.Errorf("%s: draws %v, cleared %v", name, options, cleared)
			}
			if name != "loss" {
				step.options, step.cleared = nil, false
			}
		}
		st.SetPanes(twoPanes)
		finish(t, st)
		drawn(st)
	}
	st.ResetLook(1)
	if options, _ := drawn(st); !slices.Equal(options, []int{1}) {
		t.Errorf("back to the look at first it draws %v", options)
	}
}

// One frame draws one pane, unless everything has to be drawn again.
func TestFramesAreShort(t *testing.T) {
	st, _ := shownStage(t)
	st.SetScale(Scale{Min_C: 1, Max_C: 2})
	for _, want := range []int{1, 1, 0} {
		count := 0
		st.Draw(func() { t.Error("the space between the panes is drawn") }, func(_ int, _ *Scene, _ *View, budget int) {
			if count++; budget > PaneBudget {
				t.Errorf("%d quads in one pane", budget)
			}
		})
		if count != want {
			t.Errorf("%d panes in one frame, want %d", count, want)
		}
	}
}

// An option that cannot be grown leaves its pane empty; the others are drawn, and it comes back when it can.
func TestStageSurvivesABadOption(t *testing.T) {
	st, good := shownStage(t)
	bad := good
	bad.Options = slices.Clone(good.Options)
	bad.Options[1].Trellis.Wires = nil
	st.SetScenario(bad)
	finish(t, st)
	if options, cleared := drawn(st); !slices.Equal(options, []int{0}) || !cleared {
		t.Errorf("it draws %v, cleared %v", options, cleared)
	}
	st.SetScenario(good)
	finish(t, st)
	if options, _ := drawn(st); !slices.Equal(options, []int{1}) {
		t.Errorf("it comes back as %v", options)
	}
}

// Panes, looks and hour may come before the scenario; numbers of options that do not exist do no harm.
func TestStageTakesCallsInAnyOrder(t *testing.T) {
	st := emptyStage()
	if options, cleared := drawn(st); len(options) > 0 || !cleared {
		t.Errorf("an empty stage draws %v, cleared %v", options, cleared)
	}
	look := Look{Turn_deg: 77, Elevation_deg: 10, Distance_m: 3}
	st.SetLook(1, look)
	st.SetLook(-1, look)
	st.ResetLook(7)
	st.Home(5)
	st.SetInstant(afternoon)
	st.SetFaces(3, nil, nil)
	st.SetFaces(-1, nil, nil)
	st.SetPanes(twoPanes)
	st.SetScenario(scenario.Default())
	finish(t, st)
	if o := st.options[0]; o.scene.instant != afternoon {
		t.Error("an hour that was set early is lost")
	}
	st.Draw(func() {}, func(option int, scene *Scene, view *View, _ int) {
		want := NewView(look.Camera(scene.stand, 0, 36), scene.stand, 0, twoPanes[1])
		want.Bunch = -1 // none is chosen
		if (*view == want) != (option == 1) {
			t.Errorf("option %d is seen from %v", option, view.Eye)
		}
	})
	if st.Stale() {
		t.Error("not all is drawn at first")
	}
}

// All cameras look at the front; a turn of the rows moves nothing in the picture but the light.
func TestLooksFollowTheRows(t *testing.T) {
	st, s := shownStage(t)
	eye := func() (at [3]float32) {
		v := st.view(0)
		return [3]float32{abs(v.Eye[0]), v.Eye[1], v.Eye[2]}
	}
	before := eye()
	for _, azimuth := range []float64{10, 60, 80, 135, 180} {
		s.Options[0].Rows.Azimuth_deg = azimuth
		st.SetScenario(s)
		finish(t, st)
		after := eye()
		// On the other side of the row one looks along it the other way.
		after[1] = min(after[1], float32(st.options[0].scene.stand.Length)-after[1])
		for k := range before {
			if abs(after[k]-before[k]) > 1e-3 {
				t.Errorf("rows to %g°: the eye is at %v, was at %v", azimuth, after, before)
				break
			}
		}
		if look, front := st.Home(0); look != HomeLook(azimuth, 36) || front != Front(azimuth, 36) {
			t.Errorf("home is %v in front of %g°", look, front)
		}
	}
}
