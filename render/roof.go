package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/cover"
)

// Looks of the net over all rows.
const (
	roofSectors   = 48
	mostRoofQuads = 800
	roofAlong_m   = 60.0 // its seams are drawn so far
	roofRows      = 8    // and over so many rows to each side
	roofCross_m   = 6.0  // distance of the seams across the rows; common practice for panels of net
	roofSeam_m    = 0.012
)

// roofHeights are the angles from the horizontal at which the net is drawn [deg].
var roofHeights = [...]float64{0.4, 1.2, 2.5, 4.5, 7, 11, 16, 23, 32, 45, 60, 75, 90}

// roof is the net over all rows; nil without one.
func (s *Scene) roof() *cover.Panel {
	for i := range s.nets {
		if s.nets[i].Kind == cover.OverheadNet {
			return &s.nets[i]
		}
	}
	return nil
}

// roofAbove is how high the net over the rows hangs above an eye [m]; below it is negative.
func (s *Scene) roofAbove(eye mgl32.Vec3) float32 {
	return float32(s.roof().Edges[0][1]) + s.terrain.at(eye[0], eye[1]) - eye[2]
}

// roofDirection is a direction by its angle to the plane of the roof and the angle clockwise from the row line [deg].
func (s *Scene) roofDirection(up_deg, fromRow_deg float64) mgl32.Vec3 {
	d := direction(up_deg, fromRow_deg)
	d[2] += s.terrain.at(d[0], d[1])
	return d
}

// drawRoof draws the net over all rows and its seams. It hangs over everything else, so it is drawn before the rest by who
// looks from below, and after it by who looks from above.
func (e *emitter) drawRoof() {
	s, net, above := e.scene, e.scene.roof(), e.scene.roofAbove(e.view.Eye)
	most, sign := len(e.vertices)/4+mostRoofQuads, 1.0
	if above < 0 {
		sign = -1
	}
	colour, strength := s.roofColour(net, above), e.netStrength()
	for k := 1; k < len(roofHeights); k++ {
		for sector := range roofSectors {
			if len(e.vertices)/4 >= most {
				return
			}
			e.roofPatch(net, sign*roofHeights[k-1], sign*roofHeights[k], sector, abs(above), colour, strength)
		}
	}
	spacing, period := float32(s.stand.RowSpacing), float32(roofCross_m)
	seam := func(x0, y0, x1, y1 float32) {
		if len(e.vertices)/4 < most {
			e.roofSeam(net, mgl32.Vec3{x0, y0}, mgl32.Vec3{x1, y1}, colour.scaled(0.75), strength)
		}
	}
	near := floor32(e.view.Eye[1]/period) * period
	for row := -roofRows; row <= roofRows; row++ {
		x := float32(row) * spacing
		seam(x, near-roofAlong_m, x, near+roofAlong_m)
	}
	for k := float32(-9); k <= 9; k++ {
		seam(-roofRows*spacing, near+k*period, roofRows*spacing, near+k*period)
	}
}

// netStrength is how strong nets are drawn in a way.
func (e *emitter) netStrength() float32 {
	if e.view.Way == Sunlight || e.view.Way == Heat {
		return glassNet
	}
	return 1
}

// roofColour is the display colour of the threads of the net over the rows, from below or above.
func (s *Scene) roofColour(net *cover.Panel, above float32) rgb {
	light := &s.light
	share := max(light.roof.direct, 0.05) // the beam below it is what it has left of the one above
	from := light.beam.scaled(max(light.sun[2], 0) / share).plus(light.sky)
	ground := light.sky.scaled(0.3)
	if above > 0 {
		return s.tone.colour(threadLight(net, ground, from))
	}
	return s.tone.colour(threadLight(net, from, ground))
}

// roofPatch draws the part of the net between two angles to its plane within a sector of directions.
func (e *emitter) roofPatch(net *cover.Panel, low_deg, high_deg float64, sector int, away float32, colour rgb, strength float32) {
	var x, y, alpha, haze [4]float32
	for k := range x {
		up, turn := [2]float64{low_deg, high_deg}[1-k>>1], 360*float64(sector+k&1)/roofSectors
		d := e.scene.roofDirection(up, turn)
		right, upward, depth := e.inView(d)
		if depth < 0.08 {
			return
		}
		x[k], y[k] = e.view.CentreX+right/depth*e.view.Focal, e.view.CentreY-upward/depth*e.view.Focal
		level := direction(up, turn)
		alpha[k] = strength * (1 - float32(net.Direct(wide(level))))
		haze[k] = thickness(away / max(abs(level[2]), 1e-3))
	}
	v := e.view
	if max(x[0], x[1], x[2], x[3]) < v.CentreX-v.Width/2 || min(x[0], x[1], x[2], x[3]) > v.CentreX+v.Width/2 ||
		max(y[0], y[1], y[2], y[3]) < v.CentreY-v.Height/2 || min(y[0], y[1], y[2], y[3]) > v.CentreY+v.Height/2 {
		return
	}
	mean := (haze[0] + haze[1] + haze[2] + haze[3]) / 4
	e.patch(func(k int) (float32, float32, rgb) { return x[k], y[k], e.shaded(colour, mean) }, 1)
	if len(e.vertices) >= 4 {
		q := e.vertices[len(e.vertices)-4:]
		for k := range q {
			q[k].A = alpha[k]
		}
	}
}

// shaded is a display colour in the way of the view behind haze.
func (e *emitter) shaded(c rgb, haze float32) rgb {
	if e.mutes {
		c = c.muted()
	}
	return c.mix(e.haze, haze)
}

// roofSeam draws a straight line on the net over the rows between two places across and along the rows.
func (e *emitter) roofSeam(net *cover.Panel, from, to mgl32.Vec3, colour rgb, strength float32) {
	height := float32(net.Edges[0][1])
	place := func(p mgl32.Vec3) (x, y, z float32) {
		return e.inView(e.scene.terrain.lifted(p[0], p[1]).Add(mgl32.Vec3{0, 0, height}).Sub(e.view.Eye))
	}
	x0, y0, z0 := place(from)
	x1, y1, z1 := place(to)
	const least = 0.4
	if max(z0, z1) < least {
		return
	}
	if z0 < least {
		f := (least - z0) / (z1 - z0)
		x0, y0, z0 = x0+(x1-x0)*f, y0+(y1-y0)*f, least
	} else if z1 < least {
		f := (least - z1) / (z0 - z1)
		x1, y1, z1 = x1+(x0-x1)*f, y1+(y0-y1)*f, least
	}
	v := e.view
	f0, f1 := v.Focal/z0, v.Focal/z1
	distance := float32(math.Sqrt(float64(z0 * z1)))
	width := roofSeam_m * v.Focal / distance
	e.line(v.CentreX+x0*f0, v.CentreY-y0*f0, v.CentreX+x1*f1, v.CentreY-y1*f1, max(width, 1),
		e.shaded(colour, thickness(distance)), strength*min(width+0.25, 0.9))
}
