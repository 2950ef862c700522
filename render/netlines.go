package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/cover"
)

// netLines draws the nets of a slice as one sees them end-on: dashed lines, as drawings show what one sees through.
func (e *emitter) netLines() {
	v, s := e.view, e.scene
	half := v.Width / 2 / v.sliceScale()
	rows, most := min(int(half/float32(s.stand.RowSpacing)+0.7), mostRows), len(e.vertices)/4+mostNetQuads-8
	width := max(v.Height/140, 2)
	dashes := func(x0, y0, x1, y1 float32, colour rgb) {
		length := float32(math.Hypot(float64(x1-x0), float64(y1-y0)))
		count := max(int(length/(2*netDash_m*v.sliceScale())), 1)
		for k := range count {
			if len(e.vertices)/4 >= most {
				return
			}
			f0, f1 := float32(k)/float32(count), (float32(k)+0.6)/float32(count)
			ax, ay, bx, by := x0+(x1-x0)*f0, y0+(y1-y0)*f0, x0+(x1-x0)*f1, y0+(y1-y0)*f1
			e.line(ax, ay, bx, by, width+2, rgb{}, 0.9)
			e.line(ax, ay, bx, by, width, colour, 1)
		}
	}
	for i := range s.nets {
		net := &s.nets[i]
		colour := netInk(net)
		if net.Kind == cover.OverheadNet {
			x0, y0 := e.inSlice(-half, float32(net.Edges[0][1]))
			x1, y1 := e.inSlice(half, float32(net.Edges[0][1]))
			dashes(x0, y0, x1, y1, colour)
			continue
		}
		for row := -rows; row <= rows; row++ {
			x0, y0 := e.acrossRow(row, float32(net.Edges[0][0]), float32(net.Edges[0][1]))
			x1, y1 := e.acrossRow(row, float32(net.Edges[1][0]), float32(net.Edges[1][1]))
			dashes(x0, y0, x1, y1, colour)
		}
	}
}

// netInk is the display colour of a net in drawings: that of its threads, kept off black.
func netInk(net *cover.Panel) rgb {
	share := 0.35 + 0.6*float32(1-net.Cloth.Absorbed)
	c := threadColours[net.Colour].scaled(share)
	return rgb{min(c[0], 1), min(c[1], 1), min(c[2], 1)}
}

// netsInSky lays the nets over the sky that a bunch sees from its place in the stand, as closed as their threads are
// from there.
func (e *emitter) netsInSky(c *chart, eye mgl32.Vec3) {
	s := e.scene
	if len(s.nets) == 0 {
		return
	}
	veil := func(d mgl32.Vec3) (alpha float32, colour rgb) {
		open, threads := 1.0, rgb{}
		for i := range s.nets {
			if net := &s.nets[i]; net.Meets(wide(eye), wide(d)) {
				through := net.Direct(wide(d))
				threads = threads.mix(s.tone.colour(threadLight(net, s.light.sky.scaled(0.3), s.light.beam.scaled(0.5).plus(s.light.sky))), float32(1-through))
				open *= through
			}
		}
		if share := float32(1 - open); share > 0 {
			return share, threads.scaled(1 / share)
		}
		return 0, threads
	}
	for k := range skyNetRings {
		for sector := range skySectors {
			middle := direction(90*(float64(k)+0.5)/skyNetRings, 360*(float64(sector)+0.5)/skySectors)
			alpha, colour := veil(middle)
			if alpha <= 0 {
				continue
			}
			e.patch(func(i int) (float32, float32, rgb) {
				x, y, _ := c.place(direction(90*float64(k+1-i>>1)/skyNetRings, 360*float64(sector+i&1)/skySectors))
				return x, y, colour
			}, min(alpha, 1))
		}
	}
}

// skyNetRings are the rings in which nets are laid over the sky of a bunch.
const skyNetRings = 30
