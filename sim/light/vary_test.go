package light

import (
	"math"
	"testing"

	"rowlight/sim/canopy"
)

// furthest is the largest difference of two views over all faces.
func furthest(a, b []Broad) float64 {
	worst := 0.0
	for f := range a {
		worst = math.Max(worst, math.Max(math.Abs(a[f].Mean-b[f].Mean), a[f].Vector.Sub(b[f].Vector).Len()))
	}
	return worst
}

// Typical faces are some of all, as open as these from the most hidden to the most open, by turns of either side; one in one
// are all of them.
func TestTypicalFacesStandForAll(t *testing.T) {
	m := model(t, invented(3, 2500, 40, false), canopy.Slope{Across: 0.05})
	few, all := m.Typical(4), m.Typical(1)
	if len(few.Faces) != 20 || len(all.Faces) != len(m.Faces) {
		t.Fatalf("%d and %d faces, want 20 and %d", len(few.Faces), len(all.Faces), len(m.Faces))
	}
	for side := range 2 {
		var mean [2]float64
		for i, of := range []*Model{few, all} {
			for f := side; f < len(of.Faces); f += 2 {
				sky, _, _, _ := of.Views(f)
				mean[i] += sky.Mean / float64(len(of.Faces)/2)
				if f >= 2 {
					if before, _, _, _ := of.Views(f - 2); before.Mean > sky.Mean {
						t.Errorf("face %d sees less of the sky than the one before", f)
					}
				}
				if of.Faces[f].Right != (side == 1) {
					t.Errorf("face %d is not of its side", f)
				}
			}
		}
		if math.Abs(mean[0]-mean[1]) > 0.05*mean[1] {
			t.Errorf("side %d: typical faces see %.4f of the sky, all %.4f", side, mean[0], mean[1])
		}
	}
}

// A part of the bunches has the light that it has among all.
func TestEveryBunchKeepsItsLight(t *testing.T) {
	m := model(t, invented(3, 2500, 40, false), canopy.Slope{Across: 0.05})
	few := m.Every(3)
	if len(few.Faces) != 28 {
		t.Fatalf("%d faces, want two of each of bunches 0, 3 … 39", len(few.Faces))
	}
	lit := 0
	for elevation := 5.0; elevation < 80; elevation += 5 {
		var all, part Instant
		sky := Sky{Sun: toSun(elevation, 7*elevation), Beam: 800, Diffuse: 100}
		m.At(sky, &all)
		few.At(sky, &part)
		for f := range few.Faces {
			same := f/2*6 + f%2
			if part.Lit[f] != all.Lit[same] || part.Short[f] != all.Short[same] || few.Place(f) != m.Place(same) {
				t.Fatalf("face %d differs from face %d of all", f, same)
			}
			if part.Lit[f] {
				lit++
			}
		}
		floor := []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16}
		if few.FloorLongwave(27, floor) != m.FloorLongwave(79, floor) {
			t.Fatal("the last face sees another floor")
		}
	}
	if lit == 0 {
		t.Error("no face is lit: the test says nothing")
	}
}

// Between three models others are as if they were made anew: views within 0.002, and the sun exactly.
func TestModelsBetweenAgreeWithThoseMadeAnew(t *testing.T) {
	m := model(t, invented(4, 3000, 20, false), canopy.Slope{})
	between, err := NewBetween(m, 0.75, 1.3, free)
	if err != nil {
		t.Fatal(err)
	}
	for _, factor := range []float64{0.75, 0.85, 1, 1.15, 1.3} {
		got, want := between.At(factor), thicker(t, m, factor)
		if off := furthest(got.sky, want.sky); off > 0.002 {
			t.Errorf("at %.2f views of the sky are %.4f off", factor, off)
		}
		if off := furthest(got.ground, want.ground); off > 0.002 {
			t.Errorf("at %.2f views of the floor are %.4f off", factor, off)
		}
		var a, b Instant
		got.At(Sky{Sun: toSun(30, 20), Beam: 800}, &a)
		want.At(Sky{Sun: toSun(30, 20), Beam: 800}, &b)
		for f := range a.Lit {
			if a.Lit[f] != b.Lit[f] {
				t.Errorf("at %.2f face %d is lit on one model only", factor, f)
			}
		}
	}
	if furthest(between.At(0.75).sky, between.At(1.3).sky) < 0.02 {
		t.Error("leaf area hardly changes the view of the sky: the test says nothing")
	}
}

// thicker is a model with thicker leaves.
func thicker(t *testing.T, m *Model, factor float64) *Model {
	t.Helper()
	other, err := m.Thicker(factor, free)
	if err != nil {
		t.Fatal(err)
	}
	return other
}

// Thresholds light a face below them and not above.
func TestThresholds(t *testing.T) {
	m := model(t, invented(7, 3500, 60, false), canopy.Slope{})
	sun := toSun(40, 15)
	thresholds, lit := make([]float64, len(m.Faces)), 0
	m.Thresholds(sun, thresholds)
	for _, factor := range []float64{0.4, 0.8, 1, 1.3, 3} {
		var at Instant
		thicker(t, m, factor).At(Sky{Sun: sun, Beam: 800}, &at)
		for f, threshold := range thresholds {
			if at.Lit[f] != (factor < threshold) {
				t.Errorf("face %d at %.1f times the leaves: lit is %t, its threshold is %.4f", f, factor, at.Lit[f], threshold)
			}
			if at.Lit[f] {
				lit++
			}
		}
	}
	if lit == 0 || lit == 5*len(m.Faces) {
		t.Error("all faces are alike: the test says nothing")
	}
}

// More leaves take light from every face, and none leaves what an empty vineyard has.
func TestThickerLeavesTakeLight(t *testing.T) {
	m := model(t, invented(5, 3000, 20, false), canopy.Slope{})
	thin, thick, none := thicker(t, m, 0.8), thicker(t, m, 1.25), thicker(t, m, 0)
	for f := range m.Faces {
		if !(thick.sky[f].Mean < m.sky[f].Mean && m.sky[f].Mean < thin.sky[f].Mean) {
			t.Fatalf("face %d sees %.4f, %.4f, %.4f of the sky as leaves thicken", f, thin.sky[f].Mean, m.sky[f].Mean, thick.sky[f].Mean)
		}
		if math.Abs(none.sky[f].Mean-0.25) > 1e-3 { // half of the half that its bunch leaves (closed form)
			t.Fatalf("face %d sees %.4f of the sky without leaves", f, none.sky[f].Mean)
		}
	}
}

// Another seed lights other faces, the same seed the same.
func TestReseeded(t *testing.T) {
	m := model(t, invented(6, 3500, 120, false), canopy.Slope{})
	var was, same, other Instant
	sky := Sky{Sun: toSun(35, 10), Beam: 800}
	m.At(sky, &was)
	m.Reseeded(1).At(sky, &same)
	m.Reseeded(2).At(sky, &other)
	differ := 0
	for f := range was.Lit {
		if was.Lit[f] != same.Lit[f] {
			t.Fatalf("face %d differs under the same seed", f)
		}
		if was.Lit[f] != other.Lit[f] {
			differ++
		}
	}
	if differ == 0 {
		t.Error("another seed lights the same faces")
	}
}
