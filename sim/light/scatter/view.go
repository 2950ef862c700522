package scatter

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// terms of a light.Broad: its mean and the three components of its vector.
const terms = 4

// view is what a bearing shows to a place, up or down.
type view struct {
	x, z   float64 // unit vector of the way in the section
	slants []slantView
}

// slantView is one pair of directions of a view: what a surface of unit radiosity at their end adds to the
// terms of a Broad, for a place that looks to the left and one that looks to the right.
type slantView struct {
	depths    []float64 // of every cell per length within the section
	part, sky seen
}

// views turns bearings into what places see that lie on bunches; shown is the share that a bunch leaves
// open.
func views(s *section, all []bearing, shown func(cosine float64) float64) []view {
	var list []view
	for i := range all {
		for _, sign := range [2]float64{1, -1} {
			v := view{x: sign * all[i].x, z: sign * all[i].z}
			for j := range all[i].slants {
				v.slants = append(v.slants, newSlantView(s, &all[i].slants[j], sign, shown))
			}
			list = append(list, v)
		}
	}
	return list
}

// newSlantView weighs a pair of directions for both sides. Only upward directions above the horizon show the
// sky.
func newSlantView(section *section, s *slant, sign float64, shown func(cosine float64) float64) slantView {
	v := slantView{depths: s.depths(section)}
	for _, to := range s.to {
		to = to.Mul(sign)
		for side, outward := range [2]float64{-1, 1} {
			weight := s.solidAngle / 2 * shown(outward*to[0])
			addTerms(&v.part[side], to, weight)
			if sign > 0 && to[2] > 0 {
				addTerms(&v.sky[side], to, weight)
			}
		}
	}
	return v
}

// addTerms adds unit radiosity from a solid angle [sr] around a direction, in the terms of light.Broad.
func addTerms(sum *[terms]float64, to mgl64.Vec3, weight float64) {
	sum[0] += weight / (4 * math.Pi)
	for axis := range 3 {
		sum[1+axis] += weight * to[axis] / (2 * math.Pi)
	}
}
