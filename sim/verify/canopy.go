package verify

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/known"
)

// canopyChecks compare sim/canopy.
func canopyChecks() []check {
	return []check{
		{
			table: "gfunction", compares: "G of ellipsoidal leaves, direct and tabulated", allowed: 1e-4, unit: "1", cites: "Campbell 1986",
			asks:    []column{number("zenith_deg", 0, 90), number("chi", 0, 1000)},
			answers: numbers("G_exact"),
			begin:   compareProjection,
		},
		{
			table: "diffuse_transmittance", compares: "even sky through closed canopies", allowed: 1e-4, unit: "1", cites: "spherical exact",
			asks:    []column{number("LAI", 0, 50)},
			answers: numbers(transmittanceColumns()...),
			begin:   each(compareTransmittance),
		},
		{
			table: "hedgerow_beam", compares: "beam at points", allowed: 1e-4, unit: "1", cites: "exp(-0.5*lad*path)",
			asks:    append([]column{height}, hedgerowSun...),
			answers: numbers("T_centre", "T_xplus", "T_xminus", "T_ground_mid", "T_ground_under"),
			begin:   withHedgerow(compareBeam),
		},
		{
			table: "hedgerow_beam", compares: "beam caught by the rows", allowed: 1e-3, unit: "1", cites: "fraction of beam (per unit ground)",
			asks:    hedgerowSun,
			answers: numbers("intercept"),
			begin:   withHedgerow(compareIntercept),
		},
		{
			table: "hedgerow_diffuse", compares: "even sky at points", allowed: 2e-3, unit: "1", cites: "320 Gauss",
			asks: append([]column{height}, hedgerowBox...),
			answers: numbers("centre_horiz", "centre_hemi", "face_horiz", "face_hemi", "ground_mid_horiz",
				"ground_mid_hemi", "ground_under_horiz", "ground_under_hemi"),
			begin: withHedgerow(compareSky),
		},
	}
}

// compareProjection asks the closed form and a table of it, as the simulation tabulates G.
func compareProjection(func() error) rowCheck {
	tabulated := map[float64]*canopy.Projection{}
	return func(r row, f *found) error {
		chi, zenith := r.at("chi"), mgl64.DegToRad(r.at("zenith_deg"))
		if tabulated[chi] == nil {
			tabulated[chi] = canopy.Custom(ellipsoid(chi))
		}
		sin, cos := math.Sincos(zenith)
		f.near(r, "G_exact", canopy.EllipsoidalG(zenith, chi))
		f.near(r, "G_exact", tabulated[chi].G(mgl64.Vec3{0.6 * sin, 0.8 * sin, cos}))
		return nil
	}
}

// ellipsoid is the projection of ellipsoidal leaves by direction.
func ellipsoid(chi float64) func(d mgl64.Vec3) float64 {
	return func(d mgl64.Vec3) float64 { return canopy.EllipsoidalG(math.Acos(d[2]), chi) }
}

// leafAngles are the leaf angle distributions of diffuse_transmittance by column.
var leafAngles = []struct {
	column string
	g      func(d mgl64.Vec3) float64
}{
	{"tau_spherical", canopy.Uniform().G},
	{"tau_horizontal", func(d mgl64.Vec3) float64 { return d[2] }},
	{"tau_vertical", ellipsoid(0)},
	{"tau_chi0.5", ellipsoid(0.5)},
	{"tau_chi1.5", ellipsoid(1.5)},
	{"tau_chi2", ellipsoid(2)},
	{"tau_chi3", ellipsoid(3)},
}

func transmittanceColumns() (list []string) {
	for _, angles := range leafAngles {
		list = append(list, angles.column)
	}
	return list
}

// compareTransmittance sends the light of an even sky through a slab, by paths through the grid, weighted by the cosine: 4,000
// steps of μ².
func compareTransmittance(r row, f *found) {
	const n = 4000
	grid := canopy.NewGrid(4, 4, 4, 1, 1, 1, canopy.Slope{})
	grid.FillBox(1, 0, 1, r.at("LAI"))
	ray := canopy.NewRay(grid)
	sums := make([]float64, len(leafAngles))
	for k := range n {
		mu := math.Sqrt((float64(k) + 0.5) / n)
		d := mgl64.Vec3{math.Sqrt(1 - mu*mu), 0, mu}
		path := ray.Path(mgl64.Vec3{0, 0.5, 0}, d)
		for i, angles := range leafAngles {
			sums[i] += canopy.Gap(angles.g(d), path)
		}
	}
	for i, angles := range leafAngles {
		f.near(r, angles.column, sums[i]/n)
	}
}

// Columns of the tables of hedgerows. The bounds keep their grids small.
var (
	hedgerowBox = []column{
		number("s", 0.1, 10), number("w", 0.01, 10), number("zb", 0, tallest), number("zt", 0.01, tallest), number("lad", 0, 100),
	}
	height      = number("zf", 0, tallest)
	hedgerowSun = append([]column{number("sun_zen", 0, 89.9), number("sun_az", -360, 360), number("row_az", -360, 360)}, hedgerowBox...)
)

// tallest bounds the height of a hedgerow [m].
const tallest = 5

// hedgerowOf reads the hedgerow of a row.
func hedgerowOf(r row) (known.Hedgerow, error) {
	h := known.Hedgerow{Spacing: r.at("s"), Width: r.at("w"), Bottom: r.at("zb"), Top: r.at("zt"), Density: r.at("lad")}
	if err := h.Check(); err != nil {
		return h, &Unreadable{[]error{r.fault("", err.Error())}}
	}
	return h, nil
}

// hedgerow is a hedgerow with the rays that cross it.
type hedgerow struct {
	known.Hedgerow
	ray    *canopy.Ray
	leaves *canopy.Thickness
}

// gap is the share of light that comes to a point from a direction, without clumping.
func (h hedgerow) gap(at, d mgl64.Vec3) float64 {
	h.leaves.Toward(d)
	return canopy.Gap(1, h.ray.Depth(h.leaves, at, d))
}

// withHedgerow is the beginning of a check of hedgerows, which remembers the last one.
func withHedgerow(compare func(r row, f *found, h hedgerow)) func(func() error) rowCheck {
	return func(func() error) rowCheck {
		var h hedgerow
		return func(r row, f *found) error {
			box, err := hedgerowOf(r)
			if err != nil {
				return err
			}
			if h.ray == nil || box != h.Hedgerow {
				grid := box.Grid()
				h = hedgerow{box, canopy.NewRay(grid), canopy.NewThickness(grid)}
			}
			compare(r, f, h)
			return nil
		}
	}
}

// sunOf is the direction to the sun of a row in the frame of its hedgerow.
func sunOf(r row) mgl64.Vec3 {
	return known.SunInRow(r.at("sun_zen"), r.at("sun_az"), r.at("row_az"))
}

func compareBeam(r row, f *found, h hedgerow) {
	toSun, height, within := sunOf(r), r.at("zf"), h.Width/2-0.2
	f.near(r, "T_centre", h.gap(mgl64.Vec3{0, 1, height}, toSun))
	f.near(r, "T_xplus", h.gap(mgl64.Vec3{within, 1, height}, toSun))
	f.near(r, "T_xminus", h.gap(mgl64.Vec3{-within, 1, height}, toSun))
	f.near(r, "T_ground_mid", h.gap(mgl64.Vec3{h.Spacing / 2, 1, 0}, toSun))
	f.near(r, "T_ground_under", h.gap(mgl64.Vec3{0, 1, 0}, toSun))
}

// compareIntercept sends 2,000 rays from the ground of one period.
func compareIntercept(r row, f *found, h hedgerow) {
	const n = 2000
	toSun, passed := sunOf(r), 0.0
	for k := range n {
		x := h.Spacing * ((float64(k)+0.5)/n - 0.5)
		passed += h.gap(mgl64.Vec3{x, 1, 0}, toSun)
	}
	f.near(r, "intercept", 1-passed/n)
}

func compareSky(r row, f *found, h hedgerow) {
	height := r.at("zf")
	for _, point := range []struct {
		name string
		at   mgl64.Vec3
	}{
		{"centre", mgl64.Vec3{0, 1, height}}, {"face", mgl64.Vec3{h.Width/2 - 0.2, 1, height}}, // as xplus of hedgerow_beam
		{"ground_mid", mgl64.Vec3{h.Spacing / 2, 1, 0}}, {"ground_under", mgl64.Vec3{0, 1, 0}},
	} {
		horizontal, hemisphere := h.sky(point.at)
		f.near(r, point.name+"_horiz", horizontal)
		f.near(r, point.name+"_hemi", hemisphere)
	}
}

// skyStep is the step of the directions to the sky [deg].
const skyStep = 1

// sky is the light of an even sky at a point over that in the open: on the horizontal and from all over the sky.
func (h hedgerow) sky(at mgl64.Vec3) (horizontal, hemisphere float64) {
	lattice := canopy.Full(skyStep)
	weight, whole := 0.0, 0.0
	for i := range lattice.Size() {
		d, angle := lattice.Direction(i), lattice.SolidAngle(i)
		gap := h.gap(at, d)
		hemisphere += gap * angle
		horizontal += gap * angle * d[2]
		weight += angle * d[2]
		whole += angle
	}
	return horizontal / weight, hemisphere / whole
}
