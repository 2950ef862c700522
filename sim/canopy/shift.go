package canopy

import "slices"

// Shift is what other leaves change of the optical depth of the points of domes in every direction of a lattice: what those
// add that have come, less what those stopped that have gone. Both are grids like that of the domes with these leaves alone;
// without a grid of those that have gone, all that the domes know of have. Optical depth is a sum over leaves, so that domes
// and shift together are domes of the leaves there are, as far as the lattice shows it. Where directions of the lattice are named
// as wanted, only they are found; nil wants all.
func (d *Domes) Shift(lattice Lattice, come, gone *Grid, wanted []bool, pace func() error) (*Domes, error) {
	shift := &Domes{Lattice: lattice, Points: d.Points, depth: make([]float32, lattice.Size()*len(d.Points))}
	if err := shift.add(come, 1, lattice == d.Lattice, wanted, pace); err != nil {
		return nil, err
	}
	if gone != nil {
		return shift, shift.add(gone, -1, lattice == d.Lattice, wanted, pace)
	}
	for i := range lattice.Size() {
		if wanted != nil && !wanted[i] {
			continue
		}
		sample, _ := d.Lattice.Sample(lattice.Direction(i))
		for point, row := 0, shift.Depth(i); point < len(row); point++ {
			row[point] -= float32(d.Along(point, &sample))
		}
	}
	return shift, pace()
}

// Seen are domes in the directions of a lattice that are wanted, nil for all: NewDomes on a grid that may be higher than its leaves.
func Seen(g *Grid, lattice Lattice, points []Point, wanted []bool, pace func() error) (*Domes, error) {
	if len(g.leaves.held) == 0 {
		return &Domes{Lattice: lattice, Points: points, depth: make([]float32, lattice.Size()*len(points))}, pace()
	}
	return newDomes(g.below(points), lattice, points, usualPatch, wanted, pace)
}

// Less is what domes have more than others of the same lattice and as many points.
func (d *Domes) Less(other *Domes) *Domes {
	rest := &Domes{Lattice: d.Lattice, Points: d.Points, depth: slices.Clone(d.depth)}
	for i, depth := range other.depth {
		rest.depth[i] -= depth
	}
	return rest
}

// add adds the optical depth of leaves times a factor. What they show is looked at in every direction, or as for NewDomes.
func (d *Domes) add(g *Grid, factor float32, usual bool, wanted []bool, pace func() error) error {
	if len(g.leaves.held) == 0 {
		return nil
	}
	size := 1
	if usual {
		size = usualPatch
	}
	leaves, err := newDomes(g.below(d.Points), d.Lattice, d.Points, size, wanted, pace)
	if err != nil {
		return err
	}
	for i, depth := range leaves.depth {
		d.depth[i] += factor * depth
	}
	return nil
}

// Shifted is the domes after a shift in the directions of their own lattice. No depth falls below zero, though sums that broke
// off in the dark may miss what the shift takes away.
func (d *Domes) Shifted(shift *Domes) *Domes {
	sum := &Domes{Lattice: d.Lattice, Points: d.Points, depth: slices.Clone(d.depth)}
	for i, by := range shift.depth {
		sum.depth[i] = max(sum.depth[i]+by, 0)
	}
	return sum
}

// below is the grid without the layers above its leaves and all points, through which rays would go for nothing.
func (g *Grid) below(points []Point) *Grid {
	highest := int(g.leaves.runs[len(g.leaves.runs)-1]) / (2 * g.ny * g.nx)
	for _, p := range points {
		_, _, z := g.cell(p.At)
		highest = max(highest, int(z))
	}
	low := *g
	low.nz = min(highest+1, g.nz)
	low.density = g.density[:low.nz*g.nx*g.ny]
	return &low
}
