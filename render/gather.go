package render

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl32"
)

// gather lists the things of all visible slices that fall into the pane, with their depth.
func (l *List) gather(s *Scene, view *View) {
	l.items, l.keys = l.items[:0], l.keys[:0]
	for place := range l.slices {
		v := &l.slices[place]
		if v.only != nil {
			l.gatherOnly(s, view, int32(place), v)
			continue
		}
		l.gatherLeaves(s, view, int32(place), v)
		l.gatherBunches(s, view, int32(place), v)
		l.gatherNets(s, view, int32(place), v)
		for _, i := range s.woodOf[v.slice] {
			p := &s.wood[i]
			if p.shows(v.distance) {
				middle := v.at(p.from.Add(p.to).Mul(0.5))
				if p.isShoot() && v.hidden.hides(middle[2]) {
					continue
				}
				l.add(view, middle, p.to.Sub(p.from).Len()/2+p.radius, item{index: i, place: int32(place), kind: woodItem})
			}
		}
	}
}

// gatherOnly lists the wood of a slice that has one of its details.
func (l *List) gatherOnly(s *Scene, view *View, place int32, v *visibleSlice) {
	for _, i := range s.woodOf[v.slice] {
		if p := &s.wood[i]; slices.Contains(v.only, p.detail) {
			l.add(view, v.at(p.from.Add(p.to).Mul(0.5)), p.to.Sub(p.from).Len(), item{index: i, place: place, kind: woodItem})
		}
	}
}

func (l *List) gatherLeaves(s *Scene, view *View, place int32, v *visibleSlice) {
	first, end := s.leafStarts[v.slice], s.leafStarts[v.slice+1]
	end = first + int(math.Ceil(float64(v.kept)*float64(end-first)))
	kind, reach := leafItem, s.leaves.mean*v.scale
	if v.clumps {
		kind, reach = clumpItem, reach*clumpSide
	}
	glimpsed := first + int(v.hidden.seen*float32(end-first))
	for i := first; i < end; i++ {
		if i >= glimpsed && v.hidden.hides(s.leaves.leaf[i].centre[2]) {
			continue
		}
		l.add(view, v.at(s.leaves.leaf[i].centre), reach, item{index: int32(i), place: place, kind: kind})
	}
}

func (l *List) gatherBunches(s *Scene, view *View, place int32, v *visibleSlice) {
	set, level := s.bunches, v.level
	dusty := view.Way == Natural && level < bunchLevels && s.planting.film() > 0
	for _, b := range v.bunches {
		body := &set.bunch[b]
		if dusty { // on the berries that face the eye
			at := v.at(body.centre)
			toEye := view.Eye.Sub(at).Normalize().Mul(body.radius)
			l.add(view, at.Add(toEye), body.radius+body.length/2, item{index: b, place: place, kind: dustItem})
		}
		if level == bunchLevels {
			l.add(view, v.at(body.centre), body.radius, item{index: b, place: place, kind: farBunchItem})
			continue
		}
		toEye := view.Eye.Sub(v.at(body.centre)).Normalize()
		berries, starts := set.berry[level], set.starts[level]
		for i := starts[b]; i < starts[b+1]; i++ {
			ball := &berries[i]
			if ball.core || ball.outward.Dot(toEye) > facingFrom { // berries on the far side are hidden by the others
				l.add(view, v.at(ball.centre), ball.radius, item{index: int32(i), place: place, kind: berryItem, level: uint8(level)})
			}
		}
	}
}

// add appends an item if a ball around it may be seen, and makes its key.
func (l *List) add(view *View, at mgl32.Vec3, radius float32, it item) {
	x, y, z := at[0]-view.Eye[0], at[1]-view.Eye[1], at[2]-view.Eye[2]
	depth := x*view.Forward[0] + y*view.Forward[1] + z*view.Forward[2]
	if depth < nearestDepth {
		return
	}
	right := x*view.Right[0] + y*view.Right[1] + z*view.Right[2]
	up := x*view.Up[0] + y*view.Up[1] + z*view.Up[2]
	if (abs(right)-radius)*view.Focal > view.Width/2*depth || (abs(up)-radius)*view.Focal > view.Height/2*depth {
		return
	}
	l.items = append(l.items, it)
	l.keys = append(l.keys, depthKey(depth))
}

// depthKey grows with depth in even ratios: the exponent and the leading bits of the number itself,
// about 1 mm at 5 m.
func depthKey(depth float32) uint16 {
	const shift = 23 - 12
	low := math.Float32bits(nearestDepth)
	return uint16(min((math.Float32bits(max(depth, nearestDepth))-low)>>shift, math.MaxUint16))
}

// sort orders the items from far to near in two passes of 256 buckets. Items of the same key keep
// their order.
func (l *List) sort() {
	n := len(l.items)
	l.order, l.sorted = resized(l.order, n), resized(l.sorted, n)
	for i := range l.order {
		l.order[i] = uint32(i)
	}
	radixPass(l.order, l.sorted, l.keys, 0)
	radixPass(l.sorted, l.order, l.keys, 8)
}

// radixPass writes the indices from in order of one byte of their keys, largest first.
func radixPass(from, to []uint32, keys []uint16, shift uint) {
	var starts [257]int
	for _, i := range from {
		starts[256-int(keys[i]>>shift&255)]++
	}
	for b := range 256 {
		starts[b+1] += starts[b]
	}
	for _, i := range from {
		b := 255 - int(keys[i]>>shift&255)
		to[starts[b]] = i
		starts[b]++
	}
}

func resized[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n, n+n/4)
	}
	return s[:n]
}
