package canopy

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/training"
)

// A blade lies in the cells as a disc of its area does: about its middle, with a quarter of its squared radius along each axis in its
// plane (geometry), and a twelfth of the squared edge of a cell for being told by cells. So few points lie evenly about the middle, but a
// little longer across the midrib than along it. On a slope heights are those from the ground.
func TestBladeLiesInCellsAsADisc(t *testing.T) {
	const leaves, area = 3000, 0.09
	quarter := area / math.Pi / 4
	random := rand.New(rand.NewPCG(12, 0))
	slope := Slope{Across: 0.3}
	for name, c := range map[string]struct{ normal, tip, want mgl64.Vec3 }{
		"level":      {mgl64.Vec3{0, 0, 1}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{quarter, quarter, quarter * slope.Across * slope.Across}},
		"along rows": {mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 0, 1}, mgl64.Vec3{0, quarter, quarter}},
		"across":     {mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 0, -1}, mgl64.Vec3{quarter, 0, quarter * (1 + slope.Across*slope.Across)}},
	} {
		g := NewGrid(40, 50, 30, 2.4, 5, 3, slope)
		var mean, squares mgl64.Vec3
		for range leaves {
			at := mgl64.Vec3{0.6 * (random.Float64() - 0.5), 2 + random.Float64(), 1.2 + 0.6*random.Float64()}
			leaf := training.Leaf{Centre: at, Normal: c.normal, Tip: c.tip, Area: area}
			at[2] -= at[0] * slope.Across
			for _, p := range g.cut(&leaf, nil) {
				ix, iy, iz := p.cell/g.ny%g.nx, p.cell%g.ny, p.cell/g.ny/g.nx
				off := mgl64.Vec3{(float64(ix)+0.5)*g.dx + g.x0, (float64(iy) + 0.5) * g.dy, (float64(iz) + 0.5) * g.dz}.Sub(at)
				share := p.area / (leaves * area)
				mean = mean.Add(off.Mul(share))
				squares = squares.Add(mgl64.Vec3{off[0] * off[0], off[1] * off[1], off[2] * off[2]}.Mul(share))
			}
		}
		got, all := 0.0, 0.0
		for axis, edge := range [3]float64{g.dx, g.dy, g.dz} {
			want := c.want[axis] + edge*edge/12
			got, all = got+squares[axis], all+want
			if math.Abs(squares[axis]-want) > 0.13*want {
				t.Errorf("%s: mean square %.5f m² along axis %d, of a disc %.5f", name, squares[axis], axis, want)
			}
			if math.Abs(mean[axis]) > 0.04*2*math.Sqrt(quarter) {
				t.Errorf("%s: the blade lies %.4f m off along axis %d", name, mean[axis], axis)
			}
		}
		if math.Abs(got-all) > 0.03*all {
			t.Errorf("%s: mean square %.5f m² about the middle, of a disc %.5f", name, got, all)
		}
	}
}
