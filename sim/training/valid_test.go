package training

import (
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"rowlight/sim/scenario"
)

// anyOption draws an option from the ranges of the scenario schema, the largest vines left out for
// the time that they take.
func anyOption(t *rapid.T) scenario.Option {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	o := scenario.Option{
		Rows:     scenario.Rows{Azimuth_deg: number("azimuth", 0, 180), RowSpacing_m: number("rows", 1, 6), VineSpacing_m: number("vines", 0.5, 4)},
		Trellis:  scenario.Trellis{PostSpacing_m: number("posts", 2, 12)},
		Training: scenario.Training{ArmsPerVine: rapid.IntRange(1, 4).Draw(t, "arms"), SpurSpacing_m: number("spurs", 0.05, 0.6)},
		Shoots: scenario.Shoots{
			PerMetre: number("shoots", 2, 40), Length_m: number("length", 0.2, 3), Internode_cm: number("internode", 2, 12),
			Habit: number("habit", 0, 1), Start_deg: number("start", -90, 90), Positioning: number("positioning", 0, 1),
			CombedDown: number("combed", 0, 1), TrimTop_m: rapid.SampledFrom([]float64{0, 0.3, 1.5, 2}).Draw(t, "trim"),
		},
		Leaves: scenario.Leaves{
			Area_m2_per_m: number("area", 0, 12), Blade_cm2: number("blade", 20, 300), Laterals: number("laterals", 0, 0.7),
			RemovedMorning: number("morning", 0, 1), RemovedAfternoon: number("afternoon", 0, 1),
		},
		Bunches: scenario.Bunches{PerShoot: number("bunches", 0.2, 3), Mass_g: number("mass", 20, 1000)},
	}
	jobsAndShares(t, &o)
	o.Training.Wood = rapid.SampledFrom([]scenario.Wood{scenario.Spurs, scenario.Canes}).Draw(t, "wood")
	o.Training.CaneLayout = rapid.SampledFrom([]scenario.CaneLayout{scenario.CanesAlong, scenario.CanesArched, scenario.CanesTiedDown, scenario.CanesFree}).Draw(t, "canes")
	o.Training.ArmLayout = rapid.SampledFrom([]scenario.ArmLayout{scenario.ArmsAlong, scenario.ArmsSpread}).Draw(t, "layout")
	roles := []scenario.WireRole{scenario.Fruiting, scenario.Foliage, scenario.Catch, scenario.Tie, scenario.Roof}
	fewest := 1
	if o.Training.ArmLayout == scenario.ArmsSpread {
		fewest = 0
	}
	for i := range rapid.IntRange(fewest, 8).Draw(t, "wires") {
		wire := scenario.Wire{Height_m: number("height", 0.2, 3), Offset_m: number("offset", -1.5, 1.5), Role: scenario.Fruiting}
		if i > 0 || fewest == 0 {
			wire.Role = rapid.SampledFrom(roles).Draw(t, "role")
		}
		o.Trellis.Wires = append(o.Trellis.Wires, wire)
	}
	return o
}

// jobsAndShares draws what is done to the vines and what is wrong with them, each left out half of the time.
func jobsAndShares(t *rapid.T, o *scenario.Option) {
	maybe := func(name string, high float64) float64 {
		if rapid.Bool().Draw(t, name+" none") {
			return 0
		}
		return rapid.Float64Range(0, high).Draw(t, name)
	}
	k, s, l := &o.Training, &o.Shoots, &o.Leaves
	k.ArmLength_m, k.HeadHeight_m = rapid.Float64Range(0.1, 2).Draw(t, "arm"), rapid.Float64Range(0.1, 2).Draw(t, "head")
	k.ArmRise_deg, k.BareBase, k.CaneNodes = maybe("rise", 80), maybe("bare", 0.9), rapid.IntRange(2, 40).Draw(t, "cane nodes")
	k.SingleArmVines, k.YoungVines, k.MissingVines, k.BlindNodes = maybe("single", 0.5), maybe("young", 0.5), maybe("missing", 0.5), maybe("blind", 0.8)
	s.TurnedDown, s.Thinned, s.TrimSide_m, s.Skirt_m = maybe("turned", 1), maybe("thinned", 0.8), maybe("side", 2), maybe("skirt", 2)
	l.RemovedFrom_m, l.RemovedTo_m = maybe("from", 3.5), maybe("to", 3.5)
	o.Trellis.CrossWires_m = maybe("cross wires", 3)
}

func TestEveryValidOptionGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := anyOption(t)
		s, err := Build(o, rapid.Float64Range(-60, 60).Draw(t, "latitude"), rapid.IntRange(1, 1000).Draw(t, "seed"))
		if err != nil {
			t.Fatal(err)
		}
		checkStand(t, o, s)
	})
}

// checkStand holds a Stand to what its documentation says.
func checkStand(t *rapid.T, o scenario.Option, s *Stand) {
	finite := func(what string, v mgl64.Vec3) {
		if norm := v.Len(); math.IsNaN(norm) || norm > 1e4 {
			t.Fatalf("%s at %v", what, v)
		}
	}
	vines := s.Length / s.VineSpacing
	if len(s.Bunches) < fewestBunches && vines < mostVines-4 || vines < fewestLargeVines-1e-9 || math.Abs(vines-math.Round(vines)) > 1e-9 {
		t.Fatalf("%d bunches on %g vines", len(s.Bunches), vines)
	}
	for _, limbs := range [][]Limb{s.Trunks, s.Arms, s.Shoots} {
		for _, limb := range limbs {
			if len(limb.Points) != len(limb.Radius) || len(limb.Points) < 2 {
				t.Fatalf("a limb has %d points and %d radii", len(limb.Points), len(limb.Radius))
			}
			for _, p := range limb.Points {
				finite("limb", p)
			}
		}
	}
	for _, shoot := range s.Shoots {
		for _, p := range shoot.Points[2:] {
			if p.Z() < 0.15 {
				t.Fatalf("a shoot is at %v", p)
			}
		}
	}
	area := 0.0
	for i := range s.Leaves {
		leaf := &s.Leaves[i]
		finite("leaf", leaf.Centre)
		area += leaf.Area
		if leaf.Area <= 0 || leaf.Centre.Z() <= 0 || leaf.Centre.Z() > s.Top {
			t.Fatalf("leaf %+v, top %g", leaf, s.Top)
		}
		if math.Abs(leaf.Normal.Len()-1) > 1e-5 || math.Abs(leaf.Tip.Len()-1) > 1e-5 || math.Abs(leaf.Normal.Dot(leaf.Tip)) > 1e-5 {
			t.Fatalf("leaf %+v is no frame", leaf)
		}
	}
	if given := o.Leaves.Area_m2_per_m * s.Length * float64(max(1, len(s.fruiting()))); area > given*(1+1e-9) {
		t.Fatalf("leaf area %g of %g", area, given)
	}
	for _, b := range s.Bunches {
		finite("bunch", b.Centre)
		if b.Radius <= 0 || b.Length <= 0 || b.Berries < 1 || b.Centre.Z()-b.Length/2 <= 0 {
			t.Fatalf("bunch %+v", b)
		}
	}
}

func TestBuildNamesEveryFault(t *testing.T) {
	o := form(t, "vsp-spurs")
	o.Shoots.PerMetre = math.NaN()
	o.Rows.VineSpacing_m = 0
	o.Trellis.Wires = []scenario.Wire{{Height_m: 1, Role: scenario.Catch}}
	_, err := Build(o, 36.4, 1)
	if err == nil {
		t.Fatal("no error")
	}
	for _, field := range []string{"shoots.perMetre", "rows.vineSpacing_m", "trellis.wires"} {
		if !strings.Contains(err.Error(), field) {
			t.Errorf("the error does not name %s: %v", field, err)
		}
	}
}
