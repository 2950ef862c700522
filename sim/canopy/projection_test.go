package canopy_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/training"
)

// Campbell 1986 in exact form, by the table's own integration; 1e-4 is the tolerance of its README.
func TestEllipsoidalProjection(t *testing.T) {
	rows := read(t, "reference/gfunction.csv")
	for i := range rows.Len() {
		zenith, chi := mgl64.DegToRad(float(t, rows, i, "zenith_deg")), float(t, rows, i, "chi")
		want := float(t, rows, i, "G_exact")
		if got := canopy.EllipsoidalG(zenith, chi); math.Abs(got-want) > 1e-4 {
			t.Errorf("row %d: closed form %.6f, want %.6f", i, got, want)
		}
		tabulated := canopy.Custom(func(d mgl64.Vec3) float64 { return canopy.EllipsoidalG(math.Acos(d[2]), chi) })
		d := mgl64.Vec3{math.Sin(zenith) * 0.6, math.Sin(zenith) * 0.8, math.Cos(zenith)}
		if got := tabulated.G(d); math.Abs(got-want) > 1e-4 {
			t.Errorf("row %d: tabulated %.6f, want %.6f", i, got, want)
		}
	}
}

// Leaves drawn at random with horizontal, vertical and even normals have the projections cos θ,
// (2/π) sin θ and 1/2 of the same table (geometry).
func TestProjectionFromLeafNormals(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	even := func() mgl64.Vec3 {
		z, a := 2*random.Float64()-1, 2*math.Pi*random.Float64()
		r := math.Sqrt(1 - z*z)
		return mgl64.Vec3{r * math.Cos(a), r * math.Sin(a), z}
	}
	upright := func() mgl64.Vec3 {
		a := 2 * math.Pi * random.Float64()
		return mgl64.Vec3{math.Cos(a), math.Sin(a), 0}
	}
	flat := func() mgl64.Vec3 { return mgl64.Vec3{0, 0, 1} }
	rows := read(t, "reference/gfunction.csv")
	for column, draw := range map[string]func() mgl64.Vec3{"G_horizontal": flat, "G_vertical": upright, "G_spherical": even} {
		leaves := make([]training.Leaf, 40_000)
		for i := range leaves {
			leaves[i] = training.Leaf{Normal: draw(), Area: 0.01}
		}
		p := canopy.ProjectionOf(leaves)
		for i := range rows.Len() {
			zenith := mgl64.DegToRad(float(t, rows, i, "zenith_deg"))
			got, want := p.G(mgl64.Vec3{math.Sin(zenith), 0, math.Cos(zenith)}), float(t, rows, i, column)
			// Four standard errors of 40,000 draws (at most 0.3/200 each) and the 5° bins.
			if math.Abs(got-want) > 0.008 {
				t.Errorf("%s at %.0f°: got %.4f, want %.4f", column, mgl64.RadToDeg(zenith), got, want)
			}
		}
	}
}

// Uniform sky light through a closed black canopy, by exponential integrals; 1e-4 is the tolerance of
// its README. The slab goes through the grid and the ray caster that the simulation uses.
func TestSkyThroughClosedCanopy(t *testing.T) {
	rows := read(t, "reference/diffuse_transmittance.csv")
	for i := range rows.Len() {
		area := float(t, rows, i, "LAI")
		grid := canopy.NewGrid(4, 4, 4, 1, 1, 1, canopy.Slope{})
		grid.FillBox(1, 0, 1, area)
		ray := canopy.NewRay(grid)
		for _, column := range rows.Columns {
			g, ok := projectionOfColumn(column)
			if !ok {
				continue
			}
			got := transmittance(func(d mgl64.Vec3) float64 { return math.Exp(-g(d) * ray.Path(mgl64.Vec3{0, 0.5, 0}, d)) })
			if want := float(t, rows, i, column); math.Abs(got-want) > 1e-4 {
				t.Errorf("LAI %g %s: got %.6f, want %.6f", area, column, got, want)
			}
		}
	}
}

// projectionOfColumn is the leaf angle distribution that a column of the table names.
func projectionOfColumn(column string) (func(d mgl64.Vec3) float64, bool) {
	chiG := func(chi float64) func(d mgl64.Vec3) float64 {
		return func(d mgl64.Vec3) float64 { return canopy.EllipsoidalG(math.Acos(d[2]), chi) }
	}
	switch name, _ := strings.CutPrefix(column, "tau_"); {
	case column == "tau_spherical":
		return canopy.Uniform().G, true
	case column == "tau_vertical":
		return chiG(0), true
	case column == "tau_horizontal":
		return func(d mgl64.Vec3) float64 { return d[2] }, true
	case strings.HasPrefix(name, "chi"):
		chi, err := strconv.ParseFloat(strings.TrimPrefix(name, "chi"), 64)
		return chiG(chi), err == nil
	default:
		return nil, false
	}
}

// transmittance weighs a gap probability by the cosine over the upper hemisphere, in 4,000 steps of μ².
func transmittance(gap func(d mgl64.Vec3) float64) float64 {
	const n = 4000
	sum := 0.0
	for k := range n {
		mu := math.Sqrt((float64(k) + 0.5) / n)
		sum += gap(mgl64.Vec3{math.Sqrt(1 - mu*mu), 0, mu})
	}
	return sum / n
}

func ExampleEllipsoidalG() {
	// Leaves that face everywhere alike project half of their area in every direction.
	fmt.Printf("%.3f", canopy.EllipsoidalG(0.7, 1))
	// Output: 0.500
}
