package training

import (
	"cmp"
	"math"
	"slices"

	"rowlight/sim/scenario"
)

// How a roof of wires carries shoots: common practice.
const (
	meshReach    = 0.32 // a shoot falls through where the next wire is farther than this [m]
	roofLie      = 0.02 // shoots lie this far above the wires [m]
	closestCross = 0.1  // cross wires are never closer than this [m]
	roofBelow    = 0.15 // and are drawn up to them from this far below [m]
)

// roof is the surface of the roof wires, repeated from row to row.
type roof struct {
	wires   []scenario.Wire // sorted across the row
	spacing float64         // between rows [m]
	mesh    float64         // farthest that a point of the net is from a wire across the row [m]
}

func roofOf(o scenario.Option) *roof {
	r := &roof{spacing: o.Rows.RowSpacing_m, mesh: math.Inf(1)}
	for _, wire := range o.Trellis.Wires {
		if wire.Role == scenario.Roof {
			r.wires = append(r.wires, wire)
		}
	}
	slices.SortStableFunc(r.wires, func(a, b scenario.Wire) int { return cmp.Compare(a.Offset_m, b.Offset_m) })
	if o.Trellis.CrossWires_m > 0 {
		r.mesh = o.Trellis.CrossWires_m / 2
	}
	return r
}

// at is the height of the roof over a place across the row and its rise per metre there; ok is false
// where nothing carries a shoot. Roofs of neighbouring rows join where their outer wires are close.
func (r *roof) at(x float64) (z, slope float64, ok bool) {
	if len(r.wires) == 0 {
		return 0, 0, false
	}
	x -= r.spacing * math.Round(x/r.spacing)
	i, _ := slices.BinarySearchFunc(r.wires, x, func(w scenario.Wire, x float64) int { return cmp.Compare(w.Offset_m, x) })
	before, after := r.wires[max(i, 1)-1], r.wires[min(i, len(r.wires)-1)]
	switch {
	case i == 0:
		before = r.wires[len(r.wires)-1]
		before.Offset_m -= r.spacing
	case i == len(r.wires):
		after = r.wires[0]
		after.Offset_m += r.spacing
	}
	width := after.Offset_m - before.Offset_m
	if width <= 0 {
		return before.Height_m, 0, true
	}
	near := before
	if after.Offset_m-x < x-before.Offset_m {
		near = after
	}
	between := i > 0 && i < len(r.wires)
	switch {
	case between && r.mesh <= meshReach || width <= 2*meshReach:
		slope = (after.Height_m - before.Height_m) / width
		return before.Height_m + slope*(x-before.Offset_m), slope, true
	case math.Abs(x-near.Offset_m) <= meshReach:
		return near.Height_m, 0, true
	}
	return 0, 0, false
}

// beams is the bar that carries the roof wires on a post, straight from the first to the last of them.
func (r *roof) beams() []Crossarm {
	if len(r.wires) == 0 {
		return nil
	}
	first, last := r.wires[0], r.wires[len(r.wires)-1]
	beam := Crossarm{Z: first.Height_m, Left: min(first.Offset_m-crossarmEnd, 0), Right: max(last.Offset_m+crossarmEnd, 0)}
	if width := last.Offset_m - first.Offset_m; width > 0 {
		beam.Slope = (last.Height_m - first.Height_m) / width
		beam.Z -= beam.Slope * first.Offset_m
	}
	return []Crossarm{beam}
}

// crossWires join the roof wires at about the given distance, a whole number of times in the period.
func (r *roof) crossWires(length, distance float64) []CrossWire {
	if len(r.wires) == 0 || distance <= 0 {
		return nil
	}
	points := make([][2]float64, len(r.wires))
	for i, wire := range r.wires {
		points[i] = [2]float64{wire.Offset_m, wire.Height_m}
	}
	wires := make([]CrossWire, max(1, int(math.Round(length/max(distance, closestCross)))))
	for i := range wires {
		wires[i] = CrossWire{Y: length * float64(i) / float64(len(wires)), Points: points}
	}
	return wires
}

// oneSide is +1 or -1 where the roof of a row reaches half of a given distance to that side of a place across the row
// but not to the other, else 0.
func (r *roof) oneSide(x, reach float64) float64 {
	if len(r.wires) == 0 {
		return 0
	}
	left := x-r.wires[0].Offset_m >= reach/2
	right := r.wires[len(r.wires)-1].Offset_m-x >= reach/2
	switch {
	case right && !left:
		return 1
	case left && !right:
		return -1
	}
	return 0
}

// carry lays a tip on the roof: it follows the wires where it would sink through them.
func (r *roof) carry(tip *apex) {
	z, slope, ok := r.at(tip.at.X())
	if !ok || tip.at.Z() < z-roofBelow || tip.at.Z() > z+2*roofLie {
		return
	}
	if floor := slope * tip.along.X(); tip.along.Z() < floor {
		tip.along[2] = floor
		if tip.at.Z() < z+roofLie {
			tip.along[2] += 0.2
		}
		tip.along = tip.along.Normalize()
	}
}
