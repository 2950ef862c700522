package canopy

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/training"
)

// leaves are the pieces into which the cells of a grid cut the blades of a stand. Each keeps its blade, so
// that every cell shows a direction what its own leaves show: the outer leaves of a wall face outward, and
// light that comes from outside meets more of them than of all leaves on average.
type leaves struct {
	normals [][3]float32 // of the blades
	held    []held       // blade after blade
	runs    []int32      // along the row that hold pieces, where every run is written twice

	perLength float32 // one over the length of a ray's way through the cells of one leaf [1/m]
}

// held is a piece as its cell holds it.
type held struct {
	blade int32
	cell  int32   // where every run along the row is written twice
	size  float32 // the probability that a ray through the cell meets the piece face on
}

// piece is the part of one blade in one cell.
type piece struct {
	cell int
	area float64 // [m²]
}

// wayOfLeaf is how far a ray goes through the cells that share one leaf, in edges of a cell (of the cube
// of equal volume): with 1.1 a single vine leaf stops what it shows, in cells of half to full width.
const wayOfLeaf = 1.1

// leafSamples is the even number of points of a blade, each carrying an equal share of its area.
const leafSamples = 24

// sunflower is half of the points of a blade of unit radius: equal-area points on a disc (Vogel 1979), to be doubled about
// the midrib so that a mirrored leaf fills the mirrored cells.
var sunflower = func() (points [leafSamples / 2]struct{ radius, sin, cos float64 }) {
	for k := range points {
		p := &points[k]
		p.radius = math.Sqrt((float64(k) + 0.5) / (leafSamples / 2))
		p.sin, p.cos = math.Sincos(2.399963229728653 * float64(k))
	}
	return points
}()

// cut shares out the area of a blade, taken as a disc of equal area, over the cells that it crosses.
func (g *Grid) cut(l *training.Leaf, pieces []piece) []piece {
	radius := math.Sqrt(l.Area / math.Pi)
	x, y, z := g.cell(l.Centre)
	tip, across := g.inCells(l.Tip), g.inCells(l.Normal.Cross(l.Tip))
	for k := range sunflower {
		p := &sunflower[k]
		along, aside := radius*p.radius*p.cos, radius*p.radius*p.sin
		at := mgl64.Vec3{x + along*tip[0], y + along*tip[1], z + along*tip[2]}
		for _, aside := range [2]float64{aside, -aside} {
			cell := g.holding(at[0]+aside*across[0], at[1]+aside*across[1], at[2]+aside*across[2])
			at := 0
			for at < len(pieces) && pieces[at].cell != cell {
				at++
			}
			if at == len(pieces) {
				pieces = append(pieces, piece{cell: cell})
			}
			pieces[at].area += l.Area / leafSamples
		}
	}
	return pieces
}

// hang puts the pieces of all blades into the cells.
func (g *Grid) hang(stand []training.Leaf) {
	volume := g.dx * g.dy * g.dz
	way := wayOfLeaf * math.Cbrt(volume)
	l := leaves{normals: make([][3]float32, len(stand)), perLength: float32(1 / way)}
	filled := make([]bool, g.nx*g.nz)
	var pieces []piece
	for i := range stand {
		n := stand[i].Normal
		l.normals[i] = [3]float32{float32(n[0]), float32(n[1]), float32(n[2])}
		pieces = g.cut(&stand[i], pieces[:0])
		for _, p := range pieces {
			l.held = append(l.held, held{int32(i), int32(g.doubled(p.cell)), float32(p.area * way / volume)})
			filled[p.cell/g.ny] = true
			g.density[p.cell] += float32(p.area / volume)
		}
	}
	for run, any := range filled {
		if any {
			l.runs = append(l.runs, int32(run*2*g.ny))
		}
	}
	g.leaves = l
}

// single is the optical depth −ln(1 − w) of one leaf that a ray meets with probability w, by a cubic that
// errs by less than 0.02 up to 0.75. Light that has passed a leaf does not meet it again: leaf area spread
// as if in many small pieces would stop 1 − e^(−w), for a blade as large as a cell a quarter less.
func single(w float32) float32 { return w * (1 + w*(0.5+0.7*w)) }

// Thickness is the optical depth per length in every cell [1/m] for light along a direction of the row
// frame: what the leaves in the cell show that way, at Ω = 1.
type Thickness struct {
	grid   *Grid
	facing []float32 // cosine between each blade and the direction, without sign
	cells  []float32 // every run along the row written twice, so that offsets need no wrapping
}

// NewThickness makes room for the thickness of a grid, for directions one after the other.
func NewThickness(g *Grid) *Thickness {
	t := &Thickness{grid: g, cells: make([]float32, 2*len(g.density)), facing: make([]float32, len(g.leaves.normals))}
	for run := range len(g.loose) / g.ny {
		t.loosen(run * 2 * g.ny)
	}
	return t
}

// areaOf is leaf area density [m²/m³] in place of what leaves show.
func areaOf(g *Grid) *Thickness {
	t := &Thickness{grid: g, cells: make([]float32, 2*len(g.density))}
	for cell, a := range g.density {
		at := g.doubled(cell)
		t.cells[at], t.cells[at+g.ny] = a, a
	}
	return t
}

// looseG is G of leaf area that was put in without blades: it faces everywhere alike.
const looseG = 0.5

// Toward finds the thickness for a direction.
func (t *Thickness) Toward(d mgl64.Vec3) {
	l, cells, all := &t.grid.leaves, t.cells, t.facing
	x, y, z := float32(d[0]), float32(d[1]), float32(d[2])
	for i := range l.normals {
		n := &l.normals[i]
		// Not max: browsers would call a function for each blade.
		facing := n[0]*x + n[1]*y + n[2]*z
		if facing < 0 {
			facing = -facing
		}
		all[i] = facing
	}
	ny := t.grid.ny
	for _, run := range l.runs {
		clear(cells[run:][:ny])
		t.loosen(int(run))
	}
	rest, per := l.held, l.perLength
	// Four at a time: in a browser the way back to the start of a loop costs as much as a piece.
	for len(rest) >= 4 {
		a, b, c, d := &rest[0], &rest[1], &rest[2], &rest[3]
		cells[a.cell] += per * single(a.size*all[a.blade])
		cells[b.cell] += per * single(b.size*all[b.blade])
		cells[c.cell] += per * single(c.size*all[c.blade])
		cells[d.cell] += per * single(d.size*all[d.blade])
		rest = rest[4:]
	}
	for _, p := range rest {
		cells[p.cell] += per * single(p.size*all[p.blade])
	}
	for _, run := range l.runs {
		copy(cells[int(run)+ny:][:ny], cells[run:])
	}
}

// loosen fills a run with what leaf area without blades shows, which is all that it holds until pieces join.
func (t *Thickness) loosen(run int) {
	if t.grid.loose == nil {
		return
	}
	ny := t.grid.ny
	for iy, a := range t.grid.loose[run/2:][:ny] {
		t.cells[run+iy], t.cells[run+ny+iy] = a*looseG, a*looseG
	}
}

// doubled is the place of a cell where every run along the row is written twice.
func (g *Grid) doubled(cell int) int { return cell + cell/g.ny*g.ny }
