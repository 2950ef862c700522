package scatter

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// Band is a model solved for one band of light over one floor. It keeps scratch: give every goroutine its own.
type Band struct {
	model       *Model
	share       []float64     // radiosity of each part per light caught [1/m]
	root        []float64     // of share
	answer      *mat.Dense    // inverse of the balance of root · caught, which is symmetric
	first, last *mat.VecDense // scratch
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
	n, cells := m.parts(), len(m.section.cells)
	b := &Band{model: m, share: make([]float64, n), root: make([]float64, n), first: mat.NewVecDense(n, nil), last: mat.NewVecDense(n, nil)}
	for i, out := range m.exchange.out {
		scattered := leaf
		if i >= cells {
			scattered = albedo[i-cells]
		}
		if out > 0 {
			b.share[i] = scattered / out
			b.root[i] = math.Sqrt(b.share[i])
		}
	}
	if err := pace(); err != nil {
		return nil, err
	}
	var factors mat.Cholesky
	if !factors.Factorize(b.balance()) {
		return nil, fmt.Errorf("scatter: leaves scatter %g of their light, the floor %g: light does not end", leaf, albedo)
	}
	if err := pace(); err != nil {
		return nil, err
	}
	var inverse mat.SymDense
	if err := factors.InverseTo(&inverse); err != nil {
		return nil, fmt.Errorf("scatter: %w", err)
	}
	b.answer = mat.DenseCopyOf(&inverse)
	return b, pace()
}

// balance is the matrix of the balance: caught in the end, less what the others scatter to it, is what was caught at first
// hand. Both sides are multiplied by the root of the share, which makes it symmetric and positive.
func (b *Band) balance() *mat.SymDense {
	n := len(b.share)
	balance := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			balance.SetSym(i, j, -b.root[i]*b.model.exchange.between[i*n+j]*b.root[j])
		}
		balance.SetSym(i, i, 1+balance.At(i, i))
	}
	return balance
}

// At finds the light in the end from the light at first hand.
func (b *Band) At(first *Source, into *Solution) {
	m := b.model
	n, cells := m.parts(), len(m.section.cells)
	into.resize(n, cells)
	floats.MulTo(b.first.RawVector().Data, b.root, first.caught)
	b.last.MulVec(b.answer, b.first)
	floats.MulTo(into.emitted, b.root, b.last.RawVector().Data)
	for i, share := range b.share {
		if share > 0 {
			into.caught[i] = into.emitted[i] / share
			continue
		}
		into.caught[i] = first.caught[i] + floats.Dot(m.exchange.between[i*n:(i+1)*n], into.emitted)
	}
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
