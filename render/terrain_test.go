package render

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/scenario"
)

// On a slope the shadow of a leaf lies where the straight line from the sun through it meets the plane of the ground.
func TestShadowsFallOnTheSlope(t *testing.T) {
	for _, aspect := range []float64{0, 90, 200, 300} {
		stand := oneLeaf(0, 1, 1.2)
		stand.Leaves[0].Area = 0.03
		s := NewScene(Planting{Stand: stand, Slope_deg: 14, Aspect_deg: aspect}, testAtlas(), afternoon)
		leaf, sun, g := mgl32.Vec3{0, 1, 1.2 + s.terrain.at(0, 1)}, s.light.sun, s.terrain
		// leaf − t·sun lies on the ground: its height is that of the plane there.
		way := (leaf[2] - g.at(leaf[0], leaf[1])) / (sun[2] - g.at(sun[0], sun[1]))
		foot := leaf.Sub(sun.Mul(way))
		if math.Abs(float64(foot[2]-g.at(foot[0], foot[1]))) > 1e-4 {
			t.Fatalf("the line does not end on the ground: %v", foot)
		}
		backdrop := s.Backdrop(&View{Eye: mgl32.Vec3{0, 0, 9}, Focal: 500, Far: 40, Way: Natural})
		if lit, _ := backdrop.shadow(foot[0], foot[1], 0); lit > 0.3 {
			t.Errorf("aspect %g: %.2f of the sun comes to the foot of the shadow", aspect, lit)
		}
		if lit, _ := backdrop.shadow(foot[0]+0.6, foot[1]+0.5, 0); lit < 0.9 {
			t.Errorf("aspect %g: only %.2f of the sun comes to open ground", aspect, lit)
		}
	}
}

// The ground of the backdrop is the plane on which vines stand: looking at the foot of a trunk one looks at the ground there.
func TestTrunksStandOnTheSlope(t *testing.T) {
	s := NewScene(Planting{Stand: smallStand(), Slope_deg: 20, Aspect_deg: 130, Floor: scenario.Pale}, testAtlas(), afternoon)
	view := s.View(Natural, DefaultCamera(s.stand, 0, 36), testPane)
	b := s.Backdrop(&view)
	for row := -2; row <= 2; row++ {
		v := visibleSlice{offset: s.terrain.lifted(float32(row)*float32(s.stand.RowSpacing), 4), rise: s.terrain.along}
		foot := v.at(vec32(s.stand.Trunks[0].Points[0]))
		ray := foot.Sub(view.Eye)
		fall := b.Slope[0]*ray[0] + b.Slope[1]*ray[1] - ray[2]
		// 1 is the whole way to the foot.
		if way := (b.Eye[2] - b.Slope[0]*b.Eye[0] - b.Slope[1]*b.Eye[1]) / fall; math.Abs(float64(way)-1) > 1e-3 {
			t.Errorf("row %d: the ground is met after %.4f of the way to the foot of the trunk", row, way)
		}
	}
	if height := view.Eye[2] - s.terrain.at(view.Eye[0], view.Eye[1]); height < lowestEye_m-1e-4 {
		t.Errorf("the eye is %.2f m above the ground", height)
	}
}
