package canopy_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/table"
	"rowlight/sim/training"
	"rowlight/testdata"
)

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

func read(t *testing.T, name string) table.Table {
	t.Helper()
	rows, err := table.Read(testdata.FS, name)
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func float(t *testing.T, rows table.Table, row int, column string) float64 {
	t.Helper()
	value, err := rows.Float(row, column)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

func ExampleEllipsoidalG() {
	// Leaves that face everywhere alike project half of their area in every direction.
	fmt.Printf("%.3f", canopy.EllipsoidalG(0.7, 1))
	// Output: 0.500
}
