package render

import (
	"image"
	"math"
)

// hash mixes words into one: frozen draws for looks that belong to one thing (SplitMix64, Steele, Lea
// and Flood 2014).
func hash(words ...uint64) uint64 {
	h := uint64(0x9e3779b97f4a7c15)
	for _, w := range words {
		h ^= w + 0x9e3779b97f4a7c15 + h<<6 + h>>2
		h = (h ^ h>>30) * 0xbf58476d1ce4e5b9
		h = (h ^ h>>27) * 0x94d049bb133111eb
		h ^= h >> 31
	}
	return h
}

// hashUnit is a frozen draw, even over 0–1.
func hashUnit(words ...uint64) float64 { return float64(hash(words...)>>11) / (1 << 53) }

// latticeNoise is value noise in 0–1 with one lattice point per unit. It repeats every columns along
// x and every rows along y; each layer is another draw.
func latticeNoise(x, y float64, columns, rows int, layer uint64) float64 {
	x0, y0 := math.Floor(x), math.Floor(y)
	fx, fy := x-x0, y-y0
	fx, fy = fx*fx*(3-2*fx), fy*fy*(3-2*fy)
	at := func(i, j float64) float64 {
		column, row := (int(i)%columns+columns)%columns, (int(j)%rows+rows)%rows
		return hashUnit(uint64(column), uint64(row), layer)
	}
	low := at(x0, y0)*(1-fx) + at(x0+1, y0)*fx
	high := at(x0, y0+1)*(1-fx) + at(x0+1, y0+1)*fx
	return low*(1-fy) + high*fy
}

// drawGroundNoise draws the tile of noise for grass and soil: fine grain in red, blades in green,
// patches in blue. It repeats in both directions.
func drawGroundNoise(pace func() error) (*image.RGBA, error) {
	picture := image.NewRGBA(image.Rect(0, 0, noiseSide, noiseSide))
	octave := func(u, v float64, columns, rows int, layer uint64) float64 {
		return latticeNoise(u*float64(columns), v*float64(rows), columns, rows, layer)
	}
	for y := range noiseSide {
		if err := pace(); err != nil {
			return nil, err
		}
		for x := range noiseSide {
			u, v := float64(x)/noiseSide, float64(y)/noiseSide
			fine := 0.55*octave(u, v, 128, 128, 1) + 0.45*octave(u, v, 64, 64, 2)
			blades := 0.6*octave(u, v, 170, 34, 3) + 0.4*octave(u, v, 40, 80, 4)
			patches := 0.45*octave(u, v, 8, 8, 5) + 0.3*octave(u, v, 16, 16, 6) + 0.25*octave(u, v, 32, 32, 7)
			to := picture.Pix[picture.PixOffset(x, y):]
			to[0], to[1], to[2], to[3] = uint8(fine*255), uint8(blades*255), uint8(patches*255), 255
		}
	}
	return picture, nil
}
