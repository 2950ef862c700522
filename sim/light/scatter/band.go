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
	share  []float64 // radiosity of each part per light caught [1/m]
	root   []float64 // of share
	factor []float64 // of the balance, row after row: its triangle above the diagonal and, mirrored, below it
	known  []float64 // scratch
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
	b.factor = both(factor)
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

// both gives a triangular matrix with its half above the diagonal mirrored below.
func both(a blas64.Triangular) []float64 {
	for i := range a.N {
		for j := range i {
			a.Data[i*a.Stride+j] = a.Data[j*a.Stride+i]
		}
	}
	return a.Data
}

// solve finds what the balance makes known of: down through the mirrored half of its factor, and up through the other. The rows
// of both lie together, which triangular solvers of the library do not make use of in a browser.
func (b *Band) solve(known, into []float64) {
	n := len(known)
	for i := range n {
		row := b.factor[i*n:][:n]
		into[i] = (known[i] - dot(row[:i], into[:i])) / row[i]
	}
	for i := n - 1; i >= 0; i-- {
		row := b.factor[i*n:][:n]
		into[i] = (into[i] - dot(row[i+1:], into[i+1:])) / row[i]
	}
}

// At finds the light in the end from the light at first hand.
func (b *Band) At(first *Source, into *Solution) {
	m := b.model
	n, cells := m.parts(), len(m.section.cells)
	into.resize(n, cells)
	floats.MulTo(b.known, b.root, first.caught)
	b.solve(b.known, into.emitted)
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
