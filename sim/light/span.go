package light

import (
	"math"

	"rowlight/sim/canopy"
	"rowlight/sim/training"
)

// spanShare is the correlation angle of a light field whose free spells are as long as those between
// leaves, per angle that a leaf spans. Between discs at random a spell is chord/depth long, with depth =
// −ln gap (the idle time of an M/G/∞ queue), a chord (π/4)·2c/(1+c) of the disc seen under a cosine c; in
// a Gaussian field it is gap·2π·angle·e^(u²/2), u the normal quantile of the gap (Rice 1945). They are
// equal for 0.40 chords at a gap of 0.35, where lit fruit hangs, and a chord is 0.65 at c = 0.7.
const spanShare = 0.40 * 0.65

// How the leaves on the way to the sky are looked for.
const (
	spanStep   = 20.0 // lattice of directions [deg]
	spanFaces  = 8    // of so many faces one is looked out from, on either side
	spanBin    = 0.02 // of the distances of leaves [m]
	spanBins   = 250
	spanNoLeaf = 0.3 // of a stand without leaves [rad]: nothing depends on it
)

// spans are the angles over which light on fruit comes and goes as the sun moves, for the waves of a field:
// those that leaves on the way span, near ones a quarter of the sky and those of the next row a degree or
// two, each as often as such leaves stand in the way where the sun may come through.
func spans(stand *training.Stand, grid *canopy.Grid, points []canopy.Point, pace func() error) (angles [waves]float64, err error) {
	distances, err := leafDistances(grid, points, pace)
	if err != nil {
		return angles, err
	}
	width := leafWidth(stand.Leaves)
	mean, squares := 0.0, 0.0 // of the pace of waves, one over their angle
	for k := range angles {
		angles[k] = spanNoLeaf
		if s, ok := distances.quantile((float64(k) + 0.5) / waves); ok {
			angles[k] = spanShare * 2 * math.Atan(width/2/s)
		}
		mean += 1 / angles[k] / waves
		squares += 1 / (angles[k] * angles[k]) / waves
	}
	// Leaves end a free spell by their mean pace, waves by the root of their mean squared pace.
	for k := range angles {
		angles[k] *= math.Sqrt(squares) / mean
	}
	return angles, nil
}

// leafWidth is the diameter of the disc of a leaf as wide as the mean of the leaf area [m].
func leafWidth(leaves []training.Leaf) float64 {
	width, total := 0.0, 0.0
	for i := range leaves {
		width += leaves[i].Area * 2 * math.Sqrt(leaves[i].Area/math.Pi)
		total += leaves[i].Area
	}
	return width / total
}

// histogram counts optical depth by its distance; what is farther counts into the last bin.
type histogram [spanBins]float64

// leafDistances looks from faces out into the sky on their side. Depth on a way counts by the probability
// that the way is free.
func leafDistances(grid *canopy.Grid, points []canopy.Point, pace func() error) (all histogram, err error) {
	ray, thickness, lattice := canopy.NewRay(grid), canopy.NewThickness(grid), canopy.Half(spanStep)
	for i := range lattice.Size() {
		local := lattice.Direction(i)
		if local[0] <= 0 {
			continue
		}
		for side := range 2 {
			if err := pace(); err != nil {
				return all, err
			}
			d := canopy.Point{Mirrored: side == 0}.InFrame(local)
			thickness.Toward(d)
			for f := side; f < len(points); f += spanFaces {
				weight := lattice.SolidAngle(i) * canopy.Gap(1, ray.Depth(thickness, points[f].At, d))
				ray.Each(thickness, func(from, to, depth float64) {
					all[min(int((from+to)/2/spanBin), spanBins-1)] += weight * depth
				})
			}
		}
	}
	return all, nil
}

// quantile is the distance within which the share q of the depth lies [m]; ok is false without any.
func (h *histogram) quantile(q float64) (distance float64, ok bool) {
	total, sum := 0.0, 0.0
	for _, depth := range h {
		total += depth
	}
	for bin, depth := range h {
		if depth > 0 && sum+depth >= q*total {
			return spanBin * (float64(bin) + (q*total-sum)/depth), true
		}
		sum += depth
	}
	return 0, false
}
