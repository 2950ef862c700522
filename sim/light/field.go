package light

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/internal/draw"
)

// waves is the number of cosines in the field. Their sum is then normal to 0.002 in probability
// (its excess kurtosis is -1.5/waves).
const waves = 32

// Field is a random field frozen on the dome of each face: a number in 0–1, uniform over faces at any
// one direction and correlated over the angles that leaves span. A face is lit where its field is less
// than the gap probability, so that the share of lit faces is the gap and lit spells are contiguous as
// the sun moves. It is a sum of cosines with random wave vectors and a phase per face and wave
// (spectral method of Shinozuka & Deodatis 1991 for a mixture of Gaussian covariances).
type Field struct {
	wave     [waves]mgl64.Vec3
	cos, sin []float64 // of the phases [face*waves + wave]
}

// What the draws of a field decide.
const (
	phaseOf draw.Purpose = iota
	waveOf
)

// NewField freezes the fields of faces with the given sources, every wave with a correlation angle of its
// own [rad]. The same
// source gives the same field, whatever other faces there are.
func NewField(shared draw.Source, faces []draw.Source, angles [waves]float64) *Field {
	f := &Field{cos: make([]float64, len(faces)*waves), sin: make([]float64, len(faces)*waves)}
	for k := range waves {
		for axis := range 3 {
			f.wave[k][axis] = shared.Of(k).Normal(waveOf+draw.Purpose(axis)) / angles[k]
		}
	}
	for i, face := range faces {
		for k := range waves {
			phase := 2 * math.Pi * face.Of(k).Uniform(phaseOf)
			f.sin[i*waves+k], f.cos[i*waves+k] = math.Sincos(phase)
		}
	}
	return f
}

// At prepares the field at a direction for all faces.
func (f *Field) At(d mgl64.Vec3) FieldAt {
	at := FieldAt{field: f}
	for k, wave := range f.wave {
		at.sin[k], at.cos[k] = math.Sincos(wave.Dot(d))
	}
	return at
}

// FieldAt is a field at one direction.
type FieldAt struct {
	field    *Field
	cos, sin [waves]float64
}

// Of is the value of one face [0–1].
func (a *FieldAt) Of(face int) float64 {
	cos, sin := a.field.cos[face*waves:(face+1)*waves], a.field.sin[face*waves:(face+1)*waves]
	sum := 0.0
	for k := range waves {
		sum += a.cos[k]*cos[k] - a.sin[k]*sin[k]
	}
	return 0.5 * math.Erfc(-sum*math.Sqrt(2.0/waves)/math.Sqrt2)
}
