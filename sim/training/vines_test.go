package training

import (
	"math"
	"slices"
	"testing"

	"rowlight/sim/scenario"
)

// Shares of vines act on as many vines as they say, and take their shoots, crop and leaves with them.
func TestSharesOfVines(t *testing.T) {
	for name, c := range map[string]struct {
		set    func(o *scenario.Option)
		shoots float64 // left
		trunks float64
		arms   float64
	}{
		"missing vines": {func(o *scenario.Option) { o.Training.MissingVines = 0.25 }, 0.75, 0.75, 0.75},
		"young vines":   {func(o *scenario.Option) { o.Training.YoungVines = 0.25 }, 0.875, 1, 1},
		"single arms":   {func(o *scenario.Option) { o.Training.SingleArmVines = 0.5 }, 0.75, 1, 0.75},
		"blind nodes":   {func(o *scenario.Option) { o.Training.BlindNodes = 0.2 }, 0.8, 1, 1},
		"all of it": {func(o *scenario.Option) {
			o.Training.MissingVines, o.Training.YoungVines, o.Training.SingleArmVines = 0.25, 0.25, 0.25
		}, 0.5, 0.75, 0.625},
	} {
		o := form(t, "vsp-spurs")
		whole := build(t, o, 1)
		c.set(&o)
		part := build(t, o, 1)
		vines := part.Length / part.VineSpacing
		per := func(n int, s *Stand) float64 { return float64(n) / (s.Length / s.VineSpacing) }
		near := 0.03 + 0.5*(1-c.trunks+1-c.arms)/vines + 0.25/vines // a share of vines is a whole number of them
		within(t, name+": shoots", per(len(part.Shoots), part)/per(len(whole.Shoots), whole), c.shoots-near, c.shoots+near)
		within(t, name+": bunches", per(len(part.Bunches), part)/per(len(whole.Bunches), whole), c.shoots-near-0.01, c.shoots+near+0.01)
		within(t, name+": leaf area", part.Measure().LeafArea_m2_per_m/whole.Measure().LeafArea_m2_per_m, c.shoots-near, c.shoots+near)
		within(t, name+": trunks", per(len(part.Trunks), part), c.trunks-0.5/vines, c.trunks+0.5/vines)
		within(t, name+": arms", per(len(part.Arms), part)/2, c.arms-0.5/vines, c.arms+0.5/vines)
	}
}

// A larger share adds vines and takes none back.
func TestSharesGrowByTheirOwnVines(t *testing.T) {
	missingAt := func(share float64) []vineState {
		o := form(t, "sprawl")
		o.Training.MissingVines = share
		return newGrower(o, 3).statesOf(20)
	}
	few, more := missingAt(0.1), missingAt(0.3)
	for vine := range few {
		if few[vine] == missing && more[vine] != missing {
			t.Errorf("vine %d is back", vine)
		}
	}
	count := 0
	for _, state := range more {
		if state == missing {
			count++
		}
	}
	if count != 6 {
		t.Errorf("%d of 20 vines are missing, want 6", count)
	}
}

// Turning shoots down takes the lowest wire first.
func TestLowestWireIsTurnedDownFirst(t *testing.T) {
	down := func(share float64) (low, high float64) {
		o := form(t, "scott-henry")
		o.Shoots.TurnedDown, o.Shoots.Skirt_m = share, 0
		s := build(t, o, 1)
		var counts, downs [2]float64
		for _, shoot := range s.Shoots {
			tier := 0
			if shoot.Points[0].Z() > 1.2 {
				tier = 1
			}
			counts[tier]++
			if shoot.Points[len(shoot.Points)-1].Z() < shoot.Points[0].Z() {
				downs[tier]++
			}
		}
		return downs[0] / counts[0], downs[1] / counts[1]
	}
	for share, want := range map[float64][2]float64{0: {0, 0}, 0.25: {0.5, 0}, 0.5: {1, 0}, 0.75: {1, 0.5}, 1: {1, 1}} {
		low, high := down(share)
		within(t, "share of the lower wire", low, want[0]-0.12, want[0]+0.12)
		within(t, "share of the upper wire", high, want[1]-0.12, want[1]+0.12)
	}
}

// The lower wall of Smart-Dyson holds 30-40 % less leaf than the upper (Zoecklein et al. 2008, AJEV 59:11), within ten
// points of that, and its shoots hang between their wires.
func TestSmartDysonHasALighterLowerWall(t *testing.T) {
	o := form(t, "smart-dyson")
	for _, seed := range seeds {
		s := build(t, o, seed)
		above := areaAbove(s, 1.22)
		within(t, "lower leaf area over upper", (1-above)/above, 0.5, 0.8)
		out, all := 0.0, 0.0
		for _, shoot := range s.Shoots {
			for _, p := range shoot.Points {
				if p.Z() > 0.6 && p.Z() < 0.81 {
					all++
					if math.Abs(p.X()) > 0.2 {
						out++
					}
				}
			}
		}
		within(t, "hanging nodes outside their wires", out/all, 0, 0.15)
	}
}

// Canes tied down bring the fruit below their cordon; free ones hang, with shoots all along them.
func TestCanesCarryTheFruitBelow(t *testing.T) {
	for _, layout := range []scenario.CaneLayout{scenario.CanesArched, scenario.CanesTiedDown, scenario.CanesFree} {
		o := form(t, "sylvoz")
		o.Training.CaneLayout = layout
		g := grown(t, o)
		within(t, string(layout)+": fruit below the cordon", 1.6-g.stand.Measure().FruitHeight_m, 0.05, 0.5)
		for i := range g.canes {
			c := &g.canes[i]
			length := pathLength(c.points)
			want := caneInternode * float64(o.Training.CaneNodes)
			within(t, string(layout)+": length of a cane", length/want, 1-4*caneSpread, 1+4*caneSpread)
		}
	}
	wires := form(t, "sylvoz").Trellis.Wires
	if !slices.ContainsFunc(wires, func(w scenario.Wire) bool { return w.Role == scenario.Tie }) {
		t.Error("no wire to tie to")
	}
}
