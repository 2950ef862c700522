package heat

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

var (
	openSky   = Hemisphere(1, up)
	openFloor = Hemisphere(1, up.Mul(-1))
	noLeaf    Broad
)

// σT⁴ at 300 K is 459.3 W/m² (any handbook).
func TestEmitted(t *testing.T) { near(t, "black surface at 300 K", Emitted(300-kelvin), 459.3, 0.05) }

// A black cavity at air temperature exchanges nothing, however it is divided.
func TestLongwaveFurnace(t *testing.T) {
	wall := Emitted(37)
	walled := Broad{Mean: 0.3, Vector: mgl64.Vec3{0.2, -0.1, 0}}
	for _, views := range [][3]Broad{
		{openSky, openFloor, noLeaf},
		{openSky.Add(walled.Scale(-0.5)), openFloor.Add(walled.Scale(-0.5)), walled},
		{noLeaf, noLeaf, Uniform(1)},
	} {
		net := Longwave(views[0], views[1], views[2], wall, wall, wall, 37, 0.96)
		near(t, "mean", net.Mean, 0, 1e-10)
		near(t, "vector", net.Vector.Len(), 0, 1e-10)
		b := plain(14, 0.78)
		near(t, "berry in the furnace", b.Steady(Load{LongNet: net}, Around{Air_C: 37}).Hottest_C, 37, 1e-10)
	}
}

// Under a sky that is 100 W/m² short an upward skin loses ε·100, a downward one nothing, a berry half.
func TestLongwaveOfAColdSky(t *testing.T) {
	wall := Emitted(25)
	net := Longwave(openSky, openFloor, noLeaf, wall-100, wall, 0, 25, 0.96)
	near(t, "up", net.On(up), -96, 1e-9)
	near(t, "down", net.On(up.Mul(-1)), 0, 1e-9)
	near(t, "sideways", net.On(mgl64.Vec3{1, 0, 0}), -48, 1e-9)
	near(t, "berry", net.Mean, -48, 1e-9)
}

// Walls hotter than the air warm the berry to their own temperature when there is no air to cool it.
func TestLongwaveWarmsToTheWalls(t *testing.T) {
	wall := Emitted(47)
	net := Longwave(openSky, openFloor, noLeaf, wall, wall, 0, 37, 0.96)
	near(t, "no air", 37+net.Mean/radiativeCoefficient(0.96, 47, 37), 47, 0.02)
}

// A hemisphere gives an element (1+cosθ)/2 of what a plane facing it gets: by integration over directions.
func TestHemisphereIsExact(t *testing.T) {
	for _, angle := range []float64{0, 0.7, math.Pi / 2, 2.2, math.Pi} {
		n := mgl64.Vec3{math.Sin(angle), 0, math.Cos(angle)}
		sum, steps := 0.0, 400
		for i := range steps {
			height := (float64(i) + 0.5) / float64(steps) // cosine of the zenith angle, even in solid angle
			for j := range steps {
				azimuth := 2 * math.Pi * (float64(j) + 0.5) / float64(steps)
				side := math.Sqrt(1 - height*height)
				from := mgl64.Vec3{side * math.Cos(azimuth), side * math.Sin(azimuth), height}
				sum += math.Max(from.Dot(n), 0) / float64(steps*steps)
			}
		}
		// Radiance of a horizontal flux of 200 W/m² is 200/π; the hemisphere is 2π of solid angle.
		near(t, "hemisphere", Hemisphere(200, up).On(n), 200/math.Pi*2*math.Pi*sum, 0.01)
	}
}

func TestBroadFieldsAdd(t *testing.T) {
	n := slant
	both := Hemisphere(100, up).Add(Uniform(30).Scale(2))
	near(t, "sum", both.On(n), Hemisphere(100, up).On(n)+60, 1e-12)
}
