package render

import "github.com/go-gl/mathgl/mgl32"

// lightField is how much of the sun's beam comes to each place of the cross-section of the rows, as the mean
// along the row: what the map of the sun, on which every leaf lies, says of it. Above it all is in the sun.
type lightField struct {
	columns, layers int
	share           []float32 // [layer*columns + column]; column 0 at the left edge of the period, layer 0 on the ground
}

const (
	fieldColumns = 96
	fieldLayers  = 56
	fieldSamples = 24 // places along the row for each
	nobody       = -9 // owns nothing on the map of the sun
)

// newLightField is a field in the dark.
func newLightField() *lightField {
	return &lightField{columns: fieldColumns, layers: fieldLayers, share: make([]float32, fieldColumns*fieldLayers)}
}

// fill looks the field up on the map of the sun.
func (f *lightField) fill(m *sunMap, spacing, length, top float32, pace func() error) error {
	for layer := range f.layers {
		if err := pace(); err != nil {
			return err
		}
		z := top * float32(layer) / float32(f.layers-1)
		for column := range f.columns {
			x := spacing * (float32(column)/float32(f.columns) - 0.5)
			f.share[layer*f.columns+column] = m.shareLit(x, z, length, uint64(layer*f.columns+column))
		}
	}
	return nil
}

// shareLit is the share of places along the row that the sun reaches.
func (m *sunMap) shareLit(x, z, length float32, seed uint64) float32 {
	if !m.lit {
		return 0
	}
	start, lit := float32(hashUnit(seed, 41)), 0
	for k := range fieldSamples {
		p := mgl32.Vec3{x, length * (float32(k) + start) / fieldSamples, z}
		if u, v := m.texel(&p); m.reaches(nobody, u, v, z) {
			lit++
		}
	}
	return float32(lit) / fieldSamples
}

// at is the share at a place of the cross-section, read with linear interpolation; rows repeat.
func (f *lightField) at(x, z, spacing, top float32) float32 {
	if z >= top {
		return f.share[(f.layers-1)*f.columns]
	}
	u := (x/spacing + 0.5) * float32(f.columns)
	v := max(z/top, 0) * float32(f.layers-1)
	u0, v0 := floor32(u), floor32(v)
	fu, fv := u-u0, v-v0
	i0, j0 := ((int(u0)%f.columns)+f.columns)%f.columns, min(int(v0), f.layers-1)
	i1, j1 := (i0+1)%f.columns, min(j0+1, f.layers-1)
	low := f.share[j0*f.columns+i0]*(1-fu) + f.share[j0*f.columns+i1]*fu
	high := f.share[j1*f.columns+i0]*(1-fu) + f.share[j1*f.columns+i1]*fu
	return low*(1-fv) + high*fv
}
