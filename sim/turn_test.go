package sim

import (
	"math"
	"testing"

	"rowlight/sim/light"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// Where all leaves have gone no light comes from leaves: what a sketch leaves to the faces is the light of sky and floor on bare vines,
// as a model made of these anew sees them.
func TestTurnToBareVines(t *testing.T) {
	free := func() error { return nil }
	full, err := training.Build(scenario.Default().Options[0], 36.4, 1)
	if err != nil {
		t.Fatal(err)
	}
	bare := *full
	bare.Leaves = nil
	settings := light.Settings{Seed: 1, Clumping: 1}
	var models [2]*light.Model
	for i, stand := range []*training.Stand{full, &bare} {
		if models[i], err = light.New(stand, settings, free); err != nil {
			t.Fatal(err)
		}
	}
	before, anew := models[0], models[1]
	after, err := before.Sketch(light.NewBefore(full, slopeInRow(scenario.Site{}, scenario.Rows{})).Change(&bare), free)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ diffuse, onFloor, albedo float64 }{{200, 0, 0.2}, {0, 500, 0.2}, {0, 500, 0.3}} {
		at := newAnswer(before)
		for strip := range at.strips {
			at.strips[strip] = c.onFloor
		}
		for f := range at.short {
			sky, floor := before.LightViews(f)
			at.short[f].AddScaled(&sky, c.diffuse)
			for strip := range floor {
				at.short[f].AddScaled(&floor[strip], c.onFloor*c.albedo)
			}
		}
		newSketched(before, after, c.albedo).turn(light.Sky{Diffuse: c.diffuse}, &at)
		got, want := 0.0, 0.0
		for f := range at.short {
			sky, floor := anew.LightViews(f)
			got, want = got+at.short[f].Mean, want+sky.Mean*c.diffuse
			for strip := range floor {
				want += floor[strip].Mean * c.onFloor * c.albedo
			}
		}
		if want <= 0 || math.Abs(got/want-1) > 0.03 {
			t.Errorf("%+v: faces get %.1f W/m² together, on bare vines %.1f", c, got, want)
		}
	}
}
