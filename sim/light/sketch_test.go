package light

import (
	"math"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/training"
)

// sketch draws the model of a stand after its leaves have changed.
func sketch(t *testing.T, m *Model, before, after *training.Stand) *Model {
	t.Helper()
	other, err := m.Sketch(NewBefore(before, m.slope).Change(after), free)
	if err != nil {
		t.Fatal(err)
	}
	return other
}

// among is a stand with some of its leaves, each of its area times a factor.
func among(s *training.Stand, every int, factor float64) *training.Stand {
	other := *s
	other.Leaves = nil
	for i, leaf := range s.Leaves {
		if i%every != 0 || every == 1 {
			leaf.Area *= factor
			other.Leaves = append(other.Leaves, leaf)
		}
	}
	return &other
}

// fruitRaised is a stand whose bunches hang higher among other leaves [m].
func fruitRaised(s *training.Stand, by float64) *training.Stand {
	other := among(s, 4, 1)
	other.Bunches = slices.Clone(s.Bunches)
	for i := range other.Bunches {
		other.Bunches[i].Centre[2] += by
	}
	return other
}

// A sketch is near the model made anew at the same clumping and with the same fields: it sees the floor alike, since that is
// looked at in the same directions unless bunches have moved, and the sky nearly so, and the sun lights nearly the same faces.
func TestSketchIsNearTheModelMadeAnew(t *testing.T) {
	full := invented(8, 3500, 60, false)
	slope := canopy.Slope{Across: 0.05, Along: -0.03}
	for name, c := range map[string]struct {
		before, after *training.Stand
		sky, mean     float64 // how far off views of the sky may be, of any face and of all
		floor         float64 // and views of its strips, of any face
		lit           float64 // faces that may be in another light, over those without the sketch
	}{
		"a third gone":   {full, among(full, 3, 1), 0.025, 0.004, 1e-4, 0.5},
		"a third come":   {among(full, 3, 1), full, 0.025, 0.004, 1e-4, 0.5},
		"all smaller":    {full, among(full, 1, 0.7), 0.025, 0.004, 1e-4, 0.5},
		"two thirds new": {among(full, 3, 1), among(full, 3, 1.3), 0.025, 0.004, 1e-4, 0.5},
		"fruit higher":   {full, fruitRaised(full, 0.3), 0.025, 0.007, 0.04, 0.6},
		"nothing":        {full, full, 1e-12, 1e-12, 1e-4, 0.5},
	} {
		m, want := model(t, c.before, slope), model(t, c.after, slope)
		want.clumping, want.field = m.clumping, m.field
		if err := want.viewSky(free); err != nil {
			t.Fatal(err)
		}
		got := sketch(t, m, c.before, c.after)
		if off := furthest(got.ground, want.ground); off > c.floor {
			t.Errorf("%s: views of the floor are %.6f off", name, off)
		}
		if off := furthest(got.sky, want.sky); off > c.sky {
			t.Errorf("%s: views of the sky are %.4f off", name, off)
		}
		floor := func(m *Model) (mean float64) {
			for i := range m.ground {
				mean += m.ground[i].Mean / float64(len(m.Faces))
			}
			return mean
		}
		if off, change := floor(got)-floor(want), floor(m)-floor(want); math.Abs(off) > 0.25*math.Abs(change)+1e-4 {
			t.Errorf("%s: faces see %+.4f more of the floor on the average, %+.4f without the sketch", name, off, change)
		}
		mean := 0.0
		for f := range got.sky {
			mean += (got.sky[f].Mean - want.sky[f].Mean) / float64(len(got.sky))
		}
		if math.Abs(mean) > c.mean {
			t.Errorf("%s: faces see %+.4f more of the sky on the average", name, mean)
		}
		off, lit, before := lightings(got, want), lightings(want, nil), lightings(m, want)
		if float64(off) > c.lit*float64(before) {
			t.Errorf("%s: %d of %d lit faces are in another light, %d without the sketch", name, off, lit, before)
		}
	}
}

// A change is the same for a model whoever has looked along it before.
func TestChangeIsSharedByModels(t *testing.T) {
	full := invented(8, 3500, 60, false)
	m, before := model(t, full, canopy.Slope{}), NewBefore(full, canopy.Slope{})
	few, change := m.Every(2), before.Change(fruitRaised(full, 0.1))
	for _, of := range []*Model{m, few, m} {
		got, err := of.Sketch(change, free)
		if err != nil {
			t.Fatal(err)
		}
		if off := furthest(got.sky, sketch(t, of, full, fruitRaised(full, 0.1)).sky); off > 0 {
			t.Errorf("of %d faces views of the sky are %g off", len(of.Faces), off)
		}
	}
}

// lightings counts, over many suns, the faces that are lit by one of two models only, or that one lights.
func lightings(m, other *Model) (sum int) {
	for elevation := 10.0; elevation < 80; elevation += 3 {
		var a, b Instant
		sky := Sky{Sun: toSun(elevation, 7*elevation), Beam: 800}
		m.At(sky, &a)
		if other != nil {
			other.At(sky, &b)
		} else {
			b.Lit = make([]bool, len(a.Lit))
		}
		for f := range a.Lit {
			if a.Lit[f] != b.Lit[f] {
				sum++
			}
		}
	}
	return sum
}

// Nets let the same share through, so that a sketch among the same leaves is the model, and one with fewer is lighter.
func TestSketchBehindNets(t *testing.T) {
	full := invented(9, 3500, 30, false)
	m := behind(t, model(t, full, canopy.Slope{}), hung(0.4))
	same, fewer := sketch(t, m, full, full), sketch(t, m, full, among(full, 2, 1))
	if off := math.Max(furthest(same.netted.sky, m.netted.sky), furthest(same.netted.openGround, m.netted.openGround)); off > 1e-12 {
		t.Errorf("views past nets are %g off among the same leaves", off)
	}
	anew := behind(t, model(t, among(full, 2, 1), canopy.Slope{}), hung(0.4))
	var got, want, before float64
	for f := range m.Faces {
		got, want, before = got+fewer.netted.sky[f].Mean, want+anew.netted.sky[f].Mean, before+m.netted.sky[f].Mean
	}
	if math.Abs(got-want) > 0.2*(want-before) {
		t.Errorf("faces see %.4f of the sky past nets, %.4f made anew, %.4f before", got, want, before)
	}
}

// A sketch of the beam lights the faces that the whole sketch does under each of its suns, where leaves have gone and where all are new.
func TestSketchOfTheBeamLightsAsTheSketch(t *testing.T) {
	full := invented(8, 3500, 60, false)
	m := model(t, full, canopy.Slope{Across: 0.05})
	for name, after := range map[string]*training.Stand{"a third gone": among(full, 3, 1), "all smaller": among(full, 1, 0.7), "fruit higher": fruitRaised(full, 0.1)} {
		change := NewBefore(full, m.slope).Change(after)
		whole, err := m.Sketch(change, free)
		if err != nil {
			t.Fatal(err)
		}
		other := 0 // faces that leaves bring into the sun or out of it
		for elevation := 15.0; elevation < 75; elevation += 10 {
			suns := []mgl64.Vec3{toSun(elevation, 7*elevation), toSun(elevation+3, 7*elevation+4)}
			beam, err := m.SketchBeam(change, suns, free)
			if err != nil {
				t.Fatal(err)
			}
			for _, sun := range suns {
				var before, got, want Instant
				sky := Sky{Sun: sun, Beam: 800}
				m.At(sky, &before)
				beam.At(sky, &got)
				whole.At(sky, &want)
				for f := range want.Lit {
					if got.Lit[f] != want.Lit[f] {
						t.Fatalf("%s, sun %.0f° high: face %d is lit: %v, in the sketch %v", name, elevation, f, got.Lit[f], want.Lit[f])
					}
					if before.Lit[f] != want.Lit[f] {
						other++
					}
				}
			}
		}
		if other < 20 {
			t.Errorf("%s: only %d faces change: the test says nothing", name, other)
		}
	}
}
