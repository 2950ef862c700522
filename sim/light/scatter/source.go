package scatter

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
	"gonum.org/v1/gonum/floats"

	"rowlight/sim/internal/exp"
)

// Source is light that leaves and floor catch at first hand [W per metre of row], the leaf cells followed by
// the floor strips.
type Source struct{ caught []float64 }

// Total is all light that comes in [W per metre of row].
func (s *Source) Total() float64 { return floats.Sum(s.caught) }

// Floor is the light that reaches the floor at first hand [W per metre of row].
func (s *Source) Floor(m *Model) float64 { return floats.Sum(s.caught[len(m.section.cells):]) }

// Strips is the light that reaches each floor strip at first hand [W/m² of floor].
func (s *Source) Strips(m *Model) []float64 {
	strips := slices.Clone(s.caught[len(m.section.cells):])
	floats.Scale(1/m.stripArea(), strips)
	return strips
}

// reset makes a source dark.
func (s *Source) reset(parts int) {
	if len(s.caught) != parts {
		s.caught = make([]float64, parts)
	}
	clear(s.caught)
}

// Mix is the sum of two sources, each times a flux.
func (s *Source) Mix(a *Source, fluxA float64, b *Source, fluxB float64) {
	s.reset(len(a.caught))
	floats.AddScaled(s.caught, fluxA, a.caught)
	floats.AddScaled(s.caught, fluxB, b.caught)
}

// Sky is the light of a uniform sky of unit horizontal irradiance [W/m²].
func (m *Model) Sky() *Source { return &Source{m.exchange.sky} }

// lowest is the least sine of the height of a beam within the section: lower beams, which carry next to no
// light to the ground, go the way of one that high, since theirs has no end.
const lowest = 0.01

// Beam is the light of a sun of unit irradiance normal to its rays [W/m²], toward which the unit vector of
// the row frame points. A sun below the horizon or behind the slope gives none.
func (m *Model) Beam(sun mgl64.Vec3, into *Source) {
	into.reset(m.parts())
	slope := m.section.Slope
	rise := sun[2] - slope.Across*sun[0] - slope.Along*sun[1]
	within := math.Hypot(sun[0], rise)
	if sun[2] <= 0 || rise <= 0 {
		return
	}
	m.tracks.lay(m.section, sun[0], math.Max(rise, lowest*within), m.spacing, m.section.strips)
	clear(m.depths)
	m.section.toward(sun, 1/within, m.depths)
	first := 0
	for k, end := range m.tracks.ends {
		left := m.tracks.gap * rise
		for _, step := range m.tracks.steps[first:end] {
			passed := left * exp.Of(-m.depths[step.cell]*step.length)
			into.caught[step.cell] += left - passed
			left = passed
		}
		m.section.land(into.caught, m.tracks.strips[k], left)
		first = end
	}
}
