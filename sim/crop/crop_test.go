package crop

import (
	"math"
	"testing"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// The count agrees with the vines that are built: every form, also with blind nodes and young vines.
func TestCountsAreThoseOfTheStand(t *testing.T) {
	for _, key := range []string{"vsp-spurs", "vsp-canes", "double-curtain", "pergola", "goblet"} {
		form, _ := scenario.FormByKey(key)
		o := form.Option
		o.Training.BlindNodes, o.Training.YoungVines = 0.1, 0.1
		stand, err := training.Build(o, 36, 1)
		if err != nil {
			t.Fatal(err)
		}
		s := scenario.Default()
		c, m := Of(s, o, 0), stand.Measure()
		if math.Abs(c.ShootsPerVine/m.ShootsPerVine-1) > 0.06 || math.Abs(c.BunchesPerVine/m.BunchesPerVine-1) > 0.1 {
			t.Errorf("%s: %.1f shoots and %.1f bunches on a vine, the stand has %.1f and %.1f", key, c.ShootsPerVine, c.BunchesPerVine, m.ShootsPerVine, m.BunchesPerVine)
		}
	}
}

// Units: one US ton per acre is 2.2417 t/ha; 2.7 m by 1.8 m are 2058 vines on a hectare.
func TestYieldInEveryUnit(t *testing.T) {
	s := scenario.Default()
	c := Of(s, s.Options[0], 0)
	if ratio := c.PerHa_t.Value / c.PerAcre_ton.Value; math.Abs(ratio-2.2417) > 1e-4 {
		t.Errorf("a ton per acre is %.4f t/ha", ratio)
	}
	if math.Abs(c.VinesPerHa-2057.6) > 0.1 {
		t.Errorf("%.1f vines on a hectare", c.VinesPerHa)
	}
	if want := c.PerVine_kg.Value * c.VinesPerHa / 1000; math.Abs(c.PerHa_t.Value-want) > 1e-9 {
		t.Errorf("%.3f t/ha, %.3f by vines", c.PerHa_t.Value, want)
	}
	if c.PerHa_t.Low >= c.PerHa_t.Value || c.PerHa_t.High <= c.PerHa_t.Value {
		t.Errorf("yield without a range: %+v", c.PerHa_t)
	}
}

// A berry of 14 mm weighs 1.5 g: typical are 1.0 to 1.8 g (from memory).
func TestBerry(t *testing.T) {
	if g := Berry(14); math.Abs(g-1.523) > 0.001 {
		t.Errorf("%.3f g", g)
	}
}

// 20+20 for 3.5 pounds is 20 + 20 · 2.5 = 70 nodes; 30+10 is 55 (common practice).
func TestBalancedPruning(t *testing.T) {
	kg := 3.5 * kg_perPound
	for _, c := range []struct{ first, more, want float64 }{{20, 20, 70}, {30, 10, 55}, {60, 10, 85}} {
		if got := BalancedNodes(scenario.Crop{FirstNodes: c.first, MoreNodes: c.more}, kg); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v+%v: %.1f nodes, want %.0f", c.first, c.more, got, c.want)
		}
	}
	if got := BalancedNodes(scenario.Crop{FirstNodes: 20, MoreNodes: 20}, kg_perPound/2); got != 10 {
		t.Errorf("half a pound keeps %.1f nodes", got)
	}
}

func TestWeakVinesDoNotFillFourArms(t *testing.T) {
	s := scenario.Default()
	for _, c := range []struct {
		prunings float64
		own      string // of VSP
		four     string
		quad     string // of the double curtain
	}{
		{0.2, "crop.not-filled", "crop.not-four-arms", "crop.not-four-arms"},
		{0.4, "crop.filled", "crop.not-four-arms", "crop.not-four-arms"},
		{0.5, "crop.filled", "crop.four-arms-slowly", "crop.not-filled"},
		{0.8, "crop.filled", "crop.four-arms-fill", "crop.filled"},
		{1.5, "crop.too-strong", "crop.four-arms-fill", "crop.filled"},
	} {
		s.Crop.Prunings_kg_per_m = c.prunings
		vsp, _ := scenario.FormByKey("vsp-spurs")
		quad, _ := scenario.FormByKey("double-curtain")
		a, b := Of(s, vsp.Option, 1), Of(s, quad.Option, 1)
		if a.Verdict.Code != c.own || a.FourArms.Verdict.Code != c.four || b.Verdict.Code != c.quad || b.FourArms != nil {
			t.Errorf("%.1f kg/m: %s, %s, %s; want %+v", c.prunings, a.Verdict.Code, a.FourArms.Verdict.Code, b.Verdict.Code, c)
		}
	}
	if filled(0.15) != 0.5 || filled(0.9) != 1 {
		t.Error("filled in proportion")
	}
}

func TestIncomeNeedsBothNumbers(t *testing.T) {
	s := scenario.Default()
	if c := Of(s, s.Options[0], 0); c.Income != nil {
		t.Error("an income without a price")
	}
	s.Crop.Price_per_t, s.Options[0].Cost.Year_per_ha = 1000, 8000
	c := Of(s, s.Options[0], 0)
	if c.Income == nil || c.Income.BreakEven_t != 8 || math.Abs(c.Income.PerHa.Value-(1000*c.PerHa_t.Value-8000)) > 1e-6 {
		t.Errorf("%+v", c.Income)
	}
}

// A spur every 0.15 m on rows 2.7 m apart is 24 691 on a hectare; at 8 s each that is 54.9 h.
func TestWork(t *testing.T) {
	s := scenario.Default()
	w := Work(s, s.Options[0])
	if math.Abs(w.Prune_h-54.9) > 0.1 || w.Leaves_h != 0 || w.Shoots_h <= 0 {
		t.Errorf("%+v", w)
	}
	s.Options[0].Leaves.RemovedMorning = 0.5
	// 3704 m of row, half the leaves of one side at 20 s for all of them.
	if more := Work(s, s.Options[0]); math.Abs(more.Leaves_h-10.29) > 0.01 {
		t.Errorf("%+v", more)
	}
	sprawl := Work(s, s.Options[1])
	if sprawl.Shoots_h >= w.Shoots_h {
		t.Error("sprawl takes as much shoot positioning as VSP")
	}
}

func TestBalanceInWords(t *testing.T) {
	s := scenario.Default()
	o := s.Options[0]
	for leaf, want := range map[float64]string{0.5: "crop.few-leaves", 1.3: "crop.balanced", 3: "crop.many-leaves"} {
		if got := Of(s, o, leaf).Balance.Code; got != want {
			t.Errorf("%.1f m² on a square metre: %s, want %s", leaf, got, want)
		}
	}
	s.Crop.Prunings_kg_per_m = 0.31
	if got := Of(s, o, 1.3).Balance.Code; got != "crop.overcropped" {
		t.Errorf("%s", got)
	}
}
