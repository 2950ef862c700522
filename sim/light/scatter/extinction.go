package scatter

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
)

// clump is the length of path over which leaves of one place along the row stand behind each other [m;
// assumption]: a little more than one leaf. It shares out the gaps among the cells; how much oblique light
// they let through in all is fitted to the uneven row.
const clump = 0.14

// extinction is what the leaves of one cell do to light, G·Ω·a by direction [1/m]: the root of a quadratic
// form of the direction, which is the projection of an ellipsoid (Campbell 1986, here with three unequal
// axes), exact for leaves that lie flat, stand upright, face one way or face everywhere alike; and the shares
// of it that work for light straight up and straight across, whose gaps go on from cell to cell. It is the
// same to and fro.
type extinction struct {
	xx, yy, zz, xz float64 // of the form [1/m²]
	up, across     float64 // shares that work
}

// toward is the extinction for a direction of the row frame, of which a share works where the light goes
// neither straight up nor straight across.
func (e *extinction) toward(d mgl64.Vec3, oblique float64) float64 {
	x, y, z := d[0]*d[0], d[1]*d[1], d[2]*d[2]
	form := e.xx*x + e.yy*y + e.zz*z + 2*e.xz*d[0]*d[2]
	return math.Sqrt(math.Max(form, 0)) * (e.up*z*z + e.across*x*x + oblique*(1-z*z-x*x))
}

// looker finds what the leaves of a canopy show.
type looker struct {
	grid            *canopy.Grid
	thickness       *canopy.Thickness
	g               *canopy.Projection // replaces what the blades show, if not nil
	columns, layers int
	clumping        float64
	pace            func() error
}

// look turns the thickness toward a direction of the row frame.
func (l *looker) look(d mgl64.Vec3) error {
	if l.g != nil {
		l.thickness.As(l.g, d)
	} else {
		l.thickness.Toward(d)
	}
	return l.pace()
}

// toward is the extinction at every place of the section for a direction of the row frame [1/m].
func (l *looker) toward(d mgl64.Vec3) ([]float64, error) {
	if err := l.look(d.Normalize()); err != nil {
		return nil, err
	}
	return l.thickness.Section(l.columns, l.layers, clump, l.clumping), l.pace()
}

// extinctions finds the extinction at every place of a section from what the leaves show five directions.
func (l *looker) extinctions(cellWidth, cellHeight float64) ([]extinction, error) {
	list := make([]extinction, l.columns*l.layers)
	if l.clumping <= 0 {
		return list, nil
	}
	var shown [5][]float64
	var levels, verticals []float64
	for k, d := range [5]mgl64.Vec3{{0, 1, 0}, {1, 0, 1}, {-1, 0, 1}, {1, 0, 0}, {0, 0, 1}} {
		var err error
		if shown[k], err = l.toward(d); err != nil {
			return nil, err
		}
		switch k {
		case 3:
			levels = l.thickness.Layers(l.layers, l.clumping)
		case 4:
			verticals = l.thickness.Columns(l.columns, l.clumping)
		}
	}
	along, right, left, across, up := shown[0], shown[1], shown[2], shown[3], shown[4]
	for column, depth := range verticals {
		verticals[column] = working(depth, up[column:], l.columns, cellHeight)
	}
	for layer, depth := range levels {
		levels[layer] = working(depth, across[layer*l.columns:][:l.columns], 1, cellWidth)
	}
	for i := range list {
		list[i] = extinction{
			xx: across[i] * across[i], yy: along[i] * along[i], zz: up[i] * up[i],
			xz: (right[i]*right[i] - left[i]*left[i]) / 2,
			up: verticals[i%l.columns], across: levels[i/l.columns],
		}
	}
	return list, nil
}

// working is the optical depth of a whole way as a share of that of its cells: those at every so manieth
// place, each crossed over a length [m]. Without leaves it is 1.
func working(depth float64, extinctions []float64, every int, length float64) float64 {
	sum := 0.0
	for i := 0; i < len(extinctions); i += every {
		sum += extinctions[i] * length
	}
	if sum == 0 {
		return 1
	}
	return depth / sum
}
