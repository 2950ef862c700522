package cover

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// Kind is what a net is hung for.
type Kind int

// The kinds of nets.
const (
	SideNet     Kind = iota // along the fruit zone, on one side of the row
	BirdNet                 // draped over a row
	OverheadNet             // over all rows
)

// Panel is one plane piece of net in the row frame: x across the row, y along it, z up. It is upright or level, and
// runs along the whole row.
type Panel struct {
	Kind   Kind
	Colour scenario.ClothColour
	Cloth  Cloth
	Edges  [2][2]float64 // x and z of its two edges along the row: left and right, or lower and upper [m]
}

// How nets hang. Assumptions: shade nets for fruit are 0.6 to 0.9 m high; a bird net lies on the leaves.
const (
	aboveFruit = 0.30 // that a side net reaches over the shoulders of the bunches [m]
	belowFruit = 0.15 // and below their tips [m]
	overLeaves = 0.05 // that a bird net bulges beyond the leaves [m]
)

// BirdCloth is the cloth of a bird net: meshes of 15 mm of thin thread. Assumption: black, a shade factor of 0.15.
var BirdCloth = Of(0.15, scenario.BlackCloth)

// Panels are the nets of one row of an option: those along the fruit zone, left before right, then the bird net, left,
// right and top, then one period of the net over all rows. None without nets.
func Panels(o scenario.Option, stand *training.Stand, latitude_deg float64) []Panel {
	shade := &o.Shade
	if !o.Netted(scenario.Left, latitude_deg) && !o.Netted(scenario.Right, latitude_deg) && shade.BirdNet != scenario.DrapedNet && shade.OverheadShade <= 0 {
		return nil // an outline takes its time
	}
	var panels []Panel
	room := stand.Outline()
	for _, side := range scenario.Sides {
		if o.Netted(side, latitude_deg) {
			panels = append(panels, sidePanel(o.Shade, side, room))
		}
	}
	if o.Shade.BirdNet == scenario.DrapedNet {
		panels = append(panels, drape(room)...)
	}
	if o.Shade.OverheadShade > 0 {
		half, z := stand.RowSpacing/2, o.Shade.OverheadHeight_m
		panels = append(panels, Panel{OverheadNet, o.Shade.OverheadColour, Of(o.Shade.OverheadShade, o.Shade.OverheadColour), [2][2]float64{{-half, z}, {half, z}}})
	}
	return panels
}

// sidePanel is the net along the fruit zone of a side. It hangs no nearer than the fruit reaches.
func sidePanel(s scenario.Shade, side scenario.Side, room training.Outline) Panel {
	x := math.Max(s.NetDistance_m, room.FruitRight)
	if side == scenario.Left {
		x = math.Min(-s.NetDistance_m, room.FruitLeft)
	}
	from, to := s.NetFrom_m, s.NetTo_m
	if to <= 0 {
		from, to = math.Max(room.FruitBottom-belowFruit, 0), room.FruitTop+aboveFruit
	}
	return Panel{SideNet, s.NetColour, Of(s.NetShade, s.NetColour), [2][2]float64{{x, from}, {x, to}}}
}

// drape is a bird net over a row: down both sides to below the fruit, and over the top.
func drape(room training.Outline) []Panel {
	left, right, top := room.Left-overLeaves, room.Right+overLeaves, room.Top+overLeaves
	bottom := math.Max(room.FruitBottom-belowFruit, 0)
	of := func(from, to [2]float64) Panel {
		return Panel{BirdNet, scenario.BlackCloth, BirdCloth, [2][2]float64{from, to}}
	}
	return []Panel{
		of([2]float64{left, bottom}, [2]float64{left, top}),
		of([2]float64{right, bottom}, [2]float64{right, top}),
		of([2]float64{left, top}, [2]float64{right, top}),
	}
}

// Level tells whether the panel lies level; it hangs upright otherwise.
func (p *Panel) Level() bool { return p.Edges[0][1] == p.Edges[1][1] }

// Right tells whether an upright panel hangs right of the row line.
func (p *Panel) Right() bool { return p.Edges[0][0] > 0 }

// Meets tells whether the way from a point in a unit direction goes through the panel, outward or upward: into the
// row nothing is netted. Around a point beyond its plane the net bulges: there it hangs at the point. The nets of the
// next rows are left out: they meet the way only of a sun below about 7°, which the vines of those rows hide as well.
func (p *Panel) Meets(from, d mgl64.Vec3) bool {
	low, high := p.Edges[0], p.Edges[1]
	if p.Level() {
		if d[2] <= 0 {
			return false
		}
		x := from[0] + d[0]/d[2]*math.Max(low[1]-from[2], 0)
		return x >= low[0] && x <= high[0]
	}
	sign := math.Copysign(1, low[0])
	out := d[0] * sign
	if out <= 0 {
		return false
	}
	z := from[2] + d[2]/out*math.Max((low[0]-from[0])*sign, 0)
	return z >= low[1] && z <= high[1]
}

// Direct is the share of light toward a direction that goes through between the threads, which run along the row and
// across that.
func (p *Panel) Direct(d mgl64.Vec3) float64 {
	if p.Level() {
		return p.Cloth.Direct(d[2], d[0], d[1])
	}
	return p.Cloth.Direct(d[0], d[1], d[2])
}
