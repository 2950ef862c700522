package yardstick

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/exp"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// Clumping is Ω of one stand as its bunch faces see it, by side of the row and direction: how much of the
// leaf area works alike if it hung at random, above 1 where leaves avoid each other. It is fitted so that
// the mean gap of the faces through the grid is that between the very leaves of the stand.
type Clumping struct {
	omega [2][len(heights)][len(turns)]float64 // by scenario.Side
}

// The directions in which Ω is fitted [deg]: heights above the horizontal, closer where the sun shines
// along a roof or under the next row, and turns to either side of the way the faces look, taken together.
var (
	heights = [...]float64{5, 10, 15, 20, 25, 30, 40, 55, 75}
	turns   = [...]float64{10, 30, 50, 75}
)

// Numbers of the fit.
const (
	fitRays    = 2    // at leaves, from each face in each direction
	likely     = 0.5  // standard deviation of Ω about 1 over forms and directions, before looking [assumption]
	least      = 0.3  // Ω is never less
	most       = 3.0  // nor more
	modelError = 0.01 // error of a side mean that no Ω mends [assumption]
)

// Fit finds Ω of a stand. Pace is called between directions; its error abandons the work.
func Fit(s *training.Stand, grid *canopy.Grid, slope canopy.Slope, pace func() error) (*Clumping, error) {
	c := Even()
	if len(s.Leaves) == 0 || len(s.Bunches) == 0 {
		return c, nil
	}
	o := observer{
		stand: s, caster: NewCaster(s, slope), grid: grid, ray: canopy.NewRay(grid), points: Places(s),
		thickness: [2]*canopy.Thickness{canopy.NewThickness(grid), canopy.NewThickness(grid)},
	}
	for _, side := range scenario.Sides {
		for i, height := range heights {
			for j, turn := range turns {
				if err := pace(); err != nil {
					return nil, err
				}
				seen := o.look(side, height, turn, fitRays*(i*len(turns)+j))
				c.omega[side][i][j] = seen.fit()
			}
		}
	}
	return c, nil
}

// Even is Ω = 1 in every direction.
func Even() *Clumping {
	c := new(Clumping)
	for side := range c.omega {
		for i := range c.omega[side] {
			for j := range c.omega[side][i] {
				c.omega[side][i][j] = 1
			}
		}
	}
	return c
}

// Toward is Ω for a face of one side in a direction given in its own frame, x outward.
func (c *Clumping) Toward(side scenario.Side, local mgl64.Vec3) float64 {
	height := mgl64.RadToDeg(math.Atan2(local[2], math.Hypot(local[0], local[1])))
	turn := mgl64.RadToDeg(math.Atan2(math.Abs(local[1]), local[0]))
	i, u := between(heights[:], height)
	j, v := between(turns[:], turn)
	o := &c.omega[side]
	return (1-u)*((1-v)*o[i][j]+v*o[i][j+1]) + u*((1-v)*o[i+1][j]+v*o[i+1][j+1])
}

// Mean is Ω over all directions and both sides, each weighed alike.
func (c *Clumping) Mean() float64 {
	sum, n := 0.0, 0.0
	for side := range c.omega {
		for i := range c.omega[side] {
			for _, omega := range c.omega[side][i] {
				sum, n = sum+omega, n+1
			}
		}
	}
	return sum / n
}

// between finds the interval of rising values around a value, and its place there [0–1].
func between(values []float64, value float64) (index int, share float64) {
	for index < len(values)-2 && value > values[index+1] {
		index++
	}
	share = (value - values[index]) / (values[index+1] - values[index])
	return index, math.Min(math.Max(share, 0), 1)
}

// observer looks from the bunch faces of one stand.
type observer struct {
	stand     *training.Stand
	caster    *Caster
	points    []canopy.Point
	grid      *canopy.Grid
	ray       *canopy.Ray
	thickness [2]*canopy.Thickness // to either side
}

// look is what the faces of one side see in one direction.
type look struct {
	free   float64   // share of rays between leaves
	depths []float64 // of the faces, through the grid
}

// look looks to one side of the way the faces look from every second face, and to the other from the rest.
func (o *observer) look(side scenario.Side, height_deg, turn_deg float64, ray int) (l look) {
	var directions [2]mgl64.Vec3
	for k, sign := range [2]float64{1, -1} {
		directions[k] = Direction(side, height_deg, sign*turn_deg)
		o.thickness[k].Toward(directions[k])
	}
	for f := int(side); f < len(o.points); f += 2 {
		bunch := &o.stand.Bunches[f/2]
		k := f / 2 % 2
		for r := range fitRays {
			if !o.caster.Hit(Spot(bunch, side, directions[k], ray+r), directions[k]) {
				l.free++
			}
		}
		l.depths = append(l.depths, o.ray.Depth(o.thickness[k], o.grid.Snap(o.points[f].At), directions[k]))
	}
	l.free /= float64(fitRays * len(l.depths))
	return l
}

// fit is the most likely Ω: that of the mean gap between leaves, drawn towards 1 as far as so few rays and
// the likely spread of Ω leave open.
func (l *look) fit() float64 {
	p := math.Min(math.Max(l.free, 0.01), 0.99)
	noise := modelError*modelError + p*(1-p)/(2*float64(len(l.depths)))
	omega := 1.0
	for range 20 {
		gap, slope := 0.0, 0.0
		for _, depth := range l.depths {
			g := exp.Of(-omega*depth) / float64(len(l.depths))
			gap += g
			slope -= g * depth
		}
		// Gauss and Newton on the sum of both squares.
		down := slope*slope/noise + 1/(likely*likely)
		step := ((gap-l.free)*slope/noise + (omega-1)/(likely*likely)) / down
		omega = math.Min(math.Max(omega-step, least), most)
		if math.Abs(step) < 1e-4 {
			break
		}
	}
	return omega
}
