package canopy

import "math"

// Section is a canopy averaged along the row: cells of a cross-section, periodic across the rows, with
// heights measured from the sloping ground.
type Section struct {
	Columns, Layers int
	Width, Height   float64 // of the whole section [m]
	Slope           Slope

	// Density is the mean leaf area density [m²/m³] at [layer*Columns + column], column 0 at x = -Width/2.
	Density []float64
	// Effective is the density that, spread evenly along the row, lets as much light through a short
	// path as the uneven leaves do: at most Density, and equal to it where the canopy is even.
	Effective []float64
}

// Section averages the grid along the row into columns × layers cells. Depth is G·Ω·s for the short
// path s over which leaves of the same place along the row stand behind each other [m]; a depth of
// zero makes Effective equal to Density.
func (g *Grid) Section(columns, layers int, depth float64) Section {
	s := Section{
		Columns: columns, Layers: layers, Width: g.Width(), Height: g.Height(), Slope: g.slope,
		Density: make([]float64, columns*layers), Effective: make([]float64, columns*layers),
	}
	across, up := overlaps(g.nx, columns), overlaps(g.nz, layers)
	for _, z := range up {
		for _, x := range across {
			mean, gap := g.along(x.from, z.from, depth)
			cell := z.to*columns + x.to
			s.Density[cell] += x.share * z.share * mean
			s.Effective[cell] += x.share * z.share * gap
		}
	}
	for cell, gap := range s.Effective {
		switch {
		case depth == 0:
			s.Effective[cell] = s.Density[cell]
		case gap < 1:
			s.Effective[cell] = -math.Log(gap) / depth
		default:
			s.Effective[cell] = 0
		}
	}
	return s
}

// along is the mean density of the cells of one place of the cross-section, and the mean gap of a path
// of the given depth per density.
func (g *Grid) along(ix, iz int, depth float64) (mean, gap float64) {
	first := g.index(ix, 0, iz)
	for _, a := range g.density[first : first+g.ny] {
		if a == 0 {
			gap++
			continue
		}
		mean += float64(a)
		gap += math.Exp(-depth * float64(a))
	}
	return mean / float64(g.ny), gap / float64(g.ny)
}

// overlap says that a share of the length of cell to lies in cell from.
type overlap struct {
	from, to int
	share    float64
}

// overlaps matches one division of a length into equal cells with another.
func overlaps(from, to int) []overlap {
	var list []overlap
	// In units of a cell of a division into from·to parts all borders are whole numbers.
	for at := 0; at < from*to; {
		next := min((at/to+1)*to, (at/from+1)*from)
		list = append(list, overlap{at / to, at / from, float64(next-at) / float64(from)})
		at = next
	}
	return list
}
