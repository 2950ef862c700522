package training

import (
	"math"
	"slices"
)

// rods is a point quadrat: thin rods pushed straight across one row, through its leaves as discs of
// their area. It repeats the period along the row and leaves the other rows out.
type rods struct {
	stand *Stand
	reach float64 // radius of the largest blade [m]
}

func newRods(s *Stand) *rods {
	r := &rods{stand: s}
	for i := range s.Leaves {
		r.reach = max(r.reach, math.Sqrt(s.Leaves[i].Area/math.Pi))
	}
	return r
}

// leaves counts the blades that a rod at (y, z) meets between two x.
func (r *rods) leaves(from, to, y, z float64) int {
	count := 0
	for i := range r.stand.Leaves {
		leaf := &r.stand.Leaves[i]
		dz := z - leaf.Centre.Z()
		if math.Abs(dz) > r.reach {
			continue
		}
		dy := r.stand.apart(y, leaf.Centre.Y())
		if math.Abs(dy) > r.reach || math.Abs(leaf.Normal.X()) < 1e-9 {
			continue
		}
		dx := -(dy*leaf.Normal.Y() + dz*leaf.Normal.Z()) / leaf.Normal.X()
		x := leaf.Centre.X() + dx
		if dx*dx+dy*dy+dz*dz <= leaf.Area/math.Pi && x > from && x < to {
			count++
		}
	}
	return count
}

func (r *rods) meetsBunch(y, z float64) bool {
	return slices.ContainsFunc(r.stand.Bunches, func(b Bunch) bool {
		dy, dz := r.stand.apart(y, b.Centre.Y())/b.Radius, (z-b.Centre.Z())/(b.Length/2)
		return dy*dy+dz*dz <= 1
	})
}

// apart is the distance from b to a along the row, by the nearest repetition of the period [m].
func (s *Stand) apart(a, b float64) float64 {
	d := math.Mod(a-b, s.Length)
	return d - s.Length*math.Round(d/s.Length)
}
