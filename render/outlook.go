package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"
)

// Outlook is drawn as sun path charts are: the zenith in the middle, the horizon as the rim, heights above it
// at even distances between them, true north up and east to the right.

// Looks of the sky as a bunch sees it.
const (
	outlookRows    = 2    // rows drawn to each side
	outlookReach_m = 7.0  // along the row
	outlookShare   = 0.43 // radius against the smaller side of the pane
	tooNear        = 0.9  // half sides of a leaf within which it would hide everything
	skySectors     = 48
	trackStep_deg  = 3.0
	skyGain        = 1.5  // brightness of leaves against a bright sky, as an eye gets used to it
	nearBunch_m    = 1.2  // bunches this near are drawn berry by berry
	skyLevel       = 1    // fineness of those
	nearWood_m     = 0.05 // what is nearer would hide everything
	bendPieces     = 10   // of a piece of wood at most
	chartQuads     = 3000 // for sky, rim and tracks
)

// Declinations of the sun on about the 21st of each month from December to June, and back [deg]: the obliquity
// 23.44 and its parts by the sine of 30 and 60 degrees of the sun's way (geometry of the ecliptic).
var declinations_deg = [...]float64{-23.44, -20.15, -11.47, 0, 11.47, 20.15, 23.44}

// chart is the projection of the sky to the pane.
type chart struct {
	x, y, radius float32 // of the disc [px]
	turn         float64 // from the row frame to the compass [rad]
}

func (v *View) chart(s *Scene) chart {
	return chart{
		x: v.CentreX, y: v.CentreY, radius: outlookShare * min(v.Width, v.Height),
		turn: s.planting.RowAzimuth_deg * math.Pi / 180,
	}
}

// place is where a direction of the row frame lies, and how near the horizon: 0 zenith, 1 horizon.
func (c *chart) place(d mgl32.Vec3) (x, y, share float32) {
	level := math.Hypot(float64(d[0]), float64(d[1]))
	share = float32(math.Atan2(level, float64(d[2])) / (math.Pi / 2))
	sin, cos := math.Sincos(math.Atan2(float64(d[0]), float64(d[1])) + c.turn)
	return c.x + c.radius*share*float32(sin), c.y - c.radius*share*float32(cos), share
}

// composeOutlook fills the list with the sky as a bunch sees it.
func (l *List) composeOutlook(s *Scene, view *View, budget int) {
	bunch := s.outlookFrom(view.Bunch)
	eye := s.eyeOf(bunch)
	if l.layOut(s, view, budget) {
		drawing := chartQuads
		if len(s.nets) > 0 {
			drawing += skyNetRings * skySectors
		}
		l.gatherOutlook(s, eye, bunch)
		l.sort()
		l.nearest(s, eye, budget-drawing)
	}
	e := l.emitter(s, view, budget-len(l.items)) // near things take several quads
	c := view.chart(s)
	e.sky(&c)
	e.hill(&c)
	e.netsInSky(&c, eye.Sub(mgl32.Vec3{0, 0, s.terrain.along * eye[1]}))
	e.tracks(&c, 0.45)
	e.own(Object{})
	for _, i := range l.order {
		it := &l.items[i]
		// Seen from the bunch, a copy of the stand lies where it lies seen from the ground, moved by the bunch.
		v := l.slices[it.place]
		v.offset = v.offset.Sub(eye)
		switch it.kind {
		case leafItem:
			e.leafInSky(&c, it, &v)
		case woodItem:
			e.woodInSky(&c, it, &v)
		default:
			e.bunchInSky(&c, it, &v)
		}
		e.own(s.objectOf(it))
	}
	e.rim(&c)
	e.tracks(&c, 0.9)
	e.own(Object{})
	e.finish(l)
}

// nearest keeps of the sorted items the nearest that take no more quads than given.
func (l *List) nearest(s *Scene, eye mgl32.Vec3, quads int) {
	first := len(l.order)
	for first > 0 {
		it := &l.items[l.order[first-1]]
		v := l.slices[it.place]
		v.offset = v.offset.Sub(eye)
		if quads -= s.quadsInSky(it, &v); quads < 0 {
			break
		}
		first--
	}
	l.order = l.order[first:]
}

// quadsInSky is the most quads that an item takes.
func (s *Scene) quadsInSky(it *item, v *visibleSlice) int {
	switch it.kind {
	case woodItem:
		p := &s.wood[it.index]
		return bends(v.at(p.from), v.at(p.to))
	case farBunchItem:
		if v.at(s.bunches.bunch[it.index].centre).Len() <= nearBunch_m {
			return s.bunches.starts[skyLevel][it.index+1] - s.bunches.starts[skyLevel][it.index]
		}
	}
	return 1
}

// bends is how many straight pieces stand for a straight line on the chart.
func bends(from, end mgl32.Vec3) int {
	return min(1+int(bendPieces*end.Sub(from).Len()/max(from.Add(end).Len()/2, 0.1)), bendPieces)
}

// outlookFrom is the bunch that one looks out from; without a choice one at the front of the row.
func (s *Scene) outlookFrom(bunch int) int {
	if bunch >= 0 && bunch < len(s.bunches.bunch) {
		return bunch
	}
	return s.bunchFacing(Front(s.planting.RowAzimuth_deg, s.planting.Latitude_deg))
}

// bunchFacing is of the bunches in the middle half of the stand, on the side of the row that faces a compass direction
// [deg], the one that hangs farthest from others, which would stand before its sky; where there is none, one as near to
// that as can be; −1 where the vines bear none.
func (s *Scene) bunchFacing(azimuth_deg float64) int {
	across, _ := rowFromCompass(azimuth_deg, s.planting.RowAzimuth_deg)
	best, least := -1, float32(math.Inf(1))
	for i := range s.bunches.bunch {
		body, length := &s.bunches.bunch[i], float32(s.stand.Length)
		cost := -min(body.apart, length)
		if float32(across)*body.centre[0] <= 0 {
			cost += 4 * length
		}
		if abs(body.centre[1]-length/2) > length/4 {
			cost += 2 * length
		}
		if cost < least {
			best, least = i, cost
		}
	}
	return best
}

// Apart is how far a bunch hangs from the next, between their middles [m]; infinite for a single one.
func (s *Scene) Apart(bunch int) float32 { return s.bunches.bunch[bunch].apart }

// OutlookFrom is the bunch whose sky a view shows, −1 where the vines bear none.
func (s *Scene) OutlookFrom(view *View) int { return s.outlookFrom(view.Bunch) }

// eyeOf is the middle of a bunch; without bunches a place at half height in the row.
func (s *Scene) eyeOf(bunch int) mgl32.Vec3 {
	if bunch < 0 {
		return mgl32.Vec3{0, float32(s.stand.Length / 2), float32(s.stand.Top / 2)}
	}
	own := visibleSlice{rise: s.terrain.along}
	return own.at(s.bunches.bunch[bunch].centre)
}

// gatherOutlook lists what may stand before the sky of a bunch.
func (l *List) gatherOutlook(s *Scene, eye mgl32.Vec3, bunch int) {
	l.slices, l.items, l.keys = l.slices[:0], l.items[:0], l.keys[:0]
	stand := s.stand
	copies := int(math.Ceil(outlookReach_m/stand.Length)) + 1
	for row := -outlookRows; row <= outlookRows; row++ {
		for k := -copies; k <= copies; k++ {
			place := int32(len(l.slices))
			l.slices = append(l.slices, visibleSlice{
				offset: s.terrain.lifted(float32(row)*float32(stand.RowSpacing), float32(k)*float32(stand.Length)), rise: s.terrain.along,
			})
			v := &l.slices[place]
			for i := range s.leaves.leaf {
				l.addInSky(v.at(s.leaves.leaf[i].centre).Sub(eye), item{index: int32(i), place: place, kind: leafItem})
			}
			for i := range s.bunches.bunch {
				if i != bunch || row != 0 || k != 0 {
					l.addInSky(v.at(s.bunches.bunch[i].centre).Sub(eye), item{index: int32(i), place: place, kind: farBunchItem})
				}
			}
			for i := range s.wood {
				if p := &s.wood[i]; p.detail == closeBy || p.detail == fineShoot || p.detail == nearPost || p.detail == thread {
					l.addInSky(v.at(p.from.Add(p.to).Mul(0.5)).Sub(eye), item{index: int32(i), place: place, kind: woodItem})
				}
			}
		}
	}
}

// addInSky appends an item that stands above the horizon, or near it.
func (l *List) addInSky(to mgl32.Vec3, it item) {
	if abs(to[1]) > outlookReach_m || to[2] < -0.1 {
		return
	}
	l.items = append(l.items, it)
	l.keys = append(l.keys, depthKey(to.Len()))
}

// sky draws the open sky.
func (e *emitter) sky(c *chart) {
	heights := [...]float64{0, 4, 10, 20, 35, 50, 70, 90}
	b := e.scene.Backdrop(e.view)
	for k := 1; k < len(heights); k++ {
		for sector := range skySectors {
			e.patch(func(i int) (float32, float32, rgb) {
				d := direction(heights[k-i>>1], 360*float64(sector+i&1)/skySectors)
				x, y, _ := c.place(d)
				return x, y, b.skyAt(d)
			}, 1)
		}
	}
}

// hill draws the ground that rises above the horizon on a slope.
func (e *emitter) hill(c *chart) {
	if e.scene.terrain == (terrain{}) {
		return
	}
	floor := lookOf(e.scene.planting.Floor)
	colour := e.scene.tone.colour(floor.cover.times(e.scene.light.sky.plus(e.scene.light.beam.scaled(0.5))))
	for sector := range skySectors {
		e.patch(func(i int) (float32, float32, rgb) {
			flat := direction(0, 360*float64(sector+i&1)/skySectors)
			if i < 2 {
				flat[2] = max(e.scene.terrain.at(flat[0], flat[1]), 0)
			}
			x, y, _ := c.place(flat)
			return x, y, colour
		}, 1)
	}
}

// direction is a unit vector of the row frame from its height above the horizon and the angle clockwise from
// the line of the row [deg].
func direction(elevation_deg, fromRow_deg float64) mgl32.Vec3 {
	sin, cos := math.Sincos(elevation_deg * math.Pi / 180)
	x, y := rowFromCompass(fromRow_deg, 0)
	return mgl32.Vec3{float32(cos * x), float32(cos * y), float32(sin)}
}

func (e *emitter) leafInSky(c *chart, it *item, v *visibleSlice) {
	leaf := &e.scene.leaves.leaf[it.index]
	middle := v.at(leaf.centre)
	half := leaf.tip.Len()
	distance := middle.Len()
	if distance < tooNear*half {
		return
	}
	_, _, share := c.place(middle)
	if share > 1.05 {
		return
	}
	q := e.quad(e.scene.atlas.tiles[leaf.tile].level(2 * half / distance * c.radius * 2 / math.Pi))
	for i, sign := range &cornerSigns {
		q[i].X, q[i].Y, _ = c.place(middle.Add(leaf.tip.Mul(sign[0])).Add(leaf.side.Mul(sign[1])))
	}
	face := upperFace
	if leaf.normal.Dot(middle) > 0 {
		face = lowerFace
	}
	e.paintLeaf(q, it, face, 0)
}

// bunchInSky draws a bunch berry by berry where it is near.
func (e *emitter) bunchInSky(c *chart, it *item, v *visibleSlice) {
	set := e.scene.bunches
	body := &set.bunch[it.index]
	middle := v.at(body.centre)
	distance := middle.Len()
	if distance > nearBunch_m {
		e.ballInSky(c, middle, body.radius, 2*it.index+inward(middle), 1)
		return
	}
	for _, far := range [2]bool{true, false} { // first the berries on the far side
		for i := set.starts[skyLevel][it.index]; i < set.starts[skyLevel][it.index+1]; i++ {
			ball := &set.berry[skyLevel][i]
			if !ball.core && far == (ball.outward.Dot(middle) > 0) {
				e.ballInSky(c, v.at(ball.centre), ball.radius, 2*it.index+inward(middle), ball.shine)
			}
		}
	}
}

// inward is 1 if of a bunch on a way the right face is seen, 0 for the left.
func inward(to mgl32.Vec3) int32 {
	if to[0] < 0 {
		return 1
	}
	return 0
}

func (e *emitter) ballInSky(c *chart, to mgl32.Vec3, radius float32, face int32, shine float32) {
	x, y, share := c.place(to)
	distance := to.Len()
	if share > 1.05 || distance < 1.5*radius || len(e.vertices)+4 > cap(e.vertices) {
		return
	}
	r, colour := radius/distance*c.radius*2/math.Pi, e.scene.faceColour[face].scaled(shine*shadedBerryGain)
	q := e.quad(e.scene.atlas.tiles[shadedBerry].level(2 * r))
	for i, sign := range &cornerSigns {
		q[i].X, q[i].Y = x+r*sign[1], y-r*sign[0]
		q[i].R, q[i].G, q[i].B, q[i].A = colour[0], colour[1], colour[2], 1
	}
}

// woodInSky draws a piece of wood or wire, bent as the chart bends straight lines.
func (e *emitter) woodInSky(c *chart, it *item, v *visibleSlice) {
	p := &e.scene.wood[it.index]
	from, end := v.at(p.from), v.at(p.to)
	count := bends(from, end)
	light := e.scene.light.sky.luminance() * woodAmbient
	colour := e.scene.tone.colour(p.surface.scaled(light))
	for k := range count {
		f0, f1 := float32(k)/float32(count), float32(k+1)/float32(count)
		a, b := from.Mul(1-f0).Add(end.Mul(f0)), from.Mul(1-f1).Add(end.Mul(f1))
		distance := a.Add(b).Len() / 2
		x0, y0, s0 := c.place(a)
		x1, y1, s1 := c.place(b)
		if min(s0, s1) > 1.02 || distance < nearWood_m {
			continue
		}
		width := 2 * p.radius / distance * c.radius * 2 / math.Pi
		e.line(x0, y0, x1, y1, max(width, 1), colour, min(width, 1))
		e.texture(p.tile, width)
	}
}

// texture gives the quad that was written last a picture of the atlas.
func (e *emitter) texture(id tileID, pixels float32) {
	if len(e.vertices) == 0 {
		return
	}
	q, b := e.vertices[len(e.vertices)-4:], e.scene.atlas.tiles[id].level(pixels)
	for k := range q {
		q[k].U, q[k].V = b.x+b.w*float32(k&1), b.y+b.h*float32(k>>1)
	}
}

// rim hides what hangs below the horizon and draws rings of height and the compass cross.
func (e *emitter) rim(c *chart) {
	paper, ink := rgb(e.view.Paper()), e.view.ink()
	around := func(radius float32, i int) (float32, float32) {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / skySectors)
		return c.x + radius*float32(sin), c.y - radius*float32(cos)
	}
	for i := range skySectors {
		e.patch(func(k int) (float32, float32, rgb) {
			radius := c.radius
			if k >= 2 {
				radius = 2.6 * c.radius
			}
			x, y := around(radius, i+k&1)
			return x, y, paper
		}, 1)
		for ring, alpha := range [...]float32{0.35, 0.35, 0.9} {
			radius := c.radius * float32(ring+1) / 3
			x0, y0 := around(radius, i)
			x1, y1 := around(radius, i+1)
			e.line(x0, y0, x1, y1, max(c.radius/190, 1), ink, alpha)
		}
	}
	for k := range 4 {
		sin, cos := math.Sincos(math.Pi / 2 * float64(k))
		e.line(c.x+float32(sin)*c.radius, c.y-float32(cos)*c.radius, c.x+float32(sin)*c.radius*1.04, c.y-float32(cos)*c.radius*1.04, 2, ink, 0.9)
	}
}

// tracks draws the ways of the sun through the year, that of the day in amber with its full hours, and the sun.
func (e *emitter) tracks(c *chart, alpha float32) {
	s := e.scene
	thin := max(c.radius/210, 1)
	for _, d := range declinations_deg {
		e.track(c, d, thin, e.view.trackInk(), 0.55*alpha)
	}
	today, hourAngle := s.sunCourse()
	e.track(c, today, 2.6*thin, amber, alpha)
	for hour := range 25 {
		if d := s.sunAt(today, hourAngle+15*(float64(hour)-s.instant.Hour)); d[2] > 0 {
			x, y, _ := c.place(d)
			e.disc(x, y, 2.4*thin, dotSides, amber, alpha)
		}
	}
	if s.light.sun[2] > 0 {
		x, y, _ := c.place(s.light.sun)
		e.disc(x, y, 11*thin, sunSides, rgb{1, 1, 1}, alpha)
		e.disc(x, y, 8.5*thin, sunSides, amber, alpha)
	}
}

// trackInk is the colour of the lines over sky and leaves.
func (v *View) trackInk() rgb { return rgb{1, 1, 1} }

func (e *emitter) track(c *chart, declination_deg float64, width float32, colour rgb, alpha float32) {
	last := e.scene.sunAt(declination_deg, -180)
	for angle := -180 + trackStep_deg; angle <= 180; angle += trackStep_deg {
		d := e.scene.sunAt(declination_deg, angle)
		if last[2] > 0 && d[2] > 0 {
			x0, y0, _ := c.place(last)
			x1, y1, _ := c.place(d)
			e.line(x0, y0, x1, y1, width, colour, alpha)
		}
		last = d
	}
}

// sunCourse is the declination of the sun of the instant, and its hour angle [deg], told by where it stands
// (spherical astronomy: sin δ = sin φ sin h + cos φ cos h cos A).
func (s *Scene) sunCourse() (declination_deg, hourAngle_deg float64) {
	const degree = math.Pi / 180
	sinLat, cosLat := math.Sincos(s.planting.Latitude_deg * degree)
	sinH, cosH := math.Sincos(s.instant.SunElevation_deg * degree)
	sinA, cosA := math.Sincos(s.instant.SunAzimuth_deg * degree)
	declination := math.Asin(min(max(sinLat*sinH+cosLat*cosH*cosA, -1), 1))
	hourAngle := math.Atan2(-cosH*sinA, sinH*cosLat-cosH*cosA*sinLat)
	return declination / degree, hourAngle / degree
}

// sunAt is the direction of the sun in the row frame at a declination and hour angle [deg].
func (s *Scene) sunAt(declination_deg, hourAngle_deg float64) mgl32.Vec3 {
	const degree = math.Pi / 180
	sinLat, cosLat := math.Sincos(s.planting.Latitude_deg * degree)
	sinD, cosD := math.Sincos(declination_deg * degree)
	sinT, cosT := math.Sincos(hourAngle_deg * degree)
	east, north := -cosD*sinT, sinD*cosLat-cosD*cosT*sinLat
	up := sinLat*sinD + cosLat*cosD*cosT
	sin, cos := math.Sincos(s.planting.RowAzimuth_deg * degree)
	return mgl32.Vec3{float32(east*cos - north*sin), float32(east*sin + north*cos), float32(up)}
}
