package training

import (
	"cmp"
	"math"
	"slices"
)

// Quadrat is what a point quadrat counts: thin rods pushed straight across a curtain at the height of the fruit, at even
// distances along the row. Curtains and fruit zones are probed one by one and share the pushes. Smart & Robinson 1991
// (WineSkills UK) take 50 pushes and aim at 40 % gaps, 1 to 1.5 leaf layers and 60 % exterior bunches.
type Quadrat struct {
	Pushes           int
	LeafLayers       float64 // leaves met per push
	Gaps             float64 // share of pushes that meet neither leaf nor bunch
	InteriorLeaves   float64 // share of the leaves met that are neither the first nor the last contact of their push
	Bunches          int     // met
	ExteriorBunches  float64 // share of the bunches met that are the first or the last contact of their push
	contacts, within int
	exterior         int
}

// FieldPushes is the number of pushes of the field method.
const FieldPushes = 50

// PointQuadrat makes at least the given number of pushes. A stand without bunches is not probed.
func (s *Stand) PointQuadrat(pushes int) Quadrat {
	var q Quadrat
	zones, curtains := s.FruitZones(), s.curtains()
	if len(zones) == 0 || pushes < 1 {
		return q
	}
	r := newRods(s)
	each := (pushes + len(zones)*len(curtains) - 1) / (len(zones) * len(curtains))
	for _, zone := range zones {
		for _, part := range curtains {
			for i := range each {
				r.push(&q, part, s.Length*(float64(i)+0.5)/float64(each), zone.Mean_m)
			}
		}
	}
	n := float64(q.Pushes)
	q.LeafLayers, q.Gaps = float64(q.contacts)/n, q.Gaps/n
	if q.contacts > 0 {
		q.InteriorLeaves = float64(q.within) / float64(q.contacts)
	}
	if q.Bunches > 0 {
		q.ExteriorBunches = float64(q.exterior) / float64(q.Bunches)
	}
	return q
}

// push notes the contacts of one push at (y, z) from the left to the right of a curtain.
func (r *rods) push(q *Quadrat, part curtain, y, z float64) {
	q.Pushes++
	r.hits = r.hits[:0]
	r.meetLeaves(part.left, part.right, y, z, func(x float64) { r.hits = append(r.hits, contact{x, true}) })
	r.meetBunches(part.left, part.right, y, z, func(x float64) { r.hits = append(r.hits, contact{x, false}) })
	slices.SortStableFunc(r.hits, func(a, b contact) int { return cmp.Compare(a.x, b.x) })
	if len(r.hits) == 0 {
		q.Gaps++
	}
	for k, hit := range r.hits {
		outside := k == 0 || k == len(r.hits)-1
		switch {
		case hit.leaf:
			q.contacts++
			if !outside {
				q.within++
			}
		default:
			q.Bunches++
			if outside {
				q.exterior++
			}
		}
	}
}

// contact is where a rod meets something.
type contact struct {
	x    float64
	leaf bool
}

// rods are thin rods pushed straight across one row, through its leaves as discs of their area. They repeat the period
// along the row and leave the other rows out.
type rods struct {
	stand *Stand
	reach float64            // radius of the largest blade, and the size of the cells at least [m]
	cells map[[2]int][]int32 // leaves by place along the row and height
	along int                // cells in the period
	hits  []contact          // scratch
}

func newRods(s *Stand) *rods {
	r := &rods{stand: s, reach: 0.02, cells: map[[2]int][]int32{}}
	for i := range s.Leaves {
		r.reach = max(r.reach, math.Sqrt(s.Leaves[i].Area/math.Pi))
	}
	r.along = max(1, int(s.Length/r.reach))
	for i := range s.Leaves {
		c := r.cell(s.Leaves[i].Centre.Y(), s.Leaves[i].Centre.Z())
		r.cells[c] = append(r.cells[c], int32(i))
	}
	return r
}

// cell is the cell of a place, with the period along the row wrapped.
func (r *rods) cell(y, z float64) [2]int {
	y /= r.stand.Length
	return [2]int{min(int((y-math.Floor(y))*float64(r.along)), r.along-1), int(math.Floor(z / r.reach))}
}

// leaves counts the blades that a rod at (y, z) meets between two x.
func (r *rods) leaves(from, to, y, z float64) int {
	count := 0
	r.meetLeaves(from, to, y, z, func(float64) { count++ })
	return count
}

// meetLeaves visits the x of every blade that a rod at (y, z) meets between two x.
func (r *rods) meetLeaves(from, to, y, z float64, visit func(x float64)) {
	middle := r.cell(y, z)
	for k := range min(3, r.along) {
		for up := -1; up <= 1; up++ {
			for _, i := range r.cells[[2]int{(middle[0] + k - 1 + r.along) % r.along, middle[1] + up}] {
				if x, ok := r.meet(&r.stand.Leaves[i], y, z); ok && x > from && x < to {
					visit(x)
				}
			}
		}
	}
}

// meet is where a rod at (y, z) passes through a blade.
func (r *rods) meet(leaf *Leaf, y, z float64) (x float64, ok bool) {
	if math.Abs(leaf.Normal.X()) < 1e-9 {
		return 0, false
	}
	dy, dz := r.stand.apart(y, leaf.Centre.Y()), z-leaf.Centre.Z()
	dx := -(dy*leaf.Normal.Y() + dz*leaf.Normal.Z()) / leaf.Normal.X()
	return leaf.Centre.X() + dx, dx*dx+dy*dy+dz*dz <= leaf.Area/math.Pi
}

// meetBunches visits the x of every bunch, as an ellipsoid, that a rod at (y, z) meets between two x.
func (r *rods) meetBunches(from, to, y, z float64, visit func(x float64)) {
	for i := range r.stand.Bunches {
		b := &r.stand.Bunches[i]
		dy, dz := r.stand.apart(y, b.Centre.Y())/b.Radius, (z-b.Centre.Z())/(b.Length/2)
		if dy*dy+dz*dz <= 1 && b.Centre.X() > from && b.Centre.X() < to {
			visit(b.Centre.X())
		}
	}
}

// apart is the distance from b to a along the row, by the nearest repetition of the period [m].
func (s *Stand) apart(a, b float64) float64 {
	d := a - b
	return d - s.Length*math.Round(d/s.Length)
}
