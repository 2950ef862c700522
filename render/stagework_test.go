package render

import (
	"slices"
	"testing"

	"rowlight/sim/scenario"
)

// always is enough for those who want the smallest piece of work.
func always() bool { return true }

// A turn of the rows keeps the plants, and so does what no plant depends on; a change of the vines does not.
func TestPlantsAreKept(t *testing.T) {
	st, s := shownStage(t)
	plantsOf := func() [2]*plants { return [2]*plants{st.options[0].scene.plants, st.options[1].scene.plants} }
	first := plantsOf()
	for _, step := range []struct {
		name string
		do   func()
		same [2]bool
	}{
		{"turn", func() { s.Options[0].Rows.Azimuth_deg = 70 }, [2]bool{true, true}},
		{"names, air, limits", func() { s.Options[1].Name, s.Weather.AirMax_C, s.Limits.Burn_C = "low", 30, 44 }, [2]bool{true, true}},
		{"leaves pulled on the afternoon side", func() { s.Options[0].Leaves.RemovedAfternoon = 0.5 }, [2]bool{false, true}},
		{"back to before", func() { s.Options[0].Leaves.RemovedAfternoon = 0 }, [2]bool{true, true}},
		{"exchanged", func() { s.Options[0], s.Options[1] = s.Options[1], s.Options[0] }, [2]bool{false, false}},
		{"exchanged back", func() { s.Options[0], s.Options[1] = s.Options[1], s.Options[0] }, [2]bool{true, true}},
		{"other bunches", func() { s.Options[1].Bunches.PerShoot = 1 }, [2]bool{true, false}},
		{"seed", func() { s.Seed++ }, [2]bool{false, false}},
	} {
		step.do()
		st.SetScenario(s)
		finish(t, st)
		for i, now := range plantsOf() {
			if (now == first[i]) != step.same[i] {
				t.Errorf("%s: the plants of option %d are the same: %v", step.name, i, now == first[i])
			}
		}
	}
}

// A copy of an option shares its plants; each has its own light.
func TestCopiesSharePlants(t *testing.T) {
	st, s := shownStage(t)
	s.Options[1] = s.Options[0]
	s.Options[1].Rows.Azimuth_deg = 90
	st.SetScenario(s)
	finish(t, st)
	a, b := st.options[0].scene, st.options[1].scene
	if a.plants != b.plants || a.lighting == b.lighting || a.light.sun == b.light.sun {
		t.Error("the copy must have the same plants and a light of its own")
	}
}

// Leaves pulled on one sun side are pulled on the other side of the row once the row has turned past
// east-west: other plants.
func TestTurnCanMovePulledLeaves(t *testing.T) {
	s := scenario.Default()
	o := s.Options[0]
	o.Leaves.RemovedMorning = 0.5
	key := func(azimuth float64) standKey {
		o.Rows.Azimuth_deg = azimuth
		return newStandKey(o, s)
	}
	north, aslant, past := key(0), key(60), key(120)
	if !north.equal(&aslant) || north.equal(&past) {
		t.Error("the plants change with the side that leaves are pulled on, and with nothing else of the direction")
	}
}

// Until the new picture is ready the old one is drawn, as it was.
func TestOldPictureStaysUntilTheNewIsReady(t *testing.T) {
	st, s := shownStage(t)
	scene := st.options[0].scene
	var before, now List
	view := st.view(0)
	scene.Compose(&before, &view, 4000)

	s.Options[0].Rows.Azimuth_deg = 40
	st.SetScenario(s)
	st.SetInstant(afternoon)
	slices0 := 0
	for ; scene.planting.RowAzimuth_deg == 0; slices0++ {
		if slices0%20 == 0 {
			view := st.view(0)
			if scene.Compose(&now, &view, 4000); !slices.Equal(before.Vertices, now.Vertices) {
				t.Fatalf("after %d slices the picture is half old, half new", slices0)
			}
		}
		if st.Work(false, always) == Nothing {
			t.Fatal("all work is done, but the rows have not turned")
		}
	}
	if st.options[0].scene != scene || scene.instant != afternoon || !scene.coarse {
		t.Error("the first picture must be of the newest hour, and coarse")
	}
	if slices0 < 60 {
		t.Errorf("the work came in %d slices only", slices0)
	}
}

// The newest input wins: what came between is never shown, and a picture follows inputs that keep coming.
func TestNewestInputWins(t *testing.T) {
	st, s := shownStage(t)
	shown := map[float64]bool{}
	const inputs = 50
	for i := range inputs {
		s.Options[0].Rows.Azimuth_deg = float64(i)
		st.SetScenario(s)
		st.SetInstant(Instant{Hour: float64(i), SunElevation_deg: 40, SunAzimuth_deg: 180, DNI_Wm2: 800})
		pieces := 0
		st.Work(false, func() bool { pieces++; return pieces > 60 })
		shown[st.options[0].scene.planting.RowAzimuth_deg] = true
	}
	if len(shown) < inputs/20 || len(shown) > inputs/2 {
		t.Errorf("of %d inputs %d were shown: %v", inputs, len(shown), shown)
	}
	finish(t, st)
	for i, o := range st.options {
		if o.scene.instant.Hour != inputs-1 {
			t.Errorf("option %d shows hour %g in the end", i, o.scene.instant.Hour)
		}
	}
	if azimuth := st.options[0].scene.planting.RowAzimuth_deg; azimuth != inputs-1 {
		t.Errorf("the rows run to %g° in the end", azimuth)
	}
}

// Finer pictures are made when it is calm, and give way to news.
func TestRefinementWaits(t *testing.T) {
	st, s := shownStage(t)
	st.SetInstant(afternoon)
	if left := st.Work(false, never); left != Refinement {
		t.Fatalf("after the coarse pictures %v is left", left)
	}
	for i, o := range st.options {
		if !o.scene.coarse || o.scene.instant != afternoon {
			t.Errorf("option %d: coarse %v at hour %g", i, o.scene.coarse, o.scene.instant.Hour)
		}
	}
	for range 30 {
		st.Work(true, always)
	}
	later := afternoon
	later.Hour, later.SunElevation_deg = 17, 30
	st.SetInstant(later)
	s.Options[1].Bunches.PerShoot = 1
	st.SetScenario(s)
	st.Work(false, never)
	for i, o := range st.options {
		if !o.scene.coarse || o.scene.instant != later {
			t.Errorf("option %d: coarse %v at hour %g", i, o.scene.coarse, o.scene.instant.Hour)
		}
	}
	finish(t, st)
	for i, o := range st.options {
		if o.scene.coarse {
			t.Errorf("option %d stays coarse", i)
		}
		if fresh := NewScene(o.scene.planting, st.atlas, later); !slices.Equal(fresh.leafColour, o.scene.leafColour) ||
			!slices.Equal(fresh.ground.pixels.Pix, o.scene.ground.pixels.Pix) {
			t.Errorf("option %d has another light than a scene made at once", i)
		}
	}
}

// Removing an option while it is worked for leaves the others whole.
func TestRemovedOptionIsForgotten(t *testing.T) {
	st, s := emptyStage(), scenario.Default()
	st.SetPanes(twoPanes)
	st.SetScenario(s)
	for st.worked == 0 {
		st.Work(false, always)
	}
	s.Options = s.Options[:1]
	st.SetScenario(s)
	finish(t, st)
	if options, _ := drawn(st); !slices.Equal(options, []int{0}) {
		t.Errorf("it draws %v", options)
	}
}

// Only options that have a pane are worked for.
func TestHiddenOptionsWait(t *testing.T) {
	st := emptyStage()
	st.SetPanes([]Pane{{}, {Width: 300, Height: 200}})
	st.SetScenario(scenario.Default())
	finish(t, st)
	if st.options[0].scene != nil || st.options[1].scene == nil {
		t.Error("the wrong option was grown")
	}
	st.SetPanes(twoPanes)
	finish(t, st)
	if options, _ := drawn(st); !slices.Equal(options, []int{0, 1}) {
		t.Errorf("with both panes it draws %v", options)
	}
}

// Temperatures of a stand that is not shown yet wait for it.
func TestFacesWaitForTheirStand(t *testing.T) {
	st, s := shownStage(t)
	count := st.options[0].scene.Faces()
	st.SetFaces(0, slices.Repeat([]float32{30}, count), make([]uint8, count))
	st.view(0)
	warm := st.options[0].scene.faceColour[0]

	s.Options[0].Bunches.PerShoot = 0.9
	st.SetScenario(s)
	fresh := newStandKey(s.Options[0], s)
	grown, err := new(nursery).get(fresh, s.Options[0], 36, st.atlas, unhurried)
	if err != nil {
		t.Fatal(err)
	}
	faces := 2 * len(grown.bunches.bunch)
	if faces == count {
		t.Fatal("the other crop has as many bunches")
	}
	st.SetFaces(0, slices.Repeat([]float32{50}, faces), make([]uint8, faces))
	st.view(0)
	if st.options[0].scene.faceColour[0] != warm {
		t.Error("the old stand takes the temperatures of the new one")
	}
	finish(t, st)
	st.view(0)
	if scene := st.options[0].scene; scene.Faces() != faces || scene.faceColour[0] == warm || scene.faceColour[0] == unknownFruit {
		t.Error("the new stand has not taken its temperatures")
	}
}

// The atlas is drawn in slices too, and before all else.
func TestAtlasIsDrawnInSlices(t *testing.T) {
	st, pieces := NewStage(), 0
	for ; st.atlas == nil; pieces++ {
		st.Work(false, always)
	}
	if pieces < 1000 || !slices.Equal(st.atlas.Image.Pix, testAtlas().Image.Pix) {
		t.Errorf("%d pieces, or another atlas", pieces)
	}
}
