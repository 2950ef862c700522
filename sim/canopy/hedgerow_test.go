package canopy_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/known"
	"rowlight/sim/internal/table"
	"rowlight/testdata"
)

// Exact ray–box paths through periodic rows (see the header of the table); 1e-4 at points and 1e-3 for
// intercepted shares are the tolerances that its README names.
func TestBeamThroughHedgerows(t *testing.T) {
	rows := read(t, "reference/hedgerow_beam.csv")
	for i := range rows.Len() {
		h, err := known.HedgerowOf(rows, i)
		if err != nil {
			t.Fatal(err)
		}
		number := func(column string) float64 { return float(t, rows, i, column) }
		ray := canopy.NewRay(h.Grid())
		sun := known.SunInRow(number("sun_zen"), number("sun_az"), number("row_az"))
		for column, at := range map[string]mgl64.Vec3{
			"T_centre":       {0, 1, number("zf")},
			"T_xplus":        {h.Width/2 - 0.2, 1, number("zf")},
			"T_xminus":       {-h.Width/2 + 0.2, 1, number("zf")},
			"T_ground_mid":   {h.Spacing / 2, 1, 0},
			"T_ground_under": {0, 1, 0},
		} {
			want, got := number(column), math.Exp(-0.5*ray.Path(at, sun))
			if math.Abs(got-want) > 1e-4 {
				t.Errorf("row %d %s: got %.6f, want %.6f", i, column, got, want)
			}
		}
		if want, got := number("intercept"), intercept(ray, h, sun); math.Abs(got-want) > 1e-3 {
			t.Errorf("row %d intercept: got %.6f, want %.6f", i, got, want)
		}
	}
}

// Sky light of uniform radiance, by quadrature in the table; 2e-3 is the tolerance of its README.
func TestSkyThroughHedgerows(t *testing.T) {
	rows := read(t, "reference/hedgerow_diffuse.csv")
	for i := range rows.Len() {
		h, err := known.HedgerowOf(rows, i)
		if err != nil {
			t.Fatal(err)
		}
		grid := h.Grid()
		zf := float(t, rows, i, "zf")
		points := map[string]mgl64.Vec3{
			"centre": {0, 1, zf}, "face": {h.Width/2 - 0.2, 1, zf}, // as xplus of the beam table
			"ground_mid": {h.Spacing / 2, 1, 0}, "ground_under": {0, 1, 0},
		}
		for name, at := range points {
			horizontal, hemisphere := skyShares(grid, at)
			for column, got := range map[string]float64{name + "_horiz": horizontal, name + "_hemi": hemisphere} {
				if !rows.Has(column) {
					continue
				}
				if want := float(t, rows, i, column); math.Abs(got-want) > 2e-3 {
					t.Errorf("row %d %s: got %.5f, want %.5f", i, column, got, want)
				}
			}
		}
	}
}

// intercept is the share of the beam that the rows catch, by 2,000 rays from the ground.
func intercept(ray *canopy.Ray, h known.Hedgerow, sun mgl64.Vec3) float64 {
	const n = 2000
	sum := 0.0
	for k := range n {
		x := h.Spacing * ((float64(k)+0.5)/n - 0.5)
		sum += math.Exp(-0.5 * ray.Path(mgl64.Vec3{x, 1, 0}, sun))
	}
	return 1 - sum/n
}

// skyShares integrates exp(-path/2) over the upper hemisphere with rays: weighted by the cosine and
// unweighted, as shares of the open sky.
func skyShares(g *canopy.Grid, at mgl64.Vec3) (horizontal, hemisphere float64) {
	lattice := canopy.Full(1)
	ray := canopy.NewRay(g)
	weight := 0.0
	for i := range lattice.Size() {
		d := lattice.Direction(i)
		gap := math.Exp(-0.5*ray.Path(at, d)) * lattice.SolidAngle(i)
		hemisphere += gap
		horizontal += gap * d[2]
		weight += lattice.SolidAngle(i) * d[2]
	}
	return horizontal / weight, hemisphere / (2 * math.Pi)
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
