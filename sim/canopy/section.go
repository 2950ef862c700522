package canopy

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/exp"
)

// Section is a canopy averaged along the row: cells of a cross-section, periodic across the rows, with
// heights measured from the sloping ground. Values of cells lie at [layer*Columns + column], column 0 at
// x = -Width/2.
type Section struct {
	Columns, Layers int
	Width, Height   float64 // of the whole section [m]
	Slope           Slope
	Density         []float64 // mean leaf area density [m²/m³]
}

// Section averages the grid along the row into columns × layers cells.
func (g *Grid) Section(columns, layers int) Section {
	return Section{
		Columns: columns, Layers: layers, Width: g.Width(), Height: g.Height(), Slope: g.slope,
		Density: g.gather(columns, layers, func(ix, iz int) float64 {
			sum := 0.0
			for _, a := range g.density[g.index(ix, 0, iz):][:g.ny] {
				sum += float64(a)
			}
			return sum / float64(g.ny)
		}),
	}
}

// As is Toward for leaves that show a direction what p says, whatever blades the grid holds.
func (t *Thickness) As(p *Projection, d mgl64.Vec3) {
	projection, ny := float32(p.G(d)), t.grid.ny
	for cell, a := range t.grid.density {
		at := cell + cell/ny*ny
		t.cells[at], t.cells[at+ny] = a*projection, a*projection
	}
}

// Section is the optical depth per length [1/m] that, even along the row, stops as much light on a path of
// the given length [m] as the uneven leaves do times clumping: at most their mean, and equal to it where
// the canopy is even. Length times clumping must be above zero.
func (t *Thickness) Section(columns, layers int, length, clumping float64) []float64 {
	g, chord := t.grid, length*clumping
	section := g.gather(columns, layers, func(ix, iz int) float64 {
		sum := 0.0
		for _, depth := range t.run(ix, iz) {
			if depth == 0 {
				sum++
				continue
			}
			sum += exp.Of(-chord * float64(depth))
		}
		return sum / float64(g.ny)
	})
	for cell, gap := range section {
		section[cell] = math.Max(-math.Log(gap), 0) / length
	}
	return section
}

// Columns is, for each column of a section, the optical depth that, even along the row, stops as much light
// as the uneven leaves do on whole verticals, along which gaps between shoots go on from top to bottom.
// The thickness must be toward the vertical.
func (t *Thickness) Columns(columns int, clumping float64) []float64 {
	g := t.grid
	return g.pierce(overlaps(g.nx, columns), columns, g.nz, t.run, g.dz*clumping)
}

// Layers is, for each layer of a section, the optical depth that, even along the row, stops as much light as
// the uneven leaves do on level ways across one row. The thickness must be toward the x axis.
func (t *Thickness) Layers(layers int, clumping float64) []float64 {
	g := t.grid
	return g.pierce(overlaps(g.nz, layers), layers, g.nx, func(iz, ix int) []float32 { return t.run(ix, iz) }, g.dx*clumping)
}

// pierce finds the even optical depth of so many parallel sheets along the row, each pierced by ways through
// a number of cells of a length.
func (g *Grid) pierce(sheets []overlap, count, cells int, run func(sheet, cell int) []float32, length float64) []float64 {
	depths, least := make([]float64, len(sheets)*g.ny), make([]float64, count)
	for i := range least {
		least[i] = math.Inf(1)
	}
	for k, sheet := range sheets {
		row := depths[k*g.ny:][:g.ny]
		for cell := range cells {
			for iy, depth := range run(sheet.from, cell) {
				row[iy] += float64(depth) * length
			}
		}
		least[sheet.to] = min(least[sheet.to], slices.Min(row))
	}
	// Gaps beyond the least depth: those of a thick canopy are too small for a number.
	gaps := make([]float64, count)
	for k, depth := range depths {
		sheet := sheets[k/g.ny]
		gaps[sheet.to] += sheet.share * exp.Of(least[sheet.to]-depth) / float64(g.ny)
	}
	for i, gap := range gaps {
		gaps[i] = math.Max(least[i]-math.Log(gap), 0)
	}
	return gaps
}

// run is the thickness along the row at one place of the cross-section.
func (t *Thickness) run(ix, iz int) []float32 {
	return t.cells[2*t.grid.index(ix, 0, iz):][:t.grid.ny]
}

// gather averages a value of the places of the grid's cross-section over columns × layers cells.
func (g *Grid) gather(columns, layers int, value func(ix, iz int) float64) []float64 {
	values := make([]float64, g.nx*g.nz)
	for place := range values {
		values[place] = value(place%g.nx, place/g.nx)
	}
	cells := make([]float64, columns*layers)
	across := overlaps(g.nx, columns)
	for _, z := range overlaps(g.nz, layers) {
		for _, x := range across {
			cells[z.to*columns+x.to] += x.share * z.share * values[z.from*g.nx+x.from]
		}
	}
	return cells
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
