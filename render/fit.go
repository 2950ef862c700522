package render

import "math"

// fit chooses how fine each slice is drawn so that the list stays inside the budget: first bunches in
// their share of it, then leaves in what is left.
func (l *List) fit(s *Scene, view *View, budget int) {
	smallest, count := float32(finestBerry), 0
	for range 40 {
		count = 0
		for i := range l.slices {
			v := &l.slices[i]
			count += v.chooseBunches(s, view, smallest)
		}
		if float64(count) <= berryBudget*float64(budget) {
			break
		}
		smallest *= coarserStep
	}
	left := int(0.93*float64(budget)) - count // the counts are estimates
	nets := netCost * s.rowNets()
	for i := range l.slices {
		left -= l.slices[i].woodPieces(s) + int(l.slices[i].inPane*float32(nets*l.slices[i].netPieces()))
	}
	left = max(left, budget/4)
	smallest = finestLeaf
	for range 40 {
		count = 0
		for i := range l.slices {
			v := &l.slices[i]
			v.thin(s.leaves.mean*view.Focal/v.distance, smallest)
			count += int(v.kept * v.seen * float32(s.leafStarts[v.slice+1]-s.leafStarts[v.slice]))
		}
		if count <= left {
			break
		}
		smallest *= coarserStep
	}
}

// thin chooses how many leaves of a slice are drawn: as many as are at least quad wide [px] when
// enlarged to keep the leaf area, and clumps where leaves would have to be enlarged much.
func (v *visibleSlice) thin(leaf, quad float32) {
	share := min(leaf*leaf/(quad*quad), 1)
	v.clumps = share < 1/(clumpFrom*clumpFrom)
	if v.clumps {
		share = min(share, 1.0/clumpCovers)
	}
	v.kept = share * v.fade
	v.scale = float32(math.Sqrt(float64(1 / share)))
	if v.clumps {
		v.scale = float32(math.Sqrt(float64(1 / (share * clumpCovers))))
	}
}

// chooseBunches sets how fine the bunches of a slice are drawn, with no sphere smaller than given
// [px], and how many; it returns about how many spheres that makes.
func (v *visibleSlice) chooseBunches(s *Scene, view *View, smallest float32) int {
	scale := view.Focal / v.distance
	v.level = 0
	for v.level < bunchLevels && 2*s.bunches.radius[v.level]*scale < smallest {
		v.level++
	}
	// Far away a fair sample of the bunches is enough.
	all := s.bunchOf[v.slice]
	pixels := 2 * s.bunches.halfWidth * scale
	share := min(pixels*pixels/(4*smallest*smallest), 1) * v.fade
	v.bunches = all[:int(share*float32(len(all))+0.5)]
	if v.level == bunchLevels {
		return int(v.inPane * float32(len(v.bunches)))
	}
	starts := s.bunches.starts[v.level]
	spheres := 0
	for _, b := range v.bunches {
		spheres += starts[b+1] - starts[b]
	}
	return int(v.inPane * float32(spheres) * facingShare)
}

// woodPieces is about how many pieces of wood and wire a slice draws.
func (v *visibleSlice) woodPieces(s *Scene) int {
	var count float32
	for _, i := range s.woodOf[v.slice] {
		if p := &s.wood[i]; !p.shows(v.distance) {
			continue
		} else if p.isShoot() {
			count += v.seen
		} else {
			count += v.inPane
		}
	}
	return int(count)
}

func (p *woodPiece) isShoot() bool { return p.detail == fineShoot || p.detail == coarseShoot }

// shows reports whether a piece is drawn at a distance [m].
func (p *woodPiece) shows(distance float32) bool {
	reach := &seenFrom[p.detail]
	return distance >= reach[0] && distance < reach[1]
}

// sampleSeen looks at the first few leaves of a slice, a fair sample, to guess how much of the slice
// the list will take.
func (s *Scene) sampleSeen(v *visibleSlice, view *View) {
	first, end := s.leafStarts[v.slice], s.leafStarts[v.slice+1]
	end = min(end, first+seenSample)
	if first == end {
		v.inPane, v.seen = 1, 1
		return
	}
	for i := first; i < end; i++ {
		at := s.leaves.leaf[i].centre
		if !view.mayContain(v.at(at), s.leaves.mean/2) {
			continue
		}
		v.inPane++
		if v.hidden.hides(at[2]) {
			v.seen += v.hidden.seen
		} else {
			v.seen++
		}
	}
	v.inPane /= float32(end - first)
	v.seen /= float32(end - first)
}
