package training

import (
	"math"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
)

// Arms cover their wire once, whatever the number of arms and wires.
func TestArmsCoverTheirWires(t *testing.T) {
	for arms := 1; arms <= 4; arms++ {
		for _, offsets := range [][]float64{{0}, {-0.6, 0.6}, {-0.6, 0, 0.6}} {
			o := form(t, "vsp-spurs")
			o.Training.ArmsPerVine = arms
			o.Trellis.Wires = nil
			for _, x := range offsets {
				o.Trellis.Wires = append(o.Trellis.Wires, scenario.Wire{Height_m: 1, Offset_m: x, Role: scenario.Fruiting})
			}
			g := newGrower(o, 1)
			g.planPeriod()
			covered := make([]float64, len(offsets))
			perVine := map[int]int{}
			for _, a := range g.arms {
				covered[a.cordon] += a.covers
				perVine[a.vine]++
			}
			for i, length := range covered {
				if math.Abs(length-g.stand.Length) > 1e-9 {
					t.Errorf("%d arms, %d wires: wire %d is covered for %g of %g m", arms, len(offsets), i, length, g.stand.Length)
				}
			}
			for vine, count := range perVine {
				if count != arms {
					t.Errorf("%d arms, %d wires: vine %d has %d", arms, len(offsets), vine, count)
				}
			}
			if want := int(math.Round(g.stand.Length / o.Rows.VineSpacing_m)); len(perVine) != want {
				t.Errorf("%d arms, %d wires: %d of %d vines have arms", arms, len(offsets), len(perVine), want)
			}
		}
	}
}

// Arms start where a trunk ends and, along a wire, end on it; canes start on an arm, and tied ones end at a tie wire.
func TestWoodHangsTogether(t *testing.T) {
	for _, f := range scenario.Forms() {
		g := grown(t, f.Option)
		s := g.stand
		arms, canes := s.Arms[:len(s.Arms)-len(g.canes)], s.Arms[len(s.Arms)-len(g.canes):]
		for i, a := range arms {
			last := a.Points[len(a.Points)-1]
			onWire := slices.ContainsFunc(s.fruiting(), func(w Strand) bool {
				return math.Hypot(last.X()-w.X, last.Z()-w.Z) < 0.04
			})
			onTrunk := slices.ContainsFunc(s.Trunks, func(l Limb) bool {
				return l.Vine == a.Vine && l.Points[len(l.Points)-1].Sub(a.Points[0]).Len() < 0.02
			})
			if spread := f.Option.Training.ArmLayout == scenario.ArmsSpread; !onWire && !spread || !onTrunk {
				t.Errorf("%s: arm %d of vine %d runs from %v to %v", f.Key, i, a.Vine, a.Points[0], last)
			}
		}
		for i, c := range canes {
			onArm := slices.ContainsFunc(arms, func(l Limb) bool {
				return l.Vine == c.Vine && slices.ContainsFunc(l.Points, func(p mgl64.Vec3) bool { return p.Sub(c.Points[0]).Len() < woodStep })
			})
			last := c.Points[len(c.Points)-1]
			_, tied := g.tieBelow(c.Points[0])
			tied = tied && f.Option.Training.CaneLayout != scenario.CanesFree
			onTie := slices.ContainsFunc(s.Wires, func(w Strand) bool {
				return w.Role == string(scenario.Tie) && math.Hypot(last.X()-w.X, last.Z()-w.Z) < 0.12
			})
			if !onArm || tied && !onTie {
				t.Errorf("%s: cane %d of vine %d runs from %v to %v", f.Key, i, c.Vine, c.Points[0], last)
			}
		}
	}
}

// grown is an option's grower after everything has grown.
func grown(t *testing.T, o scenario.Option) *grower {
	t.Helper()
	if err := check(o); err != nil {
		t.Fatal(err)
	}
	g := newGrower(o, 1)
	if err := g.grow(func() error { return nil }); err != nil {
		t.Fatal(err)
	}
	return g
}

func TestPostsDivideThePeriod(t *testing.T) {
	o := form(t, "double-curtain")
	s := build(t, o, 1)
	within(t, "posts", float64(len(s.Posts)), math.Floor(s.Length/o.Trellis.PostSpacing_m), math.Ceil(s.Length/o.Trellis.PostSpacing_m))
	for i, post := range s.Posts {
		if want := s.Length * float64(i) / float64(len(s.Posts)); math.Abs(post.Y-want) > 1e-9 {
			t.Errorf("post %d stands at %g, want %g", i, post.Y, want)
		}
		if len(post.Crossarms) != 1 || post.Crossarms[0].Left > -0.61 || post.Crossarms[0].Right < 0.61 {
			t.Errorf("post %d has crossarms %+v", i, post.Crossarms)
		}
	}
	if posts := build(t, form(t, "vsp-spurs"), 1).Posts; len(posts[0].Crossarms) != 0 {
		t.Errorf("catch wires on the post have crossarms %+v", posts[0].Crossarms)
	}
}

func TestCatchWiresPairUp(t *testing.T) {
	supports := supportsOf([]scenario.Wire{
		{Height_m: 1.5, Offset_m: 0.1, Role: scenario.Catch},
		{Height_m: 1.0, Role: scenario.Fruiting},
		{Height_m: 1.5, Offset_m: -0.1, Role: scenario.Catch},
		{Height_m: 1.2, Offset_m: 0.3, Role: scenario.Foliage},
		{Height_m: 1.9, Offset_m: 0, Role: scenario.Catch},
	})
	want := []support{{1.2, 0.3, 0.3, true}, {1.5, -0.1, 0.1, false}, {1.9, 0, 0, false}}
	if !slices.Equal(supports, want) {
		t.Errorf("supports %+v, want %+v", supports, want)
	}
}

// Shoots that the crew has put between the wires stand there; without any crew they lean out.
func TestPositioningHoldsShootsBetweenWires(t *testing.T) {
	outside := func(positioning float64) float64 {
		o := form(t, "vsp-spurs")
		o.Shoots.Positioning = positioning
		count, out := 0.0, 0.0
		for _, shoot := range build(t, o, 1).Shoots {
			for _, p := range shoot.Points {
				if p.Z() > 1.25 && p.Z() < 1.85 {
					count++
					if math.Abs(p.X()) > 0.12 {
						out++
					}
				}
			}
		}
		return out / count
	}
	held, free := outside(1), outside(0)
	within(t, "nodes outside the wires, all shoots put in place", held, 0, 0.05)
	within(t, "nodes outside the wires, none put in place, relative to that", free/held, 5, 1000)
}

// Hedging cuts at its height; no shoot of the wall stands higher than one step over it.
func TestHedgingCuts(t *testing.T) {
	o := form(t, "vsp-spurs")
	for _, shoot := range build(t, o, 1).Shoots {
		for _, p := range shoot.Points {
			if p.Z() > o.Shoots.TrimTop_m+4*hedgeSpread+stepLength {
				t.Fatalf("a shoot reaches %g m", p.Z())
			}
		}
	}
	o.Shoots.TrimTop_m = 0
	if m := build(t, o, 1).Measure(); m.Top_m < 2.1 {
		t.Errorf("without hedging the wall ends at %g m", m.Top_m)
	}
}

// Bunches hang clear of the arm or cane that bears them.
func TestBunchesHangClearOfTheirArm(t *testing.T) {
	for _, f := range scenario.Forms() {
		g := grown(t, f.Option)
		for _, b := range g.stand.Bunches {
			thick := g.woodThickness(&g.plans[b.Shoot])
			axis := g.woodNear(&g.plans[b.Shoot], b.Centre)
			across := (b.Centre.X() - axis.X()) / (b.Radius + thick)
			upward := (b.Centre.Z() - axis.Z()) / (b.Length/2 + thick)
			along, least := 0.0, 1.0
			plan := &g.plans[b.Shoot]
			if plan.cane != onArm || g.awayFrom(plan) != (mgl64.Vec3{}) { // wood that slants may touch the side of a bunch
				along, least = (b.Centre.Y()-axis.Y())/(b.Radius+thick), 0.4
			}
			if across*across+upward*upward+along*along < least-1e-3 {
				t.Fatalf("%s: a bunch at %v hangs through its arm at %v", f.Key, b.Centre, axis)
			}
		}
	}
}
