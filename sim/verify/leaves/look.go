package leaves

import (
	"math"

	"rowlight/sim/canopy"
	"rowlight/sim/canopy/yardstick"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// observer looks from the bunch faces of one stand.
type observer struct {
	stand     *training.Stand
	caster    *yardstick.Caster
	points    []canopy.Point
	grid      *canopy.Grid
	ray       *canopy.Ray
	thickness *canopy.Thickness
	clumping  *yardstick.Clumping
	rays      int
}

func newObserver(stand *training.Stand, rays int, pace func() error) (*observer, error) {
	grid := canopy.FromStand(stand, canopy.Slope{})
	clumping, err := yardstick.Fit(stand, grid, canopy.Slope{}, pace)
	return &observer{
		stand: stand, caster: yardstick.NewCaster(stand, canopy.Slope{}), points: yardstick.Places(stand),
		grid: grid, ray: canopy.NewRay(grid), thickness: canopy.NewThickness(grid), clumping: clumping, rays: rays,
	}, err
}

// firstRay is the number of the first ray: far from those by which Ω is fitted.
const firstRay = 1000

// look compares the faces of one side in one direction, each from where its dome starts.
func (o *observer) look(d *Direction) look {
	direction := yardstick.Direction(d.Side, d.Elevation_deg, d.Azimuth_deg)
	o.thickness.Toward(direction)
	l := look{length: o.stand.Length, omega: o.clumping.Toward(d.Side, yardstick.Direction(scenario.Right, d.Elevation_deg, d.Azimuth_deg))}
	for f := int(d.Side); f < len(o.points); f += 2 {
		bunch := &o.stand.Bunches[f/2]
		free := 0
		for k := range o.rays {
			if !o.caster.Hit(yardstick.Spot(bunch, d.Side, direction, firstRay+k), direction) {
				free++
			}
		}
		l.faces = append(l.faces, face{
			y: bunch.Centre[1], free: float64(free) / float64(o.rays),
			depth: o.ray.Depth(o.thickness, o.grid.Snap(o.points[f].At), direction),
		})
	}
	return l
}

// look is one side of one stand in one direction.
type look struct {
	length float64 // of the stand along the row [m]
	omega  float64 // Ω of the stand in this direction
	faces  []face
}

// face is one bunch face in one direction.
type face struct {
	y     float64 // place along the row [m]
	free  float64 // share of its rays that meet no leaf
	depth float64 // optical depth through the grid at Ω = 1
}

// leaves is the side mean of the gap between leaves.
func (l *look) leaves() float64 {
	sum := 0.0
	for i := range l.faces {
		sum += l.faces[i].free
	}
	return sum / float64(len(l.faces))
}

// grid is the side mean of the gap through the grid, and what it gains per Ω.
func (l *look) grid(clumping float64) (gap, slope float64) {
	for i := range l.faces {
		g := math.Exp(-clumping*l.faces[i].depth) / float64(len(l.faces))
		gap += g
		slope -= g * l.faces[i].depth
	}
	return gap, slope
}

// block is the length of row over which faces are taken to look past the same leaves [m]: two spurs and
// the reach of their leaves.
const block = 0.45

// variance is the square of the standard error of the side mean of grid − leaves: faces of one stand stand for
// all that could hang there, in blocks along the row that are independent of each other (the variance of a
// ratio estimate over clusters, Cochran 1977, eq. 9A from memory).
func (l *look) variance(clumping float64) float64 {
	blocks := max(2, int(math.Round(l.length/block)))
	sum, count := make([]float64, blocks), make([]float64, blocks)
	mean, _ := l.grid(clumping)
	mean -= l.leaves()
	for i := range l.faces {
		f := &l.faces[i]
		at := f.y/l.length - math.Floor(f.y/l.length)
		b := min(int(at*float64(blocks)), blocks-1)
		sum[b] += math.Exp(-clumping*f.depth) - f.free - mean
		count[b]++
	}
	squares, used := 0.0, 0.0
	for b := range sum {
		squares += sum[b] * sum[b]
		if count[b] > 0 {
			used++
		}
	}
	n := float64(len(l.faces))
	return squares / (n * n) * used / math.Max(used-1, 1)
}

// fit is the Ω with the least squares of grid − leaves over all side means, by Gauss and Newton.
func fit(looks [][]look) float64 {
	clumping := 1.0
	for range 30 {
		up, down := 0.0, 0.0
		for _, direction := range looks {
			for i := range direction {
				gap, slope := direction[i].grid(clumping)
				up += (gap - direction[i].leaves()) * slope
				down += slope * slope
			}
		}
		if down == 0 {
			return 1
		}
		step := up / down
		clumping = math.Min(math.Max(clumping-step, clumping/2), 2*clumping)
		if math.Abs(step) < 1e-6 {
			break
		}
	}
	return clumping
}

// compare fills a direction from the looks of all stands.
func (d *Direction) compare(looks []look, single float64) {
	n := float64(len(looks))
	squares, variance := 0.0, 0.0
	for i := range looks {
		l := &looks[i]
		leaves := l.leaves()
		even, _ := l.grid(1)
		one, _ := l.grid(single)
		grid, _ := l.grid(l.omega)
		d.Leaves += leaves / n
		d.Even += even / n
		d.Single += one / n
		d.Grid += grid / n
		squares += (grid - leaves) * (grid - leaves) / n
		variance += l.variance(l.omega) / n
	}
	d.Bias = d.Grid - d.Leaves
	d.BiasSE = math.Sqrt(variance / n)
	d.RMS = math.Sqrt(math.Max(squares-variance, 0))
	d.Sampling = math.Sqrt(variance)
}
