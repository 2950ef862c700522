package training

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
)

// passes tells whether a ray meets no blade of the planting, leaves taken as opaque discs, rows and periods repeated.
func passes(s *Stand, from, to mgl64.Vec3) bool {
	for i := range s.Leaves {
		leaf := &s.Leaves[i]
		slant := to.Dot(leaf.Normal)
		if math.Abs(slant) < 1e-9 {
			continue
		}
		// The repetition of the leaf that is nearest to where the ray is at its height.
		at := from.Add(to.Mul((leaf.Centre.Z() - from.Z()) / to.Z()))
		centre := leaf.Centre
		centre[0] += s.RowSpacing * math.Round((at.X()-centre.X())/s.RowSpacing)
		centre[1] += s.Length * math.Round((at.Y()-centre.Y())/s.Length)
		along := centre.Sub(from).Dot(leaf.Normal) / slant
		if along > 0.03 && from.Add(to.Mul(along)).Sub(centre).LenSqr() <= leaf.Area/math.Pi {
			return false
		}
	}
	return true
}

// gapFrom is the share of rays from a height, between two elevations and weighted as on the level, that meet no leaf.
func gapFrom(s *Stand, points []mgl64.Vec3, lowest_deg, highest_deg float64) float64 {
	open, all := 0.0, 0.0
	for k, p := range points {
		for j := range 6 {
			// Equal steps of sin² are equal parts of the light on the level.
			low, high := math.Sin(radians(lowest_deg)), math.Sin(radians(highest_deg))
			up := math.Sqrt(low*low + (high*high-low*low)*(float64(j)+0.5)/6)
			turn := 2.399963 * float64(6*k+j)
			flat := math.Sqrt(1 - up*up)
			all++
			if passes(s, p, mgl64.Vec3{flat * math.Cos(turn), flat * math.Sin(turn), up}) {
				open++
			}
		}
	}
	return open / all
}

// Fact 12, geometry: a tendone intercepts 75-85 % of PAR (Nuzzo et al. 2005: at most about 80 %) with leaves that pass
// 6 % of it (Smart 2019); its bunches hang below the leaves and see hardly any sky where the sun stands high.
func TestRoofShadesFloorAndFruit(t *testing.T) {
	const leafPasses = 0.06
	for _, seed := range seeds[:2] {
		s := build(t, form(t, "pergola"), seed)
		var floor, fruit []mgl64.Vec3
		for k := range 200 {
			floor = append(floor, mgl64.Vec3{s.RowSpacing * (math.Mod(float64(k)*0.754877666, 1) - 0.5), s.Length * math.Mod(float64(k)*0.569840291, 1), 0})
		}
		for i := range s.Bunches {
			fruit = append(fruit, s.Bunches[i].Centre)
		}
		gap := gapFrom(s, floor, 20, 80)
		within(t, "PAR intercepted", (1-gap)*(1-leafPasses), 0.72, 0.88)
		within(t, "sky seen from the bunches", gapFrom(s, fruit, 10, 90), 0, 0.22)
		within(t, "leaf area above the bunches", areaAbove(s, s.Measure().FruitHeight_m), 0.85, 1)
		pulled := form(t, "vsp-spurs")
		pulled.Leaves.RemovedMorning, pulled.Leaves.RemovedAfternoon = 1, 1
		wall := build(t, pulled, seed)
		for i := range wall.Bunches[:100] {
			floor[i] = wall.Bunches[i].Centre
		}
		side, open := gapFrom(s, fruit[:100], 15, 45), gapFrom(wall, floor[:100], 15, 45)
		within(t, "low sky seen from cleared bunches of VSP", open, 0.2, 1)
		within(t, "low sky seen from the bunches relative to those", side/open, 0, 0.6)
	}
}

// Shoots lie on the wires of a roof, level or sloping; without cross wires, those far from any wire fall through.
func TestRoofCarriesShoots(t *testing.T) {
	under := func(o scenario.Option) float64 {
		s := build(t, o, 1)
		r := roofOf(o)
		low, all := 0.0, 0.0
		for _, shoot := range s.Shoots {
			for _, p := range shoot.Points[2:] {
				if z, _, ok := r.at(p.X()); ok {
					all++
					if p.Z() < z-0.1 {
						low++
					}
				}
			}
		}
		return low / all
	}
	for _, key := range []string{"pergola", "pergola-sloping"} {
		o := form(t, key)
		within(t, key+": nodes under the roof", under(o), 0, 0.1)
		o.Shoots.Positioning = 0
		within(t, key+": nodes under the roof, none put on it", under(o), 0.15, 1)
	}
	o := form(t, "pergola")
	o.Trellis.Wires = []scenario.Wire{{Height_m: 2, Offset_m: -1.2, Role: scenario.Roof}, {Height_m: 2, Offset_m: 0, Role: scenario.Roof}, {Height_m: 2, Offset_m: 1.2, Role: scenario.Roof}}
	if _, _, ok := roofOf(o).at(0.6); !ok {
		t.Error("cross wires 0.5 m apart carry nothing")
	}
	o.Trellis.CrossWires_m = 0
	if _, _, ok := roofOf(o).at(0.6); ok {
		t.Error("nothing carries a shoot 0.6 m from the next wire")
	}
}

func TestSlopingRoofRises(t *testing.T) {
	r := roofOf(form(t, "pergola-sloping"))
	z, slope, ok := r.at(0.75)
	if !ok {
		t.Fatal("no roof")
	}
	within(t, "height", z, 2.09, 2.11)
	// Tilted 20-30 degrees: trade pages on the pergola of Trentino.
	within(t, "tilt", math.Atan(slope)*180/math.Pi, 20, 30)
	if z, _, ok := r.at(1.5 + 0.1); !ok || math.Abs(z-2.45) > 1e-9 {
		t.Errorf("beside its last wire the roof is at %g, %v", z, ok)
	}
	if _, _, ok := r.at(2.2); ok {
		t.Error("there is a roof over the alley")
	}
	posts := build(t, form(t, "pergola-sloping"), 1).Posts
	within(t, "posts", posts[0].Height, 1.75, 1.9)
}

// The arms of a goblet leave the head to all sides, those of a sloping pergola to the side of its roof.
func TestSpreadArmsFillTheirRound(t *testing.T) {
	for key, oneSided := range map[string]bool{"goblet": false, "pergola": false, "pergola-sloping": true} {
		g := grown(t, form(t, key))
		sum := mgl64.Vec3{}
		for i := range g.arms {
			sum = sum.Add(g.arms[i].outward.Mul(1 / float64(len(g.arms))))
		}
		if oneSided {
			within(t, key+": mean direction", sum.X(), 0.4, 0.9)
			continue
		}
		within(t, key+": mean direction", sum.Len(), 0, 0.12)
	}
}
