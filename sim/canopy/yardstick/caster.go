// Package yardstick finds what a ray meets among the very leaves of a Stand, one by one, and with it
// measures how well the leaf-area grid stands for them.
package yardstick

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/training"
)

// Caster meets rays with leaves as flat discs of equal area, the shape that the grid spreads, in rows
// that repeat along and across as those of the grid do. Vines stay plumb: a slope lifts whole rows.
type Caster struct {
	discs    []disc
	length   float64 // period along the row [m]
	width    float64 // period across the rows [m]
	slope    canopy.Slope
	bottom   float64 // lowest and highest point of any leaf above its own ground [m]
	top      float64
	nx, ny   int
	nz       int
	dx, dy   float64
	dz       float64
	first    []int32 // of each bin in entries; one more closes the last
	entries  []entry
	farthest float64 // where a ray stops that never leaves the canopy [m]
}

// disc is one blade. Heights are measured from the sloping ground.
type disc struct {
	centre, normal mgl64.Vec3
	squared        float64 // radius² [m²]
}

// entry puts a disc, moved by whole periods, into a bin.
type entry struct {
	disc int32
	i, j int16 // periods across and along
}

const (
	binTarget = 0.15  // wished edge of a bin [m]: a few blades each, a few bins a metre
	farthest  = 250.0 // as far as the grid follows a ray [m]
)

// NewCaster sorts the leaves of a stand into bins.
func NewCaster(s *training.Stand, slope canopy.Slope) *Caster {
	c := &Caster{
		length: s.Length, width: s.RowSpacing, slope: slope, farthest: farthest,
		bottom: math.Inf(1), top: math.Inf(-1), discs: make([]disc, len(s.Leaves)),
	}
	for i := range s.Leaves {
		l := &s.Leaves[i]
		centre := l.Centre
		centre[2] -= centre[0] * slope.Across
		c.discs[i] = disc{centre, l.Normal, l.Area / math.Pi}
		_, high := c.reach(&c.discs[i])
		c.bottom, c.top = math.Min(c.bottom, centre[2]-high[2]), math.Max(c.top, centre[2]+high[2])
	}
	if len(s.Leaves) == 0 {
		c.bottom, c.top = 0, 0
	}
	bins := func(size float64) int { return max(1, int(math.Round(size/binTarget))) }
	c.nx, c.ny, c.nz = bins(c.width), bins(c.length), bins(c.top-c.bottom)
	c.dx, c.dy = c.width/float64(c.nx), c.length/float64(c.ny)
	c.dz = math.Max((c.top-c.bottom)/float64(c.nz), 1e-9)
	c.sort()
	return c
}

// reach is how far a disc reaches from its centre along each axis of the frame that follows the ground [m].
func (c *Caster) reach(d *disc) (low, high mgl64.Vec3) {
	axes := [3]mgl64.Vec3{{1, 0, 0}, {0, 1, 0}, {-c.slope.Across, -c.slope.Along, 1}}
	for k, axis := range axes {
		across := axis.Sub(d.normal.Mul(axis.Dot(d.normal)))
		high[k] = math.Sqrt(d.squared)*across.Len() + 1e-9
		low[k] = -high[k]
	}
	return low, high
}

// sort fills the bins: counted first, then filled in the order of the leaves.
func (c *Caster) sort() {
	c.first = make([]int32, c.nx*c.ny*c.nz+1)
	c.eachBin(func(bin int, _ entry) { c.first[bin+1]++ })
	for bin := 1; bin < len(c.first); bin++ {
		c.first[bin] += c.first[bin-1]
	}
	c.entries = make([]entry, c.first[len(c.first)-1])
	next := make([]int32, len(c.first))
	copy(next, c.first)
	c.eachBin(func(bin int, e entry) {
		c.entries[next[bin]] = e
		next[bin]++
	})
}

// eachBin visits every bin that the box around a disc meets, with the periods between disc and bin.
func (c *Caster) eachBin(visit func(bin int, e entry)) {
	for i := range c.discs {
		d := &c.discs[i]
		low, high := c.reach(d)
		low, high = c.inBins(d.centre.Add(low)), c.inBins(d.centre.Add(high))
		for iz := max(int(math.Floor(low[2])), 0); iz <= min(int(math.Floor(high[2])), c.nz-1); iz++ {
			for ix := int(math.Floor(low[0])); ix <= int(math.Floor(high[0])); ix++ {
				for iy := int(math.Floor(low[1])); iy <= int(math.Floor(high[1])); iy++ {
					bx, ox := split(ix, c.nx)
					by, oy := split(iy, c.ny)
					visit((iz*c.nx+bx)*c.ny+by, entry{int32(i), int16(-ox), int16(-oy)})
				}
			}
		}
	}
}

// inBins gives a point of the frame that follows the ground in units of bins, the row line in the
// middle of the width.
func (c *Caster) inBins(p mgl64.Vec3) mgl64.Vec3 {
	return mgl64.Vec3{(p[0] + c.width/2) / c.dx, p[1] / c.dy, (p[2] - c.bottom) / c.dz}
}

// split parts an index into one within 0 … n-1 and whole periods.
func split(i, n int) (index, periods int) {
	periods = i / n
	if i < 0 {
		periods = -((n - 1 - i) / n)
	}
	return i - periods*n, periods
}
