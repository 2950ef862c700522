package render

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl32"
	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/training"
)

// oneLeaf is a stand with a single level leaf of 100 cm² at a place.
func oneLeaf(x, y, z float64) *training.Stand {
	return &training.Stand{RowSpacing: 2.4, VineSpacing: 1, Length: 2, Top: 2, Leaves: []training.Leaf{
		{Centre: mgl64.Vec3{x, y, z}, Normal: mgl64.Vec3{0, 0, 1}, Tip: mgl64.Vec3{0, 1, 0}, Area: 0.01},
	}}
}

// shadowOf gives the area [m²] of all shadows and their mean place, for shadows that do not cross the
// edges of the map.
func shadowOf(s *Scene) (area, x, y float64) {
	stand := s.planting.Stand
	m := s.sunMap
	for v := range m.across {
		for u := range m.along {
			if m.owner[v*m.along+u] != noOwner {
				area++
				x += (float64(v) + 0.5) / float64(m.across) * stand.RowSpacing
				y += (float64(u) + 0.5) / float64(m.along) * stand.Length
			}
		}
	}
	return area * stand.RowSpacing * stand.Length / float64(m.across*m.along), x / area, y / area
}

// A level leaf throws a shadow of its own area, at its height times the cotangent of the sun's
// elevation away from the sun.
func TestShadowOfOneLeaf(t *testing.T) {
	for _, elevation := range []float64{22, 45, 80} {
		for _, azimuth := range []float64{270, 300} { // from the west and the north-west
			stand := oneLeaf(0.4, 1.0, 0.5)
			s := NewScene(Planting{Stand: stand}, testAtlas(), Instant{SunAzimuth_deg: azimuth, SunElevation_deg: elevation, DNI_Wm2: 800})
			away := 0.5 / math.Tan(elevation*math.Pi/180)
			sin, cos := math.Sincos(azimuth * math.Pi / 180)
			area, x, y := shadowOf(s)
			if math.Abs(area-0.01) > 0.0008 { // a few texels of 1 cm
				t.Errorf("sun at %g°: a leaf of 100 cm² shades %.1f cm²", elevation, area*1e4)
			}
			if math.Abs(x-(0.4-away*sin)) > 0.012 || math.Abs(y-(1-away*cos)) > 0.012 {
				t.Errorf("sun at %g° from %g°: shadow at %.3f, %.3f, want %.3f, %.3f", elevation, azimuth, x, y, 0.4-away*sin, 1-away*cos)
			}
		}
	}
}

// What leaves the map on one edge comes in on the other.
func TestShadowsRepeatWithTheRows(t *testing.T) {
	sun := Instant{SunAzimuth_deg: 270, SunElevation_deg: 30, DNI_Wm2: 800}
	inside := NewScene(Planting{Stand: oneLeaf(0.4, 1, 0.5)}, testAtlas(), sun)
	beyond := NewScene(Planting{Stand: oneLeaf(0.4+2.4, 1-2, 0.5)}, testAtlas(), sun)
	differing := 0
	for i := range inside.sunMap.owner {
		if inside.sunMap.owner[i] != beyond.sunMap.owner[i] {
			differing++
		}
	}
	if differing > 4 {
		t.Errorf("%d texels differ after a move by one row and one period", differing)
	}
}

func TestUpperLeafShadesTheLowerOne(t *testing.T) {
	stand := oneLeaf(0.4, 1, 0.5)
	upper := stand.Leaves[0]
	upper.Centre[2], upper.Area = 0.8, 0.04
	stand.Leaves = append(stand.Leaves, upper)
	s := NewScene(Planting{Stand: stand}, testAtlas(), Instant{SunElevation_deg: 89.9, DNI_Wm2: 800})
	for i := range s.leaves.leaf {
		lit := s.leafColour[i].lit
		want := float32(0)
		if s.leaves.leaf[i].centre[2] > 0.6 {
			want = 1
		}
		if lit != [4]float32{want, want, want, want} {
			t.Errorf("the leaf at %g m is lit %v", s.leaves.leaf[i].centre[2], lit)
		}
	}
}

// Mirroring rows and sun mirrors the shadows on the ground.
func TestShadowsMirrorWithTheSun(t *testing.T) {
	atlas := testAtlas()
	west := NewScene(Planting{Stand: smallStand()}, atlas, Instant{SunAzimuth_deg: 250, SunElevation_deg: 35, DNI_Wm2: 800, DHI_Wm2: 100})
	east := NewScene(Planting{Stand: mirrored(smallStand())}, atlas, Instant{SunAzimuth_deg: 110, SunElevation_deg: 35, DNI_Wm2: 800, DHI_Wm2: 100})
	differing, shaded := 0, 0
	for v := range mapAcross {
		for u := range mapAlong {
			a := west.ground.pixels.RGBAAt(u, v).R
			b := east.ground.pixels.RGBAAt(u, mapAcross-1-v).R
			if a < 128 {
				shaded++
			}
			if (a < 128) != (b < 128) {
				differing++
			}
		}
	}
	// The leaf shapes are drawn by number and not mirrored, so margins differ.
	if shaded < mapAlong*mapAcross/5 || differing > shaded/12 {
		t.Errorf("%d of %d shaded texels differ", differing, shaded)
	}
}

func TestNoShadowsWithoutSun(t *testing.T) {
	for _, now := range []Instant{{SunElevation_deg: -5, DHI_Wm2: 5}, {SunElevation_deg: 40, DHI_Wm2: 300}, {SunElevation_deg: 1, DNI_Wm2: 100}} {
		s := smallScene(t, now)
		if r := s.ground.pixels.RGBAAt(17, 40).R; r != 0 || s.sunMap.lit {
			t.Errorf("%+v: the ground is in the sun", now)
		}
		for i := range s.leafColour {
			if s.leafColour[i].lit != [4]float32{} {
				t.Fatalf("%+v: leaf %d is in the sun", now, i)
			}
		}
	}
}

// Each smaller size of the map holds the mean of the larger one.
func TestGroundSizesKeepTheMean(t *testing.T) {
	s := smallScene(t, afternoon)
	mean := func(level int) float64 {
		top, w, h := groundLevel(level)
		sum := 0
		for y := range h {
			for x := range w {
				sum += int(s.ground.pixels.RGBAAt(x, top+y).R)
			}
		}
		return float64(sum) / float64(w*h)
	}
	first := mean(0)
	for level := 1; level < groundLevels; level++ {
		if m := mean(level); math.Abs(m-first) > 1.5 {
			t.Errorf("size %d has the mean %g, the largest %g", level, m, first)
		}
	}
	if first < 40 || first > 240 {
		t.Errorf("the ground is lit %g of 255", first)
	}
}

func TestDaylightFollowsTheSun(t *testing.T) {
	noon := newDaylight(Instant{SunAzimuth_deg: 180, SunElevation_deg: 75, DNI_Wm2: 900, DHI_Wm2: 110}, 0)
	evening := newDaylight(Instant{SunAzimuth_deg: 290, SunElevation_deg: 5, DNI_Wm2: 350, DHI_Wm2: 50}, 0)
	night := newDaylight(Instant{SunAzimuth_deg: 350, SunElevation_deg: -25}, 0)
	if noon.beam[0]/noon.beam[2] >= evening.beam[0]/evening.beam[2] {
		t.Error("the low sun must be redder")
	}
	if night.beam != (rgb{}) || night.casts() {
		t.Error("there is a beam at night")
	}
	if a, b := noon.zenith.luminance(), night.zenith.luminance(); b >= a/4 || !(b > 0) {
		t.Errorf("the night sky has %g of %g", b, a)
	}
	// Rows to the east: the sun in the south is on their right.
	if d := newDaylight(Instant{SunAzimuth_deg: 180, SunElevation_deg: 0.5, DNI_Wm2: 1}, 90); d.sun.Sub(mgl32.Vec3{1, 0, 0}).Len() > 0.02 {
		t.Errorf("the sun in the south is at %v of rows to the east", d.sun)
	}
}
