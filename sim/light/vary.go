package light

import (
	"cmp"
	"slices"
)

// Every is the model of every n-th bunch alone, both faces of it, with the light that they have in m; n ≥ 1.
func (m *Model) Every(n int) *Model {
	var kept []int
	for f := range m.Faces {
		if f/2%n == 0 {
			kept = append(kept, f)
		}
	}
	return m.only(kept)
}

// Typical is the model of one in n faces of either side, n ≥ 1, with the light that they have in m: each stands for n that
// see about as much of the sky, from the most hidden to the most open. Faces of the two sides take turns as in m, but the two
// of a pair belong to bunches of their own.
func (m *Model) Typical(n int) *Model {
	sides := [2][]int{}
	for f := range m.Faces {
		sides[f%2] = append(sides[f%2], f)
	}
	count := max(len(sides[0])/n, 1)
	kept := make([]int, 2*count)
	for side, faces := range sides {
		slices.SortStableFunc(faces, func(a, b int) int { return cmp.Compare(m.sky[a].Mean, m.sky[b].Mean) })
		for k := range count {
			kept[2*k+side] = faces[(2*k+1)*len(faces)/(2*count)]
		}
	}
	return m.only(kept)
}

// only is the model of some faces.
func (m *Model) only(kept []int) *Model {
	few := *m
	few.domes, few.down = m.domes.Only(kept), m.down.Only(kept)
	few.Faces, few.bunches, few.edge = pick(m.Faces, kept, 1), pick(m.bunches, kept, 1), pick(m.edge, kept, 1)
	few.sky, few.own, few.ground = pick(m.sky, kept, 1), pick(m.own, kept, 1), pick(m.ground, kept, m.Strips)
	few.netted = m.netted.every(kept, m.Strips)
	few.field = &Field{wave: m.field.wave, cos: pick(m.field.cos, kept, waves), sin: pick(m.field.sin, kept, waves)}
	return &few
}

// pick is the rows of a table, each so many values long, that are kept.
func pick[V any](values []V, kept []int, each int) []V {
	few := make([]V, 0, len(kept)*each)
	for _, row := range kept {
		few = append(few, values[row*each:(row+1)*each]...)
	}
	return few
}

// Thicker is the model with the optical depth of all leaves times a factor ≥ 0, whether by their area or by
// their clumping. Pace is as for New.
func (m *Model) Thicker(factor float64, pace func() error) (*Model, error) {
	other := *m
	other.factor *= factor
	if err := other.viewSky(pace); err != nil {
		return nil, err
	}
	other.viewGround()
	if m.netted != nil {
		if err := other.viewNets(pace); err != nil {
			return nil, err
		}
	}
	return &other, pace()
}

// Reseeded is the model with the light field that another seed freezes on the same faces.
func (m *Model) Reseeded(seed int) *Model {
	other := *m
	other.field = m.fieldOf(seed)
	return &other
}

// Between are models of the same faces by the factor on their optical depth, between which others are found.
type Between struct {
	Factors [3]float64 // rising
	Models  [3]*Model
}

// NewBetween prepares the models between a least factor of 0 to 1 on the optical depth of m and a largest one over 1:
// the middle one is m.
func NewBetween(m *Model, least, largest float64, pace func() error) (*Between, error) {
	b := &Between{Factors: [3]float64{least, 1, largest}, Models: [3]*Model{1: m}}
	var err error
	for _, i := range []int{0, 2} {
		if b.Models[i], err = m.Thicker(b.Factors[i], pace); err != nil {
			return nil, err
		}
	}
	return b, nil
}

// Weights are those of the three models at a factor: the parabola through them.
func (b *Between) Weights(factor float64) (w [3]float64) {
	for i, at := range b.Factors {
		w[i] = 1
		for j, other := range b.Factors {
			if j != i {
				w[i] *= (factor - other) / (at - other)
			}
		}
	}
	return w
}

// At is the model at a factor: its sun is exact, its views of sky and floor lie on the parabola.
func (b *Between) At(factor float64) *Model {
	w, model := b.Weights(factor), *b.Models[0]
	model.factor *= factor / b.Factors[0]
	model.sky, model.ground = make([]Broad, len(model.sky)), make([]Broad, len(model.ground))
	for i, m := range b.Models {
		for f := range model.sky {
			model.sky[f].AddScaled(&m.sky[f], w[i])
		}
		for f := range model.ground {
			model.ground[f].AddScaled(&m.ground[f], w[i])
		}
	}
	model.netted = mixed(b.Models[:], w[:])
	return &model
}
