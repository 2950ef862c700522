package training

import (
	"math"
	"testing"

	"rowlight/sim/scenario"
)

// seeds over which published ranges must hold.
var seeds = []int{1, 2, 3, 17}

// within fails the test unless low ≤ got ≤ high.
func within(t *testing.T, what string, got, low, high float64) {
	t.Helper()
	if !(got >= low && got <= high) {
		t.Errorf("%s is %.4g, want %.4g to %.4g", what, got, low, high)
	}
}

// What holds for every form of the catalogue.
func TestFormsCarryWhatTheyAreGiven(t *testing.T) {
	for _, f := range scenario.Forms() {
		for _, seed := range seeds {
			o := f.Option
			o.Shoots.TrimTop_m, o.Shoots.TrimSide_m, o.Shoots.Skirt_m = 0, 0, 0 // nothing cut off
			s := build(t, o, seed)
			m := s.Measure()
			within(t, f.Key+": leaf area per metre", m.LeafArea_m2_per_m, o.Leaves.Area_m2_per_m*(1-1e-9), o.Leaves.Area_m2_per_m*(1+1e-9))
			within(t, f.Key+": share on laterals", m.LateralShare, o.Leaves.Laterals-1e-9, o.Leaves.Laterals+1e-9)
			within(t, f.Key+": shoots per metre", m.ShootsPerMetre, o.Shoots.PerMetre-0.15, o.Shoots.PerMetre+0.15)
			within(t, f.Key+": bunches per shoot", m.BunchesPerVine/m.ShootsPerVine, o.Bunches.PerShoot-0.1, o.Bunches.PerShoot+0.1)
			within(t, f.Key+": bunches in the period", float64(len(s.Bunches)), fewestBunches, math.Inf(1))
			within(t, f.Key+": vines in the period", s.Length/s.VineSpacing, fewestLargeVines, math.Inf(1))
		}
	}
}

func TestVSPIsALeafWall(t *testing.T) {
	for _, seed := range seeds {
		s := build(t, form(t, "vsp-spurs"), seed)
		m := s.Measure()
		within(t, "width", m.Curtain_m, 0.3, 0.5)           // hedged canopy, from memory
		within(t, "top", m.Top_m, 1.8, 2.1)                 // hedged canopy, from memory
		within(t, "inclination", m.Inclination_deg, 50, 60) // from memory
		// Leaf layers at about 15 shoots per metre: 1-1.5 in the scorecard of Smart & Robinson 1991
		// (WineSkills UK), three advocated by Smart 1985, AJEV 36:230.
		within(t, "leaf layers", m.LeafLayers, 1, 2.2)
		// Most of the wall stands above the fruit, common practice.
		within(t, "leaf area above the fruit zone", areaAbove(s, m.FruitHeight_m+0.15), 0.65, 0.95)
	}
}

// Half-dome 1.2-1.6 m wide over the cordon: from memory. Leaves on its top are flatter, 35-45°: from memory.
func TestSprawlIsAHalfDome(t *testing.T) {
	for _, seed := range seeds {
		s := build(t, form(t, "sprawl"), seed)
		m := s.Measure()
		within(t, "width", m.Curtain_m, 1.2, 1.6)
		within(t, "inclination at the top", m.TopInclination_deg, 35, 47)
		within(t, "leaf area above the fruit zone", areaAbove(s, m.FruitHeight_m+0.15), 0.5, 0.9)
		within(t, "leaf area density", m.Density_m2_per_m3, 3, 7) // Kliewer & Dokoozlian 2005, AJEV 56:170
	}
}

// The double curtain hangs from its two cordons, and the curtains stay apart: it loses its benefit if
// they grow together (extension advice on the Geneva double curtain).
func TestDoubleCurtainHangsInTwo(t *testing.T) {
	for _, seed := range seeds {
		o := form(t, "double-curtain")
		s := build(t, o, seed)
		m := s.Measure()
		between, total := 0.0, 0.0
		for i := range s.Leaves {
			total += s.Leaves[i].Area
			if math.Abs(s.Leaves[i].Centre.X()) < 0.15 {
				between += s.Leaves[i].Area
			}
		}
		within(t, "share of leaf area in the middle 0.3 m", between/total, 0, 0.1)
		within(t, "leaf area above the fruit zone", areaAbove(s, m.FruitHeight_m+0.15), 0, 0.35)
		within(t, "leaf area density", m.Density_m2_per_m3, 3, 7) // Kliewer & Dokoozlian 2005, AJEV 56:170
		// 23.8 nodes per shoot, 5.1 cm apart, same trial.
		nodes := 0.0
		for _, shoot := range s.Shoots {
			nodes += float64(len(shoot.Points)-3) / float64(len(s.Shoots))
		}
		within(t, "nodes per shoot", nodes, 21, 26)
	}
}

// areaAbove is the share of the leaf area above a height.
func areaAbove(s *Stand, z float64) float64 {
	above, total := 0.0, 0.0
	for i := range s.Leaves {
		total += s.Leaves[i].Area
		if s.Leaves[i].Centre.Z() > z {
			above += s.Leaves[i].Area
		}
	}
	return above / total
}

// Smart 1988, AJEV 39:325: below 10 shoots per metre the canopy is open, about 15 is best, above 30
// there are no gaps; fruit goes from mostly exposed to mostly interior. Leaf area follows the shoots.
func TestShootDensityClosesTheCanopy(t *testing.T) {
	at := func(perMetre float64) (mean Measures) {
		o := form(t, "vsp-spurs")
		o.Leaves.Area_m2_per_m *= perMetre / o.Shoots.PerMetre
		o.Shoots.PerMetre = perMetre
		for _, seed := range seeds {
			m := build(t, o, seed).Measure()
			mean.Gaps += m.Gaps / float64(len(seeds))
			mean.Exterior += m.Exterior / float64(len(seeds))
			mean.LeafLayers += m.LeafLayers / float64(len(seeds))
		}
		return mean
	}
	open, best, dense := at(5), at(15), at(30)
	within(t, "gaps at 5 shoots per metre", open.Gaps, 0.3, 0.6)
	within(t, "gaps at 30 shoots per metre", dense.Gaps, 0, 0.03)
	if !(open.Gaps > 2*best.Gaps && best.Gaps > 2*dense.Gaps) {
		t.Errorf("gaps %.3f, %.3f, %.3f at 5, 15, 30 shoots per metre", open.Gaps, best.Gaps, dense.Gaps)
	}
	within(t, "exterior bunches at 5 shoots per metre", open.Exterior, 0.8, 1)
	within(t, "exterior bunches at 30 shoots per metre", dense.Exterior, 0, 0.5)
	within(t, "leaf layers at 15 shoots per metre", best.LeafLayers, 1, 2.2)
}
