package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/cover"
)

// Looks of nets. Their weave is drawn larger than life, or nobody would see it.
const (
	nearNet_m    = 4.0 // nets this near are cut finest
	midNet_m     = 10.0
	finestNet    = 4     // pieces of a slice along the row
	netCost      = 3     // quads of a piece at most: the cloth and both of its seams
	seam_m       = 0.006 // width of a seam
	glassNet     = 0.35  // of the cover of nets where colours behind them are to be read
	netTile_m    = 1.5   // side of the texture of a net
	weaveCover   = 0.8   // mean cover of the texture of cloth
	meshCover    = 0.26  // and of that of a bird net
	netPieceBits = 3     // of the index of a piece; its net stands above
)

// netPieces is how many pieces of each net about the row a slice draws.
func (v *visibleSlice) netPieces() int {
	switch {
	case v.distance < nearNet_m:
		return finestNet
	case v.distance < midNet_m:
		return 2
	}
	return 1
}

// rowNets is the number of nets about each row.
func (s *Scene) rowNets() int {
	count := 0
	for i := range s.nets {
		if s.nets[i].Kind != cover.OverheadNet {
			count++
		}
	}
	return count
}

// gatherNets lists the pieces of the nets about a row. A piece counts as near as its nearest corner if what it may hide
// is behind it, and as its farthest if it hangs behind the row.
func (l *List) gatherNets(s *Scene, view *View, place int32, v *visibleSlice) {
	if view.Objects || view.Way == Slice {
		return // one sees through nets, or sees them end-on
	}
	pieces := v.netPieces()
	for i := range s.nets {
		net := &s.nets[i]
		if net.Kind == cover.OverheadNet {
			continue
		}
		for piece := range pieces {
			corners := s.netCorners(v, net, piece, pieces)
			middle := corners[0].Add(corners[3]).Mul(0.5)
			count := len(l.items)
			l.add(view, middle, corners[0].Sub(middle).Len(), item{index: int32(i<<netPieceBits | piece), place: place, kind: netItem, level: uint8(pieces)})
			if len(l.items) == count {
				continue
			}
			near, far := float32(math.Inf(1)), float32(0)
			for _, c := range corners {
				depth := c.Sub(view.Eye).Dot(view.Forward)
				near, far = min(near, depth), max(far, depth)
			}
			depth := far
			if outside(net, view.Eye.Sub(v.at(mgl32.Vec3{0, middle[1] - v.offset[1], 0}))) {
				depth = near
			}
			l.keys[count] = depthKey(max(depth, nearestDepth))
		}
	}
}

// outside reports whether an eye, from the foot of the row, looks at the side of a net that the row is not on.
func outside(net *cover.Panel, eye mgl32.Vec3) bool {
	if net.Level() {
		return eye[2] > float32(net.Edges[0][1])
	}
	if x := float32(net.Edges[0][0]); x > 0 {
		return eye[0] > x
	} else {
		return eye[0] < x
	}
}

// netCorners are the corners of a piece of a net: on its upper or right edge from left to right along the row, then on the
// other.
func (s *Scene) netCorners(v *visibleSlice, net *cover.Panel, piece, pieces int) (corners [4]mgl32.Vec3) {
	length := float32(s.stand.Length) / float32(s.slices)
	from := (float32(v.slice) + float32(piece)/float32(pieces)) * length
	middle, along, across := spanned(net, from, from+length/float32(pieces))
	for k := range corners {
		corners[k] = v.at(middle.Add(along.Mul(float32(2*(k&1) - 1))).Add(across.Mul(float32(1 - 2*(k>>1)))))
	}
	return corners
}

// net draws a piece of cloth: as closed as its threads are from the eye, and its seams.
func (e *emitter) net(it *item, v *visibleSlice) {
	s := e.scene
	index, piece, pieces := int(it.index>>netPieceBits), int(it.index&(1<<netPieceBits-1)), int(it.level)
	net := &s.nets[index]
	corners := s.netCorners(v, net, piece, pieces)
	var at [4][2]float32
	var depth float32
	for k, c := range corners {
		x, y, z := e.inView(c.Sub(e.view.Eye))
		if z < nearestDepth {
			return
		}
		scale := e.view.Focal / z
		at[k], depth = [2]float32{e.view.CentreX + x*scale, e.view.CentreY - y*scale}, depth+z/4
	}
	tile, mean, repeats := netTile, float32(weaveCover), float32(weaveThreads)
	if net.Kind == cover.BirdNet {
		tile, mean, repeats = meshTile, meshCover, netMeshes
	}
	// Pieces hold whole numbers of threads, so that the weave goes on from one to the next.
	share := func(side mgl32.Vec3) float32 {
		return min(max(floor32(side.Len()/netTile_m*repeats+0.5), 1)/repeats, 1)
	}
	whole := s.atlas.tiles[tile].level(netTile_m * e.view.Focal / depth)
	q := e.quad(&box{whole.x, whole.y, whole.w * share(corners[1].Sub(corners[0])), whole.h * share(corners[2].Sub(corners[0]))})
	strength := v.fade / mean * e.netStrength()
	for k, c := range corners {
		colour := s.netColour(index, k, v, piece, pieces, e.view.Eye.Sub(c))
		colour = e.shaded(colour, v.haze)
		away := c.Sub(e.view.Eye).Normalize()
		q[k].X, q[k].Y = at[k][0], at[k][1]
		q[k].R, q[k].G, q[k].B = colour[0]*atlasGain, colour[1]*atlasGain, colour[2]*atlasGain
		q[k].A = min(strength*(1-float32(net.Direct(wide(away)))), 1)
	}
	if pieces < 2 || net.Kind == cover.BirdNet && net.Level() {
		return
	}
	seam, colour := max(seam_m*e.view.Focal/depth, 1), rgb{q[0].R, q[0].G, q[0].B}.scaled(1/atlasGain)
	for edge := range 2 {
		if edge == 1 || net.Kind == cover.SideNet { // a bird net has its one at the bottom
			a, b := at[2*edge], at[2*edge+1]
			e.line(a[0], a[1], b[0], b[1], seam, colour.scaled(0.8), v.fade*min(seam_m*e.view.Focal/depth/seam+0.3, 1))
		}
	}
}

// netColour is the display colour of the threads at a corner of a piece, seen from an eye that lies so from there.
func (s *Scene) netColour(index, corner int, v *visibleSlice, piece, pieces int, toEye mgl32.Vec3) rgb {
	net := &s.nets[index]
	normal := mgl32.Vec3{1, 0, 0}
	if net.Level() {
		normal = mgl32.Vec3{0, 0, 1}
	}
	edge := 1 - corner>>1
	share := (float32(piece) + float32(corner&1)) / float32(pieces)
	here, next := s.netLit[(index*s.slices+v.slice)*2+edge], s.netLit[(index*s.slices+(v.slice+1)%s.slices)*2+edge]
	light, sun := &s.light, normal.Dot(s.light.sun)
	beam, even := light.beam.scaled(abs(sun)*(here+(next-here)*share)), light.sky.scaled(0.5)
	if sun*normal.Dot(toEye) > 0 {
		return s.tone.colour(threadLight(net, beam.plus(even), even))
	}
	return s.tone.colour(threadLight(net, even, beam.plus(even)))
}
