package render

import (
	"image"
	"image/color"
	"math"
	"os"
	"regexp"
	"strconv"
	"testing"

	"github.com/go-gl/mathgl/mgl32"
)

func plainAtlas(c color.RGBA) *image.RGBA {
	a := image.NewRGBA(image.Rect(0, 0, 8, 8))
	for i := 0; i < len(a.Pix); i += 4 {
		a.Pix[i], a.Pix[i+1], a.Pix[i+2], a.Pix[i+3] = c.R, c.G, c.B, c.A
	}
	return a
}

func quadAt(x, y, w, h, alpha float32) [4]Vertex {
	v := func(i, j float32) Vertex {
		return Vertex{X: x + i*w, Y: y + j*h, U: 1 + 6*i, V: 1 + 6*j, R: 1, G: 1, B: 1, A: alpha}
	}
	return [4]Vertex{v(0, 0), v(1, 0), v(0, 1), v(1, 1)}
}

// The two triangles of a half transparent quad meet without a seam, and neighbouring quads as well.
func TestQuadsMeetWithoutSeams(t *testing.T) {
	picture := image.NewRGBA(image.Rect(0, 0, 40, 30))
	atlas := plainAtlas(color.RGBA{200, 100, 50, 255})
	paintQuad(picture, atlas, quadAt(2, 3, 14, 20, 0.5))
	paintQuad(picture, atlas, quadAt(16, 3, 14, 20, 0.5))
	want := color.RGBA{100, 50, 25, 128}
	for y := range 30 {
		for x := range 40 {
			inside := x >= 2 && x < 30 && y >= 3 && y < 23
			got := picture.RGBAAt(x, y)
			if !inside && got != (color.RGBA{}) {
				t.Fatalf("pixel %d, %d outside is %v", x, y, got)
			}
			if inside && (math.Abs(float64(got.R)-float64(want.R)) > 1 || math.Abs(float64(got.A)-float64(want.A)) > 1) {
				t.Fatalf("pixel %d, %d is %v, want %v", x, y, got, want)
			}
		}
	}
}

// Covering with premultiplied alpha: a half red over blue.
func TestBlendCovers(t *testing.T) {
	picture := plainAtlas(color.RGBA{0, 0, 255, 255})
	paintQuad(picture, plainAtlas(color.RGBA{255, 0, 0, 255}), quadAt(0, 0, 8, 8, 0.5))
	if got := picture.RGBAAt(3, 5); got.R < 127 || got.R > 128 || got.B < 127 || got.B > 128 || got.A != 255 {
		t.Errorf("half red over blue is %v", got)
	}
}

// The texture stands upright: its upper left texel comes to the first corner.
func TestTextureOrientation(t *testing.T) {
	atlas := plainAtlas(color.RGBA{10, 10, 10, 255})
	for j := range 4 {
		for i := range 4 {
			atlas.SetRGBA(i, j, color.RGBA{250, 250, 250, 255})
		}
	}
	picture := image.NewRGBA(image.Rect(0, 0, 20, 20))
	paintQuad(picture, atlas, quadAt(0, 0, 20, 20, 1))
	if picture.RGBAAt(4, 4).R < 200 || picture.RGBAAt(15, 4).R > 60 || picture.RGBAAt(4, 15).R > 60 {
		t.Error("the texture is turned or mirrored")
	}
}

func TestPaintFillsThePane(t *testing.T) {
	s := smallScene(t, afternoon)
	picture := s.Paint(DefaultCamera(s.planting.Stand, 0, 36), 160, 96, 3000)
	greens, skies := 0, 0
	for y := range 96 {
		for x := range 160 {
			c := picture.RGBAAt(x, y)
			if c.A != 255 {
				t.Fatalf("pixel %d, %d is not opaque: %v", x, y, c)
			}
			if int(c.G) > int(c.R)+10 && int(c.G) > int(c.B)+10 {
				greens++
			}
			if c.B > c.R && c.B > 120 {
				skies++
			}
		}
	}
	if greens < 160*96/5 || skies < 160*96/50 {
		t.Errorf("%d green and %d sky pixels", greens, skies)
	}
}

// The sun stands in the picture where it stands in the sky.
func TestSunIsSeenAtItsPlace(t *testing.T) {
	now := Instant{SunAzimuth_deg: 240, SunElevation_deg: 12, DNI_Wm2: 700, DHI_Wm2: 80}
	s := smallScene(t, now)
	view := NewView(Camera{Azimuth_deg: 60, Elevation_deg: -5, Distance_m: 3, TargetZ_m: 1.2}, s.planting.Stand, 0, testPane)
	b := s.Backdrop(&view)
	x, y, _ := view.Project(view.Eye.Add(s.light.sun.Mul(1000)))
	if at := b.at(view.Ray(x, y)); min(at[0], at[1], at[2]) < 0.97 {
		t.Errorf("the middle of the sun is %v", at)
	}
	if beside := b.at(view.Ray(x+120, y-60)); min(beside[0], beside[1], beside[2]) > 0.93 {
		t.Errorf("the sky beside the sun is as bright as the sun: %v", beside)
	}
}

// Ground in the sun is brighter than ground in the shade of the rows.
func TestGroundShowsTheShadows(t *testing.T) {
	s := smallScene(t, afternoon)
	view := NewView(Camera{Azimuth_deg: 200, Elevation_deg: 60, Distance_m: 6, TargetZ_m: 0}, s.planting.Stand, 0, testPane)
	b := s.Backdrop(&view)
	var lit, shaded, lits, shadeds float32
	for i := range 4000 {
		x, y := float32(hashUnit(uint64(i), 1))*2.4, float32(hashUnit(uint64(i), 2))*2
		light := b.groundAt(x, y, 0.01).luminance()
		if share, _ := b.shadow(x, y, 0.01); share > 0.95 {
			lit, lits = lit+light, lits+1
		} else if share < 0.05 {
			shaded, shadeds = shaded+light, shadeds+1
		}
	}
	if lits < 100 || shadeds < 100 || lit/lits < 2*shaded/shadeds {
		t.Errorf("%g places in the sun at %g, %g in the shade at %g", lits, lit/lits, shadeds, shaded/shadeds)
	}
}

func TestBackdropIsFiniteEverywhere(t *testing.T) {
	for _, now := range []Instant{afternoon, {SunElevation_deg: -30}, {SunElevation_deg: 0.01, DNI_Wm2: 5, DHI_Wm2: 1}} {
		s := smallScene(t, now)
		view := NewView(Camera{Azimuth_deg: 10, Elevation_deg: 2, Distance_m: 3, TargetZ_m: 1}, s.planting.Stand, 0, testPane)
		b := s.Backdrop(&view)
		for _, ray := range []mgl32.Vec3{{1, 0, 0}, {1, 0, -1e-7}, {1, 1, -1e-3}, {0, 0, -1}, {0, 0, 1}, {0.3, 1, 0.001}, view.Ray(380, 230)} {
			c := b.at(ray)
			for k := range 3 {
				if !(c[k] >= 0 && c[k] <= 1) {
					t.Errorf("%+v: along %v the colour is %v", now, ray, c)
				}
			}
		}
	}
}

// The shader writes the numbers of this package a second time.
func TestShaderHasTheSameNumbers(t *testing.T) {
	source, err := os.ReadFile("screen/backdrop.kage")
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]float64{
		"fineTile": fineTile_m, "patchTile": patchTile_m, "farRowsOver": farRowsOver_m,
		"hazeDepth": hazeDepth_m, "discBrightest": discBrightest,
		"mapAlong": mapAlong, "mapAcross": mapAcross, "noiseSide": noiseSide, "noiseX": noiseX, "noiseY": noiseY,
		"lastLevel": groundLevels - 1, "displayGamma": displayGamma,
	} {
		found := regexp.MustCompile(`(?m)^const ` + name + ` = ([0-9.]+)$`).FindSubmatch(source)
		if found == nil {
			t.Errorf("the shader has no constant %s", name)
			continue
		}
		if got, err := strconv.ParseFloat(string(found[1]), 64); err != nil || got != want {
			t.Errorf("%s is %s in the shader, %g here", name, found[1], want)
		}
	}
}
