package render

// hidden is how far the rows in front hide a row: what lies between the two heights is seen only
// through gaps, and little of it needs to be drawn.
type hidden struct {
	from, to float32 // heights in the plane of the row above its ground [m]; empty when from ≥ to
	seen     float32 // share of what lies between them that is still drawn
}

// seenThrough is the share of a hidden row that is drawn for each row in front of it.
const seenThrough = 0.32

// hiddenFrom finds what hides a row from the eye: the leaves of the next row towards the eye, between
// the lines of sight over its top and under its leaves.
func (s *Scene) hiddenFrom(row int, view *View) hidden {
	spacing := float32(s.planting.Stand.RowSpacing)
	x, step := float32(row)*spacing, spacing
	toward := 1
	if view.Eye[0] < x {
		toward, step = -1, -spacing
	}
	c := hidden{seen: 1}
	for next := 1; next <= 2; next++ {
		front := x + float32(next)*step
		if (view.Eye[0]-front)*step <= 0 || s.rowPresence(row+next*toward, view) < 1 {
			break
		}
		if next == 1 {
			ratio := (x - view.Eye[0]) / (front - view.Eye[0])
			here, there := s.terrain.at(x, view.Eye[1]), s.terrain.at(front, view.Eye[1])
			c.from = view.Eye[2] + (there+s.leaves.bottom-view.Eye[2])*ratio - here
			c.to = view.Eye[2] + (there+s.leaves.top-view.Eye[2])*ratio - here
		}
		c.seen *= seenThrough
	}
	return c
}

// hides reports whether a height is behind the leaves in front.
func (c *hidden) hides(z float32) bool { return z > c.from && z < c.to }
