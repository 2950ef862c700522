package render

import (
	"image"
	"math"
	"testing"
)

func (b *box) pixels() image.Rectangle {
	x, y := int(b.x-0.5), int(b.y-0.5)
	return image.Rect(x, y, x+int(b.w+1), y+int(b.h+1))
}

func TestTilesDoNotOverlap(t *testing.T) {
	a := testAtlas()
	var all []image.Rectangle
	for id := range a.tiles {
		if len(a.tiles[id].levels) == 0 {
			t.Fatalf("tile %d has no picture", id)
		}
		for l := range a.tiles[id].levels {
			r := a.tiles[id].levels[l].pixels()
			if !r.In(a.Image.Rect) {
				t.Errorf("tile %d level %d lies outside the atlas", id, l)
			}
			if l > 0 && r.Dx() != a.tiles[id].levels[l-1].pixels().Dx()/2 {
				t.Errorf("tile %d level %d is not half as wide as the one before", id, l)
			}
			for _, other := range all {
				if r.Overlaps(other) {
					t.Errorf("tile %d level %d overlaps another", id, l)
				}
			}
			all = append(all, r)
		}
	}
}

// alphaShare is the mean alpha of a part of the atlas.
func alphaShare(a *Atlas, r image.Rectangle) float64 {
	sum := 0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			sum += int(a.Image.RGBAAt(x, y).A)
		}
	}
	return float64(sum) / 255 / float64(r.Dx()*r.Dy())
}

// Every size of a leaf covers as much of its square as the outline does, so that leaves keep their
// area at any distance.
func TestLeavesKeepTheirAreaInEverySize(t *testing.T) {
	a := testAtlas()
	for i, shape := range a.shape {
		want := float64(shape.area) / math.Pow(2*float64(shape.reach), 2)
		for l := range a.tiles[i].levels {
			if got := alphaShare(a, a.tiles[i].levels[l].pixels()); math.Abs(got-want) > 0.01 {
				t.Errorf("leaf %d level %d covers %.3f of its square, its outline %.3f", i, l, got, want)
			}
		}
		if want < 0.35 || want > 0.75 {
			t.Errorf("leaf %d covers %.2f of its square", i, want)
		}
	}
}

func TestAtlasIsPremultipliedWithSoftMargins(t *testing.T) {
	a := testAtlas()
	between := 0
	for i := 0; i < len(a.Image.Pix); i += 4 {
		p := a.Image.Pix[i : i+4]
		if p[0] > p[3] || p[1] > p[3] || p[2] > p[3] {
			t.Fatalf("texel %d is brighter than its alpha", i/4)
		}
		if p[3] > 0 && p[3] < 255 {
			between++
		}
	}
	if between < 2000 {
		t.Errorf("only %d texels are partly covered", between)
	}
	for id := range tileID(leafShapes) {
		r := a.tiles[id].levels[0].pixels()
		for _, corner := range []image.Point{r.Min, {r.Max.X - 1, r.Min.Y}, {r.Min.X, r.Max.Y - 1}, {r.Max.X - 1, r.Max.Y - 1}} {
			if a.Image.RGBAAt(corner.X, corner.Y).A != 0 {
				t.Errorf("leaf %d reaches the corner %v of its square", id, corner)
			}
		}
	}
}

// A vine leaf has five lobes: five local maxima of the smoothed outline, and a sinus at the petiole.
func TestLeavesHaveFiveLobes(t *testing.T) {
	for i, l := range lobings {
		l.teeth = 0
		s := newLeafShape(l)
		lobes := 1 // the tip
		for k := 1; k < outlineSteps; k++ {
			if s.radius[k] > s.radius[k-1] && s.radius[k] >= s.radius[k+1] {
				lobes += 2
			}
		}
		if lobes != 5 {
			t.Errorf("leaf %d has %d lobes", i, lobes)
		}
		if s.radius[outlineSteps] > 0.1 {
			t.Errorf("leaf %d has no petiole sinus", i)
		}
	}
}

// The level chosen has at least 0.8 texels per pixel and never twice as many as it needs.
func TestLevelFitsTheSize(t *testing.T) {
	tile := &testAtlas().tiles[leafTile]
	for pixels := float32(8); pixels < 250; pixels++ {
		w := tile.level(pixels).w
		if w < 0.8*pixels && w != tile.levels[0].w || w > 1.7*pixels && w != tile.levels[len(tile.levels)-1].w {
			t.Errorf("%g px take the picture of %g texels", pixels, w)
		}
	}
}
