package scatter

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/lapack/lapack64"
)

// Band is a model solved for one band of light over one floor. It keeps scratch: give every goroutine its
// own.
type Band struct {
	model  *Model
	share  []float64      // radiosity of each part per light caught [1/m]
	root   []float64      // of share
	answer blas64.General // inverse of the balance
	known  []float64      // scratch
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
	b := &Band{model: m, share: make([]float64, m.parts()), known: make([]float64, m.parts())}
	cells := len(m.section.cells)
	for i, out := range m.exchange.out {
		scattered := leaf
		if i >= cells {
			scattered = albedo[i-cells]
		}
		if out > 0 {
			b.share[i] = scattered / out
		}
		b.root = append(b.root, math.Sqrt(b.share[i]))
	}
	balance := b.balance()
	if err := pace(); err != nil {
		return nil, err
	}
	factor, ok := lapack64.Potrf(balance)
	if !ok {
		return nil, fmt.Errorf("scatter: leaves scatter %g of their light and the floor %g: it never ends", leaf, albedo)
	}
	if err := pace(); err != nil {
		return nil, err
	}
	lapack64.Potri(factor)
	b.answer = full(balance)
	return b, pace()
}

// balance is the upper half of the matrix of the balance: caught in the end, less what the others scatter to
// it, is what was caught at first hand. Caught light times the root of its part's share makes the matrix
// symmetric and positive.
func (b *Band) balance() blas64.Symmetric {
	n := len(b.share)
	a := blas64.Symmetric{N: n, Stride: n, Data: make([]float64, n*n), Uplo: blas.Upper}
	for i := range n {
		for j := i; j < n; j++ {
			a.Data[i*n+j] = -b.root[i] * b.model.exchange.between[i*n+j] * b.root[j]
		}
		a.Data[i*n+i]++
	}
	return a
}

// full adds the lower half to a symmetric matrix.
func full(a blas64.Symmetric) blas64.General {
	for i := range a.N {
		for j := range i {
			a.Data[i*a.Stride+j] = a.Data[j*a.Stride+i]
		}
	}
	return blas64.General{Rows: a.N, Cols: a.N, Stride: a.Stride, Data: a.Data}
}

// At finds the light in the end from the light at first hand.
func (b *Band) At(first *Source, into *Solution) {
	m := b.model
	n, cells := m.parts(), len(m.section.cells)
	into.resize(n, cells)
	floats.MulTo(b.known, b.root, first.caught)
	multiply(b.answer, b.known, into.emitted)
	floats.Mul(into.emitted, b.root)
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
