package scatter

import (
	"fmt"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// Band is a model solved for one band of light over one floor.
type Band struct {
	model  *Model
	share  []float64  // radiosity of each part per light caught [1/m]
	answer *mat.Dense // caught by each part in the end, per light caught by each part at first hand
}

// Solution is the light of one instant, all orders of scattering together. Its slices are reused.
type Solution struct {
	Cells  []float64 // caught by the leaves of each cell [W per metre of row]
	Strips []float64 // that falls on each floor strip [W/m² of floor]
	Up     float64   // out into the sky [W per metre of row]

	caught, emitted []float64 // by each part: light [W per metre of row], radiosity [W/m²]
}

// Band solves the model for leaves that scatter a share of the light that they catch, and floor strips of
// the given albedo [0–1]. Pace is called between slices of work; its error abandons it.
func (m *Model) Band(leaf float64, albedo []float64, pace func() error) (*Band, error) {
	if len(albedo) != m.section.strips {
		return nil, fmt.Errorf("scatter: %d albedos for %d floor strips", len(albedo), m.section.strips)
	}
	b := &Band{model: m, share: make([]float64, m.parts())}
	for i := range b.share {
		scattered := leaf
		if i >= len(m.section.cells) {
			scattered = albedo[i-len(m.section.cells)]
		}
		if m.exchange.out[i] > 0 {
			b.share[i] = scattered / m.exchange.out[i]
		}
	}
	var err error
	b.answer, err = inverse(b.system(), pace)
	return b, err
}

// system is the matrix of the balance: caught in the end, less what the others scatter to it, is what was
// caught at first hand.
func (b *Band) system() *mat.Dense {
	n := len(b.share)
	system := mat.NewDense(n, n, nil)
	for i := range n {
		row := system.RawRowView(i)
		floats.SubTo(row, row, b.model.exchange.between[i*n:(i+1)*n])
		floats.Mul(row, b.share)
		row[i]++
	}
	return system
}

// inverse inverts a matrix a few columns at a time.
func inverse(a *mat.Dense, pace func() error) (*mat.Dense, error) {
	const batch = 32
	n, _ := a.Dims()
	var lu mat.LU
	lu.Factorize(a)
	result := mat.NewDense(n, n, nil)
	for first := 0; first < n; first += batch {
		if err := pace(); err != nil {
			return nil, err
		}
		last := min(first+batch, n)
		unit := mat.NewDense(n, last-first, nil)
		for column := range last - first {
			unit.Set(first+column, column, 1)
		}
		if err := lu.SolveTo(unit, false, unit); err != nil {
			return nil, fmt.Errorf("scatter: light that never leaves: %w", err)
		}
		result.Slice(0, n, first, last).(*mat.Dense).Copy(unit)
	}
	return result, pace()
}

// At finds the light in the end from the light at first hand.
func (b *Band) At(first *Source, into *Solution) {
	m := b.model
	n, cells := m.parts(), len(m.section.cells)
	into.resize(n, cells)
	mat.NewVecDense(n, into.caught).MulVec(b.answer, mat.NewVecDense(n, first.caught))
	floats.MulTo(into.emitted, into.caught, b.share)
	floats.ScaleTo(into.Strips, 1/m.stripArea(), into.caught[cells:])
	into.Up = floats.Dot(into.emitted, m.exchange.lost)
}

// resize makes a solution fit the parts.
func (s *Solution) resize(parts, cells int) {
	if len(s.caught) != parts || len(s.Cells) != cells {
		s.caught, s.emitted = make([]float64, parts), make([]float64, parts)
		s.Strips = make([]float64, parts-cells)
		s.Cells = s.caught[:cells]
	}
}

// Add adds the light of another band or instant of the same model.
func (s *Solution) Add(other *Solution) {
	floats.Add(s.caught, other.caught)
	floats.Add(s.emitted, other.emitted)
	floats.Add(s.Strips, other.Strips)
	s.Up += other.Up
}
