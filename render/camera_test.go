package render

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl32"
	"pgregory.net/rapid"
)

var testPane = Pane{X: 30, Y: 20, Width: 700, Height: 420}

// The ray through the pixel of a point passes through the point.
func TestProjectionRoundTrip(t *testing.T) {
	stand := smallStand()
	rapid.Check(t, func(t *rapid.T) {
		c := Camera{
			Azimuth_deg: rapid.Float64Range(0, 360).Draw(t, "azimuth"), Elevation_deg: rapid.Float64Range(-5, 89).Draw(t, "elevation"),
			Distance_m: rapid.Float64Range(0.5, 25).Draw(t, "distance"), TargetZ_m: rapid.Float64Range(0, 3).Draw(t, "target"),
		}
		v := NewView(c, stand, rapid.Float64Range(0, 180).Draw(t, "row"), testPane)
		point := mgl32.Vec3{
			rapid.Float32Range(-10, 10).Draw(t, "x"), rapid.Float32Range(-10, 10).Draw(t, "y"), rapid.Float32Range(0, 3).Draw(t, "z"),
		}
		x, y, depth := v.Project(point)
		if depth < nearestDepth {
			return
		}
		back := v.Eye.Add(v.Ray(x, y).Mul(depth))
		if miss := back.Sub(point).Len(); miss > 2e-4*(1+point.Sub(v.Eye).Len()) {
			t.Fatalf("the ray misses the point by %g m", miss)
		}
	})
}

func TestTargetIsInTheMiddleOfThePane(t *testing.T) {
	stand := smallStand()
	v := NewView(Camera{Azimuth_deg: 250, Elevation_deg: 20, Distance_m: 4, TargetZ_m: 1.1}, stand, 0, testPane)
	x, y, depth := v.Project(mgl32.Vec3{0, float32(stand.Length / 2), 1.1})
	if math.Abs(float64(x)-380) > 0.01 || math.Abs(float64(y)-230) > 0.01 || math.Abs(float64(depth)-4) > 1e-4 {
		t.Errorf("the target is at %g, %g, %g m away", x, y, depth)
	}
}

// The azimuth is the compass direction from which one looks, whatever the direction of the rows.
func TestAzimuthIsOfTheCompass(t *testing.T) {
	stand := smallStand()
	for _, c := range []struct{ row, azimuth, x, y float64 }{
		{0, 270, -4, 0}, // rows to the north, from the west: left of the row
		{0, 90, 4, 0},
		{90, 180, 4, 0},  // rows to the east have their right side in the south
		{45, 135, 4, 0},  // north-east rows: the south-east side is the right one
		{45, 315, -4, 0}, // and the north-west side the left
	} {
		v := NewView(Camera{Azimuth_deg: c.azimuth, Distance_m: 4, TargetZ_m: 1}, stand, c.row, testPane)
		if math.Abs(float64(v.Eye[0])-c.x) > 1e-4 || math.Abs(float64(v.Eye[1])-c.y-stand.Length/2) > 1e-4 {
			t.Errorf("rows to %g, from %g: the eye is at %v", c.row, c.azimuth, v.Eye)
		}
	}
}

// Looking along the row the eye stands between the rows, not in the leaves.
func TestEyeStandsBesideTheRow(t *testing.T) {
	stand := smallStand()
	for azimuth := 0.0; azimuth < 360; azimuth += 5 {
		v := NewView(Camera{Azimuth_deg: azimuth, Elevation_deg: 5, Distance_m: 3, TargetZ_m: 1.1}, stand, 0, testPane)
		if math.Abs(float64(v.Eye[0])) < 0.6 {
			t.Errorf("from %g the eye stands %g m from the row line", azimuth, v.Eye[0])
		}
	}
}

// The default camera looks at the afternoon side, on east-west rows at the side of the equator, and the way that the rows
// run, as a slice does.
func TestDefaultCamera(t *testing.T) {
	stand := smallStand()
	for _, c := range []struct{ row, latitude, front, azimuth float64 }{
		{0, 36, 270, 234}, {180, 36, 270, 306}, {0, -34, 270, 234}, {90, 36, 180, 216}, {90, -34, 0, 324}, {45, 36, 315, 279}, {135, 36, 225, 261},
	} {
		if front := Front(c.row, c.latitude); math.Abs(front-c.front) > 1e-9 {
			t.Errorf("rows to %g at %g°: the front faces %g, want %g", c.row, c.latitude, front, c.front)
		}
		a := DefaultCamera(stand, c.row, c.latitude).Azimuth_deg
		if math.Abs(a-c.azimuth) > 1e-9 {
			t.Errorf("rows to %g at %g°: from %g, want %g", c.row, c.latitude, a, c.azimuth)
		}
		if along := angleBetween(a+180, c.row); along > 90 {
			t.Errorf("rows to %g at %g°: the camera looks %g° off the way they run", c.row, c.latitude, along)
		}
	}
}

// A look is the same picture for rows of all directions: a turn of the rows by 180° is another name for them.
func TestLookIsToldByTheRow(t *testing.T) {
	stand := smallStand()
	look := Look{Turn_deg: 25, Elevation_deg: 30, Distance_m: 5}
	eye := func(row float64) mgl32.Vec3 { return NewView(look.Camera(stand, row, -20), stand, row, testPane).Eye }
	first := eye(0)
	for row := 5.0; row <= 180; row += 5 {
		e := eye(row)
		if e[0]*first[0] < 0 { // the front is the other side now: the row is seen turned round
			e[0], e[1] = -e[0], float32(stand.Length)-e[1]
		}
		if e.Sub(first).Len() > 1e-4 {
			t.Errorf("rows to %g: the eye is at %v, of rows to 0 at %v", row, e, first)
		}
	}
}

func TestRaysOfAllCornersAreFinite(t *testing.T) {
	for _, c := range []Camera{{Elevation_deg: 89, Distance_m: 5}, {Elevation_deg: -90, Distance_m: 0}, {Azimuth_deg: -725, Distance_m: 1e9}} {
		v := NewView(c, smallStand(), 10, testPane)
		for _, corner := range [][2]float32{{30, 20}, {730, 20}, {30, 440}, {730, 440}} {
			ray := v.Ray(corner[0], corner[1])
			if length := ray.Len(); !(length >= 1 && length < 3) {
				t.Errorf("%+v: ray %v", c, ray)
			}
		}
	}
}
