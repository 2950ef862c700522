package training

import "testing"

// The mean over three vine spacings, two rootstocks and three years of Cabernet Sauvignon in the trial of Kliewer &
// Dokoozlian 2005, AJEV 56:170 (attribution inferred), of the four systems of it that the catalogue has: what a shoot
// and a metre of canopy carry. The trial counts nodes of the shoot; here primary leaves at nodes stand for them. Forms start from
// rounded sizes, so a tenth is allowed on shoots, a fifth on leaves. Shoots are compared whole: those of the trial are, since their
// nodes times internodes make their length. Hedged as in the catalogue, Scott Henry carries a fifth less primary leaf.
func TestShootsOfTheSystemsTrial(t *testing.T) {
	const shootsWithin, leavesWithin = 0.1, 0.2
	for _, c := range []struct {
		form              string
		shoots            float64 // per metre of canopy
		primary, lateral  float64 // leaf area of a shoot [cm²]
		leafArea          float64 // per metre of canopy [m²/m]
		nodes, internodes float64 // of a shoot; between two [cm]
	}{
		{"vsp-spurs", 14.0, 2280, 1050, 4.72, 24.0, 5.3},
		{"scott-henry", 9.1, 2470, 1190, 3.20, 25.5, 5.5},
		{"double-curtain", 11.8, 2120, 900, 3.52, 23.8, 5.1},
		{"lyre", 12.3, 1810, 600, 2.98, 21.3, 4.9},
	} {
		o := form(t, c.form)
		near := func(what string, got, want, share float64) {
			t.Helper()
			t.Logf("%s: %s %.3g, published %.3g", c.form, what, got, want)
			within(t, c.form+": "+what, got, want*(1-share), want*(1+share))
		}
		hedged := meanOf(t, o)
		o.Shoots.TrimTop_m, o.Shoots.TrimSide_m, o.Shoots.Skirt_m = 0, 0, 0
		m := meanOf(t, o)
		t.Logf("%s: hedged as in the catalogue %.2f m²/m", c.form, hedged.LeafArea_m2_per_m)
		perShoot := m.LeafArea_m2_per_m / m.ShootsPerMetre * 1e4
		near("shoots per metre", m.ShootsPerMetre, c.shoots, shootsWithin)
		near("leaf area per metre", m.LeafArea_m2_per_m, c.leafArea, leavesWithin)
		near("primary leaf area of a shoot", perShoot*(1-m.LateralShare), c.primary, leavesWithin)
		near("lateral leaf area of a shoot", perShoot*m.LateralShare, c.lateral, leavesWithin)
		near("internode", o.Shoots.Internode_cm, c.internodes, shootsWithin)
		near("nodes of a shoot", o.Shoots.Length_m*100/o.Shoots.Internode_cm, c.nodes, leavesWithin)
	}
}

// Minimal pruning on two arms, Cabernet Sauvignon, Oakville 1992 (the same trial): many short shoots, small bunches.
// The count of shoots and their length are what the form is given; leaf area and bunches have to follow.
func TestShootsOfTheMinimalPruningTrial(t *testing.T) {
	o := form(t, "minimal-pruning")
	m := meanOf(t, o)
	within(t, "shoots of a vine", m.ShootsPerVine, 0.9*314, 1.1*314)
	within(t, "leaf area of a vine [m²]", m.LeafArea_m2_per_m*o.Rows.VineSpacing_m, 0.8*20.1, 1.2*20.1)
	within(t, "bunches of a vine", m.BunchesPerVine, 0.8*299, 1.2*299)
	within(t, "mass of a bunch [g]", o.Bunches.Mass_g, 0.8*53, 1.2*53)
	within(t, "length of a shoot [cm]", o.Shoots.Length_m*100, 0.8*41, 1.2*41)
}

// Leaves pulled about the fruit open it: fewer leaf layers, more gaps, more exterior bunches, the less so where one side
// keeps its leaves (the aim of leaf removal in Smart & Robinson 1991, as WineSkills UK has it). The leaf area above stays.
func TestLeafRemovalOpensTheFruitZone(t *testing.T) {
	o := form(t, "vsp-spurs")
	before := meanOf(t, o)
	o.Leaves.RemovedMorning = 0.9
	one := meanOf(t, o)
	o.Leaves.RemovedAfternoon = 0.9
	both := meanOf(t, o)
	t.Logf("layers %.2f, %.2f, %.2f; gaps %.2f, %.2f, %.2f; exterior %.2f, %.2f, %.2f", before.LeafLayers, one.LeafLayers,
		both.LeafLayers, before.Gaps, one.Gaps, both.Gaps, before.Exterior, one.Exterior, both.Exterior)
	if !(before.LeafLayers > one.LeafLayers && one.LeafLayers > both.LeafLayers) {
		t.Error("pulled leaves do not lower the leaf layers")
	}
	if !(before.Gaps < one.Gaps && one.Gaps < both.Gaps) {
		t.Error("pulled leaves do not raise the gaps")
	}
	if !(before.Exterior < one.Exterior && one.Exterior <= both.Exterior) {
		t.Error("pulled leaves do not bring bunches to the outside")
	}
	within(t, "leaf area left", both.LeafArea_m2_per_m/before.LeafArea_m2_per_m, 0.6, 0.95)
}
