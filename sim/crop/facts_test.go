package crop

import (
	"math"
	"testing"

	"rowlight/sim/scenario"
)

// measured is one system of the trial of six on Cabernet Sauvignon (AJEV, attribution to Kliewer & Dokoozlian 2005,
// 56:170, inferred): means of vines 1, 2 and 3 m apart, two rootstocks, 1993–95.
type measured struct {
	name              string
	form              string // of the catalogue with as many lengths of canopy
	perMetre          float64
	shootsPerVine     float64
	yield_t_ha        float64
	prunings_kgm      float64 // of canopy
	yieldToPrunings   float64
	leafToFruit_cm2_g float64
}

var sixSystems = []measured{
	{"VSP", "vsp-spurs", 14.0, 27.3, 9.9, 0.89, 4.9, 14.4},
	{"Scott Henry", "scott-henry", 9.1, 34.8, 12.8, 0.59, 4.9, 15.9},
	{"TK2T", "double-curtain", 12.0, 46.3, 15.3, 0.50, 6.4, 11.9},
	{"GDC", "double-curtain", 11.8, 45.3, 15.9, 0.54, 7.0, 13.1},
	{"lyre", "lyre", 12.3, 46.8, 16.8, 0.48, 7.4, 11.2},
	{"V", "lyre", 13.2, 49.7, 18.6, 0.72, 5.8, 15.5},
}

// of is the scenario of a system on vines 2 m apart in rows 3 m apart, all with the same bunches.
func (m measured) of(t *testing.T) (scenario.Scenario, scenario.Option) {
	t.Helper()
	form, ok := scenario.FormByKey(m.form)
	if !ok {
		t.Fatal(m.form)
	}
	s, o := scenario.Default(), form.Option
	o.Rows.VineSpacing_m, o.Rows.RowSpacing_m = 2, 3
	o.Shoots.PerMetre, o.Shoots.Thinned = m.perMetre, 0
	o.Bunches = scenario.Bunches{PerShoot: 1.8, Mass_g: 130}
	return s, o
}

// Shoots per vine follow from shoots per metre and the lengths of canopy: within 8 % of the table, whose means over
// three spacings are not quite those of the middle one.
func TestFactShootsOfSixSystems(t *testing.T) {
	for _, m := range sixSystems {
		s, o := m.of(t)
		if got := Of(s, o, 0).ShootsPerVine; math.Abs(got/m.shootsPerVine-1) > 0.08 {
			t.Errorf("%s: %.1f shoots on a vine, published %.1f", m.name, got, m.shootsPerVine)
		}
	}
}

// Fact 10: at equal site vigour yields stand as 1.0 for VSP, 1.3 for Scott Henry, 1.55 to 1.7 for TK2T, GDC and lyre,
// 1.9 for V, each within 0.2 (the same trial): here by their shoots alone.
func TestFactYieldsOfSixSystems(t *testing.T) {
	s, o := sixSystems[0].of(t)
	vsp := Of(s, o, 0).PerHa_t.Value
	for _, m := range sixSystems {
		s, o := m.of(t)
		got, want := Of(s, o, 0).PerHa_t.Value/vsp, m.yield_t_ha/sixSystems[0].yield_t_ha
		t.Logf("%-12s %.2f times VSP, published %.2f", m.name, got, want)
		if math.Abs(got-want) > 0.2 {
			t.Errorf("%s: %.2f times VSP, published %.2f", m.name, got, want)
		}
	}
}

// knownMiss is a published yield that the arithmetic misses: its ratio and how far that may move before one must look.
type knownMiss struct {
	name                   string
	got, published, missed float64
	allowed, margin        float64
}

// Fact 10, second part: Viognier bore 10.5 kg a vine on GDC, 9.9 on Smart-Dyson and 6.0 on VSP over six seasons
// (Zoecklein et al. 2008, AJEV 59:11), 1.6 to 1.8 times VSP; here with the catalogue's own shoots and bunches on vines
// of one spacing. What is missed stands in the table, which fails when a miss grows or is cured.
func TestFactDividedCanopiesOfViognier(t *testing.T) {
	yield := func(key string) float64 {
		form, ok := scenario.FormByKey(key)
		if !ok {
			t.Fatal(key)
		}
		s, o := scenario.Default(), form.Option
		o.Rows.VineSpacing_m, o.Rows.RowSpacing_m = 2.4, 3
		return Of(s, o, 0).PerVine_kg.Value
	}
	vsp := yield("vsp-spurs")
	for _, m := range []knownMiss{
		{name: "GDC", got: yield("double-curtain") / vsp, published: 1.75, allowed: 0.2},
		// The catalogue gives the divided cordon 20 shoots a metre, a third more than VSP; the trial's does not say.
		{name: "Smart-Dyson", got: yield("smart-dyson") / vsp, published: 1.65, allowed: 0.2, missed: 1.33, margin: 0.05},
	} {
		t.Logf("%s: %.2f times VSP, published %.2f", m.name, m.got, m.published)
		switch missed := math.Abs(m.got-m.published) > m.allowed; {
		case m.missed == 0 && missed:
			t.Errorf("%s: %.2f times VSP, published %.2f", m.name, m.got, m.published)
		case m.missed != 0 && !missed:
			t.Errorf("%s: %.2f times VSP: the known miss is cured, take it off", m.name, m.got)
		case m.missed != 0 && math.Abs(m.got-m.missed) > m.margin:
			t.Errorf("%s: %.2f times VSP: the known miss of %.2f has moved", m.name, m.got, m.missed)
		}
	}
}

// Pruning levels of Cabernet Sauvignon, Oakville 1992 (AJEV tables, same inferred source): bunches and fruit of a vine
// follow from shoots, bunches a shoot and their weight.
func TestFactPruningLevels(t *testing.T) {
	form, _ := scenario.FormByKey("vsp-spurs")
	for _, row := range []struct {
		name                               string
		shoots, bunches, yield_kg, bunch_g float64
	}{
		{"bilateral, spurs", 36, 69, 9.8, 142}, {"bilateral, hedged", 191, 225, 20.2, 90}, {"bilateral, minimal", 314, 299, 15.9, 53},
		{"quadrilateral, spurs", 41, 75, 11.8, 157}, {"quadrilateral, hedged", 244, 233, 24.3, 104}, {"quadrilateral, minimal", 362, 274, 22.0, 80},
	} {
		s, o := scenario.Default(), form.Option
		o.Rows.VineSpacing_m, o.Shoots.PerMetre = 2, row.shoots/2
		o.Bunches = scenario.Bunches{PerShoot: row.bunches / row.shoots, Mass_g: row.bunch_g}
		c := Of(s, o, 0)
		if math.Abs(c.BunchesPerVine-row.bunches) > 1e-6 || math.Abs(c.PerVine_kg.Value/row.yield_kg-1) > 0.01 {
			t.Errorf("%s: %.0f bunches, %.2f kg; published %.0f and %.1f", row.name, c.BunchesPerVine, c.PerVine_kg.Value, row.bunches, row.yield_kg)
		}
	}
}

// Four arms with about the nodes of two bore 1.06 times as much per shoot (the table above: 11.8 kg on 41 shoots
// against 9.8 on 36), and 2 short tons per acre more over four years at Oakville, from about 7.8 (American Vineyard
// Foundation): both lie in the range that is told.
func TestFactFourArms(t *testing.T) {
	form, _ := scenario.FormByKey("vsp-spurs")
	s := scenario.Default()
	c := Of(s, form.Option, 0)
	f := c.FourArms
	if f == nil {
		t.Fatal("two arms have no four arms")
	}
	least, most := f.SameNodes.Low/c.PerHa_t.Low, f.SameNodes.High/c.PerHa_t.High
	for what, ratio := range map[string]float64{"1992": 11.8 / 41 / (9.8 / 36), "four years": (7.8 + 2) / 7.8} {
		if ratio < least-0.01 || ratio > most+0.01 {
			t.Errorf("%s: %.2f times, told are %.2f to %.2f", what, ratio, least, most)
		}
	}
	// The table of six: twice the canopy at about the same shoots per metre bore 1.55 to 1.88 times VSP.
	least, most = f.TwiceNodes.Low/c.PerHa_t.Low, f.TwiceNodes.High/c.PerHa_t.High
	if least > 1.55 || most < 1.88 {
		t.Errorf("twice the nodes bear %.2f to %.2f times, published 1.55 to 1.88", least, most)
	}
}

// Known miss: on the same canopy, hedged vines with 5.3 times the shoots bore 2.06 times as much and minimally pruned
// ones with 8.7 times the shoots 1.62 times (the same table); the rule for crowding, made for twice the nodes, gives
// more. It is used for no more than that.
func TestKnownMissOfCrowding(t *testing.T) {
	for _, m := range []knownMiss{
		{name: "hedged", got: crowded(191.0 / 36), published: 20.2 / 9.8, missed: 2.55, allowed: 0.2, margin: 0.1},
		{name: "minimal", got: crowded(314.0 / 36), published: 15.9 / 9.8, missed: 3.36, allowed: 0.2, margin: 0.1},
	} {
		if math.Abs(m.got-m.published) <= m.allowed || math.Abs(m.got-m.missed) > m.margin {
			t.Errorf("%s: %.2f times, published %.2f: the known miss of %.2f has moved", m.name, m.got, m.published, m.missed)
		}
	}
}

// VSP of the trial carries 4.9 kg of fruit for each of prunings and 14.4 cm² of leaf for each gram; the balanced range
// is 4 to 10 (Kliewer & Dokoozlian 2005). The catalogue's VSP at the middle vigour lies near both.
func TestFactBalanceOfVSP(t *testing.T) {
	form, _ := scenario.FormByKey("vsp-spurs")
	s := scenario.Default()
	c := Of(s, form.Option, 4.72/form.Option.Rows.RowSpacing_m) // the leaf area per metre of the trial
	t.Logf("yield to prunings %.1f, leaf to fruit %.2f m²/kg", c.YieldToPrunings.Value, c.LeafToFruit_m2kg.Value)
	if y := c.YieldToPrunings.Value; y < 4 || y > 10 {
		t.Errorf("yield to prunings %.1f, published 4 to 10", y)
	}
	if leaf := c.LeafToFruit_m2kg.Value; math.Abs(leaf/1.44-1) > 0.15 {
		t.Errorf("leaf to fruit %.2f m²/kg, published 1.44", leaf)
	}
}
