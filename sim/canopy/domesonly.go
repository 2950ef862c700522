package canopy

// Only is the domes of some of the points, in the order given.
func (d *Domes) Only(points []int) *Domes {
	few := &Domes{Lattice: d.Lattice, Points: make([]Point, len(points)), depth: make([]float32, 0, d.Lattice.Size()*len(points))}
	for i, point := range points {
		few.Points[i] = d.Points[point]
	}
	for direction := range d.Lattice.Size() {
		row := d.Depth(direction)
		for _, point := range points {
			few.depth = append(few.depth, row[point])
		}
	}
	return few
}
