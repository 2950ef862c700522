// Package light finds the sunlight on bunch faces and floor strips of a stand: which faces the sun
// reaches at an instant, and how much light comes from sky and floor. It knows no temperature.
package light

import "github.com/go-gl/mathgl/mgl64"

// Broad is light from many directions, kept as its first two Legendre terms: a surface with unit
// outward normal n receives Mean + Vector·n [W/m²]. A uniform upper hemisphere with horizontal
// irradiance E is {E/2, (0, 0, E/2)}. As a view it has no unit and is multiplied by the flux that the
// surroundings send out.
type Broad struct {
	Mean   float64
	Vector mgl64.Vec3
}

// On is the flux on a surface with the given outward normal.
func (b *Broad) On(normal *mgl64.Vec3) float64 {
	return b.Mean + (b.Vector[0]*normal[0] + b.Vector[1]*normal[1] + b.Vector[2]*normal[2])
}

// Times scales a field.
func (b Broad) Times(factor float64) Broad { return Broad{b.Mean * factor, b.Vector.Mul(factor)} }

// Plus is the sum of two fields.
func (b Broad) Plus(other Broad) Broad { return Broad{b.Mean + other.Mean, b.Vector.Add(other.Vector)} }

// SetScaled makes a field another one times a factor. In place, since browsers copy arrays number by number.
func (b *Broad) SetScaled(other *Broad, factor float64) {
	b.Mean = other.Mean * factor
	b.Vector[0] = other.Vector[0] * factor
	b.Vector[1] = other.Vector[1] * factor
	b.Vector[2] = other.Vector[2] * factor
}

// AddScaled adds another field times a factor.
func (b *Broad) AddScaled(other *Broad, factor float64) {
	b.Mean += other.Mean * factor
	b.Vector[0] += other.Vector[0] * factor
	b.Vector[1] += other.Vector[1] * factor
	b.Vector[2] += other.Vector[2] * factor
}

// broadOf is radiance of unit hemispherical flux from a small solid angle [sr] around a direction.
func broadOf(direction mgl64.Vec3, weight float64) (b Broad) {
	b.add(direction, weight)
	return b
}

// add adds radiance of unit hemispherical flux from a small solid angle [sr] around a direction:
// the first terms of max(0, n·d) are 1/4 and (n·d)/2.
func (b *Broad) add(direction mgl64.Vec3, weight float64) {
	const pi = 3.141592653589793
	b.Mean += weight / (4 * pi)
	b.Vector = b.Vector.Add(direction.Mul(weight / (2 * pi)))
}

// AddOf adds fields, each times its own factor.
func (b *Broad) AddOf(fields []Broad, factors []float64) {
	// Four at a time: in a browser the way back to the start of a loop costs as much as a field.
	mean, x, y, z := b.Mean, b.Vector[0], b.Vector[1], b.Vector[2]
	for len(fields) >= 4 && len(factors) >= 4 {
		p, q, r, s := factors[0], factors[1], factors[2], factors[3]
		f, g, h, i := &fields[0], &fields[1], &fields[2], &fields[3]
		mean += f.Mean*p + g.Mean*q + h.Mean*r + i.Mean*s
		x += f.Vector[0]*p + g.Vector[0]*q + h.Vector[0]*r + i.Vector[0]*s
		y += f.Vector[1]*p + g.Vector[1]*q + h.Vector[1]*r + i.Vector[1]*s
		z += f.Vector[2]*p + g.Vector[2]*q + h.Vector[2]*r + i.Vector[2]*s
		fields, factors = fields[4:], factors[4:]
	}
	b.Mean, b.Vector = mean, mgl64.Vec3{x, y, z}
	for i := range fields {
		b.AddScaled(&fields[i], factors[i])
	}
}
