package light

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/exp"
)

// Sky is the light of one instant, in the row frame.
type Sky struct {
	Sun     mgl64.Vec3 // unit vector to the sun
	Beam    float64    // normal to the sun: direct and circumsolar [W/m²]
	Diffuse float64    // the rest of the sky light, taken as uniform, on the horizontal [W/m²]
}

// Instant is the light on all faces at one instant. Its slices are reused.
type Instant struct {
	Lit     []bool    // whether the sun reaches the face
	Short   []Broad   // light of the even sky on the face, and of nets that glow [W/m²]
	Through []float64 // share of the beam that nets leave each face; nil without nets
}

// Share is how much of the beam a face meets where it is lit [0–1].
func (i *Instant) Share(face int) float64 {
	if i.Through == nil {
		return 1
	}
	return i.Through[face]
}

// At finds the light of sun and sky at an instant; what leaves and floor scatter is package scatter's. A face is lit
// when its bunch does not shade it and its frozen field lies below the gap probability toward the sun; lit
// faces meet the full beam, less what nets stop.
func (m *Model) At(sky Sky, into *Instant) {
	if len(into.Lit) != len(m.Faces) {
		into.Lit, into.Short = make([]bool, len(m.Faces)), make([]Broad, len(m.Faces))
	}
	views := m.skyLight()
	for f := range m.Faces {
		into.Short[f].SetScaled(&views[f], sky.Diffuse)
	}
	m.lightFaces(sky, into.Lit)
	m.Past(sky.Sun, into)
	m.glow(sky, into.Short)
}

// LitBy finds which faces the sun reaches and what nets leave them of it, and leaves all other light of an instant as
// it is.
func (m *Model) LitBy(sky Sky, into *Instant) {
	m.lightFaces(sky, into.Lit)
	m.Past(sky.Sun, into)
}

// lightFaces decides which faces are lit.
func (m *Model) lightFaces(sky Sky, lit []bool) {
	clear(lit)
	if sky.Beam <= 0 {
		return
	}
	m.towardSun(sky.Sun, func(f int, field, depth float64) { lit[f] = field < exp.Of(-depth) })
}

// Thresholds are the factors on the optical depth of m below which the sun lights each face: 0 where none does.
func (m *Model) Thresholds(toSun mgl64.Vec3, into []float64) {
	clear(into)
	m.towardSun(toSun, func(f int, field, depth float64) { into[f] = -math.Log(field) / depth })
}

// towardSun goes through the faces that their own bunch does not hide from the sun, with the value of their field
// and the optical depth of the leaves before them.
func (m *Model) towardSun(toSun mgl64.Vec3, do func(face int, field, depth float64)) {
	if toSun.Dot(m.up) <= 0 {
		return
	}
	for side, mirrored := range [2]bool{true, false} {
		local := m.domes.Points[side].InFrame(toSun)
		if m.domes.Points[side].Mirrored != mirrored {
			panic("light: faces must come in pairs, left before right")
		}
		sample, ok := m.domes.Lattice.Sample(local)
		if !ok {
			continue
		}
		field, omega, shift := m.field.At(local), m.omega(side, local), m.shiftToward(local)
		for f := side; f < len(m.Faces); f += 2 {
			if local[0] > m.edge[f] {
				do(f, field.Of(f), omega*shift.of(f, m.domes.Along(f, &sample)))
			}
		}
	}
}

// Views of a face for longwave, as shares of the flux that each part of the surroundings sends out.
// Sky, ground, own bunch and leaves together make {1, 0}.
func (m *Model) Views(face int) (sky, ground, own, leaves Broad) {
	sky, own = m.sky[face], m.own[face]
	for _, strip := range m.ground[face*m.Strips : (face+1)*m.Strips] {
		ground = ground.Plus(strip)
	}
	leaves = Broad{Mean: 1}.Plus(sky.Times(-1)).Plus(ground.Times(-1)).Plus(own.Times(-1))
	return sky, ground, own, leaves
}
